import type { Discipline } from '../../contract/index.ts';
import { formulas } from './calc/formulas.ts';
import { checks } from './checks/all.ts';
import { controllerFills } from './data/fills.ts';
import { providers } from './providers.ts';
import { schema, type ControllerBook } from './schema.ts';
import { cautions, makes, sheet } from './sheet.ts';

const trade: Discipline<ControllerBook> = {
  name: 'controller',
  number: 6,
  title: 'Controller',
  asks: 'Which signal sits on which pin and can it do it; do the steps come in time; does a broken wire read as stop?',
  schema,
  fills: controllerFills,
  facts: providers,
  checks,
  studies: [],
  formulas,
  sheet,
  makes,
  cautions,
};

/** The board: pins, levels, currents, times. */
export const controller = trade as unknown as Discipline;
