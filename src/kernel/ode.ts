import { NotConverged } from './errors.ts';

/** What is looked for along the way: moments at which a measure changes sign. */
export interface OdeEvents {
  /** Which change of sign counts, for each measure. */
  readonly ways: readonly ('rising' | 'falling' | 'either')[];
  /** Writes every measure into `into`. */
  readonly measure: (t: number, y: Float64Array, into: Float64Array) => void;
  /** Told which measure passed zero, when, and the state then, which it must not keep or change; true ends the run there. */
  readonly happens: (which: number, t: number, y: Float64Array) => boolean;
}

/** A system y' = f(t, y). */
export interface OdeSystem {
  readonly size: number;
  /** Writes y' into `slope`. */
  readonly derive: (t: number, y: Float64Array, slope: Float64Array) => void;
  readonly events?: OdeEvents;
  /** Told of every stretch that was accepted; inside the call `Integrator.at` gives any state of it. */
  readonly passed?: (from: number, to: number) => void;
}

const SAFETY = 0.9;
const [SHRINK_MOST, GROW_MOST] = [5, 8];
const NONE = -1;

type Slopes = Float64Array;
type Stages = readonly [Slopes, Slopes, Slopes, Slopes, Slopes, Slopes, Slopes];

/**
 * Solves y' = f(t, y) by Dormand and Prince's method of order 5 with an error estimate of order 4, steps that follow the
 * error, a continuous extension, and events found on it. All room is taken when it is made; a run takes none.
 *
 * Source: Dormand and Prince 1980; step control and extension as Hairer, Nørsett and Wanner II.4 to II.6.
 * Checked against: the order conditions, solutions in closed form, and a general library on random machines.
 */
export class Integrator {
  /** The state; may be written between runs, followed by `begin`. */
  readonly y: Float64Array;
  t = 0;
  /** Steps taken and thrown away since it was made. */
  steps = 0;
  rejected = 0;

  readonly #system: OdeSystem;
  readonly #ways: OdeEvents['ways'];
  readonly #tolerance: number;
  readonly #small: number;
  readonly #mostSteps: number;
  /** State, next state and the slopes of the seven stages, one after another; `y` and the two below are parts of it. */
  readonly #work: Float64Array;
  readonly #k: Stages;
  readonly #next: Float64Array;
  readonly #probe: Float64Array;
  readonly #dense: Float64Array;
  readonly #before: Float64Array;
  readonly #after: Float64Array;
  readonly #found: Float64Array;
  readonly #trial: Float64Array;
  #step = 0;
  #fresh = true;
  /** Which measure ended the last run inside a step. */
  #ended = NONE;
  /** The step that the continuous extension is about, and whether its coefficients are there. */
  #from = 0;
  #wide = 0;
  #extended = false;

  /**
   * @param system what to solve
   * @param tolerance error allowed in one step, in each component: `tolerance · (small + |y|)`
   * @param mostSteps of one run, after which it gives up
   * @param small size at which a component begins to count: that of the whole motion, where all of it is much smaller than 1
   */
  constructor(system: OdeSystem, tolerance: number, mostSteps = 100_000, small = 1) {
    const room = (length: number) => new Float64Array(length);
    this.#system = system;
    this.#ways = system.events?.ways ?? [];
    this.#tolerance = tolerance;
    this.#small = small;
    this.#mostSteps = mostSteps;
    this.#work = room(9 * system.size);
    const part = (i: number) => this.#work.subarray(i * system.size, (i + 1) * system.size);
    this.y = part(0);
    this.#k = [part(2), part(3), part(4), part(5), part(6), part(7), part(8)];
    this.#next = part(1);
    this.#probe = room(system.size);
    this.#dense = room(5 * system.size);
    this.#before = room(this.#ways.length);
    this.#after = room(this.#ways.length);
    this.#found = room(this.#ways.length);
    this.#trial = room(this.#ways.length);
  }

  /** Starts anew from the state in `y`: nothing is remembered of runs before but the room. `step` is a first guess. */
  begin(t: number, step = 0): void {
    this.t = t;
    this.#step = step;
    this.#fresh = true;
    this.#ended = NONE;
  }

  /**
   * Goes on to `end`, or to the first event that ends it. Slopes may jump between two runs, never inside one.
   *
   * @param end time to stop at, not before the present one
   * @returns place of the event in the list that ended the run, or −1
   * @throws NotConverged when the step shrinks to nothing, a slope or the end is no number, or there are too many steps
   */
  run(end: number): number {
    // Dormand and Prince's pair, here and not outside so that a compiler sees constants: row s holds what stage s takes
    // of the slopes before it, B the result, E what order 5 has over order 4.
    const A21 = 1 / 5;
    const A31 = 3 / 40;
    const A32 = 9 / 40;
    const A41 = 44 / 45;
    const A42 = -56 / 15;
    const A43 = 32 / 9;
    const A51 = 19372 / 6561;
    const A52 = -25360 / 2187;
    const A53 = 64448 / 6561;
    const A54 = -212 / 729;
    const A61 = 9017 / 3168;
    const A62 = -355 / 33;
    const A63 = 46732 / 5247;
    const A64 = 49 / 176;
    const A65 = -5103 / 18656;
    const B1 = 35 / 384;
    const B3 = 500 / 1113;
    const B4 = 125 / 192;
    const B5 = -2187 / 6784;
    const B6 = 11 / 84;
    const E1 = 71 / 57600;
    const E3 = -71 / 16695;
    const E4 = 71 / 1920;
    const E5 = -17253 / 339200;
    const E6 = 22 / 525;
    const E7 = -1 / 40;
    const system = this.#system;
    const { size, derive } = system;
    const [k1, k2, k3, k4, k5, k6, k7] = this.#k;
    const y = this.y;
    const next = this.#next;
    const tolerance = this.#tolerance;
    const small = this.#small;
    let t = this.t;
    if (!Number.isFinite(end)) throw new NotConverged('integration', `t = ${end} is no time to arrive at`);
    if (!(end > t)) return NONE;
    derive(t, y, k1);
    const atOnce = this.#look(t);
    if (atOnce !== NONE) return atOnce;
    let wanted = this.#step > 0 ? this.#step : this.#firstStep(end - t);
    let again = false;
    const w = this.#work;
    // Where the next state and the slopes of the stages begin in it.
    const [n0, n1, n2, n3] = [size, 2 * size, 3 * size, 4 * size];
    const [n4, n5, n6, n7] = [5 * size, 6 * size, 7 * size, 8 * size];
    for (let count = 0; count < this.#mostSteps; count++) {
      const last = t + wanted * 1.0001 >= end;
      const h = last ? end - t : wanted;
      for (let i = 0; i < size; i++) w[i + n0] = w[i]! + h * A21 * w[i + n1]!;
      derive(t + h / 5, next, k2);
      for (let i = 0; i < size; i++) w[i + n0] = w[i]! + h * (A31 * w[i + n1]! + A32 * w[i + n2]!);
      derive(t + (3 / 10) * h, next, k3);
      for (let i = 0; i < size; i++) w[i + n0] = w[i]! + h * (A41 * w[i + n1]! + A42 * w[i + n2]! + A43 * w[i + n3]!);
      derive(t + (4 / 5) * h, next, k4);
      for (let i = 0; i < size; i++)
        w[i + n0] = w[i]! + h * (A51 * w[i + n1]! + A52 * w[i + n2]! + A53 * w[i + n3]! + A54 * w[i + n4]!);
      derive(t + (8 / 9) * h, next, k5);
      for (let i = 0; i < size; i++)
        w[i + n0] =
          w[i]! + h * (A61 * w[i + n1]! + A62 * w[i + n2]! + A63 * w[i + n3]! + A64 * w[i + n4]! + A65 * w[i + n5]!);
      derive(t + h, next, k6);
      for (let i = 0; i < size; i++)
        w[i + n0] =
          w[i]! + h * (B1 * w[i + n1]! + B3 * w[i + n3]! + B4 * w[i + n4]! + B5 * w[i + n5]! + B6 * w[i + n6]!);
      derive(t + h, next, k7);
      let sum = 0;
      for (let i = 0; i < size; i++) {
        const off =
          h *
          (E1 * w[i + n1]! + E3 * w[i + n3]! + E4 * w[i + n4]! + E5 * w[i + n5]! + E6 * w[i + n6]! + E7 * w[i + n7]!);
        const share = off / (tolerance * (small + Math.max(Math.abs(w[i]!), Math.abs(w[i + n0]!))));
        sum += share * share;
      }
      // The square of the error, as a share of what is allowed; a fifth root of the error is a tenth of its square.
      const error = sum / size;
      if (!(error <= 1)) {
        this.rejected++;
        wanted = h / (error < 1e18 ? Math.min(SHRINK_MOST, error ** 0.1 / SAFETY) : 10);
        if (!(wanted > 1e-14 * Math.max(1, Math.abs(t))))
          throw new NotConverged('integration', `at t = ${t} no step is small enough`);
        again = true;
        continue;
      }
      this.steps++;
      this.#from = t;
      this.#wide = h;
      this.#extended = false;
      const stopped = this.#ways.length > 0 ? this.#notice(t, h, y, next) : NONE;
      if (stopped !== NONE) {
        this.#step = wanted;
        return stopped;
      }
      system.passed?.(t, t + h);
      t = last ? end : t + h;
      for (let i = 0; i < size; i++) {
        y[i] = next[i]!;
        k1[i] = k7[i]!;
      }
      // By logarithm: a general power takes longer than a stage of a small system.
      const grow = Math.min(GROW_MOST, SAFETY * Math.exp(-0.1 * Math.log(error)));
      const proposed = h * (again ? Math.min(1, grow) : grow);
      // Where a run happens to end says nothing of the step.
      wanted = last ? Math.max(wanted, proposed) : proposed;
      again = false;
      if (last) {
        this.t = t;
        this.#step = wanted;
        return NONE;
      }
    }
    throw new NotConverged('integration', `${this.#mostSteps} steps did not reach t = ${end}`);
  }

  /** State inside the stretch just passed, by the continuous extension, of order 4. Only inside `passed` and `happens`. */
  at(t: number, into: Float64Array): void {
    this.#extend();
    this.#interpolate((t - this.#from) / this.#wide, into);
  }

  #firstStep(span: number): number {
    const { size } = this.#system;
    const slope = this.#k[0]!;
    let [fast, big] = [0, 0];
    for (let i = 0; i < size; i++) {
      const scale = this.#small + Math.abs(this.y[i]!);
      fast += (slope[i]! / scale) ** 2;
      big += (this.y[i]! / scale) ** 2;
    }
    const guess = fast > 1e-20 && big > 1e-20 ? 0.01 * Math.sqrt(big / fast) : 1e-3;
    return Math.min(span, guess);
  }

  /** What the measures are at the start of a run; one that jumped over zero since the last run happens now. */
  #look(t: number): number {
    const { events } = this.#system;
    if (!events) return NONE;
    const before = this.#before;
    const now = this.#after;
    events.measure(t, this.y, now);
    let stopped = NONE;
    for (let e = 0; e < before.length; e++) {
      const asked = !this.#fresh && stopped === NONE && e !== this.#ended;
      const happens = asked && crosses(this.#ways[e]!, before[e]!, now[e]!);
      if (happens && events.happens(e, t, this.y)) stopped = e;
      // Where the last run ended on a zero, which side of it rounding left the state on says nothing.
      if (e !== this.#ended) before[e] = now[e]!;
    }
    this.#ended = NONE;
    this.#fresh = false;
    return stopped;
  }

  /** Finds what happens in an accepted step, in its order; ends the step early when it is told to. */
  #notice(t: number, h: number, y: Float64Array, next: Float64Array): number {
    const events = this.#system.events!;
    const before = this.#before;
    const after = this.#after;
    const found = this.#found;
    const count = before.length;
    events.measure(t + h, next, after);
    let some = false;
    for (let e = 0; e < count; e++) {
      found[e] = 2;
      if (crosses(this.#ways[e]!, before[e]!, after[e]!)) {
        this.#extend();
        found[e] = this.#locate(events, e, before[e]!, after[e]!);
        some = true;
      }
    }
    while (some) {
      let first = 0;
      for (let e = 1; e < count; e++) if (found[e]! < found[first]!) first = e;
      const share = found[first]!;
      if (share > 1) break;
      this.#interpolate(share, this.#probe);
      found[first] = 3;
      before[first] = after[first]!;
      if (events.happens(first, t + share * h, this.#probe)) {
        this.#system.passed?.(t, t + share * h);
        for (let i = 0; i < y.length; i++) y[i] = this.#probe[i]!;
        this.t = t + share * h;
        this.#ended = first;
        return first;
      }
    }
    for (let e = 0; e < count; e++) before[e] = after[e]!;
    return NONE;
  }

  /** Share of the last step at which a measure passes zero, by false position with the Illinois weight. */
  #locate({ measure }: OdeEvents, which: number, atFrom: number, atTo: number): number {
    if (atTo === 0) return 1;
    let a = 0;
    let b = 1;
    let fa = atFrom;
    let fb = atTo;
    let kept = 0;
    for (let i = 0; i < 60 && b - a > 1e-13; i++) {
      const cut = (a * fb - b * fa) / (fb - fa);
      const x = cut > a && cut < b ? cut : (a + b) / 2;
      this.#interpolate(x, this.#probe);
      measure(this.#from + x * this.#wide, this.#probe, this.#trial);
      const fx = this.#trial[which]!;
      if (Math.abs(fx) < 1e-10 * Math.abs(atTo - atFrom)) return x;
      const upper = fx < 0 === atTo < 0;
      if (upper) {
        b = x;
        fb = fx;
        if (kept === -1) fa /= 2;
      } else {
        a = x;
        fa = fx;
        if (kept === 1) fb /= 2;
      }
      kept = upper ? -1 : 1;
    }
    return b;
  }

  #extend(): void {
    if (this.#extended) return;
    this.#extended = true;
    // What the extension adds to a cubic through both ends.
    const D1 = -12715105075 / 11282082432;
    const D3 = 87487479700 / 32700410799;
    const D4 = -10690763975 / 1880347072;
    const D5 = 701980252875 / 199316789632;
    const D6 = -1453857185 / 822651844;
    const D7 = 69997945 / 29380423;
    const { size } = this.#system;
    const [k1, , k3, k4, k5, k6, k7] = this.#k;
    const { y } = this;
    const next = this.#next;
    const dense = this.#dense;
    const h = this.#wide;
    for (let i = 0; i < size; i++) {
      const rise = next[i]! - y[i]!;
      const bend = h * k1[i]! - rise;
      dense[i] = y[i]!;
      dense[size + i] = rise;
      dense[2 * size + i] = bend;
      dense[3 * size + i] = rise - h * k7[i]! - bend;
      dense[4 * size + i] = h * (D1 * k1[i]! + D3 * k3[i]! + D4 * k4[i]! + D5 * k5[i]! + D6 * k6[i]! + D7 * k7[i]!);
    }
  }

  #interpolate(share: number, into: Float64Array): void {
    const { size } = this.#system;
    const dense = this.#dense;
    const rest = 1 - share;
    for (let i = 0; i < size; i++) {
      const inner = dense[3 * size + i]! + rest * dense[4 * size + i]!;
      into[i] = dense[i]! + share * (dense[size + i]! + rest * (dense[2 * size + i]! + share * inner));
    }
  }
}

const crosses = (way: OdeEvents['ways'][number], before: number, after: number): boolean =>
  before < 0 ? after >= 0 && way !== 'falling' : before > 0 ? after <= 0 && way !== 'rising' : false;
