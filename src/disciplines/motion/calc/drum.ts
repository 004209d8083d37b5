/** How a line winds on a drum. */
import { formula, OutsideRange } from '../../../kernel/index.ts';
import { drum, layers, line } from './axis-takes.ts';

/**
 * Travel for each radian of the motor with the line in its first layer.
 *
 * r = (D + d)/(2·u)
 * @param drum D, diameter of the drum [m]
 * @param line d, diameter of the line [m]
 * @param reduction u, turns of the motor for one of the drum [-]
 * @returns r [m]
 * @throws OutsideRange when an input lies outside its range
 */
export const drumRadius = formula({
  name: 'drum-radius',
  gives: { symbol: 'r', of: 'length', means: 'travel for each radian of the motor, first layer' },
  takes: {
    drum: { ...drum, slope: 'up', typical: [0.02, 0.05] },
    line: { ...line, slope: 'up', typical: [0.001, 0.002] },
    reduction: {
      symbol: 'u',
      of: 'ratio',
      above: 0,
      otherwise: 1,
      means: 'turns of the motor for one of the drum',
      because: 'the motor turns the drum',
      slope: 'down',
      typical: [1, 3],
    },
  },
  steps: ({ drum: D, line: d, reduction: u }, step) => step('r', '(D + d)/(2*u)', (D + d) / (2 * u), 'length'),
  assumes: ['the load hangs on the middle of the line'],
  source: [{ id: 'drum-capacity-page', at: 'effective winding diameter' }],
  checked: [
    {
      kind: 'published-secondary',
      against: 'winding diameter D + (2i − 1)·d, first layer',
      source: { id: 'drum-capacity-page' },
    },
  ],
  accuracy: 'a braid flattens: within 2 %',
});

/**
 * Turns of line on the drum with the load at the top.
 *
 * Z = H/(π·(D + d)) + z_0
 * @param travel H, hoisting travel [m]
 * @param drum D, diameter of the drum [m]
 * @param line d, diameter of the line [m]
 * @param dead z_0, dead turns that never leave the drum [-]
 * @returns Z [-]
 * @throws OutsideRange when an input lies outside its range
 */
export const turnsOnDrum = formula({
  name: 'turns-on-drum',
  gives: { symbol: 'Z', of: 'count', means: 'turns on the drum with the load at the top' },
  takes: {
    travel: {
      symbol: 'H',
      of: 'length',
      above: 0,
      means: 'hoisting travel',
      because: 'a hoist lifts',
      slope: 'up',
      typical: [0.4, 1.5],
    },
    drum: { ...drum, slope: 'down', typical: [0.02, 0.05] },
    line: { ...line, slope: 'down', typical: [0.001, 0.002] },
    dead: {
      symbol: 'z_0',
      of: 'count',
      from: 0,
      means: 'dead turns that never leave the drum',
      slope: 'up',
      typical: [2, 4],
    },
  },
  steps: ({ travel: H, drum: D, line: d, dead: z }, step) =>
    step('Z', 'H/(pi*(D + d)) + z_0', H / (Math.PI * (D + d)) + z, 'count'),
  assumes: ['one fall of line', 'one layer'],
  source: [{ id: 'materials-handling-drum', at: 'p. 137' }],
  checked: [
    {
      kind: 'published',
      against: 'Z = H/(π·D) + 2 for one fall',
      source: { id: 'materials-handling-drum', at: 'p. 137' },
    },
  ],
  accuracy: 'exact for the geometry',
});

/**
 * Length of line in turns of the first layer.
 *
 * L = Z·π·(D + d)
 * @param turns Z, turns [-]
 * @param drum D, diameter of the drum [m]
 * @param line d, diameter of the line [m]
 * @returns L [m]
 * @throws OutsideRange when an input lies outside its range
 */
export const firstLayerLength = formula({
  name: 'first-layer-length',
  gives: { symbol: 'L', of: 'length', means: 'line in these turns' },
  takes: {
    turns: { symbol: 'Z', of: 'count', from: 0, means: 'turns', slope: 'up', typical: [3, 12] },
    drum: { ...drum, slope: 'up', typical: [0.02, 0.05] },
    line: { ...line, slope: 'up', typical: [0.001, 0.002] },
  },
  steps: ({ turns: Z, drum: D, line: d }, step) => step('L', 'Z*pi*(D + d)', Z * Math.PI * (D + d), 'length'),
  assumes: ['the slope of a turn is small'],
  source: [{ id: 'own-derivation', at: 'circumference' }],
  checked: [{ kind: 'law', against: 'undoes turns-on-drum without dead turns' }],
  accuracy: 'exact for the geometry',
});

/**
 * Turns that lie beside each other in one layer.
 *
 * N = floor(w/p + 0.000001)
 * @param width w, width between the flanges [m]
 * @param lay p, distance from turn to turn [m]
 * @returns N [-]
 * @throws OutsideRange when not one turn fits
 */
export const turnsPerLayer = formula({
  name: 'turns-per-layer',
  gives: { symbol: 'N', of: 'count', means: 'turns in one layer' },
  takes: {
    width: {
      symbol: 'w',
      of: 'length',
      above: 0,
      means: 'width between the flanges',
      because: 'a drum is wide',
      slope: 'up',
      typical: [0.01, 0.03],
    },
    lay: {
      symbol: 'p',
      of: 'length',
      above: 0,
      means: 'distance from turn to turn',
      because: 'turns lie beside each other',
      slope: 'down',
      typical: [0.001, 0.002],
    },
  },
  steps: ({ width: w, lay: p }, step) => {
    // A width that is a whole number of turns must not lose one to rounding.
    const turns = step('N', 'floor(w/p + 0.000001)', Math.floor(w / p + 1e-6), 'count');
    if (turns < 1) throw new OutsideRange('turns-per-layer', 'w', w, 'w ≥ p', 'not one turn fits between the flanges');
    return turns;
  },
  assumes: ['turns lie in order'],
  source: [{ id: 'drum-capacity-page' }],
  checked: [
    { kind: 'published-secondary', against: '12 in of ½ in rope: 24 turns', source: { id: 'drum-capacity-example' } },
  ],
  accuracy: 'exact for turns in order',
});

/**
 * Layers that a length of line makes on a drum.
 *
 * k_0 = (√(D^2 + 4·d·L/(π·N)) - D)/(2·d)
 * k = max(1, ceil(k_0 - 0.000001))
 * @param length L, line on the drum [m]
 * @param turns N, turns in one layer [-]
 * @param drum D, diameter of the drum [m]
 * @param line d, diameter of the line [m]
 * @returns k [-]
 * @throws OutsideRange when an input lies outside its range
 */
export const layersNeeded = formula({
  name: 'layers-needed',
  gives: { symbol: 'k', of: 'count', means: 'layers that the line makes' },
  takes: {
    length: {
      symbol: 'L',
      of: 'length',
      above: 0,
      means: 'line on the drum',
      because: 'a hoist has a line',
      slope: 'up',
      typical: [0.5, 3],
    },
    turns: { symbol: 'N', of: 'count', from: 1, means: 'turns in one layer', slope: 'down', typical: [5, 20] },
    drum: { ...drum, slope: 'down', typical: [0.02, 0.05] },
    line: { ...line, slope: 'down', typical: [0.001, 0.002] },
  },
  steps: ({ length: L, turns: N, drum: D, line: d }, step) => {
    const exact = (-D + Math.sqrt(D ** 2 + (4 * d * L) / (Math.PI * N))) / (2 * d);
    step('k_0', '(sqrt(D^2 + 4*d*L/(pi*N)) - D)/(2*d)', exact, 'count');
    return step('k', 'max(1, ceil(k_0 - 0.000001))', Math.max(1, Math.ceil(exact - 1e-6)), 'count');
  },
  assumes: ['turns lie in order', 'each layer lies a full line diameter above the one below'],
  source: [{ id: 'drum-capacity-page', at: 'total length, solved for the layers' }],
  checked: [{ kind: 'law', against: 'drum-capacity of that many layers is enough, of one less is not' }],
  accuracy: 'exact for turns in order; lines that nest between each other may begin one layer more',
});

/**
 * Travel for each radian of the motor with the line in its uppermost layer.
 *
 * r_top = (D + (2·k - 1)·d)/(2·u)
 * @param drum D, diameter of the drum [m]
 * @param line d, diameter of the line [m]
 * @param layers k, layers on the drum [-]
 * @param reduction u, turns of the motor for one of the drum [-]
 * @returns r_top [m]
 * @throws OutsideRange when an input lies outside its range
 */
export const topRadius = formula({
  name: 'top-layer-radius',
  gives: { symbol: 'r_top', of: 'length', means: 'travel for each radian of the motor, uppermost layer' },
  takes: {
    drum: { ...drum, slope: 'up', typical: [0.02, 0.05] },
    line: { ...line, slope: 'up', typical: [0.001, 0.002] },
    layers: { ...layers, slope: 'up', typical: [1, 3] },
    reduction: {
      symbol: 'u',
      of: 'ratio',
      above: 0,
      otherwise: 1,
      means: 'turns of the motor for one of the drum',
      because: 'the motor turns the drum',
      slope: 'down',
      typical: [1, 3],
    },
  },
  steps: ({ drum: D, line: d, layers: k, reduction: u }, step) =>
    step('r_top', '(D + (2*k - 1)*d)/(2*u)', (D + (2 * k - 1) * d) / (2 * u), 'length'),
  assumes: ['each layer lies a full line diameter above the one below'],
  source: [{ id: 'drum-capacity-page', at: 'effective winding diameter' }],
  checked: [
    { kind: 'published-secondary', against: 'winding diameter D + (2i − 1)·d', source: { id: 'drum-capacity-page' } },
    {
      kind: 'independent',
      against: '6.5, 7.5 and 8.5 mm for 1 mm line on a 12 mm core',
      source: { id: 'independent-computation', at: 'drum' },
    },
  ],
  accuracy: 'upper bound: lines nest between each other',
});
