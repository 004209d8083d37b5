/** Inputs that several formulas of axes share, with one symbol each. */

export const STANDARD_GRAVITY = 9.80665;

/** Steel as the usual selection formulas take it: its modulus over its density gives their numbers. */
export const STEEL_MODULUS = 206e9;

export const STEEL_DENSITY = 7850;

export const gravity = {
  symbol: 'g',
  of: 'acceleration',
  above: 0,
  otherwise: STANDARD_GRAVITY,
  means: 'gravity',
  because: 'nothing weighs anything otherwise',
  typical: [9.78, 9.83],
} as const;

export const radius = {
  symbol: 'r',
  of: 'length',
  above: 0,
  means: 'travel for each radian of the motor',
  because: 'the motor moves the axis',
} as const;

export const share = {
  symbol: 's',
  of: 'ratio',
  above: 0,
  to: 1,
  means: 'share of the axis that this motor moves',
  because: 'a motor moves part or all of its axis',
} as const;

export const efficiency = {
  symbol: 'η',
  of: 'ratio',
  above: 0,
  to: 1,
  means: 'efficiency between motor and load',
  because: 'friction takes a part of the work, never gives any',
} as const;

export const distance = {
  symbol: 'D',
  of: 'length',
  above: 0,
  means: 'length of the travel',
  because: 'a travel has a length',
} as const;

export const acceleration = {
  symbol: 'a',
  of: 'acceleration',
  above: 0,
  means: 'acceleration',
  because: 'nothing starts without it',
} as const;

export const jerk = {
  symbol: 'j',
  of: 'jerk',
  above: 0,
  means: 'jerk',
  because: 'a jerk of nothing never starts',
} as const;

export const teeth = {
  symbol: 'z',
  of: 'count',
  from: 6,
  means: 'teeth of the pulley',
  because: 'fewer cannot be made',
} as const;

export const pitch = {
  symbol: 'p',
  of: 'length',
  above: 0,
  means: 'pitch of the belt',
  because: 'a belt has teeth',
} as const;

export const axial = {
  symbol: 'EA',
  of: 'axial-stiffness',
  above: 0,
  means: 'stiffness of a length of belt',
  because: 'every belt stretches',
} as const;

export const force = { symbol: 'F', of: 'force', from: 0, means: 'force that moves the carriage' } as const;

export const stiffness = {
  symbol: 'k',
  of: 'stiffness',
  above: 0,
  means: 'stiffness of the drive',
  because: 'every drive gives',
} as const;

export const drum = {
  symbol: 'D',
  of: 'length',
  above: 0,
  means: 'diameter of the drum',
  because: 'a line winds on something',
} as const;

export const line = {
  symbol: 'd',
  of: 'length',
  above: 0,
  means: 'diameter of the line',
  because: 'every line is thick',
} as const;

export const layers = {
  symbol: 'k',
  of: 'count',
  from: 1,
  means: 'layers on the drum',
  because: 'there is at least one',
} as const;

export const lead = {
  symbol: 'p_h',
  of: 'length',
  above: 0,
  means: 'lead of the screw',
  because: 'a screw without lead moves nothing',
} as const;

export const root = {
  symbol: 'd',
  of: 'length',
  above: 0,
  means: 'root diameter of the screw',
  because: 'a screw has a core',
} as const;

export const length = {
  symbol: 'L',
  of: 'length',
  above: 0,
  means: 'length between the supports',
  because: 'a screw has a length',
} as const;

export const mean = {
  symbol: 'd_m',
  of: 'length',
  above: 0,
  means: 'mean diameter of the thread',
  because: 'a screw is thick',
} as const;

export const friction = {
  symbol: 'μ',
  of: 'ratio',
  from: 0,
  below: 1,
  means: 'friction in the thread',
  because: 'more than one binds',
} as const;

export const flank = {
  symbol: 'α',
  of: 'angle',
  from: 0,
  to: Math.PI / 4,
  means: 'half of the angle of the thread',
  because: 'steeper flanks are no drive threads',
} as const;
