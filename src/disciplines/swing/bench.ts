/** What of a hanging load can be measured at the bench. */
import { benchChecks, counted, stopwatch, tape, type BenchTest } from '../../contract/index.ts';
import type { Formula } from '../../kernel/index.ts';
import { halvingFromFading, hookDepthFromPeriod } from './calc/bench.ts';
import type { SwingBook } from './schema.ts';

const shown = (formula: unknown): Formula => formula as Formula;

const RAISED = 'A raised load falls: keep heads and hands from under it, and faces out of its way while it swings.';
const DRIVES = 'Keep hands, hair and cords away from line, drum and carriage while the drives are on.';
const STILL = 'Carriage drives off while you reach in; somebody else keeps a hand on the stop button.';

/** The width of a swing is read in passing, against a strip of tape. */
const inPassing = (means: string, example: string) => ({
  ...tape({ means, example }),
  instrument: 'tape measure, in passing',
  share: 0,
  rest: 0.005,
});

export const bench: readonly BenchTest[] = [
  {
    name: 'swing-period',
    fact: 'axes.*.dock.below-pivot',
    variants: ['hoist'],
    of: 'length',
    title: 'depth of the hook below the pivot, by the length of its pendulum,',
    readings: {
      time: stopwatch({ means: 'time of all swings', example: '37.6 s' }),
      swings: counted({ means: 'full swings there and back', example: '20' }, { least: 5 }),
      down: tape({ means: 'line that is let down from where it docks', example: '640 mm' }),
    },
    gives: {
      by: 'formula',
      formula: shown(hookDepthFromPeriod),
      book: { below: 'hanging.centre-of-mass-below-hook' },
      open: {
        angle: { low: 0, high: 0.17, means: 'swing, at most 10°' },
        size: { low: 0, high: 0.06, means: 'radius of gyration of the claw' },
      },
    },
    times: [3, 10],
    procedure: [
      'Empty claw. Let it down nearly all the way, so that its own size counts little; measure how far.',
      'Pull it aside by at most a tenth of the line and let go.',
      'Start the watch as it passes the plumb line, saying nought; stop it at the twentieth pass the same way.',
    ],
    cautions: [RAISED, STILL, DRIVES],
    shows: ['hanging.centre-of-mass-below-hook'],
  },
  {
    name: 'swing-fading',
    fact: 'hanging.halves-after',
    of: 'count',
    title: 'swings after which half is left',
    readings: {
      swings: counted({ means: 'full swings there and back between the two', example: '9' }, { rest: 1 }),
      first: inPassing('width of the swing at the beginning, end to end', '240 mm'),
      last: inPassing('width of the swing at the end, end to end', '120 mm'),
    },
    gives: { by: 'formula', formula: shown(halvingFromFading) },
    times: [3, 10],
    procedure: [
      'Let the claw down as far as it goes, with a strip of tape measure behind it.',
      'Pull it aside by a hand’s breadth and let go. Read the width of the second swing, from end to end.',
      'Count full swings until about half is left, and read the width again.',
    ],
    cautions: [RAISED, STILL, DRIVES],
  },
  {
    name: 'dock-trials',
    fact: 'axes.*.dock.caught',
    variants: ['hoist'],
    of: 'ratio',
    title: 'share of trial releases that dock',
    readings: {
      releases: counted({ means: 'times that it was let go', example: '20' }, { least: 5, most: 10_000 }),
      docked: counted({ means: 'times that it docked', example: '19' }, { least: 0, most: 10_000 }),
    },
    gives: { by: 'trials', hits: 'docked', trials: 'releases', confidence: 0.95 },
    times: [1, 1],
    procedure: [
      'Let the claw down to the heap, hold it out of plumb by the most that lift-off-offset says, and let go as the hoist starts.',
      'Go round: to the front, back, left and right in turn. Count what docks, and count every release.',
      'Decide how many before you begin, and do not stop sooner. All trials are one reading: 20 leave much open, 300 without a miss show 1 %.',
    ],
    cautions: [
      RAISED,
      DRIVES,
      'Let go and draw the hand back before the hoist starts; never reach after a claw that rises.',
    ],
    shows: ['hanging.lift-off-offset'],
  },
];

export const readingChecks = benchChecks<SwingBook>(bench, { above: 'SWING-910', below: 'SWING-911' });
