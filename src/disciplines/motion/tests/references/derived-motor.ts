/** Steppers: what tests/independent/motion.py prints, and the few published numbers that are no row of a table. */
import { independent, printed, tenDigits, type Reference } from './reference.ts';

/** Phase resistance, inductance and rated current of one motor; its holding torque is a value of its own. */
interface Motor {
  readonly holding: number;
  readonly rated: number;
  readonly resistance: number;
  readonly inductance: number;
}

const plate: Motor = { holding: 1.26, rated: 2.8, resistance: 0.9, inductance: 2.5e-3 };
const SQUARE = 48 / Math.PI;

interface AtSpeed extends Motor {
  readonly volts: number;
  readonly rpm: number;
}

interface PullOut extends Omit<Reference<AtSpeed>, 'gives' | 'within'> {
  readonly voltageOnly: ReturnType<typeof tenDigits>;
  readonly limited: ReturnType<typeof tenDigits>;
}

const row = (given: AtSpeed, voltageOnly: string, limited: string): PullOut => ({
  ...independent,
  given,
  voltageOnly: tenDigits(voltageOnly),
  limited: tenDigits(limited),
});

/** By a scan of the voltage and the current circle; 200 and 250 rpm lie where both bind at once. */
export const pullOuts: readonly PullOut[] = [
  row({ ...plate, volts: 12, rpm: 60 }, '2.795337174', '1.26'),
  row({ ...plate, volts: 12, rpm: 150 }, '1.461006145', '1.26'),
  row({ ...plate, volts: 12, rpm: 200 }, '1.130258000', '1.121968504'),
  row({ ...plate, volts: 12, rpm: 250 }, '0.9179370859', '0.9179370859'),
  row({ ...plate, volts: 12, rpm: 300 }, '0.7713951243', '0.7713951243'),
  row({ ...plate, volts: 12, rpm: 600 }, '0.3913937669', '0.3913937669'),
  row({ ...plate, volts: 12, rpm: 1200 }, '0.1964296577', '0.1964296577'),
  row({ ...plate, volts: SQUARE, rpm: 60 }, '3.668777247', '1.26'),
  row({ ...plate, volts: SQUARE, rpm: 150 }, '1.944044776', '1.26'),
  row({ ...plate, volts: SQUARE, rpm: 200 }, '1.507133260', '1.26'),
  row({ ...plate, volts: SQUARE, rpm: 250 }, '1.225342165', '1.186830824'),
  row({ ...plate, volts: SQUARE, rpm: 300 }, '1.030363206', '1.029587823'),
  row({ ...plate, volts: SQUARE, rpm: 600 }, '0.5233711714', '0.5233711714'),
  row({ ...plate, volts: SQUARE, rpm: 1200 }, '0.2627414480', '0.2627414480'),
];

/** Where the current limit begins to bind, and where the voltage alone governs again, in rpm. */
export const knees: readonly (Reference<{ volts: number }> & { readonly idle: ReturnType<typeof tenDigits> })[] = [
  { ...independent, given: { volts: 12 }, ...tenDigits('157.2916873'), idle: tenDigits('223.5008561') },
  { ...independent, given: { volts: 24 }, ...tenDigits('355.1571694'), idle: tenDigits('536.7858984') },
  { ...independent, given: { volts: SQUARE }, ...tenDigits('211.8578075'), idle: tenDigits('310.9138577') },
];

const stiff = { resistance: 5, inductance: 8e-3, volts: 12, rpm: 300 };

/** Torque at 12 V and 300 rpm over holding torque: it rises and falls again. */
export const falling: readonly PullOut[] = [
  row({ ...stiff, rated: 1, holding: 0.4 }, '0.1822581194', '0.1822581194'),
  row({ ...stiff, rated: 1, holding: 0.6 }, '0.2218613531', '0.2218613531'),
  row({ ...stiff, rated: 1, holding: 0.73 }, '0.2291829722', '0.2291829722'),
  row({ ...stiff, rated: 1, holding: 0.9 }, '0.2168589211', '0.2168585672'),
  row({ ...stiff, rated: 1, holding: 1.2 }, '0.13456775', '0.04569637294'),
  row({ ...stiff, rated: 0.6, holding: 0.2 }, '0.1614235858', '0.1614156907'),
  row({ ...stiff, rated: 0.6, holding: 0.3 }, '0.2063535551', '0.2025791978'),
  row({ ...stiff, rated: 0.6, holding: 0.4 }, '0.2274289753', '0.2047093693'),
  row({ ...plate, volts: 12, rpm: 300, holding: 2 }, '1.060016234', '1.042038108'),
];

/** Holding torque at which the capacity is greatest, and that capacity. */
export const summits: readonly (Reference<Omit<AtSpeed, 'holding'>> & { readonly holding: number })[] = [
  { ...independent, given: { ...stiff, rated: 1 }, holding: 0.7305828168, ...tenDigits('0.2291831181') },
  { ...independent, given: { ...stiff, rated: 0.6 }, holding: 0.3561510887, ...tenDigits('0.2095223148') },
  { ...independent, given: { ...plate, volts: 12, rpm: 300 }, holding: 2.229860086, ...tenDigits('1.063332500') },
];

/** What the voltage alone gives, where the current limit leaves no motoring torque at all. */
export const powerless: readonly Reference<AtSpeed>[] = [
  { ...independent, given: { ...stiff, rated: 1, holding: 1.4 }, ...tenDigits('0.03676878097') },
  { ...independent, given: { ...stiff, rated: 0.6, holding: 0.6 }, ...tenDigits('0.1980161684') },
  { ...independent, given: { ...stiff, rated: 1, holding: 2.6 }, ...tenDigits('-1.271386598') },
  { ...independent, given: { ...plate, volts: 12, rpm: 300, holding: 4 }, ...tenDigits('1.231273165') },
  { ...independent, given: { ...plate, volts: 12, rpm: 300, holding: 5 }, ...tenDigits('0.9836168919') },
];

/** At rest, where 12 V drive less through 5 Ω than is set. */
export const starved: Reference<Motor> = {
  ...independent,
  given: { holding: 1, rated: 2, resistance: 5, inductance: 10e-3 },
  ...tenDigits('0.8485281374'),
};

/** Braking torque of the shorted windings of the plate over speed, by both phases in time. */
export const braking: readonly Reference<{ speed: number }>[] = [
  { ...independent, given: { speed: 0.5 }, ...tenDigits('0.05598003456') },
  { ...independent, given: { speed: 3.6 }, ...tenDigits('0.324') },
  { ...independent, given: { speed: 7.2 }, ...tenDigits('0.405') },
  { ...independent, given: { speed: 20 }, ...tenDigits('0.2581444759') },
  { ...independent, given: { speed: 100 }, ...tenDigits('0.05801922832') },
];

/** Both speeds at which shorted windings carry a torque: the slower is steady, the faster runs away. */
export const sinking: readonly (Reference<{ torque: number }> & { readonly faster: number })[] = [
  // 0.6 kg on 6.5 mm.
  { ...independent, given: { torque: 0.6 * 9.80665 * 6.5e-3 }, ...tenDigits('0.3407252025'), faster: 152.1460685 },
  { ...independent, given: { torque: 0.2 }, ...tenDigits('1.901814010'), faster: 27.25818599 },
  { ...independent, given: { torque: 0.4 }, ...tenDigits('6.148028021'), faster: 8.431971979 },
];

/** A motor on 12 V without load and without drag, for hunting. */
export const hunter = { constant: 0.2778, loop: 1, inductance: 3e-3, teeth: 50, inertia: 6e-5, volts: 12 };

/** Growth a second of the fastest disturbance, by numpy; above nothing it grows. */
export const growths: readonly Reference<{ rpm: number }>[] = [
  { ...independent, given: { rpm: 60 }, ...printed('-32.1075') },
  { ...independent, given: { rpm: 120 }, ...printed('-63.8873') },
  { ...independent, given: { rpm: 300 }, ...printed('28.4912') },
  { ...independent, given: { rpm: 600 }, ...printed('7.18287') },
  { ...independent, given: { rpm: 1200 }, ...printed('1.80114') },
  { ...independent, given: { rpm: 2400 }, ...printed('0.451753') },
];

/** Below this speed a disturbance dies out, above it grows, by load in N·m; printed in rad/s on a grid of 0.04 %. */
export const huntsFrom: readonly Reference<{ load: number }>[] = [
  { ...independent, given: { load: 0 }, ...tenDigits('18.65646757') },
  ...[
    { load: 0.05, from: '18.609' },
    { load: 0.1, from: '18.548' },
    { load: 0.2, from: '18.379' },
  ].map(({ load, from }) => ({ ...independent, given: { load }, ...printed(from), within: Number(from) * 4e-4 })),
];

/** 70 % of the current holds 70 % of the torque. */
export const inProportion: Reference<{ share: number }> = {
  kind: 'published',
  source: 'stepper-drive-manuals',
  given: { share: 0.7 },
  ...printed('0.70'),
};

/** Peak of the microstep current over the nominal one. */
export const peakOverNominal: Reference<{ rated: number }> = {
  kind: 'published',
  source: 'stepper-drive-manuals',
  given: { rated: 2.8 },
  ...printed('1.41'),
};

/** What one phase alone holds of the holding torque: 1/√2, printed as 0.707, and at 85 % of the current 60 %. */
export const onePhase: readonly Reference<{ share: number }>[] = [
  { kind: 'published-secondary', source: 'one-phase-torque', given: { share: 1 }, ...printed('0.707') },
  { kind: 'published-secondary', source: 'one-phase-torque', given: { share: 0.85 }, ...printed('0.60') },
];

/** A spring of 0.0032 N·m in 0.3°. */
export const springOfExample: Reference<{ torque: number; degrees: number }> = {
  kind: 'published',
  source: 'resonance-example',
  given: { torque: 0.0032, degrees: 0.3 },
  ...printed('0.611'),
};

/** Detent as a share of the holding torque. */
export const detent = { kind: 'published', source: 'detent-share', from: 0.05, to: 0.1 } as const;
