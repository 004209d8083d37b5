/** An invented trade with every kind of part, for tests of the engine: shelves of boards that bear boxes. */
import * as z from 'zod';
import {
  entry,
  factToken,
  nameOf,
  need,
  oneOf,
  pathOf,
  provide,
  quantity,
  text,
  yesNo,
  type Asker,
  type Check,
  type Context,
  type Discipline,
  type Fill,
  type Model,
  type Quantity,
  type Services,
  type Study,
  type Subject,
  type Task,
} from '../../contract/index.ts';
import { atLeast, atMost, constant, formula, mustBe, type Finding, type Value } from '../../kernel/index.ts';
import { createHouse, type House, type Machine } from '../machine.ts';
import type { CatalogueRow } from '../snapshot.ts';

interface Board {
  readonly kind?: string;
  readonly grade?: string;
  readonly width?: Quantity;
  readonly thickness?: Quantity;
  readonly stiffness?: Quantity;
  readonly bears?: Quantity;
}
interface Shelf {
  readonly board?: string;
  readonly span?: Quantity;
  readonly load?: Quantity;
  readonly 'allowed-sag'?: Quantity;
  readonly height?: Quantity;
  readonly passing?: Quantity;
  readonly hum?: Quantity;
  readonly backstop?: boolean;
  readonly note?: string;
}
export interface ShelfBook {
  readonly shelves?: Readonly<Record<string, Shelf>>;
  readonly parts?: Readonly<Record<string, Board>>;
}

const board = {
  grade: oneOf(['thin', 'thick'], { means: 'how thick it looks' }),
  width: quantity('length', { range: 'exact', means: 'width of the board', example: '300 mm' }),
  thickness: quantity('length', {
    range: 'doubt',
    means: 'thickness of the board',
    example: '18 mm',
    measure: { what: 'thickness', instrument: 'caliper', procedure: 'at both ends', error: '±0.1 mm', minutes: 1 },
  }),
  stiffness: quantity('pressure', { range: 'doubt', means: 'stiffness of the wood', example: '10 GPa' }),
  bears: quantity('mass', { range: 'doubt', means: 'mass that it bears', example: '40 kg' }),
};
const shelf = z.strictObject({
  board: nameOf('parts', { means: 'which board it is', example: 'plank-18' }).optional(),
  span: quantity('length', { range: 'exact', means: 'span of the shelf', example: '800 mm', to: 3 }).optional(),
  load: quantity('mass', { range: 'spread', means: 'mass of the boxes', example: '10..20 kg' }).optional(),
  'allowed-sag': quantity('length', { range: 'exact', means: 'sag that is allowed', example: '2 mm' }).optional(),
  height: quantity('length', { range: 'doubt', means: 'height of the shelf', example: '1.2 m' }).optional(),
  passing: quantity('frequency', { range: 'spread', means: 'what passing carts shake', example: '2..9 Hz' }).optional(),
  hum: quantity('frequency', { range: 'doubt', means: 'at which it hums', example: '5 Hz' }).optional(),
  backstop: yesNo({ means: 'nothing falls behind it' }).optional(),
  note: text({ means: 'a note', example: 'by the door' }).optional(),
});

export const sagOf = formula({
  name: 'bench-sag',
  gives: { symbol: 'f', of: 'length', means: 'sag at the middle' },
  takes: {
    load: { symbol: 'm', of: 'mass', from: 0, means: 'load, evenly spread', slope: 'up', typical: [1, 20] },
    span: { symbol: 'L', of: 'length', above: 0, to: 2.5, means: 'span', slope: 'up', typical: [0.5, 1] },
    width: { symbol: 'b', of: 'length', above: 0, means: 'width', slope: 'down', typical: [0.2, 0.4] },
    thickness: { symbol: 't', of: 'length', above: 0, means: 'thickness', slope: 'down', typical: [0.015, 0.03] },
    stiffness: { symbol: 'E', of: 'pressure', above: 0, means: 'stiffness', slope: 'down', typical: [8e9, 1.2e10] },
  },
  steps: ({ load, span, width, thickness, stiffness }, step) =>
    step(
      'f',
      '5*m*9.80665*L^3/(32*E*b*t^3)',
      (5 * load * 9.80665 * span ** 3) / (32 * stiffness * width * thickness ** 3),
      'length',
    ),
  assumes: ['simply held at both ends'],
  source: [],
  checked: [],
  accuracy: 'exact for small sag',
});

/** Shaking grows near the frequency at which the shelf hums: the worst lies inside a range. */
const shakeOf = formula({
  name: 'bench-shake',
  gives: { symbol: 'q', of: 'ratio', means: 'shaking' },
  takes: {
    passing: { symbol: 'f', of: 'frequency', above: 0, means: 'what shakes it', slope: 'either', typical: [1, 9] },
    hum: { symbol: 'f_0', of: 'frequency', above: 0, means: 'at which it hums', slope: 'either', typical: [1, 9] },
  },
  steps: ({ passing, hum }, step) =>
    step('q', '1/(0.2 + abs(1 - f/f_0))', 1 / (0.2 + Math.abs(1 - passing / hum)), 'ratio'),
  assumes: [],
  source: [],
  checked: [],
  accuracy: 'invented',
});

export const sag = factToken<Value>('shelf.sag');
type Ask = Context<ShelfBook>;
const shelfOf = ({ book }: Ask, name: string) => entry(book.shelves, 'shelves', name, 'shelves');
const boardOf = (context: Ask, name: string) =>
  entry(context.book.parts, 'parts', shelfOf(context, name).board, `shelves.${name}.board`);

const names = (book: { readonly shelves?: object }): readonly string[] => Object.keys(book.shelves ?? {});
const subjects: Check<ShelfBook>['subjects'] = (book) =>
  names(book).map((name): Subject => ({ designations: [name], at: `shelves.${name}` }));
const nameIn = ({ designations }: Subject): string => designations[0]!;

const checks: readonly Check<ShelfBook>[] = [
  {
    code: 'SHELF-010',
    asks: 'Does the shelf stay straight?',
    subjects,
    run: (context, subject) => {
      const name = nameIn(subject);
      const value = context.get(sag, name);
      const { 'allowed-sag': allowed } = need(shelfOf(context, name), 'allowed-sag');
      return atMost(value, allowed, {
        advice: { share: 0.8, because: 'wood creeps' },
        says: ({ demand, limit }) =>
          `${name} sags by ${demand}; ${limit} is allowed. ${shelfOf(context, name).note ?? ''}`,
        levers: [
          { turn: `shelves.${name}.span`, toward: 'lower', means: 'put the sides closer', least: 0.3 },
          { substitute: `shelves.${name}.board`, kind: 'board', means: 'another board' },
          { turn: `shelves.${name}.allowed-sag`, toward: 'higher', means: 'allow more' },
        ],
      });
    },
  },
  {
    code: 'SHELF-020',
    asks: 'Does the board bear the boxes?',
    subjects,
    run: (context, subject) => {
      const { load } = need(shelfOf(context, nameIn(subject)), 'load');
      const { bears } = need(boardOf(context, nameIn(subject)), 'bears');
      return atMost(load, bears, { says: ({ demand, limit }) => `${demand} on a board for ${limit}.` });
    },
  },
  {
    code: 'SHELF-030',
    asks: 'Does nothing fall behind it?',
    subjects,
    run: (context, subject) =>
      mustBe('backstop' in shelfOf(context, nameIn(subject)), {
        says: ({ verdict }) => `The back ${verdict}.`,
        levers: [{ set: [{ path: `shelves.${nameIn(subject)}.backstop`, text: 'true' }], means: 'put in a backstop' }],
      }),
  },
  {
    code: 'SHELF-040',
    asks: 'Does it shake little?',
    subjects,
    run: (context, subject) => {
      const { passing, hum } = need(shelfOf(context, nameIn(subject)), 'passing', 'hum');
      return atMost(shakeOf.work({ passing, hum }), constant(4, 'ratio', 'shaking that is allowed'), {
        says: ({ percent }) => `It shakes at ${percent}.`,
      });
    },
  },
  {
    code: 'SHELF-050',
    asks: 'Is it out of the reach of small children?',
    neverAccepted: true,
    subjects,
    run: (context, subject) =>
      atLeast(need(shelfOf(context, nameIn(subject)), 'height').height, constant(1, 'length', 'reach'), {
        says: ({ demand, limit }) => `It hangs at ${demand}; ${limit} is wanted.`,
      }),
  },
];

const fills: NonNullable<Discipline['fills']> = (book) =>
  book.names('parts').flatMap((name): readonly Fill[] => {
    const grade = book.text(`parts.${name}.grade`);
    if (grade === undefined) return [];
    const thickness = grade === 'thin' ? '12..18 mm' : '18..28 mm';
    return [{ path: `parts.${name}.thickness`, text: thickness, provenance: 'table', means: 'from its look' }];
  });

/** The heaviest load that still holds, by halving. */
export const heaviest: Study<{ readonly shelf: string }, { readonly kilograms: number; readonly asked: number }> = {
  name: 'shelf.heaviest',
  *run(asker, { shelf: name }) {
    let [good, bad, asked] = [0, 200, 0];
    while (bad - good > 1) {
      const middle = (good + bad) / 2;
      const [finding] = asker.ask([{ path: `shelves.${name}.load`, text: `${middle} kg` }], [`SHELF-010/${name}`]);
      if (finding?.verdict === 'holds') good = middle;
      else bad = middle;
      yield { kilograms: good, asked: ++asked };
    }
    return { kilograms: good, asked };
  },
};
/** Three throws of a die. */
export const throws: Study<null, readonly number[]> = {
  name: 'shelf.throws',
  *run({ random }: Asker) {
    const found: number[] = [];
    for (let i = 0; i < 3; i++) {
      found.push(random());
      yield [...found];
    }
    return found;
  },
};

const toss: Task<{ readonly times: number }, readonly number[]> = {
  name: 'shelf.toss',
  run: ({ times }, random) => Array.from({ length: times }, () => random()),
};
const springs: Model<{ readonly rate: number }, { readonly force: (by: number) => number }> = {
  token: { name: 'shelf.spring' },
  create: ({ rate }) => ({ force: (by) => rate * by }),
};

export const shelfTrade: Discipline<ShelfBook> = {
  name: 'shelf',
  number: 1,
  title: 'Shelves',
  asks: 'Do the shelves bear it?',
  schema: { top: { shelves: z.record(z.string(), shelf) }, entries: { 'parts/board': board } },
  fills,
  facts: [
    provide<ShelfBook, Value>(
      sag,
      (context, name) => {
        const { load, span } = need(shelfOf(context, name), 'load', 'span');
        return sagOf.work({ load, span, ...need(boardOf(context, name), 'width', 'thickness', 'stiffness') });
      },
      names,
    ),
  ],
  models: [springs],
  tasks: [toss],
  checks,
  studies: [heaviest, throws] as unknown as readonly Study[],
  formulas: [sagOf, shakeOf] as unknown as Discipline['formulas'],
  sheet: (context) => ({
    blocks: names(context.book).map((name) => {
      const sags = context.attempt(() => context.ends(() => context.get(sag, name)));
      const most = context.study(heaviest, { shelf: name }).kilograms;
      const { board: is } = context.book.shelves![name]!;
      return {
        kind: 'paragraph',
        text: `${name} on ${is ?? 'no board'}: ${sags.ok ? `${sags.value.low} to ${sags.value.high}` : sags.why}; ${most}`,
      };
    }),
  }),
  makes: (context) => [
    { name: 'list', rows: names(context.book).map((name) => [name, pathOf(context.book.shelves![name]!)]) },
  ],
  cautions: [],
};

const row = (name: string, thickness: string): CatalogueRow => ({
  name,
  kind: 'board',
  says: 'an invented board',
  source: { id: 'own-derivation' },
  keys: { width: '300 mm', thickness, stiffness: '10 GPa', bears: '40 kg' },
});
export const rows: readonly CatalogueRow[] = [
  row('plank-18', '18 mm'),
  row('plank-22', '22 mm'),
  row('plank-40', '40 mm'),
];

export const houseOf = (services: Services = {}, catalogue: readonly CatalogueRow[] = rows): House =>
  createHouse({ disciplines: [shelfTrade as unknown as Discipline], catalogue, services });

/** One shelf: 5·20·g·0.8³/(32·10 GPa·0.3 m·(18 mm)³) = 0.897 mm of 1.2 mm at the most load, by pencil. */
export const base = `# YAML 1.2
book: 1
title: Pantry
revision: A

shelves:
  top:
    board: plank-18
    span: 800 mm
    load: 10..20 kg       # weighed
    allowed-sag: 1.2 mm
    height: 1.2..1.5 m
    passing: 2..9 Hz
    hum: 20 Hz
    backstop: true
`;

export const open = (text: string, house: House = houseOf()): Machine => {
  const result = house.read((name) => (name === 'book.yaml' ? text : undefined), 'book.yaml');
  if (!result.ok) throw new Error(result.problems.map(({ what, path }) => `${path}: ${what}`).join('\n'));
  return house.open(result.book);
};

export const find = ({ findings }: Pick<Machine, 'findings'>, key: string): Finding => {
  const found = findings.find((finding) => finding.key === key);
  if (!found) throw new RangeError(`${key} is not among ${findings.map((one) => one.key).join(', ')}`);
  return found;
};
