/** The pins of a machine: what the book wants, and the choice that moves no wire without need. */
import { NotStated } from '../../../kernel/index.ts';
import type { Board, Pin } from '../data/board.ts';
import { pinNamed } from '../data/boards.ts';
import type { Assignment, PinFacts } from '../facts.ts';
import { assign, smallestClash } from './assign.ts';
import { boardOf, driverNames, tableOf, type Book, type ControllerContext } from './book.ts';
import { busesOf, signalsOf } from './signals.ts';
import { wishesOf, type Wanted, type Wish } from './wishes.ts';

const pinsIn = (board: Board, table: Readonly<Record<string, string>> | undefined): Map<string, Pin | null> =>
  new Map(Object.entries(table ?? {}).map(([signal, name]) => [signal, pinNamed(board, name) ?? null]));

/** What the choice of pins depends on. */
export const wantedOf = (book: Book): Wanted => {
  const board = boardOf(book);
  const table = tableOf(book);
  const landed = [...pinsIn(board, table.landed)].flatMap(([signal, pin]) => (pin ? [[signal, pin] as const] : []));
  const unusable = (table.unusable ?? []).flatMap((name) => pinNamed(board, name)?.name ?? []);
  return {
    board,
    signals: signalsOf(book),
    buses: busesOf(book),
    given: pinsIn(board, table.pins),
    landed: new Map(landed),
    unusable: new Set(unusable),
    drivers: driverNames(book).length,
    log: (table['log-port'] ?? 'usb') === 'usb',
  };
};

const resourcesOf = (
  wishes: readonly Wish[],
  chosen: readonly number[],
): Readonly<Record<string, readonly string[]>> => {
  const found: Record<string, string[]> = {};
  wishes.forEach(({ name, options }, k) => {
    for (const { resource } of options[chosen[k]!]!.claims) {
      if (resource.startsWith('pin:')) continue;
      const plain = resource.slice(resource.indexOf(':') + 1);
      if (resource.startsWith('channel:')) continue;
      (found[plain] ??= []).push(name);
    }
  });
  return found;
};

/** Chooses a pin for every signal. */
export const choosePins = (wanted: Wanted): Assignment => {
  const wishes = wishesOf(wanted);
  const choice = assign(wishes);
  if (choice === null) return { ok: false, clash: smallestClash(wishes).map(({ name }) => name) };
  const places = new Map<string, Pin>();
  wishes.forEach(({ signals, pins }, k) =>
    signals.forEach((signal, line) => places.set(signal.name, pins[choice.chosen[k]!]![line]!)),
  );
  const staying = wishes.map((wish) => ({ ...wish, options: wish.options.filter(({ moved }) => moved === 0) }));
  const pins = wanted.signals.map((signal): PinFacts => {
    const pin = places.get(signal.name)!;
    const landed = wanted.landed.get(signal.name);
    return {
      ...signal,
      pin: pin.name,
      number: pin.number,
      ...(pin.port ? { port: pin.port } : {}),
      why: wanted.given.has(signal.name) ? 'given' : landed === pin ? 'landed' : 'chosen',
      ...(landed !== undefined && landed !== pin ? { movedFrom: landed.name } : {}),
    };
  });
  return {
    ok: true,
    pins,
    because: choice.moved === 0 ? [] : smallestClash(staying).map(({ name }) => name),
    resources: resourcesOf(wishes, choice.chosen),
  };
};

/** Fact: the pins of the machine. */
export const assignmentOf = ({ book }: ControllerContext): Assignment => choosePins(wantedOf(book));

/** The pin of a signal, or NotStated while no choice of pins is possible. */
export const pinIn = (found: Assignment, signal: string): PinFacts => {
  const pin = found.ok ? found.pins.find(({ name }) => name === signal) : undefined;
  if (pin === undefined) throw new NotStated([`controller.pins.${signal}`]);
  return pin;
};
