/** Travels, belts and drums: what tests/independent/motion.py prints, and the parts of examples not keyed elsewhere. */
import { independent, printed, tenDigits, type Reference } from './reference.ts';

interface Travel {
  readonly distance: number;
  readonly asked: number;
  readonly acceleration: number;
}

type Of<K extends string> = { readonly [key in K]: ReturnType<typeof tenDigits> };

/** Ramp, stretch at speed and whole time of a trapezoid. */
export const trapezoid: { readonly given: Travel } & Of<'ramp' | 'steady' | 'total'> = {
  given: { distance: 0.5, asked: 0.25, acceleration: 1 },
  ramp: tenDigits('0.25'),
  steady: tenDigits('1.75'),
  total: tenDigits('2.25'),
};

/** 200 mm in a second, a third each for ramp, steady speed and ramp. */
export const byThirds: Reference<Travel> = {
  ...independent,
  given: { distance: 0.2, asked: 0.3, acceleration: 0.9 },
  ...tenDigits('1.0'),
};

const curve = (distance: number, asked: number) => ({ distance, asked, acceleration: 1, jerk: 10 });
type Curve = { readonly means: string; readonly given: Travel & { readonly jerk: number } } & Of<
  'total' | 'easing' | 'flat' | 'top' | 'speed'
>;
const branch = (
  means: string,
  given: Curve['given'],
  [total, easing, flat, top, speed]: readonly [string, string, string, string, string],
): Curve => ({
  means,
  given,
  total: tenDigits(total),
  easing: tenDigits(easing),
  flat: tenDigits(flat),
  top: tenDigits(top),
  speed: tenDigits(speed),
});

/**
 * Every way in which a jerk-limited travel can go: whole time, time of one stretch of jerk, stretch of full acceleration,
 * acceleration and speed that are reached. No faster travel exists: a linear programme over the jerk finds none.
 */
export const branches: readonly Curve[] = [
  branch('all limits reached', curve(0.5, 0.25), ['2.35', '0.1', '0.15', '1', '0.25']),
  branch('speed reached, acceleration not', curve(0.5, 0.05), [
    '10.14142136',
    '0.07071067812',
    '0',
    '0.7071067812',
    '0.05',
  ]),
  branch('acceleration reached, speed not', curve(0.05, 0.25), [
    '0.5582575695',
    '0.1',
    '0.07912878475',
    '1',
    '0.1791287847',
  ]),
  branch('neither reached', curve(0.01, 0.25), ['0.3174802104', '0.0793700526', '0', '0.793700526', '0.06299605249']),
  branch('acceleration only just peaks', curve(0.5, 0.1), ['5.2', '0.1', '0', '1', '0.1']),
  branch('travel only just lets it peak', curve(0.02, 0.25), ['0.4', '0.1', '0', '1', '0.1']),
  branch('travel only just lets it reach the speed', curve(0.0875, 0.25), ['0.7', '0.1', '0.15', '1', '0.25']),
  branch('a low speed that is not reached', curve(0.004, 0.05), [
    '0.2339214191',
    '0.05848035476',
    '0',
    '0.5848035476',
    '0.03419951893',
  ]),
];

/** Time of one ramp of 0.25 m/s at 1 m/s² and 10 m/s³. */
export const rampOfAll: Reference<{ speed: number; acceleration: number; jerk: number }> = {
  ...independent,
  given: { speed: 0.25, acceleration: 1, jerk: 10 },
  ...tenDigits('0.35'),
};

/** 20 teeth of 2 mm: pitch diameter, travel a turn, a full step and a sixteenth of one, in millimetres. */
export const twentyTeeth = {
  ...independent,
  diameter: tenDigits('12.73239545', 1e-3),
  turn: tenDigits('40', 1e-3),
  step: tenDigits('0.2', 1e-3),
  sixteenth: tenDigits('0.0125', 1e-3),
} as const;

/** Belts round two pulleys of 2 mm pitch, by the hull of two circles: length in mm, wrap of the small one, teeth in mesh. */
export const loops = [
  { ...independent, small: 20, large: 20, centres: 0.5, length: tenDigits('1040.0', 1e-3) },
  {
    ...independent,
    small: 20,
    large: 60,
    centres: 0.1,
    length: tenDigits('281.6233397', 1e-3),
    wrap: tenDigits('165.3700378'),
    mesh: tenDigits('9.187224322'),
  },
  {
    ...independent,
    small: 16,
    large: 60,
    centres: 0.06,
    length: tenDigits('199.2843905', 1e-3),
    wrap: tenDigits('153.0021347'),
    mesh: tenDigits('6.800094875'),
  },
] as const;

/** Rack and pinion with what turns: pinion 4.5 and rotor 2.5 lb·in² beside the 11.25 of the weight. */
export const rackWithRotor = {
  kind: 'published',
  source: 'rack-sizing-example',
  weight: 5,
  radius: 1.5,
  pinion: 4.5,
  rotor: 2.5,
  ...printed('18.25'),
} as const;

/** Layers of 1 mm line on a 12 mm core, ten turns each: radius, line in this layer and in all so far, in millimetres. */
export const layers = [
  {
    ...independent,
    layer: 1,
    radius: tenDigits('6.5', 1e-3),
    own: tenDigits('408.4070450', 1e-3),
    all: tenDigits('408.4070450', 1e-3),
  },
  {
    ...independent,
    layer: 2,
    radius: tenDigits('7.5', 1e-3),
    own: tenDigits('471.2388980', 1e-3),
    all: tenDigits('879.6459430', 1e-3),
  },
  {
    ...independent,
    layer: 3,
    radius: tenDigits('8.5', 1e-3),
    own: tenDigits('534.0707511', 1e-3),
    all: tenDigits('1413.716694', 1e-3),
  },
] as const;

/** The same in three layers that lie in the grooves of each other. */
export const nested = { ...independent, ...tenDigits('1388.463078', 1e-3) } as const;
