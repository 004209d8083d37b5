/**
 * What a quantity can be. Angle is a base of its own, so that a torque (N·m) is not an energy (J = N·m·rad);
 * so are counted things and money.
 */
export const BASES = ['m', 'kg', 's', 'A', 'K', 'rad', 'each', 'money'] as const;

/** Exponents of the bases, in the order of `BASES`. */
export type Vector = readonly number[];

/** Reads `kg m2 s-2` as exponents. */
export const vectorOf = (spec: string): Vector => {
  const exponents = BASES.map(() => 0);
  for (const part of spec.split(' ').filter((p) => p !== '')) {
    const [, base = '', exponent = ''] = /^([A-Za-z]+)(-?\d*)$/.exec(part) ?? [];
    const index = BASES.findIndex((b) => b === base);
    if (index < 0) throw new RangeError(`"${part}" is no base of a dimension.`);
    exponents[index] = exponent === '' ? 1 : Number(exponent);
  }
  return exponents;
};

export const sameVector = (a: Vector, b: Vector): boolean => a.every((exponent, i) => exponent === b[i]);

export interface DimensionInfo<Name extends string = string> {
  readonly name: Name;
  /** With its article: "a speed". */
  readonly words: string;
  /** The SI unit in which values are held. */
  readonly si: string;
  readonly vector: Vector;
  /** Other vectors that mean the same thing (steps/s for a frequency). */
  readonly also: readonly Vector[];
  /** A number without a unit is a value of this dimension. */
  readonly bare: boolean;
  /** Units that a person who forgot one probably meant, the likeliest first. */
  readonly likely: readonly string[];
  /** Units for printing when the author gave none, each with the SI size from which it is used. */
  readonly ladder: readonly (readonly [unit: string, from: number])[];
  readonly examples: readonly string[];
}

/**
 * One row a dimension: words | SI unit | exponents | likely units | ladder of printing units | examples | also | bare.
 * A `1` among units is the plain number. Where two share their exponents, the plainer one stands first: it gives the
 * name to a unit that is out of place.
 */
const TABLE = {
  length: 'a length | m | m | mm, cm, in | µm:0 mm:1e-5 m:10 | 560 mm, 3/4 in, 3.4 m',
  area: 'an area | m² | m2 | mm², cm², in² | mm²:0 cm²:1e-3 m²:0.1 | 7.1 m², 150 mm²',
  'conductor-area': 'a wire size | m² | m2 | mm², AWG | mm²:0 | 0.5 mm², 24 AWG',
  volume: 'a volume | m³ | m3 | cm³, L, in³ | mm³:0 cm³:1e-7 L:1e-3 m³:1 | 2 L, 40 cm³',
  'second-moment': 'a second moment of area | m⁴ | m4 | mm⁴, cm⁴, in⁴ | mm⁴:0 cm⁴:1e-8 | 4.2 cm⁴',
  mass: 'a mass | kg | kg | g, kg, oz | mg:0 g:1e-4 kg:1 | 620 g, 2.4..2.6 kg, 7 lb',
  time: 'a time | s | s | s, ms, min | ns:0 µs:1e-6 ms:1e-3 s:0.1 min:300 h:7200 day:172800 | 20 s, 400 ms, 8 h',
  speed: 'a speed | m/s | m s-1 | mm/s, m/min, in/s | mm/s:0 m/s:10 | 220 mm/s, 12 m/min',
  acceleration: 'an acceleration | m/s² | m s-2 | mm/s², m/s², in/s² | mm/s²:0 m/s²:5 | 700 mm/s², 0.5 m/s²',
  jerk: 'a jerk | m/s³ | m s-3 | mm/s³, m/s³, in/s³ | mm/s³:0 m/s³:5 | 10 m/s³',
  angle: 'an angle | rad | rad | °, rad, rev | °:0 rev:37.69 | 1.8°, 0.3 rad, 3 rev',
  'angular-speed': 'a turning speed | rad/s | s-1 rad | rpm, rev/s, rad/s | rpm:0 | 330 rpm, 35 rad/s',
  'angular-acceleration': 'an angular acceleration | rad/s² | s-2 rad | rad/s², rev/s² | rad/s²:0 | 110 rad/s²',
  force: 'a force | N | m kg s-2 | N, kgf, lbf | mN:0 N:0.1 kN:1e4 | 5..8 N, 7 lbf',
  torque: 'a torque | N·m | m2 kg s-2 | N·m, kgf·cm, ozf·in | mN·m:0 N·m:0.1 | 1.9 N·m, 18 kgf·cm, 270 ozf·in',
  energy: 'an energy | J | m2 kg s-2 rad | J, Wh | mJ:0 J:0.1 kJ:1e4 kWh:3.6e5 | 3.5 J, 43.8 kWh',
  power: 'a power | W | m2 kg s-3 rad | W, kW | µW:0 mW:1e-3 W:0.1 kW:1e4 | 4.5 W',
  inertia:
    'a moment of inertia | kg·m² | m2 kg | g·cm², kg·cm², oz·in² | g·cm²:0 kg·cm²:1e-3 kg·m²:0.1 | 300 g·cm², 30 kg·mm²',
  stiffness: 'a stiffness | N/m | kg s-2 | N/mm, kgf/mm, lbf/in | N/m:0 N/mm:100 | 36 N/mm, 63 N/m',
  'force-per-length': 'a force per length | N/m | kg s-2 | N/mm, N/m, lbf/in | N/m:0 N/mm:1e3 | 1.02 N/mm, 25 lbf/in',
  'axial-stiffness': 'an axial stiffness | N | m kg s-2 | kN, N, lbf | N:0 kN:1e3 | 10..25 kN',
  'bending-stiffness': 'a bending stiffness | N·m² | m3 kg s-2 | N·m² | N·m²:0 | 840 N·m²',
  'torsional-stiffness':
    'a torsional stiffness | N·m/rad | m2 kg s-2 rad-1 | N·m/rad, N·m/deg | N·m/rad:0 | 63 N·m/rad',
  damping: 'a damping | N·s/m | kg s-1 | N·s/m | N·s/m:0 | 2.1 N·s/m',
  'rotary-damping':
    'a rotary damping | N·m·s/rad | m2 kg s-1 rad-1 | N·m·s/rad, N·m/krpm | mN·m·s/rad:0 N·m·s/rad:0.1 | 0.002 N·m·s/rad',
  pressure: 'a pressure | Pa | m-1 kg s-2 | MPa, bar, psi | Pa:0 kPa:1e3 MPa:1e6 GPa:1e9 | 9 GPa, 6 bar, 30 N/mm²',
  density: 'a density | kg/m³ | m-3 kg | kg/m³, g/cm³ | kg/m³:0 | 680 kg/m³',
  'mass-per-length': 'a mass per length | kg/m | m-1 kg | g/m, kg/m | g/m:0 kg/m:1 | 8.4 g/m',
  'mass-per-area': 'a mass per area | kg/m² | m-2 kg | kg/m², g/cm² | kg/m²:0 | 12.2 kg/m²',
  flow: 'a flow | m³/s | m3 s-1 | m³/h, L/min | L/min:0 m³/h:1e-3 | 40 m³/h',
  'length-per-angle': 'a travel per turn | m/rad | m rad-1 | mm/rev, in/rev | mm/rev:0 | 8 mm/rev',
  current: 'a current | A | A | A, mA | nA:0 µA:1e-6 mA:1e-3 A:0.1 | 1.2 A, 350 mA',
  voltage: 'a voltage | V | m2 kg s-3 A-1 rad | V, mV | µV:0 mV:1e-3 V:0.1 kV:1e4 | 24 V ±2%, 12 V',
  resistance: 'a resistance | Ω | m2 kg s-3 A-2 rad | ohm, kohm | mΩ:0 Ω:0.1 kΩ:1e3 MΩ:1e6 | 0.95..1.1 ohm, 10k',
  'resistance-per-length':
    'a resistance per length | Ω/m | m kg s-3 A-2 rad | ohm/km, ohm/100 m | Ω/km:0 Ω/m:1 | 9.38 ohm/100 m, 39 ohm/km',
  resistivity: 'a resistivity | Ω·m | m3 kg s-3 A-2 rad | ohm·mm²/m | Ω·mm²/m:0 | 0.017241 ohm·mm²/m',
  conductance: 'a conductance | S | m-2 kg-1 s3 A2 rad-1 | S, mS | µS:0 mS:1e-3 S:0.1 | 20 mS',
  inductance: 'an inductance | H | m2 kg s-2 A-2 rad | mH, µH | nH:0 µH:1e-6 mH:1e-4 H:1 | 2.5 mH, 100 µH',
  'inductance-per-length': 'an inductance per length | H/m | m kg s-2 A-2 rad | µH/m | µH/m:0 | 0.6 µH/m',
  capacitance: 'a capacitance | F | m-2 kg-1 s4 A2 rad-1 | µF, nF | pF:0 nF:1e-9 µF:1e-6 mF:0.01 | 100 nF, 4u7',
  'capacitance-per-length': 'a capacitance per length | F/m | m-3 kg-1 s4 A2 rad-1 | pF/m | pF/m:0 nF/m:1e-9 | 52 pF/m',
  charge: 'a charge | C | s A | Ah, C | µC:0 mC:1e-3 C:1 Ah:360 | 2.2 Ah, 40 mC',
  'current-density': 'a current density | A/m² | m-2 A | A/mm² | A/mm²:0 | 6 A/mm²',
  'current-squared-time': 'a let-through | A²·s | s A2 | A²·s | A²·s:0 | 18 A²·s',
  'emf-constant':
    'a back-EMF constant | V·s/rad | m2 kg s-2 A-1 | V·s/rad, V/krpm | V·s/rad:0 | 0.225 V·s/rad, 23.6 V/krpm',
  'torque-constant': 'a torque constant | N·m/A | m2 kg s-2 A-1 | N·m/A, ozf·in/A | N·m/A:0 | 0.318 N·m/A',
  frequency: 'a frequency | Hz | s-1 | Hz, kHz | Hz:0 kHz:1e3 MHz:1e6 | 60 Hz, 20 kHz, 4000 steps/s | s-1 each',
  rate: 'a rate | 1/s | s-1 | /day, /h, /min | /day:0 /h:0.00111 /min:0.0166 /s:1 | 60..140 /day, 1/h | s-1 each',
  temperature: 'a temperature | K | K | °C, °F | °C:0 | 8..32 °C, 72 °F',
  'temperature-difference': 'a temperature difference | K | K | K, °F | K:0 | 40 K, 15 °C',
  'temperature-coefficient': 'a change per kelvin | 1/K | K-1 | /K, %/K | /K:0 | 0.00393 /K, 23 ppm/K',
  'thermal-resistance': 'a thermal resistance | K/W | m-2 kg-1 s3 K rad-1 | K/W | K/W:0 | 3.2 K/W, 4 °C/W',
  'heat-capacity': 'a heat capacity | J/K | m2 kg s-2 K-1 rad | J/K, Wh/K | J/K:0 | 310 J/K',
  'specific-heat': 'a specific heat | J/(kg·K) | m2 s-2 K-1 rad | J/(kg·K) | J/(kg·K):0 | 385 J/(kg·K)',
  'thermal-conductivity': 'a thermal conductivity | W/(m·K) | m kg s-3 K-1 rad | W/(m·K) | W/(m·K):0 | 0.13 W/(m·K)',
  'heat-transfer': 'a heat transfer coefficient | W/(m²·K) | kg s-3 K-1 rad | W/(m²·K) | W/(m²·K):0 | 8 W/(m²·K)',
  irradiance: 'a power per area | W/m² | kg s-3 rad | W/m² | W/m²:0 | 600 W/m²',
  money: 'an amount of money | ¤ | money | EUR, USD, GBP | ¤:0 | 24 EUR, 18 CHF',
  'money-per-energy':
    'a price of energy | ¤/J | m-2 kg-1 s2 rad-1 money | EUR/kWh, USD/kWh, GBP/kWh | ¤/kWh:0 | 0.28 EUR/kWh',
  'money-per-time': 'a price per time | ¤/s | s-1 money | EUR/h, USD/h, GBP/h | ¤/h:0 | 35 EUR/h',
  'money-per-length': 'a price per length | ¤/m | m-1 money | EUR/m, USD/ft, GBP/m | ¤/m:0 | 1.20 EUR/m',
  'money-per-area': 'a price per area | ¤/m² | m-2 money | EUR/m², USD/ft², GBP/m² | ¤/m²:0 | 44 EUR/m²',
  'money-per-mass': 'a price per mass | ¤/kg | kg-1 money | EUR/kg, USD/lb, GBP/kg | ¤/kg:0 | 9 EUR/kg',
  'money-per-count':
    'a price per piece | ¤ | each-1 money | EUR/piece, USD/piece, GBP/piece | ¤/piece:0 | 0.4 EUR/piece',
  ratio: 'a ratio | 1 | - | 1, % | 1:0 | 0.7, 70 % | - | bare',
  duty: 'a share of the time | 1 | - | 1, % | %:0 | 70 %, 9 h/day, 0.4 | - | bare',
  count: 'a count | 1 | each | 1 | 1:0 | 20, 6..14 swings | - | bare',
  'count-per-length': 'a count per length | 1/m | m-1 each | steps/mm, steps/in | /mm:0 | 80 steps/mm | m-1',
  'count-per-angle': 'a count per turn | 1/rad | rad-1 each | steps/rev, steps/deg | /rev:0 | 200 steps/rev | rad-1',
} as const;

export type Dimension = keyof typeof TABLE;

const unitText = (text: string): string => (text === '1' ? '' : text);

const infoOf = (name: Dimension): DimensionInfo<Dimension> => {
  const cells = TABLE[name].split('|').map((cell) => cell.trim());
  const [words = '', si = '', vector = '', likely = '', ladder = '', examples = '', also = '-', bare = ''] = cells;
  const vectors = (cell: string): Vector[] => (cell === '-' ? [] : cell.split(', ').map(vectorOf));
  return {
    name,
    words,
    si,
    vector: vectorOf(vector === '-' ? '' : vector),
    also: vectors(also),
    bare: bare === 'bare',
    likely: likely.split(', ').map(unitText),
    ladder: ladder.split(' ').map((step) => {
      const [unit = '', from = ''] = step.split(':');
      return [unitText(unit), Number(from)] as const;
    }),
    examples: examples.split(', '),
  };
};

export const dimensions: readonly DimensionInfo<Dimension>[] = (Object.keys(TABLE) as Dimension[]).map(infoOf);

const byName: ReadonlyMap<string, DimensionInfo<Dimension>> = new Map(dimensions.map((info) => [info.name, info]));

/** Everything that is said of one dimension. */
export const dimensionInfo = (name: Dimension): DimensionInfo<Dimension> => {
  const info = byName.get(name);
  if (info === undefined) throw new RangeError(`There is no dimension "${name}".`);
  return info;
};

/** Whether a unit with this vector can write a value of this dimension. */
export const fits = (vector: Vector, info: DimensionInfo): boolean =>
  sameVector(vector, info.vector) || info.also.some((other) => sameVector(vector, other));

/** The plainest name for a vector, if it has one. */
export const dimensionOf = (vector: Vector): DimensionInfo<Dimension> | undefined =>
  dimensions.find((info) => fits(vector, info));
