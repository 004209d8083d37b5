import { mustBe } from '../../../kernel/index.ts';
import { ofTheCycle, searched, whole, type SequenceCheck } from './common.ts';
import { idles, obeysLimits, plays, presses, settles, waitsEnd } from './lasting.ts';
import { doorsShut, heldInService, holdsUp, homesInOrder, standsDark, tells, travelsUp } from './must-never.ts';

const alive: SequenceCheck = {
  code: 'SEQUENCE-090',
  asks: 'Can every state be entered and every transition be taken?',
  subjects: ofTheCycle,
  run: (context) => {
    const proof = whole(searched(context));
    const dead = [...proof.deadStates, ...proof.deadTransitions];
    return mustBe(dead.length === 0, {
      says: () =>
        dead.length === 0
          ? 'Every state can be entered, and every transition be taken.'
          : `Never used: ${dead.join('; ')}.`,
    });
  },
};

export const checks: readonly SequenceCheck[] = [
  settles,
  standsDark,
  obeysLimits,
  presses,
  travelsUp,
  waitsEnd,
  tells,
  holdsUp,
  homesInOrder,
  doorsShut,
  heldInService,
  alive,
  plays,
  idles,
];
