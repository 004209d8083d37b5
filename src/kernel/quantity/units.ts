/** The unit table: every unit that is known by name, with its exact factor to SI. */
import { exact, ONE, power, ten, times, ZERO } from './exact.ts';
import type { Exact } from './exact.ts';
import { vectorOf } from './dimensions.ts';
import type { Vector } from './dimensions.ts';

/** A unit as an author wrote it. Plain data: it may be cloned and sent to a worker. */
export interface Unit {
  /** As authored. */
  readonly text: string;
  /** As printed: `kg-cm` for a torque prints as `kgf·cm`. */
  readonly print: string;
  /** The same on a terminal that knows ASCII only. */
  readonly ascii: string;
  readonly vector: Vector;
  /** The SI value is value·num/den + offset; num and den are whole numbers unless the factor contains π. */
  readonly num: number;
  readonly den: number;
  readonly offset: number;
  readonly currency?: string;
  /** `awg`: a gauge number, no factor. */
  readonly scale: 'linear' | 'awg';
}

export interface Atom {
  readonly id: string;
  readonly print: string;
  readonly ascii: string;
  readonly vector: Vector;
  readonly factor: Exact;
  /** Power of π in the factor. */
  readonly pi: number;
  readonly offset: Exact;
  readonly currency?: string;
  /** The unit of weight that the trade means by this unit of mass in a force or torque. */
  readonly weight?: string;
  /** Stands first and alone above the fraction bar: a percent of a newton is not a unit. */
  readonly lonely: boolean;
}

export interface Prefix {
  readonly id: string;
  readonly exponent: number;
}

export interface Spelling {
  readonly atom: Atom;
  readonly prefix: Prefix;
}

const NO_PREFIX: Prefix = { id: '', exponent: 0 };
const PREFIXES: Readonly<Record<string, number>> = {
  p: -12,
  n: -9,
  µ: -6,
  m: -3,
  c: -2,
  d: -1,
  h: 2,
  k: 3,
  M: 6,
  G: 9,
};

interface Entry {
  /** Other spellings that take the same prefixes. */
  readonly stems?: string;
  /** Other spellings that take none. */
  readonly also?: string;
  readonly prefixes?: string;
  readonly pi?: number;
  readonly offset?: Exact;
  readonly currency?: string;
  readonly weight?: string;
  readonly lonely?: boolean;
  readonly print?: string;
  readonly ascii?: string;
}

const spellings = new Map<string, Spelling>();
const atoms = new Map<string, Atom>();

const claim = (text: string, spelling: Spelling): void => {
  if (spellings.has(text)) throw new RangeError(`The unit "${text}" is in the table twice.`);
  spellings.set(text, spelling);
};

const add = (id: string, vector: string, factor: Exact, entry: Entry = {}): void => {
  const { pi = 0, offset = ZERO, currency, weight, lonely = false, print = id, ascii = print } = entry;
  const atom: Atom = { id, print, ascii, vector: vectorOf(vector), factor, pi, offset, currency, weight, lonely };
  atoms.set(id, atom);
  const words = (text = ''): string[] => text.split(' ').filter((w) => w !== '');
  for (const stem of [id, ...words(entry.stems)]) {
    claim(stem, { atom, prefix: NO_PREFIX });
    for (const p of words(entry.prefixes)) {
      const prefix = { id: p, exponent: PREFIXES[p] ?? 0 };
      claim(p + stem, { atom, prefix });
      if (p === 'µ') claim(`u${stem}`, { atom, prefix });
    }
  }
  for (const word of words(entry.also)) claim(word, { atom, prefix: NO_PREFIX });
};

/** Standard gravity [m/s²], exact by definition. */
export const STANDARD_GRAVITY_EXACT = exact(980_665, 100_000);

const g0 = STANDARD_GRAVITY_EXACT;
const inch = exact(254, 10_000);
const pound = exact(45_359_237, 100_000_000);
const ounce = times(pound, exact(1, 16));
const gram = exact(1, 1000);

// Length, area, volume
add('m', 'm', ONE, { prefixes: 'n µ m c d k', also: 'metre metres meter meters' });
add('in', 'm', inch, { also: '" inch inches' });
add('ft', 'm', times(inch, exact(12)), { also: "' foot feet" });
add('yd', 'm', times(inch, exact(36)), { also: 'yard yards' });
add('thou', 'm', times(inch, gram));
add('L', 'm3', gram, { prefixes: 'm c', stems: 'l', also: 'litre litres liter liters' });
add('cmil', 'm2', times(power(times(inch, gram), 2), exact(1, 4)), { pi: 1, prefixes: 'k', also: 'cmils' });

// Mass and force
add('g', 'kg', gram, { prefixes: 'µ m k', also: 'gram grams', weight: 'gf' });
add('lb', 'kg', pound, { also: 'lbs pound pounds', weight: 'lbf' });
add('oz', 'kg', ounce, { also: 'ounce ounces', weight: 'ozf' });
add('N', 'kg m s-2', ONE, { prefixes: 'µ m c k M', also: 'newton newtons' });
add('gf', 'kg m s-2', times(gram, g0), { prefixes: 'k' });
add('lbf', 'kg m s-2', times(pound, g0));
add('ozf', 'kg m s-2', times(ounce, g0));
add('Pa', 'kg m-1 s-2', ONE, { prefixes: 'h k M G' });
add('bar', 'kg m-1 s-2', ten(5), { prefixes: 'm' });
add('psi', 'kg m-1 s-2', times(times(pound, g0), power(inch, -2)), { prefixes: 'k' });

// Time and turning
add('s', 's', ONE, { prefixes: 'n µ m', also: 'sec secs second seconds' });
add('min', 's', exact(60), { also: 'mins minute minutes' });
add('h', 's', exact(3600), { also: 'hr hrs hour hours' });
add('day', 's', exact(86_400), { also: 'd days' });
add('week', 's', exact(7 * 86_400), { also: 'weeks' });
// A year of running hours and bills: 8760 h.
add('year', 's', exact(365 * 86_400), { also: 'yr years' });
add('Hz', 's-1', ONE, { prefixes: 'k M G', also: 'hertz' });
add('rad', 'rad', ONE, { prefixes: 'm', also: 'radian radians' });
add('°', 'rad', exact(1, 180), { pi: 1, ascii: 'deg', also: 'deg degs degree degrees' });
add('arcmin', 'rad', exact(1, 180 * 60), { pi: 1 });
add('arcsec', 'rad', exact(1, 180 * 3600), { pi: 1 });
add('rev', 'rad', exact(2), { pi: 1, also: 'r revs revolution revolutions turn turns' });
add('rpm', 's-1 rad', exact(2, 60), { pi: 1, prefixes: 'k', also: 'RPM' });
// Read as g where an acceleration is wanted, and printed so.
add('gn', 'm s-2', g0, { print: 'g' });

// Energy and electricity
add('J', 'kg m2 s-2 rad', ONE, { prefixes: 'm k M', also: 'joule joules' });
add('W', 'kg m2 s-3 rad', ONE, { prefixes: 'µ m k M', also: 'watt watts' });
add('Wh', 'kg m2 s-2 rad', exact(3600), { prefixes: 'm k M' });
add('VA', 'kg m2 s-3 rad', ONE, { prefixes: 'k' });
add('A', 'A', ONE, { prefixes: 'p n µ m k', also: 'amp amps ampere amperes' });
add('V', 'kg m2 s-3 A-1 rad', ONE, { prefixes: 'n µ m k', also: 'volt volts' });
add('Ω', 'kg m2 s-3 A-2 rad', ONE, { prefixes: 'µ m k M G', stems: 'ohm ohms Ohm Ohms', ascii: 'ohm' });
add('S', 'kg-1 m-2 s3 A2 rad-1', ONE, { prefixes: 'µ m k M' });
add('H', 'kg m2 s-2 A-2 rad', ONE, { prefixes: 'n µ m' });
add('F', 'kg-1 m-2 s4 A2 rad-1', ONE, { prefixes: 'p n µ m' });
add('C', 'A s', ONE, { prefixes: 'µ m' });
add('Ah', 'A s', exact(3600), { prefixes: 'm' });

// Temperature
add('K', 'K', ONE, { prefixes: 'm' });
add('°C', 'K', ONE, { offset: exact(27_315, 100), ascii: 'degC', also: '℃ degC degc DegC celsius' });
add('°F', 'K', exact(5, 9), {
  offset: times(exact(45_967, 100), exact(5, 9)),
  ascii: 'degF',
  also: '℉ degF degf DegF fahrenheit',
});

// Shares, counted things, money
add('%', '', exact(1, 100), { lonely: true, also: 'percent' });
add('‰', '', exact(1, 1000), { lonely: true, ascii: 'permille', also: 'permille permil' });
add('ppm', '', exact(1, 1_000_000), { lonely: true });
const counted = 'play cycle swing release step microstep pulse layer piece pair core time';
for (const one of counted.split(' ')) add(`${one}s`, 'each', ONE, { also: one, lonely: true });
for (const currency of 'EUR USD GBP CHF AUD CAD CZK DKK INR JPY NOK NZD PLN SEK'.split(' ')) {
  add(currency, 'money', ONE, { currency, also: { EUR: '€', GBP: '£' }[currency] });
}
// The sign for any currency, for results whose currency nobody named.
add('¤', 'money', ONE, { currency: '¤', ascii: 'money' });

for (const [short, long] of [
  ['mm', 'millimetre millimeter'],
  ['cm', 'centimetre centimeter'],
  ['kg', 'kilogram'],
  ['ms', 'millisecond'],
  ['mA', 'milliamp milliampere'],
  ['kW', 'kilowatt'],
] as const) {
  const spelling = spellings.get(short);
  if (spelling !== undefined)
    for (const word of long.split(' ')) for (const end of ['', 's']) claim(word + end, spelling);
}

export const KNOWN: ReadonlyMap<string, Spelling> = spellings;

/** The unit of weight for a unit of mass with the same prefix: kg gives kgf. */
export const asWeight = ({ atom, prefix }: Spelling): Spelling | undefined => {
  const weight = atom.weight === undefined ? undefined : atoms.get(atom.weight);
  return weight && { atom: weight, prefix };
};

/** Factor of a spelling to SI, with its prefix; π apart. */
export const factorOf = ({ atom, prefix }: Spelling): Exact => times(atom.factor, ten(prefix.exponent));

/** Unit letters that run together as people type them: 1.9Nm, 18 kgcm, 270 ozin, 0.2 Vs/rad. */
const RUNS: readonly (readonly [first: RegExp, second: RegExp])[] = [
  [/^[mckM]?N$/, /^[cm]?m$/],
  [/^kgf?$/, /^[cm]?m$/],
  [/^gf?$/, /^[cm]m$/],
  [/^(oz|lb)f?$/, /^(in|ft)$/],
  [/^(in|ft)$/, /^(oz|lb)f?$/],
  [/^m?V$/, /^s$/],
  [/^[NA]$/, /^s$/],
];

/** Splits `kgcm` into kg and cm, if the two are commonly written so. */
export const runTogether = (word: string): readonly [string, string] | undefined => {
  for (let cut = 1; cut < word.length; cut += 1) {
    const [first, second] = [word.slice(0, cut), word.slice(cut)];
    if (RUNS.some(([a, b]) => a.test(first) && b.test(second))) return [first, second];
  }
  return undefined;
};

/** What a letter means where only one dimension can be meant; elsewhere it means something else or nothing. */
const HERE: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  resistance: { R: 'Ω', k: 'kΩ', K: 'kΩ', M: 'MΩ' },
  capacitance: { p: 'pF', n: 'nF', u: 'µF', µ: 'µF' },
  inductance: { n: 'nH', u: 'µH', µ: 'µH' },
  temperature: { C: '°C', F: '°F' },
  'temperature-difference': { C: '°C', F: '°F' },
  acceleration: { g: 'gn' },
  count: { turn: 'times', turns: 'times' },
};

export const meansHere = (word: string, dimension: string): string | undefined =>
  Object.hasOwn(HERE, dimension) && Object.hasOwn(HERE[dimension] ?? {}, word) ? HERE[dimension]?.[word] : undefined;

/** Words that look like units and are refused with a reason and what to write instead. */
export const REFUSED: Readonly<Record<string, readonly [why: string, instead: string]>> = {
  mil: ['"mil" is a thousandth of an inch to some and a millimetre to others', 'thou|mm'],
  mils: ['"mils" are thousandths of an inch to some and millimetres to others', 'thou|mm'],
  gal: ['a gallon is not the same everywhere', 'L'],
  month: ['a month has no fixed length', 'day|week'],
  months: ['a month has no fixed length', 'days|weeks'],
  hp: ['a horsepower is not the same everywhere', 'W|kW'],
  $: ['"$" stands for several currencies', 'USD|CAD|AUD'],
  ga: ['there is more than one wire gauge', 'AWG|mm²'],
  gauge: ['there is more than one wire gauge', 'AWG|mm²'],
  SWG: ['sizes in SWG are not read', 'mm²|AWG'],
};

/** Words that belong to the key or to a remark, not to the unit. */
export const REMARKS: ReadonlySet<string> = new Set(
  'peak pk rms RMS dc DC ac AC max min. typ nominal approx ca about each total'.split(' '),
);

/** American wire gauge: d = 0.127 mm · 92^((36 − n)/39), from 4/0 (n = −3) to 56. */
export const AWG: Unit = {
  text: 'AWG',
  print: 'AWG',
  ascii: 'AWG',
  vector: vectorOf('m2'),
  num: 1,
  den: 1,
  offset: 0,
  scale: 'awg',
};
export const AWG_LARGEST = -3;
export const AWG_SMALLEST = 56;

/**
 * Area of a solid wire by its gauge: A = (π/4)·(0.127 mm · 92^((36 − n)/39))².
 * @param n gauge number; 0 is 1/0, −3 is 4/0
 * @returns the area [m²]
 * Source: ASTM B258, the formula as commonly quoted; checked against a published table of resistances.
 */
export const awgArea = (n: number): number => {
  const diameter = 127e-6 * 92 ** ((36 - n) / 39);
  return (Math.PI / 4) * diameter * diameter;
};

/**
 * Gauge number of a wire area, the inverse of `awgArea`; not whole where the area is no gauge.
 * @param area [m²]
 */
export const awgNumber = (area: number): number => {
  const diameter = Math.sqrt((4 * area) / Math.PI);
  return 36 - (39 * Math.log(diameter / 127e-6)) / Math.log(92);
};

/** `24`, or `4/0` for −3. */
export const awgName = (n: number): string => (n < 1 && n >= AWG_LARGEST ? `${1 - n}/0` : String(n));
