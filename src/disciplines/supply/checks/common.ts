/** What the checks of the supply share: subjects, advice, ways out. */
import type { Check, Subject } from '../../../contract/index.ts';
import type { Advice, Lever } from '../../../kernel/index.ts';
import { modesOf, motorsOn, railsOf, supplyOf, type SupplyContext } from '../calc/book.ts';
import type { Members } from '../facts.ts';
import type { SupplyBook } from '../schema.ts';

export type SupplyCheck = Check<SupplyBook>;
type Book = SupplyContext['book'];
type Subjects = SupplyCheck['subjects'];

const withMode = (subject: Subject, mode: string): Subject => (mode === '' ? subject : { ...subject, mode });

/** One subject for each rail in each mode. */
export const railsInModes: Subjects = (book) =>
  railsOf(book).flatMap(([supply, rail]) =>
    modesOf(book).map((mode) => withMode({ designations: [rail], at: `supplies.${supply}.rails.${rail}` }, mode)),
  );

/** One subject for each supply. */
export const everySupply: Subjects = (book) =>
  Object.keys(book.supplies ?? {}).map((name): Subject => ({ designations: [name], at: `supplies.${name}` }));

/** One subject for each supply in each mode. */
export const suppliesInModes: Subjects = (book) =>
  everySupply(book).flatMap((subject) => modesOf(book).map((mode) => withMode(subject, mode)));

/** One subject for each entry of a table. */
export const each =
  (kind: 'fuses' | 'motors' | 'drivers' | 'axes' | 'loads'): Subjects =>
  (book) =>
    Object.keys(book[kind] ?? {}).map((name): Subject => ({ designations: [name], at: `${kind}.${name}` }));

export const nameIn = ({ designations: [name] }: Subject): string => name!;
export const modeIn = ({ mode }: Subject): string => mode ?? '';

/** ` while aiming`, or nothing in a book without modes. */
export const during = (mode: string): string => (mode === '' ? ' with everything on' : ` in mode ${mode}`);

export const experience = (share: number, because: string): Advice => ({
  share,
  because,
  source: { id: 'supply-experience' },
});

/** Less current in the drives of a branch or rail, and off while nobody plays. */
export const drivesLess = (drivers: readonly string[]): readonly Lever[] =>
  drivers.flatMap((driver): Lever[] => [
    { turn: `drivers.${driver}.current`, toward: 'lower', means: `set ${driver} to less current` },
  ]);

export const drivesOff = (book: Book, drivers: readonly string[]): readonly Lever[] => {
  const on = drivers.filter((driver) => book.drivers?.[driver]?.['standing-by'] !== 'unpowered');
  return on.length === 0
    ? []
    : [
        {
          set: on.map((driver) => ({ path: `drivers.${driver}.standing-by`, text: 'unpowered' })),
          means: `switch ${on.join(', ')} off while nobody plays`,
        },
      ];
};

/** Another supply in the place of the one that has a rail. */
export const anotherSupply = (book: Book, rail: string): Lever => {
  const supply = supplyOf(book, rail);
  return { substitute: `supplies.${supply}.part`, kind: 'supply', means: `another supply for ${supply}` };
};

export const loadsLess = (loads: readonly string[]): readonly Lever[] =>
  loads.map((load) => ({ turn: `loads.${load}.current`, toward: 'lower', means: `a ${load} that takes less` }));

export const membersLess = ({ drivers, loads }: Members): readonly Lever[] => [
  ...drivesLess(drivers),
  ...loadsLess(loads),
];

/** Motors of a driver, in words. */
export const motorsText = (book: Book, driver: string): string => motorsOn(book, driver).join(' and ') || 'no motor';

/** Ratings in which small fuses are made [A], as a book would write them. */
const ratings = ['0.5', '0.63', '0.8', '1', '1.25', '1.6', '2', '2.5', '3.15', '4', '5', '6.3', '8', '10'] as const;

/** Sure opening of a small fuse over what its wire bears as an overload: so much of the wire a fuse may be rated for. */
const OF_ITS_WIRE = 1.45 / 2.1;

/** What the wire behind a fuse bears in the air of its table, as far as it is stated; nothing where it is not. */
const borneBehind = (book: Book, fuse: string): number => {
  const cable = book.cables?.[book.fuses?.[fuse]?.cable ?? ''];
  const table = cable?.['continuous-current'];
  return table === undefined ? 0 : table.number * (cable?.grouping?.number ?? 1);
};

/** The next three ratings above or below. A larger one is never offered where its wire is not known to bear it. */
export const otherRatings = (book: Book, fuse: string, toward: 'higher' | 'lower'): readonly Lever[] => {
  const now = book.fuses?.[fuse]?.rating;
  if (now === undefined) return [];
  const most = toward === 'higher' ? OF_ITS_WIRE * borneBehind(book, fuse) : now.number;
  const others = ratings.filter((one) =>
    toward === 'higher' ? Number(one) > now.number && Number(one) <= most : Number(one) < most,
  );
  const next = toward === 'higher' ? others.slice(0, 3) : others.toReversed().slice(0, 3);
  return next.map((rating) => ({
    set: [{ path: `fuses.${fuse}.rating`, text: `${rating} A` }],
    means:
      toward === 'higher'
        ? `design ${fuse} for ${rating} A, which its wire is laid to bear; never as a repair`
        : `fit ${rating} A as ${fuse}`,
  }));
};

/** A thicker wire behind a fuse. */
export const thickerWire = (book: Book, fuse: string): readonly Lever[] => {
  const cable = book.fuses?.[fuse]?.cable;
  return cable === undefined
    ? []
    : [{ substitute: `cables.${cable}.part`, kind: 'cable', means: `another wire as ${cable}` }];
};
