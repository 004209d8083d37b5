/** Quantities: text with a unit at the border, plain SI numbers inside. */
export { dimensionInfo, dimensions } from './dimensions.ts';
export type { Dimension, DimensionInfo, Vector } from './dimensions.ts';
export { isProblem, unitNamed } from './parse.ts';
export { show, showNumber, showRange, siUnit, toUnit } from './print.ts';
export type { ShowOptions } from './print.ts';
export type { Problem } from './problems.ts';
export { readQuantity } from './range.ts';
export type { Reading } from './range.ts';
export { awgArea, awgNumber } from './units.ts';
export type { Unit } from './units.ts';
