import type { CheckCase } from '../../../contract/index.ts';
import { axisCases } from './cases/axes.ts';
import { benchCases } from './cases/bench.ts';
import { motorCases } from './cases/motors.ts';

export { base } from './base.ts';
export const cases: readonly CheckCase[] = [...motorCases, ...axisCases, ...benchCases];
