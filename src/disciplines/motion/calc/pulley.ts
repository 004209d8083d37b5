/** Geometry of toothed belts and their pulleys. */
import { formula } from '../../../kernel/index.ts';
import { pitch, teeth } from './axis-takes.ts';

/**
 * Travel for each radian of a motor with a toothed pulley.
 *
 * d = z·p/π
 * r = d/(2·u)
 * @param teeth z, teeth of the pulley [-]
 * @param pitch p, pitch of the belt [m]
 * @param reduction u, turns of the motor for one of the pulley [-]
 * @returns r [m]
 * @throws OutsideRange when an input lies outside its range
 */
export const pulleyRadius = formula({
  name: 'pulley-radius',
  gives: { symbol: 'r', of: 'length', means: 'travel for each radian of the motor' },
  takes: {
    teeth: { ...teeth, slope: 'up', typical: [16, 36] },
    pitch: { ...pitch, slope: 'up', typical: [0.002, 0.003] },
    reduction: {
      symbol: 'u',
      of: 'ratio',
      above: 0,
      otherwise: 1,
      means: 'turns of the motor for one of the pulley',
      because: 'the motor turns the pulley',
      slope: 'down',
      typical: [1, 3],
    },
  },
  steps: ({ teeth: z, pitch: p, reduction: u }, step) => {
    const d = step('d', 'z*p/pi', (z * p) / Math.PI, 'length');
    return step('r', 'd/(2*u)', d / (2 * u), 'length');
  },
  assumes: ['the belt runs on its pitch line'],
  source: [{ id: 'timing-belt-theory', at: 'eq. 1' }],
  checked: [
    {
      kind: 'published-secondary',
      against: 'pitch diameter is teeth × 2 mm over π: 12.732 mm for 20 teeth',
      source: { id: 'belt-length-page' },
    },
  ],
  accuracy: 'exact for the pitch line',
});

/**
 * Angle over which a belt lies on the smaller of two pulleys.
 *
 * θ = 2·acos((D - d)/(2·C))
 * @param large D, diameter of the large pulley [m]
 * @param small d, diameter of the small pulley [m]
 * @param centres C, distance of the shafts [m]
 * @returns θ [rad]
 * @throws OutsideRange when an input lies outside its range
 */
export const wrapAngle = formula({
  name: 'wrap-angle',
  gives: { symbol: 'θ', of: 'angle', means: 'angle over which the belt lies on the small pulley' },
  takes: {
    large: {
      symbol: 'D',
      of: 'length',
      above: 0,
      means: 'diameter of the large pulley',
      slope: 'down',
      typical: [0.02, 0.04],
    },
    small: {
      symbol: 'd',
      of: 'length',
      above: 0,
      means: 'diameter of the small pulley',
      slope: 'up',
      typical: [0.01, 0.02],
    },
    centres: {
      symbol: 'C',
      of: 'length',
      above: 0,
      means: 'distance of the shafts',
      slope: 'up',
      typical: [0.06, 0.5],
    },
  },
  steps: ({ large: D, small: d, centres: C }, step) =>
    step('θ', '2*acos((D - d)/(2*C))', 2 * Math.acos((D - d) / (2 * C)), 'angle'),
  assumes: ['open belt on two pulleys'],
  source: [{ id: 'own-derivation', at: 'tangents of two circles' }],
  checked: [
    {
      kind: 'independent',
      against: '16 and 60 teeth of 2 mm, 60 mm apart: 153.002°',
      source: { id: 'independent-computation', at: 'belts' },
    },
  ],
  accuracy: 'exact for the geometry',
});

/**
 * Teeth of a pulley that a belt grips at one time.
 *
 * z_m = z·θ/(2·π)
 * @param teeth z, teeth of the pulley [-]
 * @param wrap θ, angle over which the belt lies on the pulley [rad]
 * @returns z_m [-]
 * @throws OutsideRange when an input lies outside its range
 */
export const teethInMesh = formula({
  name: 'teeth-in-mesh',
  gives: { symbol: 'z_m', of: 'count', means: 'teeth in mesh' },
  takes: {
    teeth: { ...teeth, slope: 'up', typical: [16, 36] },
    wrap: {
      symbol: 'θ',
      of: 'angle',
      above: 0,
      below: 2 * Math.PI,
      means: 'angle over which the belt lies on the pulley',
      because: 'a belt that does not touch drives nothing',
      slope: 'up',
      typical: [2, Math.PI],
    },
  },
  steps: ({ teeth: z, wrap: θ }, step) => step('z_m', 'z*θ/(2*pi)', (z * θ) / (2 * Math.PI), 'count'),
  assumes: ['parts of a tooth count as parts'],
  source: [{ id: 'own-derivation', at: 'teeth are even round the pulley' }],
  checked: [
    {
      kind: 'independent',
      against: '16 and 60 teeth, 60 mm apart: 6.80 teeth',
      source: { id: 'independent-computation', at: 'belts' },
    },
  ],
  accuracy: 'within one tooth',
});

/**
 * Length of an open belt round two pulleys.
 *
 * L_0 = 2·√(C^2 - (R - r)^2)
 * φ = asin((R - r)/C)
 * L = L_0 + π·(R + r) + 2·(R - r)·φ
 * @param centres C, distance of the shafts [m]
 * @param large R, radius of the large pulley [m]
 * @param small r, radius of the small pulley [m]
 * @returns L [m]
 * @throws OutsideRange when an input lies outside its range
 */
export const beltLength = formula({
  name: 'belt-length',
  gives: { symbol: 'L', of: 'length', means: 'length of the belt' },
  takes: {
    centres: { symbol: 'C', of: 'length', above: 0, means: 'distance of the shafts', slope: 'up', typical: [0.1, 0.8] },
    large: {
      symbol: 'R',
      of: 'length',
      above: 0,
      means: 'radius of the large pulley',
      slope: 'up',
      typical: [0.01, 0.02],
    },
    small: {
      symbol: 'r',
      of: 'length',
      above: 0,
      means: 'radius of the small pulley',
      slope: 'up',
      typical: [0.005, 0.01],
    },
  },
  steps: ({ centres: C, large: R, small: r }, step) => {
    const tangent = step('L_0', '2*sqrt(C^2 - (R - r)^2)', 2 * Math.sqrt(C ** 2 - (R - r) ** 2), 'length');
    const lean = step('φ', 'asin((R - r)/C)', Math.asin((R - r) / C), 'angle');
    return step('L', 'L_0 + pi*(R + r) + 2*(R - r)*φ', tangent + Math.PI * (R + r) + 2 * (R - r) * lean, 'length');
  },
  assumes: ['open belt on two pulleys', 'the clamp on the carriage takes no length'],
  source: [{ id: 'belt-length-page' }],
  checked: [
    {
      kind: 'independent',
      against:
        '20 and 20 teeth of 2 mm, 500 mm apart: 1040.0 mm; 20 and 60 teeth, 100 mm apart: 281.623 mm; by the hull of two circles',
      source: { id: 'independent-computation', at: 'belts' },
    },
  ],
  accuracy: 'exact for the geometry',
});

/**
 * Travel in one electrical turn, by which a motor without current can come to rest in another place.
 *
 * x = 2·π·r/N_r
 * @param radius r, travel for each radian of the motor [m]
 * @param teeth N_r, electrical turns in one turn [-]
 * @returns x [m]
 * @throws OutsideRange when an input lies outside its range
 */
export const electricalTurn = formula({
  name: 'electrical-turn',
  gives: { symbol: 'x', of: 'length', means: 'travel in one electrical turn, four full steps' },
  takes: {
    radius: {
      symbol: 'r',
      of: 'length',
      above: 0,
      means: 'travel for each radian of the motor',
      because: 'the motor moves the axis',
      slope: 'up',
      typical: [0.005, 0.02],
    },
    teeth: {
      symbol: 'N_r',
      of: 'count',
      above: 0,
      means: 'electrical turns in one turn',
      because: 'a rotor has poles',
      slope: 'down',
      typical: [50, 100],
    },
  },
  steps: ({ radius: r, teeth: N }, step) => step('x', '2*pi*r/N_r', (2 * Math.PI * r) / N, 'length'),
  assumes: ['the driver wakes up in the electrical angle in which it went to sleep'],
  source: [{ id: 'own-derivation', at: 'the field looks alike every electrical turn' }],
  checked: [
    {
      kind: 'published-secondary',
      against: '20 teeth of 2 mm: 40 mm a turn, 0.2 mm a full step, so 0.8 mm',
      source: { id: 'belt-length-page' },
    },
  ],
  accuracy: 'exact',
});
