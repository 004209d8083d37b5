/** What must never be, and what must not last: the properties of a cycle as questions about one state. */
import type { Codec } from './codec.ts';
import { ANYWHERE, NOWHERE, type Controls, type Known } from './control.ts';
import { MAX, MIN, type CycleSpec } from './spec.ts';

/** What must be so in every state. */
export const safeties = ['idle-energised', 'travels-low', 'untold', 'unheld', 'order', 'door', 'service'] as const;
export type Safety = (typeof safeties)[number];

/** What must not last. `pushing` and `pressing` are asked for each axis. */
export const lastings = ['unsettled', 'play', 'idle', 'pushing', 'pressing'] as const;
export type Lasting = (typeof lastings)[number];

export class Rules {
  readonly #level: readonly number[];
  readonly #hoists: readonly number[];

  constructor(
    readonly spec: CycleSpec,
    readonly controls: Controls,
  ) {
    const axes = spec.axes.map((_, axis) => axis);
    this.#level = axes.filter((axis) => !spec.axes[axis]!.raising);
    this.#hoists = axes.filter((axis) => spec.axes[axis]!.raising);
  }

  /** A level axis is told to move, and can. */
  #travels(known: Known): boolean {
    return known.powered && this.#level.some((axis) => known.told[axis] !== 0);
  }

  /**
   * Whether a rule is broken in a state.
   *
   * @param placeOf where each axis is
   */
  breaks(rule: Safety, known: Known, placeOf: (axis: number) => number): boolean {
    switch (rule) {
      case 'idle-energised':
        return known.ready && known.energised;
      case 'travels-low':
        return !known.travelsLow && this.#travels(known) && this.#hoists.some((axis) => placeOf(axis) !== MAX);
      case 'untold':
        return ((known.latched || known.lost) && known.lamps === 0) || (known.ready && known.playing);
      case 'unheld':
        return this.#hoists.some((axis) => this.#falls(known, axis, placeOf(axis)));
      case 'order':
        return !known.service && this.#travels(known) && this.#hoists.some((axis) => !(known.homed & (1 << axis)));
      case 'door':
        return !known.service && this.#moves(known) && this.controls.doorOpen(known.on);
      case 'service':
        return known.service && this.#moves(known) && !this.#isHeld(known);
    }
  }

  #moves(known: Known): boolean {
    return known.powered && known.told.some((motion) => motion !== 0);
  }

  #isHeld(known: Known): boolean {
    return this.spec.hold !== null && (known.on & (1 << this.spec.hold)) !== 0;
  }

  #falls(known: Known, axis: number, place: number): boolean {
    const { sinks, harmless, catches } = this.spec.axes[axis]!;
    return !known.powered && sinks && !harmless && place !== MIN && !(place === MAX && catches);
  }

  /** Whether what must not last is so in a state. */
  lasts(rule: Lasting, axis: number, known: Known, place: number): boolean {
    switch (rule) {
      case 'unsettled':
        return known.leaf >= 0 && !known.ready && !known.latched && !known.service;
      case 'play':
        return known.playing;
      case 'idle':
        return known.energised && !known.playing;
      case 'pushing': {
        const toward = known.toward[axis]!;
        return (toward === MIN || toward === MAX) && known.powered && this.controls.believes(known.on, axis, toward);
      }
      case 'pressing': {
        const toward = known.toward[axis]!;
        if (!known.powered || toward === NOWHERE || (place !== MIN && place !== MAX)) return false;
        return (toward === place || toward === ANYWHERE) && !this.#knowsEnd(known, axis, place);
      }
    }
  }

  /** The controller can tell that the axis has come to this end. */
  #knowsEnd(known: Known, axis: number, place: number): boolean {
    const motion = this.controls.motions[axis]![known.told[axis]!]!;
    if (motion?.do === 'lower') {
      const until = this.spec.inputs.findIndex(({ name }) => name === motion.until);
      return until >= 0 && (known.on & (1 << until)) !== 0;
    }
    return this.controls.believes(known.on, axis, place);
  }
}

/** Answers that were given once, by control and place. */
export class Tables {
  #brokenKept = new Int32Array(1 << 14).fill(NOT_ASKED);
  readonly #hoists: readonly number[];

  constructor(readonly rules: Rules) {
    this.#hoists = rules.spec.axes.flatMap(({ raising }, axis) => (raising ? [axis] : []));
  }

  /** Safeties that a state breaks, a bit each. Only where hoists are plays a part besides the control. */
  broken(codec: Codec, state: number): number {
    const control = codec.read(state, codec.control);
    let at = control;
    for (const axis of this.#hoists) at = at * 3 + codec.read(state, codec.places[axis]!);
    if (at >= this.#brokenKept.length) {
      const more = new Int32Array(Math.max(at + 1, this.#brokenKept.length * 2)).fill(NOT_ASKED);
      more.set(this.#brokenKept);
      this.#brokenKept = more;
    }
    const before = this.#brokenKept[at]!;
    if (before !== NOT_ASKED) return before;
    const known = this.rules.controls.known[control]!;
    const placeOf = (axis: number): number => codec.read(state, codec.places[axis]!);
    const mask = safeties.reduce((all, rule, i) => (this.rules.breaks(rule, known, placeOf) ? all | (1 << i) : all), 0);
    this.#brokenKept[at] = mask;
    return mask;
  }

  /** By control and place, three to a control: whether what must not last is so. After the search, when all controls are known. */
  lasting(rule: Lasting, axis: number): Int8Array {
    const { known } = this.rules.controls;
    return Int8Array.from({ length: 3 * known.length }, (_, at) =>
      this.rules.lasts(rule, axis, known[Math.floor(at / 3)]!, at % 3) ? 1 : 0,
    );
  }
}

const NOT_ASKED = -1;
