/** The bench on the desk: what can be measured, its forms, and what readings would do to the book. */
import { editsOf, instrumentText, methodText, outcomesOf, outcomeText, standsText } from '../../app/bench.ts';
import type { House, Machine } from '../../app/index.ts';
import { benchTargets, rangeOf, takeReading, type BenchTarget, type Ends, type Taken } from '../../engine/bench.ts';
import { dimensionInfo } from '../../kernel/index.ts';
import type { BenchCard, BenchPage, BenchResult } from '../desk/engine.ts';
import { trialOf } from './trial.ts';

const cardOf = (target: BenchTarget): BenchCard => ({
  name: target.name,
  test: target.test.name,
  what: target.test.title,
  stands: standsText(target),
  path: target.path,
});

export const benchCards = (machine: Machine, house: House): readonly BenchCard[] =>
  benchTargets(house.disciplines, machine.snapshot).map(cardOf);

const targetOf = (machine: Machine, house: House, name: string, test: string): BenchTarget | undefined =>
  benchTargets(house.disciplines, machine.snapshot).find((one) => one.name === name && one.test.name === test);

export const benchPage = (machine: Machine, house: House, name: string, test: string): BenchPage | undefined => {
  const target = targetOf(machine, house, name, test);
  if (!target) return undefined;
  const { readings, procedure, cautions, times } = target.test;
  return {
    ...cardOf(target),
    instrument: [...new Set(Object.values(readings).map(({ instrument }) => instrument))].join(', '),
    procedure: [...procedure, ...methodText(target)],
    cautions,
    times,
    asks: Object.entries(readings).map(([key, reading]) => ({
      name: key,
      means: reading.means,
      unit: dimensionInfo(reading.of).likely[0] ?? '',
      example: reading.example,
      instrument: instrumentText(reading),
    })),
  };
};

type Problem = BenchResult['problems'][number];

/** Texts by set: what was read together, in the order of the readings. Sets in which nothing stands are left out. */
const setsOf = ({ test }: BenchTarget, readings: Readonly<Record<string, readonly string[]>>) => {
  const given = (key: string): readonly string[] => (Object.hasOwn(readings, key) ? readings[key]! : []);
  const keys = Object.keys(test.readings);
  const many = Math.max(0, ...keys.map((key) => given(key).length));
  return Array.from({ length: many }, (_, time) => ({
    time,
    texts: new Map(keys.map((key) => [key, (given(key)[time] ?? '').trim()] as const)),
  })).filter(({ texts }) => [...texts.values()].some((text) => text !== ''));
};

const rangesOf = (
  target: BenchTarget,
  readings: Readonly<Record<string, readonly string[]>>,
  { snapshot }: Machine,
): { readonly ranges: readonly Ends[]; readonly problems: readonly Problem[] } => {
  const problems: Problem[] = [];
  const ranges: Ends[] = [];
  const sets = setsOf(target, readings);
  const [, most] = target.test.times;
  if (sets.length > most)
    problems.push({
      name: '',
      says: most === 1 ? 'Once is enough here: count all trials as one reading.' : `At most ${most} times.`,
    });
  for (const { time, texts } of sets) {
    const set: Record<string, Taken> = {};
    for (const [name, text] of texts) {
      const reading = target.test.readings[name]!;
      const taken = text === '' ? undefined : takeReading(text, reading);
      if (taken?.ok) set[name] = taken.value;
      else
        problems.push({
          name,
          time,
          says: taken
            ? `${taken.problem.what} ${taken.problem.allowed}`
            : `Still missing: ${reading.means}, such as ${reading.example}.`,
        });
    }
    if (Object.keys(set).length < texts.size) continue;
    const range = rangeOf(target, set, snapshot);
    if (range.ok) ranges.push(range.value);
    else problems.push({ name: '', time, says: `${range.problem.what} ${range.problem.allowed}` });
  }
  return { ranges, problems };
};

/** What the readings come to. While something is wrong with one of them nothing is tried. */
export const benchResult = (
  machine: Machine,
  house: House,
  { name, test }: { readonly name: string; readonly test: string },
  readings: Readonly<Record<string, readonly string[]>>,
): BenchResult | undefined => {
  const target = targetOf(machine, house, name, test);
  if (!target) return undefined;
  const { ranges, problems } = rangesOf(target, readings, machine);
  if (problems.length > 0) return { problems, says: [] };
  const outcomes = outcomesOf([{ target, ranges }], machine, house, false);
  if (outcomes.length === 0) return { problems: [], says: ['No readings yet: nothing would change.'] };
  const trial = trialOf(machine, house, editsOf(outcomes, machine));
  return {
    problems: trial.problem === undefined ? [] : [{ name: '', says: trial.problem }],
    says: outcomes.map((one) => outcomeText(one, 'a new value for it in the text')),
    ...(Object.keys(trial.files).length > 0 ? { trial } : {}),
  };
};
