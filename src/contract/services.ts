/** What the engine needs from outside; handed in, so that it runs the same in Node, in a page and in a worker. */

/** One piece of a long calculation: pure, named, with plain arguments and a seed of its own. */
export interface Job {
  readonly task: string;
  readonly args: unknown;
  readonly seed: number;
}

/** Runs a job anywhere; a trade registers it under a name. */
export interface Task<Arguments = never, Result = unknown> {
  readonly name: string;
  readonly run: (args: Arguments, random: () => number) => Result;
}

export interface Pool {
  /** Results in the order of the jobs, the same for any number of workers. */
  readonly run: (jobs: readonly Job[]) => Promise<readonly unknown[]>;
}

export interface Services {
  /** ISO date, for acceptances that run out. */
  readonly today?: string;
  /** True once nobody waits for the answer any more; studies are dropped at their next step. */
  readonly cancelled?: () => boolean;
  readonly pool?: Pool;
  /** Takes the slopes that formulas declare as they are; otherwise whatever is made in a new way is probed for them. */
  readonly trusting?: boolean;
}
