import type { Discipline } from '../../contract/index.ts';
import { bench, readingChecks } from './bench.ts';
import { axisFacts } from './calc/axis-facts.ts';
import { motorProviders } from './calc/motor-facts.ts';
import { axisFormulas } from './calc/of-axes.ts';
import { motorFormulas } from './calc/of-motors.ts';
import { axisChecks } from './checks/of-axes.ts';
import { leverProvider } from './checks/motors.ts';
import { motorChecks } from './checks/of-motors.ts';
import { axisFills } from './data/axis-fills.ts';
import { motorFills } from './data/motor-fills.ts';
import { schema, type MotionBook } from './schema.ts';
import { cautions, makes, sheet } from './sheet.ts';
import { motorStudies } from './studies/of-motors.ts';

const trade: Discipline<MotionBook> = {
  name: 'motion',
  number: 1,
  title: 'Motion',
  asks: 'Can these motors, on this supply and cable, move these masses this fast without losing steps?',
  schema,
  fills: (book) => [...motorFills(book), ...axisFills(book)],
  facts: [...motorProviders, ...axisFacts, leverProvider],
  checks: [...motorChecks, ...axisChecks, ...readingChecks],
  bench,
  studies: motorStudies,
  formulas: [...motorFormulas, ...axisFormulas],
  sheet,
  makes,
  cautions,
};

/** Motors, drives, axes, belts, hoists and screws. */
export const motion = trade as unknown as Discipline;
