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
import { given, type Outcome, type Value } from '../kernel/index.ts';
import { closeLoop } from './loop.ts';
import { markAt, PRESENCE, type Node, type Snapshot } from './snapshot.ts';

/** One number for each fact that is a range; a fact that is absent stands at its middle. */
export type Scenario = ReadonlyMap<string, number>;

export type Result<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: Error };

interface Kept {
  readonly result: Result<unknown>;
}

/** Results of one fact or check, by which paths were read and then by what stood there. */
type Shelf = Map<string, { readonly paths: readonly string[]; readonly kept: Map<string, Kept> }>;

/** Results that outlive an edit; bounded, and dropped as a whole when full. */
export class Memory {
  readonly shelves = new Map<string, Shelf>();
  size = 0;
  constructor(readonly most = 200_000) {}
  /** Throws everything away: cheaper and simpler than choosing, and rare. */
  trim(): void {
    if (this.size <= this.most) return;
    this.shelves.clear();
    this.size = 0;
  }
}

const middle = (q: Quantity): number => q.low + (q.high - q.low) / 2;

export class Evaluator {
  #scenario: Scenario = new Map();
  /** Paths read by whatever is being worked out, innermost last. */
  readonly #reading: Set<string>[] = [];
  readonly #active: string[] = [];
  readonly #proxies = new Map<string, object>();
  readonly #values = new Map<string, Value>();
  readonly context: Context<never>;

  constructor(
    readonly snapshot: Snapshot,
    readonly providers: ReadonlyMap<string, Provider>,
    readonly memory: Memory,
  ) {
    this.context = {
      book: this.#proxy('') as never,
      get: (token, key) => this.#fact(token, key),
      loop: (loop: Loop) => closeLoop(loop),
    };
  }

  #in<T>(scenario: Scenario, work: () => T): T {
    const before = this.#scenario;
    if (scenario === before) return work();
    this.#scenario = scenario;
    this.#values.clear();
    try {
      return work();
    } finally {
      this.#scenario = before;
      this.#values.clear();
    }
  }

  /** Runs `work` in a scenario and says which book paths it read; a result for the same facts is not worked out again. */
  run<T>(
    name: string,
    scenario: Scenario,
    work: () => T,
  ): { readonly result: Result<T>; readonly paths: readonly string[] } {
    return this.#in(scenario, () => this.#keep(name, work));
  }

  /** Runs `work` in a scenario without keeping the result. */
  trace<T>(scenario: Scenario, work: () => T): { readonly value: T; readonly paths: ReadonlySet<string> } {
    const paths = new Set<string>();
    this.#reading.push(paths);
    try {
      return { value: this.#in(scenario, work), paths };
    } finally {
      this.#reading.pop();
      this.#note(paths);
    }
  }

  check(check: Check, subject: Subject, scenario: Scenario) {
    const name = `${check.code}/${subject.designations.join(',')}/${subject.mode ?? ''}`;
    return this.run<Outcome | null>(name, scenario, () => check.run(this.context, subject));
  }

  #fact<T>(token: FactToken<T>, key: string): T {
    const name = `${token.name}(${key})`;
    if (this.#active.includes(name)) {
      const ring = [...this.#active.slice(this.#active.indexOf(name)), name].join(' → ');
      throw new Error(`facts depend on each other in a ring: ${ring}`);
    }
    const provider = this.providers.get(token.name);
    if (!provider) throw new Error(`no trade provides the fact ${token.name}`);
    this.#active.push(name);
    try {
      const { result } = this.#keep(name, () => provider.run(this.context, key));
      if (!result.ok) throw result.error;
      return result.value as T;
    } finally {
      this.#active.pop();
    }
  }

  #keep<T>(name: string, work: () => T): { result: Result<T>; paths: readonly string[] } {
    const shelf = this.memory.shelves.get(name) ?? new Map();
    this.memory.shelves.set(name, shelf);
    for (const { paths, kept } of shelf.values()) {
      const found = kept.get(this.#tokens(paths));
      if (found) {
        this.#note(paths);
        return { result: found.result as Result<T>, paths };
      }
    }
    const read = new Set<string>();
    this.#reading.push(read);
    let result: Result<T>;
    try {
      result = { ok: true, value: work() };
    } catch (error) {
      result = { ok: false, error: error as Error };
    } finally {
      this.#reading.pop();
    }
    const paths = [...read];
    this.#note(paths);
    const signature = paths.join('|');
    const slot = shelf.get(signature) ?? { paths, kept: new Map() };
    shelf.set(signature, slot);
    slot.kept.set(this.#tokens(paths), { result });
    this.memory.size++;
    return { result, paths };
  }

  #note(paths: Iterable<string>): void {
    const top = this.#reading.at(-1);
    if (top) for (const path of paths) top.add(path);
  }

  #tokens(paths: readonly string[]): string {
    let all = '';
    for (const path of paths) all += `${this.#token(path)}|`;
    return all;
  }

  #token(path: string): string | number {
    if (path.startsWith(PRESENCE)) return markAt(path, this.snapshot);
    const node = this.snapshot.nodes.get(path);
    if (!node) return '∅';
    if (node.kind === 'map') return node.token;
    if (node.kind === 'list') return `[${node.length}]`;
    const { leaf } = node;
    if (leaf instanceof Quantity) return this.#number(path, leaf);
    return typeof leaf === 'string' ? `"${leaf}"` : String(leaf);
  }

  #number(path: string, leaf: Quantity): number {
    return leaf.low === leaf.high ? leaf.low : (this.#scenario.get(path) ?? middle(leaf));
  }

  #see(path: string, node: Node | undefined): unknown {
    // Passing through a map on the way to one entry does not depend on the other entries.
    const through = node !== undefined && node.kind !== 'leaf';
    this.#reading.at(-1)?.add(through ? PRESENCE + path : path);
    if (!node) return undefined;
    if (node.kind !== 'leaf') return this.#proxy(path);
    if (!(node.leaf instanceof Quantity)) return node.leaf;
    const known = this.#values.get(path);
    if (known) return known;
    const value = given(this.#number(path, node.leaf), node.leaf.of, path);
    this.#values.set(path, value);
    return value;
  }

  #proxy(path: string): object {
    const known = this.#proxies.get(path);
    if (known) return known;
    const node = this.snapshot.nodes.get(path);
    const child = (key: string) => (path ? `${path}.${key}` : key);
    const list = node?.kind === 'list';
    const target: object = list ? Array.from({ length: node.length }) : {};
    const keys = () => {
      this.#reading.at(-1)?.add(path);
      return node?.kind === 'map' ? node.keys : [];
    };
    const proxy = new Proxy(target, {
      get: (own, key) => {
        if (key === pathKey) return path;
        if (list && key === 'length') this.#reading.at(-1)?.add(path);
        if (typeof key === 'symbol' || (list && !/^\d+$/.test(key))) return Reflect.get(own, key, proxy) as unknown;
        const at = child(key);
        return this.#see(at, this.snapshot.nodes.get(at));
      },
      has: (own, key) => {
        if (typeof key === 'symbol' || list) return Reflect.has(own, key);
        this.#reading.at(-1)?.add(PRESENCE + child(key));
        return this.snapshot.nodes.has(child(key));
      },
      ownKeys: (own) => (list ? Reflect.ownKeys(own) : [...keys()]),
      getOwnPropertyDescriptor: (own, key) => {
        if (list || typeof key === 'symbol') return Reflect.getOwnPropertyDescriptor(own, key);
        const at = child(key);
        const found = this.snapshot.nodes.get(at);
        return found && { configurable: true, enumerable: true, value: this.#see(at, found), writable: false };
      },
    });
    this.#proxies.set(path, proxy);
    return proxy;
  }
}
