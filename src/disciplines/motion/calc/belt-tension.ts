/** Tension of a belt, at rest and at work, over the year. */
import { formula } from '../../../kernel/index.ts';
import { axial, force } from './axis-takes.ts';

/**
 * Tension of a span from the tone that it gives when plucked.
 *
 * F_0 = 4·m_1·L^2·f^2
 * @param mass m_1, mass of a length of belt [kg/m]
 * @param span L, free span [m]
 * @param tone f, tone of the plucked span [Hz]
 * @returns F_0 [N]
 * @throws OutsideRange when an input lies outside its range
 */
export const spanTension = formula({
  name: 'span-tension',
  gives: { symbol: 'F_0', of: 'force', means: 'tension of the belt at rest' },
  takes: {
    mass: {
      symbol: 'm_1',
      of: 'mass-per-length',
      above: 0,
      means: 'mass of a length of belt',
      slope: 'up',
      typical: [0.006, 0.02],
    },
    span: { symbol: 'L', of: 'length', above: 0, means: 'free span', slope: 'up', typical: [0.2, 0.8] },
    tone: { symbol: 'f', of: 'frequency', above: 0, means: 'tone of the plucked span', slope: 'up', typical: [20, 90] },
  },
  steps: ({ mass: m, span: L, tone: f }, step) => step('F_0', '4*m_1*L^2*f^2', 4 * m * L ** 2 * f ** 2, 'force'),
  assumes: ['the belt swings as a string: no stiffness of its own'],
  source: [{ id: 'own-derivation', at: 'wave on a string' }],
  checked: [
    {
      kind: 'independent',
      against: '8.4 g/m, 400 mm, 60 Hz: 19.354 N',
      source: { id: 'independent-computation', at: 'belts' },
    },
  ],
  accuracy: 'about 10 %, more on short spans of wide belts',
});

/**
 * Tone at which a plucked span has the wanted tension.
 *
 * f = √(F_0/m_1)/(2·L)
 * @param tension F_0, tension of the belt at rest [N]
 * @param mass m_1, mass of a length of belt [kg/m]
 * @param span L, free span [m]
 * @returns f [Hz]
 * @throws OutsideRange when an input lies outside its range
 */
export const spanTone = formula({
  name: 'span-tone',
  gives: { symbol: 'f', of: 'frequency', means: 'tone of the plucked span' },
  takes: {
    tension: {
      symbol: 'F_0',
      of: 'force',
      above: 0,
      means: 'tension of the belt at rest',
      slope: 'up',
      typical: [10, 40],
    },
    mass: {
      symbol: 'm_1',
      of: 'mass-per-length',
      above: 0,
      means: 'mass of a length of belt',
      slope: 'down',
      typical: [0.006, 0.02],
    },
    span: { symbol: 'L', of: 'length', above: 0, means: 'free span', slope: 'down', typical: [0.2, 0.8] },
  },
  steps: ({ tension: F, mass: m, span: L }, step) =>
    step('f', 'sqrt(F_0/m_1)/(2*L)', Math.sqrt(F / m) / (2 * L), 'frequency'),
  assumes: ['the belt swings as a string: no stiffness of its own'],
  source: [{ id: 'own-derivation', at: 'wave on a string' }],
  checked: [{ kind: 'law', against: 'undoes span-tension' }],
  accuracy: 'about 5 %, more on short spans of wide belts',
});

/**
 * What is left of a belt's tension when the frame shrinks.
 *
 * F_low = F_0 - EA·ε
 * @param pretension F_0, tension of the belt at rest [N]
 * @param axial EA, stiffness of a length of belt [N]
 * @param movement ε, share by which the frame moves with the weather [-]
 * @returns F_low [N]
 * @throws OutsideRange when an input lies outside its range
 */
export const leastTension = formula({
  name: 'least-tension',
  gives: { symbol: 'F_low', of: 'force', means: 'tension when the frame is at its shortest' },
  takes: {
    pretension: {
      symbol: 'F_0',
      of: 'force',
      from: 0,
      means: 'tension of the belt at rest',
      slope: 'up',
      typical: [15, 40],
    },
    axial: { ...axial, slope: 'down', typical: [1e4, 2.5e4] },
    movement: {
      symbol: 'ε',
      of: 'ratio',
      from: 0,
      below: 0.1,
      means: 'share by which the frame moves with the weather',
      because: 'no frame moves by a tenth',
      slope: 'down',
      typical: [0, 5e-4],
    },
  },
  steps: ({ pretension: F, axial: EA, movement: ε }, step) => step('F_low', 'F_0 - EA*ε', F - EA * ε, 'force'),
  assumes: ['the belt does not move with the weather', 'the pulleys stand on the frame'],
  source: [{ id: 'own-derivation', at: 'law of the spring' }],
  checked: [{ kind: 'law', against: 'as it was tensioned on a frame that does not move' }],
  accuracy: 'as good as stiffness and movement: within a factor of two',
});

/**
 * Greatest tension in a belt: tensioned, stretched by the frame, and pulling.
 *
 * F_high = F_0 + EA·ε + F
 * @param pretension F_0, tension of the belt at rest [N]
 * @param axial EA, stiffness of a length of belt [N]
 * @param movement ε, share by which the frame moves with the weather [-]
 * @param force F, force that moves the carriage [N]
 * @returns F_high [N]
 * @throws OutsideRange when an input lies outside its range
 */
export const tautestTension = formula({
  name: 'tautest-tension',
  gives: { symbol: 'F_high', of: 'force', means: 'greatest tension' },
  takes: {
    pretension: {
      symbol: 'F_0',
      of: 'force',
      from: 0,
      means: 'tension of the belt at rest',
      slope: 'up',
      typical: [15, 40],
    },
    axial: { ...axial, slope: 'up', typical: [1e4, 2.5e4] },
    movement: {
      symbol: 'ε',
      of: 'ratio',
      from: 0,
      below: 0.1,
      means: 'share by which the frame moves with the weather',
      because: 'no frame moves by a tenth',
      slope: 'up',
      typical: [0, 5e-4],
    },
    force: { ...force, slope: 'up', typical: [2, 20] },
  },
  steps: ({ pretension: T, axial: EA, movement: ε, force: F }, step) =>
    step('F_high', 'F_0 + EA*ε + F', T + EA * ε + F, 'force'),
  assumes: ['close to the motor nearly the whole force runs through the short span'],
  source: [{ id: 'own-derivation', at: 'two springs of very unequal length' }],
  checked: [{ kind: 'law', against: 'the tension at rest when nothing moves' }],
  accuracy: 'upper bound for given stiffness and movement',
});

/**
 * Force in one of several belts or on one motor.
 *
 * F_1 = s·F
 * @param force F, force that moves the carriage [N]
 * @param share s, share that one side carries [-]
 * @returns F_1 [N]
 * @throws OutsideRange when an input lies outside its range
 */
export const shareOfForce = formula({
  name: 'share-of-force',
  gives: { symbol: 'F_1', of: 'force', means: 'force on one side' },
  takes: {
    force: { ...force, slope: 'up', typical: [2, 20] },
    share: {
      symbol: 's',
      of: 'ratio',
      above: 0,
      to: 1,
      means: 'share that one side carries',
      because: 'a side carries part or all',
      slope: 'up',
      typical: [0.5, 1],
    },
  },
  steps: ({ force: F, share: s }, step) => step('F_1', 's*F', s * F, 'force'),
  assumes: [],
  source: [{ id: 'own-derivation', at: 'definition' }],
  checked: [{ kind: 'law', against: 'the sides make the whole' }],
  accuracy: 'exact',
});
