import type { Discipline } from '../../contract/index.ts';
import { bench, readingChecks } from './bench.ts';
import { branchProviders } from './calc/branch-facts.ts';
import { driveProviders } from './calc/drive-facts.ts';
import { formulas } from './calc/formulas.ts';
import { layoutProviders } from './calc/layout.ts';
import { railProviders } from './calc/rail-facts.ts';
import { regenerationProviders } from './calc/regeneration-facts.ts';
import { warmProviders } from './calc/warm-facts.ts';
import { checks } from './checks/all.ts';
import { supplyTradeFills } from './data/fills.ts';
import { schema, type SupplyBook } from './schema.ts';
import { cautions, sheet } from './sheet.ts';

const trade: Discipline<SupplyBook> = {
  name: 'supply',
  number: 4,
  title: 'Supply',
  asks: 'Do the rails bear every mode, how warm does everything get, does each fuse suit its wire and its supply, and what does standing by cost?',
  schema,
  fills: supplyTradeFills,
  facts: [
    ...layoutProviders,
    ...driveProviders,
    ...railProviders,
    ...warmProviders,
    ...branchProviders,
    ...regenerationProviders,
  ],
  checks: [...checks, ...readingChecks],
  bench,
  studies: [],
  formulas,
  sheet,
  cautions,
};

/** Rails, fuses, heat and energy. */
export const supply = trade as unknown as Discipline;
