/**
 * Results that outlive a scenario and an edit. A result is kept with the paths that were read for it and with what
 * stood there, and is found again wherever the same stands at all of them.
 */
import type { NoNumber } from '../kernel/index.ts';

export type Result<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: NoNumber };

/** What stands at a path in a scenario: the number of a quantity, else a text. */
export type Mark = number | string;

/** Paths read together. The same set is one object, so that it can be told by identity. */
export interface Union {
  readonly index: number;
  readonly ids: readonly number[];
  readonly paths: readonly string[];
}

interface Entry {
  readonly marks: readonly Mark[];
  readonly result: Result<unknown>;
  readonly next: Entry | undefined;
}

/** Results of one fact or check that read the same paths, by a hash over what stood there. */
export interface Slot {
  readonly union: Union;
  entries: Map<number, Entry>;
  /** Those of before the last clearing; what is asked for again comes back from here. */
  older: Map<number, Entry>;
}

/** Results of one fact or check. Which paths it reads depends on what it finds, so that there can be several slots. */
export type Shelf = Slot[];

const mix = (hash: number, x: number): number => {
  const h = Math.imul(hash ^ x, 0x5bd1e995);
  return h ^ (h >>> 15);
};

const double = new Float64Array(1);
const halves = new Int32Array(double.buffer);

/** A hash of a mark, in 32 bits. */
export const hashOf = (mark: Mark): number => {
  if (typeof mark === 'number') {
    double[0] = mark;
    return mix(mix(17, halves[0]!), halves[1]!);
  }
  let hash = 31;
  for (let i = 0; i < mark.length; i++) hash = mix(hash, mark.charCodeAt(i));
  return hash;
};

/** Hash over what stands at these paths. */
export const hashAt = (ids: readonly number[], hashes: readonly (number | undefined)[]): number => {
  let hash = ids.length;
  for (const id of ids) hash = mix(hash, hashes[id]!);
  return hash;
};

const among = (first: Entry | undefined, { ids }: Union, marks: readonly (Mark | undefined)[]): Entry | undefined => {
  for (let entry = first; entry; entry = entry.next) {
    let i = 0;
    while (i < entry.marks.length && entry.marks[i] === marks[ids[i]!]) i++;
    if (i === entry.marks.length) return entry;
  }
  return undefined;
};

/** Paths, sets of paths and results of one stretch of work; everything in it refers to paths by number. */
export class Era {
  readonly paths: string[] = [];
  /** Dimension of the quantity that was read at the path of that number, or nothing. */
  readonly dimensions: string[] = [];
  readonly unions: Union[] = [];
  readonly #ids = new Map<string, number>();
  /** By what is asked, and of what. */
  readonly #shelves = new Map<string, Map<string, Shelf>>();
  readonly #bySet = new Map<string, Union>();
  readonly #byEvents = new Map<number, { readonly events: readonly number[]; readonly union: Union }[]>();
  size = 0;

  constructor(readonly most: number) {}

  id(path: string, dimension = ''): number {
    const name = dimension === '' ? path : `${dimension} ${path}`;
    let id = this.#ids.get(name);
    if (id === undefined) {
      id = this.paths.push(path) - 1;
      this.dimensions.push(dimension);
      this.#ids.set(name, id);
    }
    return id;
  }

  shelf(name: string, of: string): Shelf {
    let named = this.#shelves.get(name);
    if (!named) this.#shelves.set(name, (named = new Map()));
    let shelf = named.get(of);
    if (!shelf) named.set(of, (shelf = []));
    return shelf;
  }

  /** The paths behind a list of events: the number of a path that was read, or `~index` of a set that was. */
  unionOf(events: readonly number[]): Union {
    let hash = events.length;
    for (const event of events) hash = mix(hash, event);
    const alike = this.#byEvents.get(hash) ?? [];
    if (alike.length === 0) this.#byEvents.set(hash, alike);
    const known = alike.find(
      (one) => one.events.length === events.length && one.events.every((e, i) => e === events[i]),
    );
    if (known) return known.union;
    const all = new Set<number>();
    for (const event of events) {
      if (event >= 0) all.add(event);
      else for (const id of this.unions[~event]!.ids) all.add(id);
    }
    // By name and not by number, so that what is worked out does not depend on what was read before.
    const ids = [...all].sort((a, b) => this.#compare(a, b));
    const name = ids.join();
    let union = this.#bySet.get(name);
    if (!union) {
      union = { index: this.unions.length, ids, paths: [...new Set(ids.map((id) => this.paths[id]!))] };
      this.unions.push(union);
      this.#bySet.set(name, union);
    }
    alike.push({ events, union });
    return union;
  }

  #compare(a: number, b: number): number {
    const [x, y] = [this.paths[a]!, this.paths[b]!];
    return x < y ? -1 : x > y ? 1 : this.dimensions[a]! < this.dimensions[b]! ? -1 : 1;
  }

  keep(shelf: Shelf, union: Union, marks: readonly (Mark | undefined)[], hash: number, result: Result<unknown>): void {
    let slot = shelf.find((one) => one.union === union);
    if (!slot) shelf.push((slot = { union, entries: new Map(), older: new Map() }));
    const own = union.ids.map((id) => marks[id]!);
    this.add(slot, hash, own, result);
  }

  add({ entries }: Slot, hash: number, marks: readonly Mark[], result: Result<unknown>): void {
    entries.set(hash, { marks, result, next: entries.get(hash) });
    // All at once: cheaper and simpler than choosing, and rare.
    if (++this.size > this.most / 2) this.forget();
  }

  /** Drops what nobody asked for since the last time. */
  forget(): void {
    for (const named of this.#shelves.values())
      for (const shelf of named.values())
        for (const slot of shelf) {
          slot.older = slot.entries;
          slot.entries = new Map();
        }
    this.size = 0;
  }

  /** The kept result where the same stands at every path of a slot. */
  find(slot: Slot, marks: readonly (Mark | undefined)[], hash: number): Result<unknown> | undefined {
    const found = among(slot.entries.get(hash), slot.union, marks);
    if (found) return found.result;
    const old = among(slot.older.get(hash), slot.union, marks);
    if (!old) return undefined;
    this.add(slot, hash, old.marks, old.result);
    return old.result;
  }

  /** Numbers and sets given out so far; they only grow. */
  get spent(): number {
    return this.paths.length + this.#byEvents.size;
  }
}

/** Hands out an era, and a new one when the old has given out too much; who works in the old one may go on. */
export class Memory {
  #era: Era;
  constructor(
    readonly most = 24_000,
    readonly mostSpent = 400_000,
  ) {
    this.#era = new Era(most);
  }

  era(): Era {
    if (this.#era.spent > this.mostSpent) this.#era = new Era(this.most);
    return this.#era;
  }
}
