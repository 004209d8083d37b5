/** The machine's half of a tick: where an axis can be after it. */
import type { Codec, Unpacked } from './codec.ts';
import type { Controls, Known, Motion } from './control.ts';
import { BETWEEN, MAX, MIN, type AxisSpec, type CycleSpec } from './spec.ts';

/** What may have become of an axis; filled anew for each question. */
export class Outcomes {
  count = 0;
  readonly place = new Int32Array(4);
  readonly progress = new Int32Array(4);
  readonly counted = new Int32Array(4);

  add(place: number, progress: number, counted: 0 | 1): void {
    this.place[this.count] = place;
    this.progress[this.count] = progress;
    this.counted[this.count++] = counted;
  }
}

const falls = (axis: AxisSpec, place: number): boolean =>
  axis.raising && axis.sinks && place !== MIN && !(place === MAX && axis.catches);

/** Most ticks of a motion. */
export const ticksOf = (axis: AxisSpec, motion: Motion | null): number =>
  motion?.do === 'home' ? axis.homeTicks : axis.moveTicks;

/**
 * Every outcome of one tick for one axis.
 *
 * @param toward where its motion leads; see `toward` of a control
 * @param progress ticks for which it has been on its way
 */
export const outcomes = (
  into: Outcomes,
  axis: AxisSpec,
  motion: Motion | null,
  toward: number,
  place: number,
  progress: number,
  powered: boolean,
  stalled: boolean,
): void => {
  into.count = 0;
  const most = ticksOf(axis, motion);
  if (motion?.do === 'move') {
    const ticks = Math.min(progress + 1, most);
    if (!powered && falls(axis, place)) {
      for (const there of [place, place - 1]) {
        if (ticks < most) into.add(there, ticks, 0);
        into.add(there, 0, 1);
      }
      return;
    }
    const isStuck = !powered || stalled;
    if (ticks < most) into.add(isStuck || place === toward ? place : BETWEEN, ticks, 0);
    into.add(isStuck ? place : toward, 0, 1);
    return;
  }
  if (!powered) {
    into.add(place, progress, 0);
    if (falls(axis, place)) into.add(place - 1, progress, 0);
    return;
  }
  if (motion === null) {
    into.add(place, 0, 0);
    return;
  }
  if (motion.do === 'jog') {
    into.add(place, 0, 0);
    if (stalled) return;
    if (place === BETWEEN) {
      into.add(MIN, 0, 0);
      into.add(MAX, 0, 0);
    } else into.add(BETWEEN, 0, 0);
    return;
  }
  if (place === toward) into.add(place, 0, 0);
  else if (stalled) into.add(place, Math.min(progress + 1, most), 0);
  else {
    const ticks = progress + 1;
    if (ticks < most) into.add(BETWEEN, ticks, 0);
    if (place === BETWEEN || ticks >= most) into.add(toward, 0, 0);
  }
};

/** Four axes with four outcomes each. */
const MOST_MOVES = 256;

/** Everything that all axes together can do in a tick, as bits of the next state. */
export class Moves {
  count = 0;
  /** By move and word. */
  readonly placed: Uint32Array;
  readonly underway: Uint32Array;
  /** By move: switches that it closes, axes whose count is done, axes that are not up; a bit each. */
  readonly truth = new Int32Array(MOST_MOVES);
  readonly counted = new Int32Array(MOST_MOVES);
  readonly low = new Int32Array(MOST_MOVES);
  readonly #outcomes: readonly Outcomes[];
  readonly #chosen: Int32Array;
  /** By axis and place: the switches there, a bit each. */
  readonly #felt: Int32Array;
  #stalled = -1;
  #powered = false;

  constructor(
    readonly spec: CycleSpec,
    readonly codec: Codec,
  ) {
    const { axes, inputs } = spec;
    this.#outcomes = axes.map(() => new Outcomes());
    this.#chosen = new Int32Array(axes.length);
    this.#felt = Int32Array.from({ length: 3 * axes.length }, (_, at) =>
      inputs.reduce((mask, { feels }, i) => (feels && feels.axis * 3 + feels.end === at ? mask | (1 << i) : mask), 0),
    );
    this.placed = new Uint32Array(MOST_MOVES * codec.space.words);
    this.underway = new Uint32Array(MOST_MOVES * codec.space.words);
  }

  /** Another state is looked at. */
  forget(): void {
    this.#stalled = -1;
  }

  /** The one move of axes that stay where they are. */
  stay(places: Int32Array): void {
    this.#outcomes.forEach((outcome, axis) => {
      outcome.count = 0;
      outcome.add(places[axis]!, 0, 0);
    });
    this.forget();
    this.#combine();
  }

  /** Makes the moves of a state; they are kept while power and stalls are the same. */
  make(known: Known, controls: Controls, now: Unpacked, powered: boolean, stalled: number, stalls: Int32Array): void {
    if (this.#stalled === stalled && this.#powered === powered) return;
    this.#stalled = stalled;
    this.#powered = powered;
    for (let axis = 0; axis < this.#outcomes.length; axis++)
      outcomes(
        this.#outcomes[axis]!,
        this.spec.axes[axis]!,
        controls.motions[axis]![known.told[axis]!]!,
        known.toward[axis]!,
        now.places[axis]!,
        now.progress[axis]!,
        powered,
        (stalled & stalls[axis]!) !== 0,
      );
    this.#combine();
  }

  #combine(): void {
    const n = this.#outcomes.length;
    const { codec, placed, underway } = this;
    const { words } = codec.space;
    const chosen = this.#chosen.fill(0);
    for (this.count = 0; ;) {
      const move = this.count++;
      const base = move * words;
      for (let w = 0; w < words; w++) placed[base + w] = underway[base + w] = 0;
      let [truth, counted, low] = [0, 0, 0];
      for (let axis = 0; axis < n; axis++) {
        const outcome = this.#outcomes[axis]!;
        const which = chosen[axis]!;
        const place = outcome.place[which]!;
        truth |= this.#felt[3 * axis + place]!;
        counted |= outcome.counted[which]! << axis;
        if (place !== MAX) low |= 1 << axis;
        const at = codec.places[axis]!;
        placed[base + at.word]! |= place << at.shift;
        const way = codec.progress[axis]!;
        underway[base + way.word]! |= outcome.progress[which]! << way.shift;
      }
      this.truth[move] = truth;
      this.counted[move] = counted;
      this.low[move] = low;
      let axis = 0;
      while (axis < n && ++chosen[axis]! === this.#outcomes[axis]!.count) chosen[axis++] = 0;
      if (axis === n) return;
    }
  }
}
