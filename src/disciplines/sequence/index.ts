import type { Discipline } from '../../contract/index.ts';
import { formulas } from './calc/formulas.ts';
import { chartMachine } from './calc/transition.ts';
import { checks } from './checks/all.ts';
import { chartModel } from './facts.ts';
import { facts } from './providers.ts';
import { schema, type SequenceBook } from './schema.ts';
import { cautions, sheet } from './sheet.ts';

const trade: Discipline<SequenceBook> = {
  name: 'sequence',
  number: 7,
  title: 'Sequence',
  asks: 'Can the cycle hang, drive into an end, or leave something energised or unheld, whatever breaks and whatever a player does?',
  schema,
  facts,
  models: [{ token: chartModel, create: chartMachine }],
  checks,
  studies: [],
  formulas,
  sheet,
  cautions,
};

/** The cycle of the machine: its chart, and the search through everything that it can come into. */
export const sequence = trade as unknown as Discipline;
