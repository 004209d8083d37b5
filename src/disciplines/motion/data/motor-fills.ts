/** What is taken for motors and drivers of which little is said. From experience, therefore wide; a measurement narrows it. */
import type { Fill, FillView } from '../../../contract/index.ts';
import { detentShare, ringingRange, stepperRow, type StepperRow } from './steppers.ts';

type Range = readonly [low: number, high: number];
type Filler = (key: string, said: string) => Fill;

const source = { id: 'motor-experience' } as const;
const drivers = { id: 'driver-experience' } as const;

const digits = (x: number): string => String(Number(x.toPrecision(2)));
const text = ([low, high]: Range, unit: string, size = 1): string =>
  `${digits(low / size)}..${digits(high / size)} ${unit}`;
const by = ([low, high]: Range, factor: number): Range => [low * factor, high * factor];

/** One half of the copper makes 1/√2 of the torque at the same heat, and has half the electrical time of the whole. */
const HALF = { torque: Math.SQRT1_2, time: 0.5 };
const WHOLE = { torque: 1, time: 1 };

/** The size tells the heat and the electrical time; the ohms, which the winding decides, only between wide ends. */
const electrical = (book: FillView, at: string, row: StepperRow, time: number, fill: Filler): Fill[] => {
  const has = (key: string): boolean => book.has(`${at}.${key}`);
  const needsHeat = !has('rated-current') || !has('phase-resistance');
  const ohms: Range = [row.heat[0] / (2 * row.rated[1] ** 2), row.heat[1] / (2 * row.rated[0] ** 2)];
  return [
    ...(needsHeat ? [fill('rated-heat', text(row.heat, 'W'))] : []),
    ...(has('phase-inductance') ? [] : [fill('electrical-time', text(by(row.time, time), 'ms', 1e-3))]),
    ...(has('rated-current') || has('phase-resistance') ? [] : [fill('phase-resistance', text(ohms, 'ohm'))]),
  ];
};

const stepperFills = (book: FillView, at: string): Fill[] => {
  const general: Fill[] = [
    {
      path: `${at}.ringing`,
      text: text(ringingRange, ''),
      provenance: 'table',
      source,
      means: 'steppers that drive something',
    },
  ];
  const holding = book.ends(`${at}.holding-torque`);
  const share: Fill[] = holding
    ? [
        {
          path: `${at}.detent-torque`,
          text: text([holding[0] * detentShare[0], holding[1] * detentShare[1]], 'mN·m', 1e-3),
          provenance: 'table',
          source: { id: 'detent-share' },
          means: '3 to 10 % of the holding torque',
        },
      ]
    : [];
  const [frame] = book.ends(`${at}.frame`) ?? [];
  const [body] = book.ends(`${at}.body`) ?? [];
  const row = frame !== undefined && body !== undefined ? stepperRow(frame, body) : undefined;
  if (!row) return [...share, ...general];
  const means = `frame ${row.frame}, body ${Math.round(row.body * 1000)} mm`;
  const factors = book.text(`${at}.measured-as`) === 'half' ? HALF : WHOLE;
  const fill = (key: string, said: string): Fill => ({
    path: `${at}.${key}`,
    text: said,
    provenance: 'table',
    source,
    means,
  });
  return [
    ...electrical(book, at, row, factors.time, fill),
    fill('holding-torque', text(by(row.holding, factors.torque), 'N·m')),
    fill('rotor-inertia', text(row.rotor, 'g·cm²', 1e-7)),
    ...share,
    fill('detent-torque', text(row.detent, 'mN·m', 1e-3)),
    fill('iron-drag', text(row.iron, 'mN·m·s/rad', 1e-3)),
    fill('mass', text(row.mass, 'kg')),
    ...general,
  ];
};

const driverFills = (book: FillView, name: string): Fill[] => {
  const at = `drivers.${name}`;
  const part = book.text(`${at}.part`);
  const fill = (path: string, said: string, means: string): Fill => ({
    path,
    text: said,
    provenance: 'table',
    source: drivers,
    means,
  });
  const marked = book.text(`${at}.marked`) ?? (part === undefined ? undefined : book.text(`parts.${part}.marked`));
  const decay = book.text(`${at}.decay`) ?? (part === undefined ? undefined : book.text(`parts.${part}.decay`));
  const owner = part === undefined ? at : `parts.${part}`;
  return [
    fill(`${owner}.bridge-resistance`, '0.1..1 ohm', 'both switches and the sense resistor of a small chopper'),
    decay === 'slow'
      ? fill(`${at}.hunting`, '0.8..1', 'slow decay leaves a motor to hunt')
      : fill(`${at}.hunting`, '0..1', 'a decay that is partly fast damps hunting, by how much nobody prints'),
    fill(`${at}.standstill-current`, '50..100 %', 'many drivers halve the current at rest, and some do not'),
    ...(book.has(`${at}.cable`) ? [] : [fill(`${at}.cable-resistance`, '0..1 ohm', 'a few metres of thin cable')]),
    ...(marked === 'peak' || marked === 'RMS'
      ? []
      : [fill(`${at}.peak-per-marked`, '1..1.4142', 'marked in peak, or in RMS of a sinusoid')]),
  ];
};

const used = (book: FillView, kind: string): string[] => [
  ...new Set(book.names(kind).flatMap((name) => book.text(`${kind}.${name}.part`) ?? [])),
];

/** Facts of motors, drivers and hands that follow from others by experience. */
export const motorFills = (book: FillView): readonly Fill[] => [
  ...used(book, 'motors')
    .filter((part) => book.text(`parts.${part}.kind`) === 'stepper')
    .flatMap((part) => stepperFills(book, `parts.${part}`)),
  ...book.names('motors').map((name): Fill => ({
    path: `motors.${name}.winding-temperature`,
    text: '10..100 degC',
    provenance: 'table',
    source,
    means: 'from a cold room to a motor that is too hot to touch',
  })),
  ...book.names('drivers').flatMap((name) => driverFills(book, name)),
  ...book
    .names('axes')
    .filter((name) => book.text(`axes.${name}.drive`) === 'belt')
    .map((name): Fill => ({
      path: `axes.${name}.pushed-at`,
      text: '0.2..0.8 m/s',
      provenance: 'table',
      source: drivers,
      means: 'a hand that moves a carriage out of the way',
    })),
];
