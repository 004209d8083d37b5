/** What must be so in every state. */
import { mustBe } from '../../../kernel/index.ts';
import type { Safety } from '../calc/rules.ts';
import type { CycleSpec } from '../calc/spec.ts';
import { brokenBy, ofTheCycle, searched, type SequenceCheck } from './common.ts';

const never = (
  code: string,
  rule: Safety,
  asks: string,
  holds: string,
  fails: string,
  guards: boolean,
  arises: (spec: CycleSpec) => boolean = () => true,
): SequenceCheck => ({
  code,
  asks,
  ...(guards ? { neverAccepted: true as const } : {}),
  subjects: ofTheCycle,
  run: (context) => {
    const found = searched(context);
    if (!arises(found.spec)) return null;
    const broken = brokenBy(found, rule);
    return mustBe(broken === null, { says: () => (broken === null ? holds : `${fails}, ${broken}.`) });
  },
});

export const standsDark = never(
  'SEQUENCE-020',
  'idle-energised',
  'Is everything without power while it stands by?',
  'Standing by, no drive and no servo is ever on.',
  'A drive or servo is on while it stands by',
  false,
);

export const travelsUp = never(
  'SEQUENCE-040',
  'travels-low',
  'Does nothing travel while the load is below its travel height?',
  'No axis ever travels while the load is below its travel height, but where the chart says so.',
  'It travels with the load down',
  false,
);

export const tells = never(
  'SEQUENCE-060',
  'untold',
  'Is the operator told whenever a play is lost or the machine latches?',
  'Wherever a play is lost or the machine latches, a lamp tells the operator.',
  'A play is lost, or the machine latches, and nobody is told',
  false,
);

export const holdsUp = never(
  'SEQUENCE-070',
  'unheld',
  'Is a raised load held whatever happens, or its fall harmless?',
  'Whatever happens, a raised load is held, or its fall is declared harmless.',
  'A raised load is let go',
  true,
);

export const homesInOrder = never(
  'SEQUENCE-080',
  'order',
  'Is the load brought up to its switch before anything travels, after every start?',
  'After every start the load is brought up to its switch before anything travels.',
  'Something travels before the load was brought up to its switch',
  false,
);

export const doorsShut = never(
  'SEQUENCE-082',
  'door',
  'Does nothing move while a door is open, but in service?',
  'Nothing moves while a door is open, but in service.',
  'Something moves while a door is open',
  true,
  ({ inputs }) => inputs.some(({ kind }) => kind === 'door'),
);

export const heldInService = never(
  'SEQUENCE-084',
  'service',
  'Does anything move in service only while the button is held?',
  'In service nothing moves but while the button is held.',
  'Something moves in service and nobody holds the button',
  true,
  ({ marks }) => marks.some((mark) => mark.service),
);
