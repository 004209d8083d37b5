/** What must come to an end, and in what time. */
import { need } from '../../../contract/index.ts';
import { atMost, constant, mustBe, type Lever, type Outcome, type Value } from '../../../kernel/index.ts';
import { counted, cycleOf, tickOf, type SequenceContext } from '../calc/book.ts';
import { ticksOfTime, timeOfTicks, timeOut } from '../calc/formulas.ts';
import type { Dwell, Lasted } from '../calc/prove.ts';
import type { Lasting } from '../calc/rules.ts';
import { shortWords } from '../calc/words.ts';
import { ofTheCycle, searched, timeOf, transitionAt, whole, type Searched, type SequenceCheck } from './common.ts';

interface Words {
  readonly code: string;
  readonly asks: string;
  readonly rule: Lasting;
  readonly key: 'settles-within' | 'longest-play' | 'energised-idle' | 'against-an-end';
  readonly means: string;
  /** About the longest run. */
  readonly says: (lasted: Lasted, demand: string, limit: string) => string;
  /** About a run without an end; `how` is its trace. */
  readonly forever: (lasted: Lasted, how: string) => string;
}

/** A time in words; levers for a cycle that can hang are those of its missing time-outs. */
const lasts = ({ code, asks, rule, key, means, says, forever }: Words): SequenceCheck => ({
  code,
  asks,
  subjects: ofTheCycle,
  run: (context) => {
    const limit = need(cycleOf(context), key)[key];
    const found = searched(context);
    const lasted = found.proof.lasting[rule];
    // A ring that was seen is there, however little of the rest was.
    if (lasted.ticks === null)
      return mustBe(false, {
        says: () => forever(lasted, shortWords(found.spec, lasted.trace!)),
        levers: missing(context, found),
        beside: { limit },
      });
    whole(found);
    return atMost(timeOf(context, lasted, means)!, limit, {
      says: ({ demand, limit: shown }) => says(lasted, demand, shown),
    });
  },
});

export const settles = lasts({
  code: 'SEQUENCE-010',
  asks: 'Is it ready or safely latched again within its time, from everywhere, whatever is broken by then?',
  rule: 'unsettled',
  key: 'settles-within',
  means: 'longest way to ready or latched in the search, no further fault setting in',
  says: (_, demand, limit) =>
    `From anywhere it is ready or latched again after ${demand} at most, if nothing more breaks; ${limit} is allowed.`,
  forever: (_, how) => `It can hang: ${how}.`,
});

export const plays = lasts({
  code: 'SEQUENCE-100',
  asks: 'Does every play end in its time?',
  rule: 'play',
  key: 'longest-play',
  means: 'longest play of the search, no further fault setting in',
  says: (_, demand, limit) => `The longest play takes ${demand}; ${limit} is allowed.`,
  forever: (_, how) => `A play can go on for ever: ${how}.`,
});

export const idles = lasts({
  code: 'SEQUENCE-110',
  asks: 'Is nothing energised for long while nobody plays?',
  rule: 'idle',
  key: 'energised-idle',
  means: 'longest time in the search with a drive or servo on and no play, no further fault setting in',
  says: (_, demand, limit) => `A drive or servo is on for ${demand} at most while nobody plays; ${limit} is allowed.`,
  forever: (_, how) => `A drive or servo can stay on while nobody plays: ${how}.`,
});

export const presses = lasts({
  code: 'SEQUENCE-035',
  asks: 'Is an axis whose switch is dead driven against its end only for a bounded time?',
  rule: 'pressing',
  key: 'against-an-end',
  means: 'longest time against an end of the search',
  says: ({ axis }, demand, limit) =>
    `Against an end that its switch does not tell, ${axis ?? 'an axis'} is driven for ${demand} at most; ${limit} is allowed.`,
  forever: ({ axis }, how) => `${axis} can be driven against its end for ever: ${how}.`,
});

/** Believed for the debounce and one tick, a limit must stop what runs into it. */
const believing = (context: SequenceContext): Value => {
  const tick = tickOf(context);
  const { debounce } = cycleOf(context);
  const late = debounce === undefined ? counted(0, 'no debounce stated') : ticksOfTime.work({ time: debounce, tick });
  return timeOfTicks.work({
    ticks: counted(late.number + 1, 'debounce in ticks, rounded up, and one tick more'),
    tick,
  });
};

export const obeysLimits: SequenceCheck = {
  code: 'SEQUENCE-030',
  asks: 'Is no axis driven on toward a limit that is believed pressed?',
  subjects: ofTheCycle,
  run: (context): Outcome => {
    const found = searched(context);
    const lasted = found.proof.lasting.pushing;
    const allowed = believing(context);
    if (lasted.ticks === null)
      return mustBe(false, {
        says: () =>
          `${lasted.axis} is driven on toward a limit that is pressed: ${shortWords(found.spec, lasted.trace!)}.`,
        beside: { allowed },
      });
    whole(found);
    return atMost(timeOf(context, lasted, 'longest push toward a limit that is believed pressed')!, allowed, {
      says: ({ demand, limit, verdict }) =>
        verdict === 'fails'
          ? `${lasted.axis} is driven on toward a pressed limit for ${demand}: ${shortWords(found.spec, lasted.trace!)}.`
          : `No axis is driven on toward a pressed limit for longer than ${demand}; debounce and one tick are ${limit}.`,
    });
  },
};

const MARGIN = 0.25;
const TENTHS = 10;

const ABOUT_A_MINUTE = constant(60, 'time', 'what a person who steers is commonly given');

/**
 * The time-out that a wait without a way out lacks: the slowest healthy case and the margin.
 * A wait that only a person ends has no slowest case, and one that no healthy machine comes into has none either.
 */
export const missingTimeOut = (context: SequenceContext, { healthy }: Dwell): Value =>
  healthy === null || healthy === 0
    ? ABOUT_A_MINUTE
    : timeOut.work({
        healthy: timeOf(context, { ticks: healthy }, 'slowest healthy case of the search')!,
        margin: cycleOf(context)['timeout-margin'] ?? MARGIN,
      });

export const timeText = (seconds: number): string => `${Math.ceil(seconds * TENTHS - 1e-6) / TENTHS} s`;

/** Waits that never end. */
export const endless = ({ proof }: Searched): readonly Dwell[] => proof.dwells.filter(({ ticks }) => ticks === null);

const missing = (context: SequenceContext, found: Searched): readonly Lever[] => {
  const { marks } = found.spec;
  // Where a play is lost is where a machine goes that is broken.
  const broken = marks.findIndex(({ is, play }) => is === 'latched' && play === 'lost');
  const latched = broken >= 0 ? broken : marks.findIndex(({ is }) => is === 'latched');
  if (latched < 0) return [];
  const target = found.spec.chart.states[latched]!.id;
  const edits = endless(found).map((dwell) =>
    transitionAt(
      context,
      dwell.state,
      `{ after: ${timeText(missingTimeOut(context, dwell).number)}, target: ${target} }`,
    ),
  );
  return edits.length > 0
    ? [{ set: edits, means: 'a time-out in each of these states, longer than their slowest healthy case' }]
    : [];
};

export const waitsEnd: SequenceCheck = {
  code: 'SEQUENCE-050',
  asks: 'Has every wait a way out?',
  subjects: ofTheCycle,
  run: (context): Outcome => {
    const found = searched(context);
    const [first, ...more] = endless(found);
    if (!first) {
      whole(found);
      return mustBe(true, { says: () => 'Every wait has a way out, whatever is broken.' });
    }
    const names = [first, ...more].map(({ state }) => state).join(', ');
    const wait = missingTimeOut(context, first);
    return mustBe(false, {
      says: () => `No way out of ${names}: ${shortWords(found.spec, first.trace!)}.`,
      levers: missing(context, found),
      beside: { [`time-out that ${first.state} lacks`]: wait },
    });
  },
};
