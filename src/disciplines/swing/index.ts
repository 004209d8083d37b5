import type { Discipline } from '../../contract/index.ts';
import { bench, readingChecks } from './bench.ts';
import { formulas } from './calc/all.ts';
import { liveLoad } from './calc/live.ts';
import { checks } from './checks/all.ts';
import { hangingModel } from './facts.ts';
import { facts } from './providers.ts';
import { schema, type SwingBook } from './schema.ts';
import { cautions, sheet } from './sheet.ts';
import { cures } from './studies/cures.ts';
import { misses, playTask } from './studies/misses.ts';

const trade: Discipline<SwingBook> = {
  name: 'swing',
  number: 2,
  title: 'Swing',
  asks: 'How far does the hanging load swing and for how long, and does it still find its dock?',
  schema,
  facts,
  models: [{ token: hangingModel, create: liveLoad }],
  tasks: [playTask],
  checks: [...checks, ...readingChecks],
  bench,
  studies: [cures, misses],
  formulas,
  sheet,
  cautions,
};

/** Loads that hang on a line: how they swing, and whether they dock. */
export const swing = trade as unknown as Discipline;
