/** How a state lies in its words. */
import type { Controls } from './control.ts';
import { bitsFor, layout, Space, type Field } from './space.ts';
import type { CycleSpec } from './spec.ts';

/** A state, unpacked. */
export interface Unpacked {
  control: number;
  active: number;
  occurred: number;
  readonly places: Int32Array;
  readonly progress: Int32Array;
  readonly clocks: Int32Array;
}

const CONTROL_BITS = 20;

export class Codec {
  readonly space: Space;
  readonly control: Field;
  readonly active: Field;
  readonly occurred: Field;
  readonly places: readonly Field[];
  readonly progress: readonly Field[];
  readonly clocks: readonly Field[];

  constructor(spec: CycleSpec, controls: Controls) {
    const { nodes } = controls.machine;
    const levels = Math.max(1, ...nodes.map(({ line }) => line.length));
    // By level, where the longest of its clocks stops.
    const longest = Array.from({ length: levels }, (_, level) =>
      Math.max(
        0,
        ...nodes.filter((node) => node.level === level).map(({ index }) => controls.thresholds[index]!.at(-1) ?? 0),
      ),
    );
    // A fault that stays is there as long as it has occurred.
    const comesAndGoes = spec.faults.some(({ intermittent }) => intermittent);
    const n = spec.axes.length;
    const { fields, words } = layout([
      CONTROL_BITS,
      spec.faults.length,
      comesAndGoes ? spec.faults.length : 0,
      ...spec.axes.map(() => 2),
      ...spec.axes.map(({ moveTicks, homeTicks }) => bitsFor(Math.max(moveTicks, homeTicks))),
      ...longest.map(bitsFor),
    ]);
    this.control = fields[0]!;
    this.active = fields[1]!;
    this.occurred = comesAndGoes ? fields[2]! : fields[1]!;
    this.places = fields.slice(3, 3 + n);
    this.progress = fields.slice(3 + n, 3 + 2 * n);
    this.clocks = fields.slice(3 + 2 * n);
    this.space = new Space(words);
  }

  blank(): Unpacked {
    return {
      control: 0,
      active: 0,
      occurred: 0,
      places: new Int32Array(this.places.length),
      progress: new Int32Array(this.places.length),
      clocks: new Int32Array(this.clocks.length),
    };
  }

  /** One field of a state. */
  read(number: number, { word, shift, mask }: Field): number {
    const { states, words } = this.space;
    return (states[number * words + word]! >>> shift) & mask;
  }

  /** A state as numbers; `into` is filled and given back. */
  unpack(number: number, into: Unpacked = this.blank()): Unpacked {
    into.control = this.read(number, this.control);
    into.active = this.read(number, this.active);
    into.occurred = this.read(number, this.occurred);
    for (let i = 0; i < this.places.length; i++) {
      into.places[i] = this.read(number, this.places[i]!);
      into.progress[i] = this.read(number, this.progress[i]!);
    }
    for (let i = 0; i < this.clocks.length; i++) into.clocks[i] = this.read(number, this.clocks[i]!);
    return into;
  }
}
