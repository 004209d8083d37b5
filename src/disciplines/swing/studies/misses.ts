/** Plays simulated until the share that misses is known well enough: a fixed number, the same on any number of workers. */
import type { Job, Study, Task } from '../../../contract/index.ts';
import { exactInterval, type Interval } from '../../../kernel/binomial.ts';
import { seeded } from '../../../kernel/index.ts';
import { gathered, tallyOf, type PlayPlan, type Tally } from '../calc/plays.ts';

/** Plays of one study, and of one job of it. */
export const PLAYS = 1000;
const BLOCK = 100;

export interface Misses {
  readonly tally: Tally;
  /** Share of plays that missed, and its exact interval at 95 %. */
  readonly share: number;
  readonly interval: Interval;
  /** Plays that the study will have when it is through. */
  readonly of: number;
}

interface Block {
  readonly plan: PlayPlan;
  readonly count: number;
}

export const playTask: Task<Block, Tally> = {
  name: 'swing.plays',
  run: ({ plan, count }, random) => tallyOf(plan, count, random),
};

/** The study as jobs; the seed belongs to the job, so that it does not matter who runs it. */
export const jobsOf = (plan: PlayPlan, plays = PLAYS): readonly (Job & { readonly args: Block })[] =>
  Array.from({ length: Math.ceil(plays / BLOCK) }, (_, i) => ({
    task: playTask.name,
    args: { plan, count: Math.min(BLOCK, plays - i * BLOCK) },
    seed: i + 1,
  }));

/** What the tallies of jobs say together. */
export const missesOf = (tallies: readonly Tally[], of: number): Misses => {
  const tally = gathered(tallies);
  return {
    tally,
    share: tally.misses / tally.plays,
    interval: exactInterval(tally.misses, tally.plays),
    of,
  };
};

export interface MissesArguments {
  readonly plan: PlayPlan;
  readonly plays?: number;
}

function* run(_asker: unknown, { plan, plays = PLAYS }: MissesArguments): Generator<Misses, Misses, void> {
  const tallies: Tally[] = [];
  for (const { args, seed } of jobsOf(plan, plays)) {
    tallies.push(playTask.run(args, seeded(seed)));
    yield missesOf(tallies, plays);
  }
  return missesOf(tallies, plays);
}

export const misses: Study<MissesArguments, Misses> = { name: 'swing.misses', run };
