/** What a trade makes its sheet from, and the stamp over what went into it. */
import type { Asker, Discipline, MadeFile, SheetContext, SheetDocument } from '../contract/index.ts';
import {
  isNoNumber,
  NotStated,
  slopes,
  StillRunning,
  type Finding,
  type NoNumber,
  type Value,
} from '../kernel/index.ts';
import { finish, forStudy } from './asking.ts';
import { extremes } from './scenarios.ts';
import { factsHash } from './stamp.ts';
import { shown, type UnitChoice } from './units.ts';
import type { Tools } from './verdict.ts';

export interface MadeSheet {
  readonly discipline: Discipline;
  readonly document: SheetDocument;
  readonly files: readonly MadeFile[];
  /** Hash over the facts that this sheet used. */
  readonly factsHash: string;
  /** Studies that have not been run; where they belong the sheet says so. */
  readonly awaits: number;
}

export interface SheetParts {
  readonly discipline: Discipline;
  /** Those of the sheet, with everything that was read for each. */
  readonly findings: readonly { readonly finding: Finding; readonly reads: readonly string[] }[];
  readonly asker: Asker;
  readonly units: UnitChoice;
  readonly tools: Tools;
  /** Whether the studies of the sheet are run, which takes longer than a frame, or left for later. */
  readonly studies: 'run' | 'later';
}

const whyNot = (error: NoNumber, { meansOf }: Tools): string =>
  error instanceof NotStated
    ? `not stated yet: ${error.paths.map((path) => `${meansOf(path)} (${path})`).join('; ')}`
    : error.message;

export const makeSheet = ({ discipline, findings, asker, units, tools, studies }: SheetParts): MadeSheet => {
  const { evaluator } = tools;
  // A study reads other books than this one, so that its result stands for what it read.
  const besides: string[] = [];
  let awaits = 0;
  const context: SheetContext<never> = {
    ...evaluator.context,
    findings: findings.map(({ finding }) => finding),
    show: (value: Value) => shown(units, value.number, value.of),
    study: (study, args) => {
      if (studies === 'later') {
        awaits++;
        throw new StillRunning(study.name);
      }
      const result = finish(study.run(forStudy(asker), args));
      besides.push(JSON.stringify([study.name, args, result]));
      return result;
    },
    attempt: (run) => {
      try {
        return { ok: true, value: run() };
      } catch (error) {
        if (!isNoNumber(error)) throw error;
        return { ok: false, why: whyNot(error, tools) };
      }
    },
    ends: (run) =>
      extremes((scenario) => {
        const { value, paths } = evaluator.trace(scenario, run);
        return { number: value.number, slopes: slopes(value), axes: evaluator.rangesOf(paths) };
      }),
  };
  const { value, paths } = evaluator.trace(new Map(), () => ({
    document: discipline.sheet(context),
    files: discipline.makes?.(context) ?? [],
  }));
  for (const { finding } of findings)
    if (finding.accepted) besides.push(JSON.stringify([finding.key, finding.accepted]));
  const uses = [...paths, ...findings.flatMap(({ reads }) => reads)];
  return { discipline, ...value, awaits, factsHash: factsHash(uses, evaluator.snapshot, besides) };
};
