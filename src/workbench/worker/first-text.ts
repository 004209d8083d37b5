/** The text of a first book. */

export interface FirstMotor {
  /** Name of a part in the catalogue. */
  readonly part: string;
  /** Its rated current. */
  readonly current: string;
}

export interface FirstSupply {
  readonly part: string;
  /** The one that feeds the motors first. */
  readonly rails: readonly { readonly name: string; readonly volts: string; readonly limit?: string }[];
}

/** Answers as they stand in a book; what is undefined is not stated. */
export interface Answers {
  readonly title: string;
  readonly width: string | undefined;
  readonly depth: string | undefined;
  readonly height: string | undefined;
  readonly players: string | undefined;
  readonly motor: FirstMotor | undefined;
  readonly supply: FirstSupply | undefined;
  readonly board: string | undefined;
}

/** A map in braces; what is undefined is left out. */
const braces = (keys: Readonly<Record<string, string | undefined>>): string => {
  const stated = Object.entries(keys).flatMap(([key, text]) => (text === undefined ? [] : [`${key}: ${text}`]));
  return stated.length > 0 ? `{ ${stated.join(', ')} }` : '{}';
};

const guess = (text: string): string => `{ is: ${text}, from: guess }`;

const axis = (name: string, drive: string, travel: string | undefined, keys: readonly string[]): readonly string[] => [
  `  ${name}:`,
  `    drive: ${drive}`,
  ...(travel === undefined ? [] : [`    travel: ${travel}`]),
  ...keys.map((key) => `    ${key}`),
];

const axes = ({ width, depth, height }: Answers): readonly string[] => [
  '# Speeds and accelerations are wishes: the sheets say whether they can be had.',
  '# What is marked as a guess waits for a scale, a tape or a stopwatch; the bench says how to measure it.',
  'axes:',
  ...axis('x', 'belt', width, [
    'motors: [M1]',
    'belt: 2GT-6',
    'pulley-teeth: 20',
    `moving-mass: ${guess('1.5..3.5 kg')} # everything that X carries, with the hoist`,
    `running-force: ${guess('3..12 N')}`,
    'speed: 200 mm/s',
    'acceleration: 600 mm/s²',
  ]),
  ...axis('y', 'belt', depth, [
    'motors: [M2]',
    'belt: 2GT-9',
    'pulley-teeth: 20',
    `moving-mass: ${guess('3..7 kg')} # X itself, and what it carries`,
    `running-force: ${guess('5..20 N')}`,
    'speed: 200 mm/s',
    'acceleration: 600 mm/s²',
  ]),
  ...axis('z', 'hoist', height, [
    'motors: [M3]',
    'drum: { diameter: 30 mm }',
    'line: { diameter: 1 mm, kind: braid }',
    `moving-mass: ${guess('400..900 g')} # the claw, without a prize`,
    'load: 0..200 g',
    'speed: 120 mm/s',
    'acceleration: 400 mm/s²',
  ]),
];

const drives = ({ motor, supply }: Answers): readonly string[] => {
  const rail = supply?.rails[0]?.name;
  const names = ['1', '2', '3'];
  return [
    ...(motor
      ? ['# One like it on each axis. A current as peak is the careful reading of a plate.']
      : [
          '# Which motors they are is not stated yet: part: and the name of one in the catalogue, or of one under parts.',
        ]),
    'motors:',
    ...names.map((n) => `  M${n}: ${braces({ part: motor?.part, driver: `D${n}` })}`),
    'drivers:',
    ...names.map(
      (n) =>
        `  D${n}: ${braces({
          rail,
          current: motor && guess(motor.current),
          marked: motor && 'peak',
        })}`,
    ),
  ];
};

const supplies = ({ supply }: Answers): readonly string[] =>
  supply
    ? [
        'supplies:',
        `  G1: { part: ${supply.part}, rails: ${braces(
          Object.fromEntries(
            supply.rails.map(({ name, volts, limit }) => [name, braces({ volts: guess(volts), limit })]),
          ),
        )} }`,
      ]
    : [];

/** Its own rail where the supply has one of 5 V. */
const board = ({ board: name, supply }: Answers): readonly string[] =>
  name === undefined
    ? []
    : [
        'loads:',
        `  board: ${braces({
          rail: supply?.rails.some((rail) => rail.name === '5V') ? '5V' : undefined,
          current: guess('50..300 mA'),
        })} # with an ${name}`,
      ];

const site = ({ players }: Answers): readonly string[] =>
  players === undefined ? [] : ['site:', `  players: ${players}`];

export const firstText = (answers: Answers): string => {
  const sections = [
    [
      '# YAML 1.2',
      '# The facts of one machine. Change a number, and every sheet follows.',
      'book: 1',
      `title: ${answers.title}`,
      'revision: A',
    ],
    site(answers),
    axes(answers),
    ['# How the load hangs and how soon it comes to rest.', `hanging: { halves-after: ${guess('5..20 swings')} }`],
    drives(answers),
    supplies(answers),
    board(answers),
  ];
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
};
