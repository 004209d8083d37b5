/** Inputs that several formulas share. */
import type { Take } from '../../../kernel/index.ts';

export const GRAVITY = 9.80665;

export const gravity = {
  symbol: 'g',
  of: 'acceleration',
  means: 'gravity',
  above: 0,
  otherwise: GRAVITY,
  because: 'nothing else pulls the load back',
  typical: [9.7, 9.9],
} as const satisfies Take;

export const length = {
  symbol: 'L',
  of: 'length',
  means: 'from the pivot to the centre of mass of claw and load',
  above: 0,
  because: 'a pendulum has a length',
  typical: [0.2, 0.95],
} as const satisfies Take;

export const fading = {
  symbol: 'τ',
  of: 'time',
  means: 'time in which the swing fades to 37 %',
  above: 0,
  because: 'every swing fades',
  typical: [8, 60],
} as const satisfies Take;

export const travelSpeed = {
  symbol: 'v',
  of: 'speed',
  means: 'speed that the pivot reaches',
  above: 0,
  because: 'a pivot that never moves starts no swing',
  typical: [0.15, 0.3],
} as const satisfies Take;

export const travelAcceleration = {
  symbol: 'a',
  of: 'acceleration',
  means: 'acceleration that the pivot reaches',
  above: 0,
  because: 'a pivot that never moves starts no swing',
  typical: [0.4, 1.5],
} as const satisfies Take;

/** Time in which the acceleration comes and goes; nothing where it jumps. */
export const easing = {
  symbol: 't_j',
  of: 'time',
  means: 'time in which the acceleration comes up',
  from: 0,
  otherwise: 0,
  because: 'an acceleration that jumps comes up in no time',
  typical: [0, 0.15],
} as const satisfies Take;

export const damping = {
  symbol: 'ζ',
  of: 'ratio',
  means: 'share of critical damping',
  from: 0,
  below: 1,
  because: 'a load on a line swings to and fro',
  typical: [0.003, 0.03],
} as const satisfies Take;

export const hoistSpeed = {
  symbol: 'v',
  of: 'speed',
  means: 'hoisting speed',
  above: 0,
  because: 'a hoist that stands never gets there',
  typical: [0.08, 0.2],
} as const satisfies Take;

export const hoistAcceleration = {
  symbol: 'a',
  of: 'acceleration',
  means: 'acceleration of the hoist',
  above: 0,
  because: 'nothing starts without it',
  typical: [0.3, 1],
} as const satisfies Take;

/** Hoists faster than this share of √(g·L) carry the swing along instead of letting it change slowly. */
export const SLOW = 0.3;
