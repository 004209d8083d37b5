/** The first book: five questions, each of which may stay unanswered, and a text that somebody likes to go on with. */
import type { House } from '../../app/index.ts';
import { isBooleanElsewhere, Quantity, readGiven } from '../../contract/index.ts';
import { nearest } from '../../kernel/nearest.ts';
import { listed, quote } from '../../engine/read/problem.ts';
import { writtenValue } from '../../engine/read/snippet.ts';
import type { CatalogueRow } from '../../engine/snapshot.ts';
import type { BookText, FirstChoice, FirstFacts } from '../desk/engine.ts';
import { firstText, type FirstMotor, type FirstSupply } from './first-text.ts';

type Name = keyof FirstFacts;
type Problems = Readonly<Partial<Record<Name, string>>>;
interface Read<T> {
  readonly value?: T;
  /** What is wrong with the answer, and what would do. */
  readonly says?: string;
}

const MAIN = 'book.yaml';
const LONGEST = 100;
/** Motors are not driven from less. */
const LEAST_VOLTS = 12;

const boards: Readonly<Record<string, string>> = {
  ATmega328P: 'small board, 8 bits, signals of 5 V',
  ATmega2560: 'large board, 8 bits, signals of 5 V',
  ESP32: 'board with radio, signals of 3.3 V',
  RP2040: 'small board, 32 bits, signals of 3.3 V',
  STM32F4: 'board of a machine controller, 32 bits, signals of 3.3 V',
};

const players: Readonly<Record<string, string>> = {
  'age 3 and over': 'children who cannot read yet, and everybody else',
  'age 8 and over': 'children who read',
  adults: 'grown-ups only',
  'staff only': 'people who were shown how',
};

/** What a supply of the catalogue gives to motors; nothing for converters, which want a supply themselves. */
const railsOf = ({ says, keys }: CatalogueRow): FirstSupply['rails'] | undefined => {
  const [, volts, limit] = /output of ([\d.]+) V and ([\d.]+) A/.exec(says) ?? [];
  if (volts !== undefined && limit !== undefined)
    return Number(volts) < LEAST_VOLTS
      ? undefined
      : [{ name: `${volts}V`, volts: `${volts} V ±2%`, limit: `${limit} A` }];
  const { minimum } = keys;
  if (typeof minimum !== 'object' || minimum === null) return undefined;
  return Object.keys(minimum).map((name) => ({ name, volts: `${name.replace(/V$/, '').replace('V', '.')} V ±5%` }));
};

const textIn = (row: CatalogueRow, key: string): string | undefined => {
  const value = row.keys[key];
  return typeof value === 'string' ? value : undefined;
};

interface Offered {
  readonly motors: ReadonlyMap<string, FirstMotor>;
  readonly supplies: ReadonlyMap<string, FirstSupply>;
  readonly says: ReadonlyMap<string, string>;
}

const offeredBy = (house: Pick<House, 'catalogue'>): Offered => {
  const motors = new Map<string, FirstMotor>();
  const supplies = new Map<string, FirstSupply>();
  const says = new Map<string, string>();
  for (const row of house.catalogue.values()) {
    const { name } = row;
    const current = row.kind === 'stepper' ? textIn(row, 'rated-current') : undefined;
    const rails = current === undefined ? railsOf(row) : undefined;
    if (current !== undefined) motors.set(name, { part: name, current });
    if (rails !== undefined) supplies.set(name, { part: name, rails });
    if (current !== undefined || rails !== undefined) says.set(name, row.says);
  }
  return { motors, supplies, says };
};

type Asking = Omit<FirstChoice, 'name' | 'words'> & { readonly words?: readonly string[] };

const reaches = 'How far the belts and the hoist must travel; with the speed it says how long a play takes.';

const askingOf = ({ motors, supplies }: Offered): Readonly<Record<Name, Asking>> => ({
  title: { asks: 'What is it called?', because: 'The name stands on every sheet.', example: 'Low Tide' },
  width: { asks: 'How far must it reach from side to side?', because: reaches, example: '560 mm' },
  depth: { asks: 'How far must it reach from front to back?', because: reaches, example: '400 mm' },
  height: {
    asks: 'How far must it reach down?',
    because: 'A load on a longer line swings more slowly, and for longer.',
    example: '700 mm',
  },
  players: {
    asks: 'Who plays with it?',
    because: 'What is safe for grown-ups is not for children.',
    words: Object.keys(players),
    example: 'age 3 and over',
  },
  motor: {
    asks: 'Which motor lies in the drawer?',
    because: 'Frame and length tell torque and inertia roughly; measuring tells them better.',
    words: [...motors.keys()],
    example: [...motors.keys()][0] ?? '',
  },
  supply: {
    asks: 'Which supply feeds the motors?',
    because: 'Its voltage decides how fast a motor still has torque.',
    words: [...supplies.keys()],
    example: [...supplies.keys()][0] ?? '',
  },
  board: {
    asks: 'Which board controls it?',
    because: 'It wants a supply of its own, and decides the signals.',
    words: Object.keys(boards),
    example: 'ATmega2560',
  },
});

export const firstChoices = (house: Pick<House, 'catalogue'>): readonly FirstChoice[] => {
  const offered = offeredBy(house);
  const meansOf = (word: string): string => players[word] ?? boards[word] ?? offered.says.get(word) ?? '';
  return Object.entries(askingOf(offered)).map(([name, { words = [], ...asking }]) => ({
    name: name as Name,
    ...asking,
    words: words.map((word) => ({ word, means: meansOf(word) })),
  }));
};

/** A text as an author writes it: in quotes where a reader of YAML might take it for something else. */
const textValue = (text: string): string => {
  const isPlain = /^\p{L}[\p{L}\p{N} .,()'+-]*$/u.test(text) && !isBooleanElsewhere(text) && !/^null$/i.test(text);
  return isPlain ? text : JSON.stringify(text);
};

const readLine = (text: string, means: string): Read<string> => {
  if (/[\p{Cc}\u2028\u2029]/u.test(text)) return { says: `${means} is one line, without control characters.` };
  if (text.length > LONGEST)
    return {
      says: `${means} has ${text.length} characters here. At most ${LONGEST} would do; more stands under about.`,
    };
  return { value: textValue(text) };
};

const readWord = <T>(text: string, words: ReadonlyMap<string, T>, means: string): Read<T> => {
  const value = words.get(text);
  if (value !== undefined) return { value };
  const near = nearest(text, [...words.keys()]);
  return {
    says: `${quote(text)} is no ${means} that is known here. ${near ? `Did you mean ${near}?` : `${listed([...words.keys()])} would do.`} Leave it out when yours is not there: it can be described in the book.`,
  };
};

const readLength = (text: string, house: Pick<House, 'schema'>): Read<string> => {
  const info = house.schema.keyInfo('axes.x.travel', { axes: { x: { drive: 'belt' } } });
  if (!info?.of) throw new TypeError('the schema has no travel');
  const read = readGiven(text, info.of, { ...info, range: 'exact' }, 'stated');
  return read instanceof Quantity ? { value: writtenValue(text, true) } : { says: `${read.what} ${read.allowed}` };
};

/** An answer that was left out, or left empty, is not stated. */
const answered = <T>(given: string | undefined, read: (text: string) => Read<T>): Read<T> => {
  const text = (given ?? '').trim();
  return text === '' ? {} : read(text);
};

/** A book of the answers. What was not answered is not stated, and what the book begins with is marked as a guess. */
export const firstBook = (
  facts: Partial<FirstFacts>,
  house: Pick<House, 'catalogue' | 'schema'>,
): BookText | { readonly problems: Problems } => {
  const offered = offeredBy(house);
  const length = (text: string): Read<string> => readLength(text, house);
  const words = new Map(Object.keys(boards).map((word) => [word, word]));
  const answers = {
    title: answered(facts.title, (text) => readLine(text, 'A title')),
    width: answered(facts.width, length),
    depth: answered(facts.depth, length),
    height: answered(facts.height, length),
    players: answered(facts.players, (text) => readLine(text, 'Who plays')),
    motor: answered(facts.motor, (text) => readWord(text, offered.motors, 'motor')),
    supply: answered(facts.supply, (text) => readWord(text, offered.supplies, 'power supply')),
    board: answered(facts.board, (text) => readWord(text, words, 'board')),
  } satisfies Readonly<Record<Name, Read<unknown>>>;
  const problems = Object.entries(answers).flatMap(([name, { says }]) => (says === undefined ? [] : [[name, says]]));
  if (problems.length > 0) return { problems: Object.fromEntries(problems) as Problems };
  const text = firstText({
    title: answers.title.value ?? 'My machine',
    width: answers.width.value,
    depth: answers.depth.value,
    height: answers.height.value,
    players: answers.players.value,
    motor: answers.motor.value,
    supply: answers.supply.value,
    board: answers.board.value,
  });
  return { main: MAIN, files: { [MAIN]: text } };
};
