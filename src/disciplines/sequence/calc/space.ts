/** Packed states in one typed array, and a hash set over them: a state is its place in the array. */

export interface Field {
  readonly word: number;
  readonly shift: number;
  readonly mask: number;
}

/** Fields of so many bits, put into words of 32. */
export const layout = (bits: readonly number[]): { readonly fields: readonly Field[]; readonly words: number } => {
  const free: number[] = [];
  const fields = bits.map((width): Field => {
    if (!(width >= 0 && width <= 31)) throw new RangeError(`a field of ${width} bits`);
    let word = free.findIndex((room) => room >= width);
    if (word < 0) word = free.push(32) - 1;
    const shift = 32 - free[word]!;
    free[word]! -= width;
    return { word, shift: shift & 31, mask: width === 0 ? 0 : 2 ** width - 1 };
  });
  return { fields, words: Math.max(1, free.length) };
};

/** Bits that hold 0 to `most`. */
export const bitsFor = (most: number): number => (most <= 0 ? 0 : 32 - Math.clz32(most));

const GROWTH = 4;

/** A slot is free while its last word is 0. */
export class Space {
  count = 0;
  states: Uint32Array;
  /** Slots with the words of a state and its number plus one together, so that one look tells. */
  #slots: Uint32Array;
  readonly #stride: number;
  readonly #packed: Uint32Array;
  #hashes = new Int32Array(64);
  #batch: Uint32Array;
  /** Keeps the touching of slots from being left out as useless. */
  touched = 0;
  #mask: number;
  #capacity: number;

  constructor(
    readonly words: number,
    capacity = 1 << 14,
  ) {
    this.#capacity = capacity;
    this.states = new Uint32Array(capacity * words);
    this.#stride = 1 << bitsFor(words);
    this.#packed = new Uint32Array(words);
    this.#batch = new Uint32Array(64 * words);
    this.#mask = capacity * 2 - 1;
    this.#slots = new Uint32Array(capacity * 2 * this.#stride);
  }

  get bytes(): number {
    return this.states.byteLength + this.#slots.byteLength;
  }

  /** The number of a state; it is new when it equals the former count. */
  add(state: Uint32Array): number {
    const { words } = this;
    const slots = this.#slots;
    const stride = this.#stride;
    const last = stride - 1;
    let slot = hashOf(state, 0, words) & this.#mask;
    for (;;) {
      const base = slot * stride;
      const number = slots[base + last]!;
      if (number === 0) break;
      let w = 0;
      while (w < words && slots[base + w] === state[w]) w++;
      if (w === words) return number - 1;
      slot = (slot + 1) & this.#mask;
    }
    if (this.count === this.#capacity) {
      this.#grow();
      return this.add(state);
    }
    const number = this.count++;
    const base = slot * stride;
    for (let w = 0; w < words; w++) slots[base + w] = this.states[number * words + w] = state[w]!;
    slots[base + last] = number + 1;
    return number;
  }

  /**
   * Adds every state that a list of records makes of what lasts: words, then masks of what is kept, then a word more.
   *
   * @param found the number of each, in their order
   */
  addAll(records: Int32Array, from: number, to: number, lasts: Uint32Array, found: Int32Array): void {
    const { words } = this;
    const stride = this.#stride;
    const last = stride - 1;
    const step = 2 * words + 1;
    const count = (to - from) / step;
    if (count > this.#hashes.length) {
      this.#hashes = new Int32Array(2 * count);
      this.#batch = new Uint32Array(2 * count * words);
    }
    const hashes = this.#hashes;
    const batch = this.#batch;
    let slots = this.#slots;
    let mask = this.#mask;
    let touched = 0;
    // All slots are touched before any is looked at, so that memory brings them together and not one after the other.
    for (let i = 0, at = from; i < count; i++, at += step) {
      let hash = 0x9e3779b9;
      for (let w = 0; w < words; w++) {
        const word = records[at + w]! | (lasts[w]! & records[at + words + w]!);
        batch[i * words + w] = word;
        hash = Math.imul(hash ^ word, 0x85ebca6b);
        hash ^= hash >>> 15;
      }
      hash = Math.imul(hash, 0xc2b2ae35);
      hash ^= hash >>> 13;
      hashes[i] = hash;
      touched ^= slots[(hash & mask) * stride + last]!;
    }
    this.touched = touched;
    for (let i = 0; i < count; i++) {
      let base = (hashes[i]! & mask) * stride;
      for (;;) {
        const number = slots[base + last]!;
        if (number === 0) {
          for (let w = 0; w < words; w++) this.#packed[w] = batch[i * words + w]!;
          found[i] = this.add(this.#packed);
          slots = this.#slots;
          mask = this.#mask;
          break;
        }
        let w = 0;
        while (w < words && slots[base + w] === batch[i * words + w]) w++;
        if (w === words) {
          found[i] = number - 1;
          break;
        }
        base = base + stride > mask * stride ? 0 : base + stride;
      }
    }
  }

  #grow(): void {
    const { words, count } = this;
    const stride = this.#stride;
    const before = this.states;
    this.#capacity *= GROWTH;
    this.states = new Uint32Array(this.#capacity * words);
    this.states.set(before);
    this.#mask = this.#capacity * 2 - 1;
    this.#slots = new Uint32Array(this.#capacity * 2 * stride);
    for (let number = 0; number < count; number++) {
      let slot = hashOf(this.states, number * words, words) & this.#mask;
      while (this.#slots[slot * stride + stride - 1] !== 0) slot = (slot + 1) & this.#mask;
      for (let w = 0; w < words; w++) this.#slots[slot * stride + w] = this.states[number * words + w]!;
      this.#slots[slot * stride + stride - 1] = number + 1;
    }
  }
}

const hashOf = (from: Uint32Array, base: number, words: number): number => {
  let hash = 0x9e3779b9;
  for (let w = 0; w < words; w++) {
    hash = Math.imul(hash ^ from[base + w]!, 0x85ebca6b);
    hash ^= hash >>> 15;
  }
  hash = Math.imul(hash, 0xc2b2ae35);
  return hash ^ (hash >>> 13);
};

/** A list of numbers that grows. */
export class Numbers {
  length = 0;
  items: Int32Array;

  constructor(capacity = 1 << 12) {
    this.items = new Int32Array(capacity);
  }

  push(number: number): void {
    if (this.length === this.items.length) {
      const more = new Int32Array(this.length * 2);
      more.set(this.items);
      this.items = more;
    }
    this.items[this.length++] = number;
  }
}

/** Two numbers to one, for what is looked up in every step; a pair and its value lie together. */
export class PairMap {
  #count = 0;
  #slots: Int32Array;
  #mask: number;

  constructor(capacity = 1 << 14) {
    this.#slots = new Int32Array(capacity * 4);
    this.#mask = capacity - 1;
  }

  /** The value of a pair, or −1. */
  get(a: number, b: number): number {
    const slots = this.#slots;
    for (let slot = slotOf(a, b) & this.#mask; ; slot = (slot + 1) & this.#mask) {
      const value = slots[4 * slot + 2]!;
      if (value === 0 || (slots[4 * slot] === a && slots[4 * slot + 1] === b)) return value - 1;
    }
  }

  /** Only for a pair that is not there yet; the value is 0 or more. */
  set(a: number, b: number, value: number): void {
    if (++this.#count * 2 > this.#mask) {
      const before = this.#slots;
      this.#slots = new Int32Array(before.length * 2);
      this.#mask = before.length / 2 - 1;
      for (let at = 0; at < before.length; at += 4)
        if (before[at + 2] !== 0) this.#put(before[at]!, before[at + 1]!, before[at + 2]! - 1);
    }
    this.#put(a, b, value);
  }

  #put(a: number, b: number, value: number): void {
    let slot = slotOf(a, b) & this.#mask;
    while (this.#slots[4 * slot + 2] !== 0) slot = (slot + 1) & this.#mask;
    this.#slots[4 * slot] = a;
    this.#slots[4 * slot + 1] = b;
    this.#slots[4 * slot + 2] = value + 1;
  }
}

const slotOf = (a: number, b: number): number => {
  let hash = Math.imul(a ^ 0x9e3779b9, 0x85ebca6b) ^ Math.imul(b, 0xc2b2ae35);
  hash ^= hash >>> 15;
  hash = Math.imul(hash, 0x2c1b3c6d);
  return hash ^ (hash >>> 13);
};
