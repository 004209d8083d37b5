/** The order and the words of the Sequence sheet. */
import type { Block, SheetContext, SheetDocument } from '../../contract/index.ts';
import { tickOf } from './calc/book.ts';
import { proofToken } from './calc/proof.ts';
import type { Proof } from './calc/prove.ts';
import type { Trace } from './calc/trace.ts';
import { statesFigure, statesWords } from './figures/states.ts';
import { timingFigure, timingWords } from './figures/timing.ts';
import type { SequenceBook } from './schema.ts';
import { statesOf, timingOf } from './sheet/gather.ts';
import {
  faultTable,
  propertyTable,
  searchWords,
  traceTable,
  transitionTable,
  waitTable,
  type Sheet,
} from './sheet/tables.ts';

export const cautions: readonly string[] = [
  'The search shows the chart as modelled, not the wiring and not a hand in the machine: keep hands out and power off while you wire.',
  'Software is no emergency stop: what must stop, stops by contacts that cut the power.',
  'Try new code first with the motors unplugged, from drivers without power; then with the belts off; only then with a load.',
  'A raised load can come down at any moment: never put a hand or a head under it.',
  'What the search holds is arithmetic, not permission: it does not replace local codes, nor people licensed for machine safety.',
];

/** The trace behind a finding that does not hold, by its code. */
const tracesOf = ({ safety, lasting, dwells }: Proof): ReadonlyMap<string, Trace | null> =>
  new Map([
    ['SEQUENCE-010', lasting.unsettled.trace],
    ['SEQUENCE-020', safety['idle-energised']],
    ['SEQUENCE-030', lasting.pushing.trace],
    ['SEQUENCE-035', lasting.pressing.trace],
    ['SEQUENCE-040', safety['travels-low']],
    ['SEQUENCE-050', dwells.find(({ trace }) => trace)?.trace ?? null],
    ['SEQUENCE-060', safety.untold],
    ['SEQUENCE-070', safety.unheld],
    ['SEQUENCE-080', safety.order],
    ['SEQUENCE-082', safety.door],
    ['SEQUENCE-084', safety.service],
    ['SEQUENCE-100', lasting.play.trace],
    ['SEQUENCE-110', lasting.idle.trace],
  ]);

const broken = (sheet: Sheet): readonly Block[] => {
  const { spec, proof } = sheet.get(proofToken, 'sequence');
  const traces = tracesOf(proof);
  return sheet.findings.flatMap((finding): readonly Block[] => {
    const trace = traces.get(finding.code);
    if (finding.verdict !== 'fails' || !trace) return [];
    const name = finding.code.toLowerCase();
    const timing = timingOf(spec, trace, tickOf(sheet).number, `${finding.code}, broken`);
    return [
      { kind: 'heading', text: finding.asks },
      {
        kind: 'figure',
        name: `trace-${name}`,
        svg: timingFigure(timing),
        caption: `The end of a shortest way on which ${finding.code} is broken; dashed where something surprises.`,
        alt: timingWords(timing),
      },
      traceTable(sheet, spec, trace, `way-${name}`, `The same way in words, from the moment in which power comes.`),
    ];
  });
};

const proven = (sheet: Sheet): readonly Block[] => {
  const { spec, proof } = sheet.get(proofToken, 'sequence');
  const drawn = statesOf(spec);
  return [
    ...searchWords(sheet, proof).map((text): Block => ({ kind: 'paragraph', text })),
    propertyTable(sheet.findings),
    {
      kind: 'figure',
      name: 'states',
      svg: statesFigure(drawn),
      caption:
        'The states without states inside, each as near to the start as it can be reached. Heavy: ready. Dashed: latched. A dot: may latch, by itself or by a state around it.',
      alt: statesWords(drawn),
    },
    ...broken(sheet),
    waitTable(sheet, proof),
    faultTable(spec),
    transitionTable(sheet, spec),
  ];
};

export const sheet = (context: SheetContext<SequenceBook>): SheetDocument => {
  if (context.book.sequence === undefined)
    return {
      blocks: [
        { kind: 'paragraph', text: 'The book does not tell its cycle yet: sequence, with its states, at the top.' },
        { kind: 'cautions', texts: cautions },
      ],
    };
  const made = context.attempt(() => proven(context));
  return {
    blocks: [
      ...(made.ok ? made.value : [{ kind: 'paragraph' as const, text: `The cycle was not searched: ${made.why}.` }]),
      { kind: 'findings' },
      { kind: 'working' },
      { kind: 'cautions', texts: cautions },
    ],
  };
};
