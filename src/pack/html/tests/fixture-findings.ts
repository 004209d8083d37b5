/** Invented findings of every verdict; the numbers agree with each other by hand. */
import { readQuantity, type Dimension } from '../../../kernel/quantity/index.ts';
import type { Finding, Question, WorkingEntry, WorkingInput } from '../../../kernel/report.ts';

const dimensionOf: Readonly<Record<string, Dimension>> = {
  kg: 'mass',
  'mm/s²': 'acceleration',
  N: 'force',
  'g·cm²': 'inertia',
  'N·m': 'torque',
  A: 'current',
  rpm: 'angular-speed',
};

const book = (symbol: string, means: string, text: string, path: string, end?: 'low' | 'high'): WorkingInput => {
  const of = dimensionOf[text.replace(/^[\d.]+ ?/, '')] ?? 'ratio';
  const reading = readQuantity(text, of);
  if (!reading.ok) throw new Error(reading.problem.what);
  const from = { kind: 'book', path, provenance: end ? 'measured' : 'stated', ...(end && { end }) } as const;
  return { symbol, means, text, number: reading.lo, of, from };
};

const radius: WorkingEntry = {
  formula: 'pulley-radius',
  symbol: 'r',
  means: 'pitch radius of the pulley',
  number: 0.006366,
  of: 'length',
  text: '6.37 mm',
  inputs: [
    book('z', 'teeth of the pulley', '20', 'axes.x.pulley.teeth'),
    {
      symbol: 'p',
      means: 'belt pitch',
      text: '2 mm',
      number: 0.002,
      of: 'length',
      from: { kind: 'constant', means: 'pitch of the 2 mm profile', source: { id: 'BELT-1', at: 'table 2' } },
    },
  ],
  steps: [{ symbol: 'r', expression: 'z*p/(2*pi)', number: 0.006366, of: 'length', text: '6.37 mm' }],
  assumes: ['no tooth jumps'],
  source: [{ id: 'BELT-1', at: '§3' }],
  checked: [{ kind: 'published', against: 'table 4, 20 teeth', source: { id: 'BELT-1', at: 'table 4' } }],
  accuracy: 'exact',
};

const torque: WorkingEntry = {
  formula: 'axis-torque',
  symbol: 'T',
  means: 'torque that the motor must give at the end of the ramp',
  number: 0.0656,
  of: 'torque',
  text: '65.6 mN·m',
  inputs: [
    book('m', 'mass that moves', '2.6 kg', 'axes.x.mass', 'high'),
    book('a', 'acceleration', '700 mm/s²', 'axes.x.acceleration'),
    book('F_run', 'running force', '8 N', 'axes.x.running-force', 'high'),
    book('J_rot', 'rotor inertia', '280 g·cm²', 'motors.M1.inertia'),
    {
      symbol: 'r',
      means: 'pitch radius of the pulley',
      text: '6.37 mm',
      number: 0.006366,
      of: 'length',
      from: { kind: 'working', entry: 0 },
    },
  ],
  steps: [
    { symbol: 'F', expression: 'm*a + F_run', number: 9.82, of: 'force', text: '9.82 N' },
    { symbol: 'T', expression: 'F*r + J_rot*a/r', number: 0.0656, of: 'torque', text: '65.6 mN·m' },
  ],
  assumes: ['stiff belt', 'no slip'],
  source: [{ id: 'MECH-2', at: 'ch. 4' }],
  checked: [
    { kind: 'independent', against: 'energy over the ramp' },
    { kind: 'law', against: 'T grows with m at constant a' },
  ],
  accuracy: 'as good as the running force',
};

const capacity: WorkingEntry = {
  formula: 'torque-at-speed',
  symbol: 'T_avail',
  means: 'torque that the motor still has at speed',
  number: 0.0913,
  of: 'torque',
  text: '91.3 mN·m',
  inputs: [
    book('T_hold', 'holding torque', '0.9 N·m', 'motors.M1.holding-torque', 'low'),
    book('I', 'current at this speed', '0.355 A', 'drives.D1.current'),
    book('I_rated', 'rated current', '2.8 A', 'motors.M1.rated-current'),
    book('n', 'speed', '330 rpm', 'axes.x.speed'),
    book('n_c', 'corner speed', '410 rpm', 'motors.M1.corner-speed'),
  ],
  steps: [
    { symbol: 'k', expression: 'n <= n_c ? 1 : (n_c/n)^1.2', number: 1, of: 'ratio', text: '1' },
    { symbol: 'i', expression: 'i^2 - (I/I_rated)^2', number: 0.1268, of: 'ratio', text: '0.127', within: 1e-9 },
    {
      symbol: 'T_avail',
      expression: 'k*T_hold*i*sqrt(1 - (n/(3*n_c))^2)*exp(-1/6)',
      number: 0.0913,
      of: 'torque',
      text: '91.3 mN·m',
    },
  ],
  assumes: ['winding at 60 °C', 'sinusoidal current', 'supply at its lowest'],
  source: [{ id: 'STEP-7', at: '§7.3' }],
  checked: [
    { kind: 'published-secondary', against: 'fig. 5, read off at five speeds', source: { id: 'STEP-7', at: 'fig. 5' } },
    { kind: 'memory', against: 'rule of thumb of the trade' },
  ],
  accuracy: 'about ±15 % at the corner',
};

type Given = Pick<Finding, 'key' | 'verdict' | 'sentence' | 'asks'> & Partial<Finding>;

const finding = (given: Given): Finding => {
  const [code = '', designation = '', mode] = given.key.split(' ');
  return {
    code,
    sheet: 'motion',
    designations: designation.split('+'),
    ...(mode && { mode }),
    sense: 'at-most',
    scenario: [],
    searched: false,
    beside: {},
    uses: [],
    working: [],
    levers: [],
    place: { file: 'book.yaml', line: 41, column: 5 },
    ...given,
  };
};

export const findings: readonly Finding[] = [
  finding({
    key: 'MOTION-010 M1 travel',
    verdict: 'open',
    asks: 'Does M1 keep its steps while it travels?',
    sentence: 'M1 must give 65.6 mN·m at 330 rpm; it has between 63 and 91.3 mN·m.',
    reason: { kind: 'doubt', text: 'the holding torque of a motor without a plate.' },
    demand: { number: 0.0656, of: 'torque', text: '65.6 mN·m' },
    limit: { number: 0.0913, of: 'torque', text: '91.3 mN·m' },
    use: { worst: 1.04, best: 0.72, advised: 0.7 },
    scenario: [
      { path: 'motors.M1.holding-torque', range: 'doubt', end: 'low', number: 0.9, of: 'torque', text: '0.9 N·m' },
      { path: 'axes.x.running-force', range: 'spread', end: 'high', number: 8, of: 'force', text: '8 N' },
    ],
    working: [radius, torque, capacity],
    remedies: [
      {
        says: 'Lower the acceleration of X to 450 mm/s².',
        verdict: 'holds',
        percent: 0.68,
        alsoCures: ['MOTION-030 M1'],
        breaks: [{ key: 'SWING-020 X', before: 'holds', after: 'tight' }],
        edits: [{ path: 'axes.x.acceleration', before: '700 mm/s²', after: '450 mm/s²' }],
      },
    ],
  }),
  finding({
    key: 'MOTION-040 M4 hoist',
    verdict: 'fails',
    asks: 'Does the hoist hold its load with the drives off?',
    sentence: 'With the drives off the load turns M4 with 145 mN·m; its detent holds 60 mN·m.',
    demand: { number: 0.145, of: 'torque', text: '145 mN·m' },
    limit: { number: 0.06, of: 'torque', text: '60 mN·m' },
    use: { worst: 2.42, best: 2.42, advised: 0.7 },
    scenario: [{ path: 'hoist.load', range: 'spread', end: 'high', number: 0.76, of: 'mass', text: '760 g' }],
    working: [radius],
  }),
  finding({
    key: 'MOTION-041 M4 stand-by',
    verdict: 'fails',
    asks: 'Is the hoist braked while nobody plays?',
    sentence: 'Nothing shorts the windings of M4 while the machine stands by.',
    sense: 'yes-no',
    accepted: { because: 'The claw rests in its dock then', until: '2031-05', counts: true },
  }),
  finding({
    key: 'MOTION-030 M1',
    verdict: 'tight',
    asks: 'Does M1 stay cool enough to touch?',
    sentence: 'The case of M1 reaches 61 °C; 65 °C may be touched for a moment.',
    demand: { number: 334, of: 'temperature', text: '61 °C' },
    limit: { number: 338, of: 'temperature', text: '65 °C' },
    use: { worst: 0.9, best: 0.9, advised: 0.8 },
  }),
  ...(['X', 'Y', 'Z'] as const).map((axis, i) =>
    finding({
      key: `MOTION-020 ${axis}`,
      verdict: 'holds',
      asks: `Is the belt of ${axis} strong enough?`,
      sentence: `The belt of ${axis} pulls ${18 + 9 * i} N at most; 120 N is its working load.`,
      demand: { number: 18 + 9 * i, of: 'force', text: `${18 + 9 * i} N` },
      limit: { number: 120, of: 'force', text: '120 N' },
      use: { worst: (18 + 9 * i) / 120, best: (18 + 9 * i) / 120, advised: 0.5 },
    }),
  ),
  finding({
    key: 'MOTION-060 M3',
    verdict: 'not-stated',
    asks: 'Do M2 and M3 pull alike?',
    sentence: 'The inductance of M3 is not stated.',
    missing: ['motors.M3.inductance', 'motors.M3.leads'],
  }),
];

export const questions: readonly Question[] = [
  {
    path: 'motors.M1.holding-torque',
    stands: '0.9–1.3 N·m',
    settles: [{ key: 'MOTION-010 M1 travel', share: 0.8 }],
    narrows: [],
    place: { file: 'book.yaml', line: 63, column: 7 },
    measure: {
      what: 'the holding torque',
      instrument: 'a luggage scale on a 100 mm arm',
      procedure: 'Energise one phase at rated current and pull square to the arm until it slips.',
      error: '±5 %',
      minutes: 15,
    },
  },
  {
    path: 'axes.x.running-force',
    stands: '5–8 N',
    settles: [
      { key: 'MOTION-010 M1 travel', share: 0.3 },
      { key: 'SWING-020 X', share: 1 },
    ],
    narrows: [],
  },
];
