/** The room that a line wants on a drum and on its way to it. */
import { formula } from '../../../kernel/index.ts';
import { drum, layers, line } from './axis-takes.ts';

/**
 * Length of line that a drum holds.
 *
 * L = π·N·k·(D + k·d)
 * @param turns N, turns in one layer [-]
 * @param layers k, layers on the drum [-]
 * @param drum D, diameter of the drum [m]
 * @param line d, diameter of the line [m]
 * @returns L [m]
 * @throws OutsideRange when an input lies outside its range
 */
export const drumCapacity = formula({
  name: 'drum-capacity',
  gives: { symbol: 'L', of: 'length', means: 'line on the drum' },
  takes: {
    turns: { symbol: 'N', of: 'count', from: 1, means: 'turns in one layer', slope: 'up', typical: [10, 24] },
    layers: { ...layers, slope: 'up', typical: [1, 10] },
    drum: { ...drum, slope: 'up', typical: [0.02, 0.25] },
    line: { ...line, slope: 'up', typical: [0.001, 0.012] },
  },
  steps: ({ turns: N, layers: k, drum: D, line: d }, step) =>
    step('L', 'pi*N*k*(D + k*d)', Math.PI * N * k * (D + k * d), 'length'),
  assumes: ['each layer lies a full line diameter above the one below'],
  source: [{ id: 'drum-capacity-page', at: 'total length' }],
  checked: [
    {
      kind: 'published-secondary',
      against: '10 in barrel, 24 turns of ½ in, 10 layers: about 940 ft',
      source: { id: 'drum-capacity-example' },
    },
    {
      kind: 'independent',
      against: '408.4, 879.6 and 1413.7 mm in one to three layers of ten turns',
      source: { id: 'independent-computation', at: 'drum' },
    },
  ],
  accuracy: 'lines that nest between each other hold less in as many layers: 2 % in three, at most 14 %',
});

/**
 * Width of drum that a length of line wants in a number of layers.
 *
 * N = L/(π·k·(D + k·d))
 * w = (N + 1)·p
 * @param length L, line on the drum [m]
 * @param layers k, layers on the drum [-]
 * @param drum D, diameter of the drum [m]
 * @param line d, diameter of the line [m]
 * @param lay p, distance from turn to turn [m]
 * @returns w [m]
 * @throws OutsideRange when an input lies outside its range
 */
export const widthWanted = formula({
  name: 'drum-width-wanted',
  gives: { symbol: 'w', of: 'length', means: 'width that the line wants' },
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
    layers: { ...layers, slope: 'down', typical: [1, 3] },
    drum: { ...drum, slope: 'down', typical: [0.02, 0.05] },
    line: { ...line, slope: 'down', typical: [0.001, 0.002] },
    lay: {
      symbol: 'p',
      of: 'length',
      above: 0,
      means: 'distance from turn to turn',
      because: 'turns lie beside each other',
      slope: 'up',
      typical: [0.001, 0.002],
    },
  },
  steps: ({ length: L, layers: k, drum: D, line: d, lay: p }, step) => {
    const turns = step('N', 'L/(pi*k*(D + k*d))', L / (Math.PI * k * (D + k * d)), 'count');
    return step('w', '(N + 1)*p', (turns + 1) * p, 'length');
  },
  assumes: ['turns lie in order', 'one turn of room for where the line comes and goes'],
  source: [{ id: 'drum-capacity-page', at: 'total length, solved for the turns' }],
  checked: [{ kind: 'law', against: 'drum-capacity of these turns and layers is the length' }],
  accuracy: 'exact for turns in order',
});

/**
 * Height of the pile of line, with one turn that has climbed on top of it.
 *
 * h = (k + 1)·d
 * @param layers k, layers on the drum [-]
 * @param line d, diameter of the line [m]
 * @returns h [m]
 * @throws OutsideRange when an input lies outside its range
 */
export const pileHeight = formula({
  name: 'pile-height',
  gives: { symbol: 'h', of: 'length', means: 'height of the pile with one turn gone astray' },
  takes: {
    layers: { ...layers, slope: 'up', typical: [1, 3] },
    line: { ...line, slope: 'up', typical: [0.001, 0.002] },
  },
  steps: ({ layers: k, line: d }, step) => step('h', '(k + 1)*d', (k + 1) * d, 'length'),
  assumes: ['one turn climbs over its neighbours now and then'],
  source: [{ id: 'own-derivation', at: 'layers on layers' }],
  checked: [{ kind: 'law', against: 'grows by a line diameter with every layer' }],
  accuracy: 'upper bound for one turn astray',
});

/**
 * Angle at which the outermost turn runs to the fairlead.
 *
 * φ = atan((w/2 + y)/s)
 * @param width w, width that the line uses [m]
 * @param offset y, fairlead beside the middle of that width [m]
 * @param distance s, distance from drum to fairlead [m]
 * @returns φ [rad]
 * @throws OutsideRange when an input lies outside its range
 */
export const fleetAngle = formula({
  name: 'fleet-angle',
  gives: { symbol: 'φ', of: 'angle', means: 'angle of the line to the middle of the drum' },
  takes: {
    width: {
      symbol: 'w',
      of: 'length',
      above: 0,
      means: 'width that the line uses',
      because: 'line takes room',
      slope: 'up',
      typical: [0.008, 0.03],
    },
    offset: {
      symbol: 'y',
      of: 'length',
      from: 0,
      means: 'fairlead beside the middle of that width',
      slope: 'up',
      typical: [0, 0.01],
    },
    distance: {
      symbol: 's',
      of: 'length',
      above: 0,
      means: 'distance from drum to fairlead',
      because: 'the fairlead is not in the drum',
      slope: 'down',
      typical: [0.05, 0.4],
    },
  },
  steps: ({ width: w, offset: y, distance: s }, step) =>
    step('φ', 'atan((w/2 + y)/s)', Math.atan((w / 2 + y) / s), 'angle'),
  assumes: ['the fairlead stands still'],
  source: [{ id: 'fleet-angle-guide' }],
  checked: [
    {
      kind: 'published-secondary',
      against: '1½° wants 38 and 2° wants 29 times the half width',
      source: { id: 'fleet-angle-distance' },
    },
  ],
  accuracy: 'exact for the geometry',
});

/**
 * Diameter of the drum over that of the line.
 *
 * q = D/d
 * @param drum D, diameter of the drum [m]
 * @param line d, diameter of the line [m]
 * @returns q [-]
 * @throws OutsideRange when an input lies outside its range
 */
export const bendingRatio = formula({
  name: 'bending-ratio',
  gives: { symbol: 'q', of: 'count', means: 'diameter of the drum over that of the line' },
  takes: {
    drum: { ...drum, slope: 'up', typical: [0.02, 0.05] },
    line: { ...line, slope: 'down', typical: [0.001, 0.002] },
  },
  steps: ({ drum: D, line: d }, step) => step('q', 'D/d', D / d, 'count'),
  assumes: [],
  source: [{ id: 'rigging-handbook' }],
  checked: [{ kind: 'published', against: 'tread diameter over rope diameter', source: { id: 'rope-bending-table' } }],
  accuracy: 'exact',
});
