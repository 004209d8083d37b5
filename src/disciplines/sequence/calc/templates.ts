/** Steps that many states have in common, as words of the next state and masks of what goes on lasting in it. */
import type { Codec, Unpacked } from './codec.ts';
import { ANYWHERE, type Controls, type Known } from './control.ts';
import { ticksOf } from './plant.ts';
import { Numbers, Space } from './space.ts';
import { BETWEEN, MAX, MIN, popcount, type CycleSpec, type FaultSpec } from './spec.ts';

const TWELVE = 12;
const ROOM = 20;

export class Templates {
  /** By template, where its records begin; one more at the end. */
  readonly starts = new Numbers();
  /** Records: words, masks, and whether the machine was left alone. */
  readonly records = new Numbers(1 << 16);
  readonly stride: number;
  readonly #keys: Space;
  readonly #key: Uint32Array;
  readonly #lasts: Uint32Array;
  /** Faults that may make no difference for a while, a bit each; of them the dead switches by axis and end, the stalls by axis. */
  readonly #carryable: number;
  readonly #dead: Int32Array;
  readonly #stalls: Int32Array;
  #carried = 0;
  /** By word: everything but clocks and ways. */
  readonly #steady: Uint32Array;

  constructor(
    readonly spec: CycleSpec,
    readonly codec: Codec,
  ) {
    const { words } = codec.space;
    this.stride = 2 * words + 1;
    this.#keys = new Space(words + 1);
    this.#key = new Uint32Array(words + 1);
    this.#lasts = new Uint32Array(words);
    this.#steady = new Uint32Array(words).fill(0xffffffff);
    for (const { word, shift, mask } of [...codec.clocks, ...codec.progress]) this.#steady[word]! &= ~(mask << shift);
    const staying = (test: (fault: FaultSpec) => boolean): number =>
      spec.faults.reduce((mask, fault, f) => (!fault.intermittent && test(fault) ? mask | (1 << f) : mask), 0);
    const feelsAt = (at: number) => (fault: FaultSpec) => {
      const feels = fault.kind === 'dead' ? spec.inputs[fault.input]!.feels : null;
      return feels !== null && 3 * feels.axis + feels.end === at;
    };
    this.#dead = Int32Array.from({ length: 3 * spec.axes.length }, (_, at) => staying(feelsAt(at)));
    this.#stalls = Int32Array.from(spec.axes, (_, axis) =>
      staying((fault) => fault.kind === 'stalls' && fault.axis === axis),
    );
    this.#carryable = [...this.#dead, ...this.#stalls].reduce((mask, one) => mask | one, 0);
    this.starts.push(0);
  }

  /** Faults that make no difference in the next tick, whether they are there or not: they are carried along. */
  #carriedIn(now: Unpacked, known: Known): number {
    let telling = 0;
    for (let axis = 0; axis < now.places.length; axis++) {
      const place = now.places[axis]!;
      const { raising, sinks } = this.spec.axes[axis]!;
      telling |= this.#dead[3 * axis + place]!;
      if (raising && sinks && place === BETWEEN) telling |= this.#dead[3 * axis + MIN]!;
      if (known.told[axis] === 0) continue;
      const toward = known.toward[axis]!;
      telling |= this.#stalls[axis]!;
      if (toward === ANYWHERE) telling |= this.#dead[3 * axis + MIN]! | this.#dead[3 * axis + MAX]!;
      else if (toward >= 0) telling |= this.#dead[3 * axis + toward]!;
    }
    return this.#carryable & ~telling;
  }

  /** Templates whose steps are known. */
  get count(): number {
    return this.starts.length - 1;
  }

  /** The template of a state; its number is the count when it is new. All that decides about its steps but not how long something has lasted. */
  find(state: number, now: Unpacked, due: number, known: Known, controls: Controls): number {
    const { states, words } = this.codec.space;
    let rest = due;
    for (let axis = 0; axis < now.progress.length; axis++) {
      const ticks = now.progress[axis]! + 1;
      const most = ticksOf(this.spec.axes[axis]!, controls.motions[axis]![known.told[axis]!]!);
      const kind = ticks < most ? 1 : ticks === most ? 2 : 3;
      rest |= kind << (TWELVE + 2 * axis);
    }
    // Whether one more fault may set in does not depend on which are there.
    if (popcount(now.occurred) < this.spec.atMost) rest |= 1 << ROOM;
    for (let w = 0; w < words; w++) this.#key[w] = states[state * words + w]! & this.#steady[w]!;
    this.#key[words] = rest;
    this.#carried = this.#carriedIn(now, known);
    const { active, occurred } = this.codec;
    this.#key[active.word]! &= ~(this.#carried << active.shift);
    this.#key[occurred.word]! &= ~(this.#carried << occurred.shift);
    for (let axis = 0; axis < now.progress.length; axis++) {
      // What stands still on its way stays where it is on it.
      if (known.powered && (rest >> (TWELVE + 2 * axis)) % 4 !== 3) continue;
      const { word, shift } = this.codec.progress[axis]!;
      this.#key[word]! |= now.progress[axis]! << shift;
    }
    return this.#keys.add(this.#key);
  }

  /** Clocks and ways of a state when a tick has passed, at their places. */
  lasting(now: Unpacked, clocks: Int32Array): Uint32Array {
    const { codec } = this;
    const lasts = this.#lasts.fill(0);
    for (let i = 0; i < codec.progress.length; i++) {
      const { word, shift, mask } = codec.progress[i]!;
      lasts[word]! |= ((now.progress[i]! + 1) & mask) << shift;
    }
    for (let i = 0; i < codec.clocks.length; i++) {
      const { word, shift } = codec.clocks[i]!;
      lasts[word]! |= clocks[i]! << shift;
    }
    lasts[codec.active.word]! |= now.active << codec.active.shift;
    lasts[codec.occurred.word]! |= now.occurred << codec.occurred.shift;
    return lasts;
  }

  /**
   * Notes a step, once, from the next state of the first state that has it.
   *
   * @param anew levels that are entered anew, a bit each
   */
  record(packed: Uint32Array, now: Unpacked, anew: number, levels: number, left: boolean): void {
    const { codec } = this;
    const { words } = codec.space;
    const key = this.#key;
    const masks = this.#lasts.fill(0);
    for (let w = 0; w < words; w++) key[w] = packed[w]! & this.#steady[w]!;
    for (let i = 0; i < codec.progress.length; i++) {
      const { word, shift, mask } = codec.progress[i]!;
      const there = (packed[word]! >>> shift) & mask;
      if (there === 0) continue;
      if (there === now.progress[i]! + 1) masks[word]! |= mask << shift;
      else key[word]! |= there << shift;
    }
    for (let level = 0; level < levels; level++) {
      const { word, shift, mask } = codec.clocks[level]!;
      if (!(anew & (1 << level))) masks[word]! |= mask << shift;
    }
    const { active, occurred } = codec;
    const carried = this.#carried;
    key[active.word]! &= ~(carried << active.shift);
    masks[active.word]! |= carried << active.shift;
    key[occurred.word]! &= ~(carried << occurred.shift);
    masks[occurred.word]! |= carried << occurred.shift;
    const { items, length } = this.records;
    const first = this.starts.items[this.starts.length - 1]!;
    for (let at = first; at < length; at += this.stride) {
      let w = 0;
      while (w < words && items[at + w] === (key[w]! | 0) && items[at + words + w] === (masks[w]! | 0)) w++;
      if (w < words) continue;
      // A step that a machine left alone can take is such a step, whoever else takes it.
      if (left) items[at + this.stride - 1] = 1;
      return;
    }
    for (let w = 0; w < words; w++) this.records.push(key[w]!);
    for (let w = 0; w < words; w++) this.records.push(masks[w]!);
    this.records.push(left ? 1 : 0);
  }

  end(): void {
    this.starts.push(this.records.length);
  }
}
