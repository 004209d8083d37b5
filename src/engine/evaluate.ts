/**
 * Works out facts and checks in one scenario. Every result is kept with the book facts that it used, so that another
 * scenario or an edited book works out again only what depends on what changed.
 */
import {
  pathKey,
  Quantity,
  type Check,
  type Context,
  type FactToken,
  type Loop,
  type Provider,
  type Subject,
} from '../contract/index.ts';
import { given, isNoNumber, type Outcome, type Value } from '../kernel/index.ts';
import { closeLoop } from './loop.ts';
import { hashAt, hashOf, type Era, type Mark, type Memory, type Result, type Shelf, type Union } from './memory.ts';
import type { Axis, Scenario } from './search.ts';
import { middle, PRESENCE, quantityAt, rangesAmong, wordAt, type Node, type Snapshot } from './snapshot.ts';

/** Something below an object of the view. */
interface Child {
  readonly path: string;
  readonly node: Node | undefined;
  readonly id: number;
}

const NOWHERE: Scenario = new Map();

export class Evaluator {
  readonly context: Context<never>;
  readonly #era: Era;
  #scenario: Scenario = NOWHERE;
  /** By number of the path: what stands there, its hash, and the value as trades see it. */
  readonly #marks: (Mark | undefined)[] = [];
  readonly #hashes: (number | undefined)[] = [];
  readonly #values: (Value | undefined)[] = [];
  /** What was read by that which is being worked out: numbers of paths, and `~index` of sets of them. */
  #frame: number[] | undefined;
  #frameNumber = 0;
  #frames = 0;
  /** The frame that noted a path or a set last, so that it is noted once. */
  readonly #notedIn: number[] = [];
  readonly #setNotedIn: number[] = [];
  readonly #loaded: boolean[] = [];
  readonly #active = new Map<Shelf, string>();
  /** Moves on whenever what stands somewhere changes; until then what was found last is found again at once. */
  #version = 0;
  readonly #latest = new Map<
    Shelf,
    { readonly result: Result<unknown>; readonly union: Union; readonly version: number }
  >();
  readonly #proxies = new Map<string, object>();
  readonly #movable = new Map<string, { readonly id: number; readonly leaf: Quantity } | null>();
  readonly #axes = new Map<readonly string[], readonly Axis[]>();
  readonly #names = new WeakMap<Subject, string>();
  readonly #own = new WeakSet<Outcome>();

  constructor(
    readonly snapshot: Snapshot,
    readonly providers: ReadonlyMap<string, Provider>,
    memory: Memory,
  ) {
    this.#era = memory.era();
    this.context = {
      book: this.#proxy('') as never,
      get: (token, key) => this.#fact(token, key),
      loop: (loop: Loop) => closeLoop(loop),
    };
  }

  /** Runs `work` in a scenario and says which book paths it read; a result for the same facts is not worked out again. */
  run<T>(name: string, of: string, scenario: Scenario, work: () => T): { result: Result<T>; paths: readonly string[] } {
    const { result, union } = this.#in(scenario, () => this.#keep(this.#era.shelf(name, of), work));
    return { result, paths: union.paths };
  }

  /** Runs `work` in a scenario without keeping the result. */
  trace<T>(scenario: Scenario, work: () => T): { readonly value: T; readonly paths: readonly string[] } {
    const { value, union } = this.#in(scenario, () => this.#framed(work));
    return { value, paths: union.paths };
  }

  check(check: Check, subject: Subject, scenario: Scenario) {
    let name = this.#names.get(subject);
    if (name === undefined) this.#names.set(subject, (name = JSON.stringify(subject)));
    return this.run<Outcome | null>(check.code, name, scenario, () => {
      const outcome = check.run(this.context, subject);
      if (outcome) this.#own.add(outcome);
      return outcome;
    });
  }

  /** Whether an outcome was found here, so that what it says of itself is of this book. */
  found(outcome: Outcome): boolean {
    return this.#own.has(outcome);
  }

  /** The facts among paths read together that are ranges. */
  rangesOf(paths: readonly string[]): readonly Axis[] {
    let axes = this.#axes.get(paths);
    if (!axes) this.#axes.set(paths, (axes = rangesAmong(paths, this.snapshot)));
    return axes;
  }

  #in<T>(scenario: Scenario, work: () => T): T {
    const before = this.#scenario;
    if (scenario === before) return work();
    this.#enter(before, scenario);
    try {
      return work();
    } finally {
      this.#enter(scenario, before);
    }
  }

  #enter(before: Scenario, next: Scenario): void {
    for (const path of before.keys()) if (!next.has(path)) this.#put(path, undefined);
    for (const [path, x] of next) this.#put(path, x);
    this.#scenario = next;
  }

  #put(path: string, x: number | undefined): void {
    let moved = this.#movable.get(path);
    if (moved === undefined) {
      const leaf = quantityAt(path, this.snapshot);
      moved = leaf && leaf.low < leaf.high ? { id: this.#era.id(path, leaf.of), leaf } : null;
      this.#movable.set(path, moved);
    }
    if (moved === null) return;
    const number = x ?? middle(moved.leaf);
    if (this.#marks[moved.id] === number) return;
    this.#set(moved.id, number);
    this.#values[moved.id] = undefined;
    this.#version++;
  }

  #set(id: number, mark: Mark): void {
    this.#marks[id] = mark;
    this.#hashes[id] = hashOf(mark);
  }

  #load({ index, ids }: Union): void {
    if (this.#loaded[index]) return;
    for (const id of ids) if (this.#marks[id] === undefined) this.#set(id, this.#markOf(id));
    this.#loaded[index] = true;
  }

  #markOf(id: number): Mark {
    const path = this.#era.paths[id]!;
    const leaf = quantityAt(path, this.snapshot);
    if (!leaf) return wordAt(path, this.snapshot);
    // Another kind of quantity than the one that was read is something else, whatever its number.
    if (leaf.of !== this.#era.dimensions[id]) return leaf.of;
    return leaf.low === leaf.high ? leaf.low : (this.#scenario.get(path) ?? middle(leaf));
  }

  #fact<T>(token: FactToken<T>, key: string): T {
    if (!this.#frame) throw new Error(`${token.name}(${key}) is asked for outside of a calculation`);
    const shelf = this.#era.shelf(token.name, key);
    const { result } = this.#keep(shelf, () => this.#provide(shelf, token, key));
    if (!result.ok) throw result.error;
    return result.value as T;
  }

  #provide<T>(shelf: Shelf, token: FactToken<T>, key: string): unknown {
    const provider = this.providers.get(token.name);
    if (!provider) throw new Error(`no trade provides the fact ${token.name}`);
    const name = `${token.name}(${key})`;
    if (this.#active.has(shelf)) {
      const names = [...this.#active.values()];
      const ring = [...names.slice(names.indexOf(name)), name].join(' → ');
      throw new Error(`facts depend on each other in a ring: ${ring}`);
    }
    this.#active.set(shelf, name);
    try {
      return provider.run(this.context, key);
    } finally {
      this.#active.delete(shelf);
    }
  }

  #keep<T>(shelf: Shelf, work: () => T): { result: Result<T>; union: Union } {
    const latest = this.#latest.get(shelf);
    if (latest?.version === this.#version) {
      this.#note(latest.union);
      return latest as { result: Result<T>; union: Union };
    }
    for (let i = 0; i < shelf.length; i++) {
      const slot = shelf[i]!;
      this.#load(slot.union);
      const found = this.#era.find(slot, this.#marks, hashAt(slot.union.ids, this.#hashes));
      if (!found) continue;
      // What was found last is looked for first.
      if (i > 0) [shelf[0], shelf[i]] = [slot, shelf[0]!];
      this.#note(slot.union);
      return this.#held(shelf, found as Result<T>, slot.union);
    }
    const { value: result, union } = this.#framed((): Result<T> => {
      try {
        return { ok: true, value: work() };
      } catch (error) {
        // A fault of the program is nobody's result.
        if (!isNoNumber(error)) throw error;
        return { ok: false, error };
      }
    });
    this.#load(union);
    this.#era.keep(shelf, union, this.#marks, hashAt(union.ids, this.#hashes), result);
    return this.#held(shelf, result, union);
  }

  #held<T>(shelf: Shelf, result: Result<T>, union: Union): { result: Result<T>; union: Union } {
    const held = { result, union, version: this.#version };
    this.#latest.set(shelf, held);
    return held;
  }

  /** Runs `work` and notes what it reads, for itself and for whatever asked for it. */
  #framed<T>(work: () => T): { readonly value: T; readonly union: Union } {
    const [outer, outerNumber] = [this.#frame, this.#frameNumber];
    const own: number[] = [];
    this.#frame = own;
    this.#frameNumber = ++this.#frames;
    let union: Union | undefined;
    try {
      const value = work();
      union = this.#era.unionOf(own);
      return { value, union };
    } finally {
      this.#frame = outer;
      this.#frameNumber = outerNumber;
      // Who catches what was thrown has still learnt from what was read.
      if (outer) this.#note(union ?? this.#era.unionOf(own));
    }
  }

  #note({ index }: Union): void {
    if (!this.#frame || this.#setNotedIn[index] === this.#frameNumber) return;
    this.#setNotedIn[index] = this.#frameNumber;
    this.#frame.push(~index);
  }

  #read(id: number): void {
    if (!this.#frame) throw new Error(`${this.#era.paths[id]} is read outside of a calculation`);
    if (this.#notedIn[id] === this.#frameNumber) return;
    this.#notedIn[id] = this.#frameNumber;
    this.#frame.push(id);
  }

  #see({ path, node, id }: Child): unknown {
    this.#read(id);
    if (!node) return undefined;
    if (node.kind !== 'leaf') return this.#proxy(path);
    if (!(node.leaf instanceof Quantity)) return node.leaf;
    let value = this.#values[id];
    if (!value) {
      if (this.#marks[id] === undefined) this.#set(id, this.#markOf(id));
      this.#values[id] = value = given(this.#marks[id] as number, node.leaf.of, path);
    }
    return value;
  }

  #proxy(path: string): object {
    const known = this.#proxies.get(path);
    if (known) return known;
    const node = this.snapshot.nodes.get(path);
    const list = node?.kind === 'list';
    const target: object = list ? Array.from({ length: node.length }) : {};
    const children = new Map<string, Child>();
    const child = (key: string): Child => {
      let found = children.get(key);
      if (!found) {
        const at = path ? `${path}.${key}` : key;
        const below = this.snapshot.nodes.get(at);
        children.set(key, (found = { path: at, node: below, id: this.#idFor(at, below) }));
      }
      return found;
    };
    const whole = (): void => this.#read(this.#era.id(path));
    const presence = (key: string): Child => {
      const below = child(key);
      this.#read(this.#era.id(PRESENCE + below.path));
      return below;
    };
    const isElse = (key: string | symbol): key is symbol =>
      typeof key === 'symbol' || (list && !/^(0|[1-9]\d*)$/.test(key));
    const proxy = new Proxy(target, {
      get: (own, key) => {
        if (key === pathKey) return path;
        if (list && key === 'length') whole();
        if (isElse(key)) return Reflect.get(own, key, proxy) as unknown;
        return this.#see(child(key));
      },
      has: (own, key) => (isElse(key) ? Reflect.has(own, key) : presence(key).node !== undefined),
      ownKeys: (own) => {
        whole();
        return list ? Reflect.ownKeys(own) : node?.kind === 'map' ? [...node.keys] : [];
      },
      getOwnPropertyDescriptor: (own, key) => {
        if (list && key === 'length') whole();
        if (isElse(key)) return Reflect.getOwnPropertyDescriptor(own, key);
        // That a key is there does not tell what stands under it.
        const below = presence(key);
        return below.node && { configurable: true, enumerable: true, get: () => this.#see(below) };
      },
    });
    this.#proxies.set(path, proxy);
    return proxy;
  }

  /** Passing through a map on the way to one entry does not depend on the other entries. */
  #idFor(path: string, node: Node | undefined): number {
    if (node && node.kind !== 'leaf') return this.#era.id(PRESENCE + path);
    const leaf = node?.leaf;
    return this.#era.id(path, leaf instanceof Quantity ? leaf.of : '');
  }
}
