/** Asks for readings one by one and keeps those that were given. */
import { standsText } from '../app/bench.ts';
import { takeReading, rangeOf, type BenchTarget, type Ends, type ReadingSet, type Taken } from '../engine/bench.ts';
import type { Snapshot } from '../engine/snapshot.ts';
import type { Terminal } from './terminal.ts';
import { wrap } from './text.ts';

/** Readings of one test as they were typed, and what each whole set leaves. */
export interface Asked {
  readonly target: BenchTarget;
  readonly ranges: readonly Ends[];
  readonly typed: readonly Readonly<Record<string, string>>[];
}

export interface Talk {
  readonly asked: readonly Asked[];
  /** Input ended within a set. */
  readonly brokenOff: boolean;
}

/** A word that leaves out the set that is being read. */
const LEAVE_OUT = '-';

/** Asks through all tests. An empty line at the beginning of a set ends a test. */
export const askReadings = async (
  targets: readonly BenchTarget[],
  snapshot: Snapshot,
  lines: AsyncIterator<string>,
  terminal: Terminal,
): Promise<Talk> => {
  const { text, columns, colours, around, isLive } = terminal;
  const say = (words: string): void => terminal.complain(...wrap(text(words), { width: columns, next: '  ' }));
  const next = async (prompt: string): Promise<string | undefined> => {
    around.out.write(`${text(prompt)}\n`);
    const { value, done } = await lines.next();
    return done === true ? undefined : value.trim();
  };

  type Left = { readonly kind: 'none' } | { readonly kind: 'left-out' } | { readonly kind: 'broken-off' };
  type Got = { readonly kind: 'set'; readonly set: ReadingSet } | Left;
  const askSet = async ({ test }: BenchTarget, time: number, typed: Record<string, string>): Promise<Got> => {
    const set: Record<string, Taken> = {};
    for (const [key, reading] of Object.entries(test.readings)) {
      const isFirst = Object.keys(set).length === 0;
      while (set[key] === undefined) {
        const answer = await next(`${time}. ${key}, ${reading.means} (such as ${reading.example}):`);
        if (answer === undefined) return { kind: isFirst ? 'none' : 'broken-off' };
        if (answer === '' && isFirst) return { kind: 'none' };
        if (answer === LEAVE_OUT) return { kind: 'left-out' };
        if (answer === '') {
          say(`${key} is still missing: ${reading.example} would do; ${LEAVE_OUT} leaves this time out.`);
          continue;
        }
        const taken = takeReading(answer, reading);
        if (taken.ok) {
          set[key] = taken.value;
          typed[key] = answer;
        } else say(`${key}: ${taken.problem.what} ${taken.problem.allowed} What was read before is kept.`);
      }
    }
    return { kind: 'set', set };
  };

  const asked: Asked[] = [];
  for (const target of targets) {
    const { test, name } = target;
    terminal.print(
      colours.bold(text(`${test.name} of ${name}: ${standsText(target)}`)),
      `An empty line ends it${isLive ? '' : ', and so does the end of the input'}.`,
    );
    const ranges: Ends[] = [];
    const typed: Record<string, string>[] = [];
    const [, most] = test.times;
    while (ranges.length < most) {
      const words: Record<string, string> = {};
      const got = await askSet(target, ranges.length + 1, words);
      if (got.kind === 'none') break;
      if (got.kind === 'left-out') continue;
      if (got.kind === 'broken-off') {
        asked.push({ target, ranges, typed: [...typed, words] });
        return { asked, brokenOff: true };
      }
      const range = rangeOf(target, got.set, snapshot);
      if (range.ok) {
        ranges.push(range.value);
        typed.push(words);
      } else say(`${range.problem.what} ${range.problem.allowed} This time is left out; what was read before is kept.`);
    }
    asked.push({ target, ranges, typed });
  }
  return { asked, brokenOff: false };
};
