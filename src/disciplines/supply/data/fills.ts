/** What is taken for supplies, fuses, wires and warmth of which little is said. From experience, therefore wide. */
import type { Fill, FillView } from '../../../contract/index.ts';
import { fuseKinds, fuseRows } from './fuses.ts';
import { wireRow } from './wires.ts';

type Range = readonly [low: number, high: number];

const EXPERIENCE = 'supply-experience';
const fill = (path: string, text: string, means: string, id = EXPERIENCE): Fill => ({
  path,
  text,
  provenance: 'table',
  source: { id },
  means,
});
const digits = (x: number): string => String(Number(x.toPrecision(3)));
const range = ([low, high]: Range, unit: string): string => `${digits(low)}..${digits(high)} ${unit}`;

/** Thermal resistances by frame: winding to case, case to air of the shortest and of the longest body [K/W]. */
const frames: Readonly<Record<number, { readonly inside: Range; readonly outside: Range }>> = {
  11: { inside: [4, 9], outside: [11, 26] },
  14: { inside: [3, 7], outside: [8, 18] },
  17: { inside: [1.5, 4], outside: [5, 12] },
  23: { inside: [0.6, 1.8], outside: [2, 5.5] },
  24: { inside: [0.5, 1.5], outside: [1.6, 4.5] },
  34: { inside: [0.3, 1], outside: [0.9, 3] },
};
/** Heat capacity for each kilogram of motor [J/(kg·K)]. */
const windingPerMass: Range = [35, 75];
const casePerMass: Range = [320, 430];

const used = (book: FillView, kind: string): string[] => [
  ...new Set(book.names(kind).flatMap((name) => book.text(`${kind}.${name}.part`) ?? [])),
];

const motorFills = (book: FillView): Fill[] =>
  used(book, 'motors')
    .filter((part) => book.text(`parts.${part}.kind`) === 'stepper')
    .flatMap((part) => {
      const at = `parts.${part}`;
      const [frame = 0] = book.ends(`${at}.frame`) ?? [];
      const row = frames[frame];
      const mass = book.ends(`${at}.mass`);
      return [
        fill(`${at}.insulation-class`, 'B', 'most small steppers are class B'),
        ...(row
          ? [
              fill(`${at}.winding-to-case`, range(row.inside, 'K/W'), `frame ${frame}`),
              fill(`${at}.case-to-air`, range(row.outside, 'K/W'), `frame ${frame}, on metal or on plastic`),
            ]
          : []),
        ...(mass
          ? [
              fill(
                `${at}.winding-heat-capacity`,
                range([mass[0] * windingPerMass[0], mass[1] * windingPerMass[1]], 'J/K'),
                'its share of the mass',
              ),
              fill(
                `${at}.case-heat-capacity`,
                range([mass[0] * casePerMass[0], mass[1] * casePerMass[1]], 'J/K'),
                'its share of the mass',
              ),
            ]
          : []),
      ];
    });

/** Where the facts of an entry stand: at its part when it has one. */
const owner = (book: FillView, kind: string, name: string): string => {
  const part = book.text(`${kind}.${name}.part`);
  return part === undefined ? `${kind}.${name}` : `parts.${part}`;
};

const driverFills = (book: FillView): Fill[] =>
  book.names('drivers').flatMap((name) => {
    const at = owner(book, 'drivers', name);
    return [
      fill(`${at}.own-power`, '0.15..0.8 W', 'logic and switching of a small chopper'),
      fill(`${at}.thermal-resistance`, '5..35 K/W', 'from a boxed driver to a bare module'),
      fill(`${at}.most-temperature`, '100 degC', 'hottest part of a driver that lasts'),
      fill(`${at}.capacitance`, '47..470 uF', 'capacitor at the input of a small chopper'),
    ];
  });

/** Current in a short circuit over the stated limit, by what the supply does when overloaded. */
const shortCircuit: Readonly<Record<string, Range>> = {
  'constant current': [1.05, 1.5],
  hiccup: [0.1, 0.6],
  'fold-back': [0.15, 0.3],
  'shut-off': [0.001, 0.05],
};

const supplyFills = (book: FillView): Fill[] =>
  book.names('supplies').flatMap((name) => {
    const at = owner(book, 'supplies', name);
    const rails = book.names(`supplies.${name}.rails`);
    const limit = rails.length === 1 ? book.ends(`supplies.${name}.rails.${rails[0]}.limit`) : undefined;
    const overload = book.text(`${at}.overload`);
    const by = ([low, high]: Range): string => range([limit![0] * low, limit![1] * high], 'A');
    return [
      fill(`${at}.efficiency`, '78..90 %', 'switching supplies of this size'),
      fill(`${at}.no-load`, '0.2..2 W', 'switching supplies of this size'),
      fill(`${at}.start-within`, '20..200 ms', 'before a supply gives up a start'),
      fill(`${at}.output-capacitance`, '470..3300 uF', 'switching supplies of this size'),
      ...(book.has(`supplies.${name}.from`)
        ? [fill(`${at}.input-capacitance`, '47..470 uF', 'capacitor at the input of a small converter')]
        : []),
      ...(limit
        ? [
            fill(`${at}.overload-current`, by([1.05, 1.5]), '105 to 150 % of what it is rated for'),
            fill(
              `${at}.short-circuit-current`,
              by(shortCircuit[overload ?? ''] ?? [0.001, 1.5]),
              overload === undefined ? 'anything from shut off to constant current' : `when it goes into ${overload}`,
              overload === 'fold-back' ? 'supply-overload-kinds' : EXPERIENCE,
            ),
          ]
        : []),
    ];
  });

const wireFills = (book: FillView, cable: string): Fill[] => {
  const at = `cables.${cable}`;
  const part = book.text(`${at}.part`);
  const core = part === undefined ? undefined : book.ends(`parts.${part}.core`);
  const row = core && wireRow(core[0]);
  const freeAir = book.text(`${at}.laid`) === 'in free air';
  return [
    fill(`${at}.grouping`, '0.65..0.8', 'two to four loaded circuits side by side'),
    ...(row
      ? [
          fill(
            `${at}.continuous-current`,
            `${freeAir ? row.freeAir : row.trunking} A`,
            `${digits(row.area * 1e6)} mm² ${freeAir ? 'in free air' : 'in trunking'}`,
            row.source,
          ),
        ]
      : []),
  ];
};

const fuseFills = (book: FillView): Fill[] =>
  book.names('fuses').flatMap((name) => {
    const at = `fuses.${name}`;
    const kind = book.text(`${at}.kind`);
    const [rating] = book.ends(`${at}.rating`) ?? [];
    const cable = book.text(`${at}.cable`);
    const known = kind === 'time-lag' || kind === 'fast' ? fuseKinds[kind] : undefined;
    const row = kind === 'time-lag' ? fuseRows.find((one) => one.rating === rating) : undefined;
    return [
      fill(`${at}.derating`, '0.2..0.5 %/K', 'small fuses', 'fuse-derating'),
      fill(`${at}.contact-resistance`, '20..150 mohm', 'holder, contact and capacitor'),
      ...(row
        ? [
            fill(
              `${at}.resistance`,
              range([row.cold, Math.max(1.2 * row.cold, row.drop / row.rating)], 'ohm'),
              'a time-lag fuse of that rating, from cold to fully loaded',
              'fuse-5x20-time-lag',
            ),
          ]
        : rating === undefined
          ? []
          : [fill(`${at}.resistance`, range([0.05 / rating, 0.35 / rating], 'ohm'), 'small fuses lose 50 to 350 mV')]),
      ...(known ? [fill(`${at}.sure-opening`, String(known.sure), `a ${kind} fuse`, known.source)] : []),
      ...(row
        ? [
            fill(
              `${at}.melting`,
              range([row.melting * 0.5, row.melting * 1.5], 'A²·s'),
              'a time-lag fuse of that rating; makes differ by a half',
              'fuse-5x20-time-lag',
            ),
          ]
        : []),
      ...(cable === undefined ? [] : wireFills(book, cable)),
    ];
  });

const loadFills = (book: FillView): Fill[] =>
  book
    .names('loads')
    .filter((name) => book.has(`loads.${name}.stalled`))
    .flatMap((name) => [
      fill(`loads.${name}.thermal-resistance`, '12..35 K/W', 'a servo of standard size'),
      fill(`loads.${name}.most-temperature`, '80 degC', 'case of a servo with a plastic gear'),
    ]);

const enclosureFills = (book: FillView): Fill[] => [
  ...(book.has('site.ambient') ? [fill('enclosure.rise', '10 K', 'a cabinet that is closed and warm')] : []),
  ...(book.has('enclosure.surface')
    ? [fill('enclosure.transfer', '2..4.5 W/(m²·K)', 'walls of wood and plastic', 'cabinet-k-values')]
    : []),
  ...(book.has('enclosure.windows')
    ? [fill('enclosure.transmittance', '0.75..0.85', 'clear sheets', 'glazing-solar')]
    : []),
];

/** Facts that follow from others by tables and experience. */
export const supplyTradeFills = (book: FillView): readonly Fill[] => [
  ...motorFills(book),
  ...driverFills(book),
  ...supplyFills(book),
  ...fuseFills(book),
  ...loadFills(book),
  ...enclosureFills(book),
];
