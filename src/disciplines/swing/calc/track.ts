/** Where the pivot goes and how long the line is, in pieces of constant jerk: what drives a hanging load. */

/** How an axis speeds up, runs and slows down; without jerk the acceleration jumps. */
export interface Profile {
  readonly speed: number;
  readonly acceleration: number;
  readonly jerk?: number;
}

/** Which of the three motions. */
export type Channel = 'x' | 'y' | 'line';

/** Fields of one piece, all at its start. */
export const FIELD = {
  t: 0,
  ax: 1,
  jx: 2,
  ay: 3,
  jy: 4,
  line: 5,
  lineSpeed: 6,
  lineAcceleration: 7,
  lineJerk: 8,
  x: 9,
  vx: 10,
  y: 11,
  vy: 12,
} as const;
export const WIDTH = 13;

/** One more copy of a motion, later and smaller; copies whose shares add up to one end where the motion ends. */
export interface Impulse {
  readonly share: number;
  readonly delay: number;
}

interface Stretch {
  readonly time: number;
  /** Acceleration at its start. */
  readonly a: number;
  readonly j: number;
}

/** Acceleration and jerk over time that change a speed by `change`. */
const ramp = (change: number, { acceleration, jerk }: Profile): readonly Stretch[] => {
  const size = Math.abs(change);
  const way = Math.sign(change);
  if (size === 0) return [];
  if (jerk === undefined) return [{ time: size / acceleration, a: way * acceleration, j: 0 }];
  const top = Math.min(acceleration, Math.sqrt(size * jerk));
  const easing = top / jerk;
  const middle = size / top - easing;
  return [
    { time: easing, a: 0, j: way * jerk },
    ...(middle > 1e-12 ? [{ time: middle, a: way * top, j: 0 }] : []),
    { time: easing, a: way * top, j: -way * jerk },
  ];
};

/** Time of a ramp from rest to a speed [s]. */
export const rampTime = (speed: number, { acceleration, jerk }: Profile): number =>
  jerk === undefined
    ? speed / acceleration
    : speed * jerk >= acceleration ** 2
      ? speed / acceleration + acceleration / jerk
      : 2 * Math.sqrt(speed / jerk);

/** Speed that is reached on a way from rest to rest [m/s]. */
const speedOver = (distance: number, { speed, acceleration: a, jerk: j }: Profile): number => {
  if (j === undefined) return Math.min(speed, Math.sqrt(a * distance));
  const full = (2 * a ** 3) / j ** 2;
  const most =
    distance >= full
      ? (a / 2) * (Math.sqrt((a / j) ** 2 + (4 * distance) / a) - a / j)
      : ((distance ** 2 * j) / 4) ** (1 / 3);
  return Math.min(speed, most);
};

/** Speed that is reached in a time from rest [m/s]. */
const speedAfter = (time: number, { speed, acceleration: a, jerk: j }: Profile): number => {
  if (j === undefined) return Math.min(speed, a * time);
  return Math.min(speed, time >= (2 * a) / j ? a * (time - a / j) : (j * time ** 2) / 4);
};

const travelStretches = (distance: number, profile: Profile): readonly Stretch[] => {
  const size = Math.abs(distance);
  if (size === 0) return [];
  const v = Math.sign(distance) * speedOver(size, profile);
  const cruise = size / Math.abs(v) - rampTime(Math.abs(v), profile);
  return [...ramp(v, profile), ...(cruise > 1e-12 ? [{ time: cruise, a: 0, j: 0 }] : []), ...ramp(-v, profile)];
};

/** Delayed and weighted copies of a motion, laid over each other. */
const shaped = (stretches: readonly Stretch[], impulses: readonly Impulse[]): readonly Stretch[] => {
  const starts = [0];
  for (const { time } of stretches) starts.push(starts.at(-1)! + time);
  const cuts = [...new Set(impulses.flatMap(({ delay }) => starts.map((start) => start + delay)))].sort(
    (a, b) => a - b,
  );
  return cuts.slice(1).flatMap((end, i) => {
    const from = cuts[i]!;
    if (!(end - from > 1e-12)) return [];
    const middle = (from + end) / 2;
    let [a, j] = [0, 0];
    for (const { share, delay } of impulses) {
      const k = stretches.findIndex((_, n) => starts[n]! + delay <= middle && middle < starts[n + 1]! + delay);
      if (k < 0) continue;
      a += share * (stretches[k]!.a + stretches[k]!.j * (from - delay - starts[k]!));
      j += share * stretches[k]!.j;
    }
    return [{ time: end - from, a, j }];
  });
};

/** A motion written piece by piece. Room is taken when it is made, and doubled when it runs out; `clear` starts over. */
export class Track {
  /** Pieces one after another, `WIDTH` numbers each; one more follows the last and holds the state at the end. */
  pieces = new Float64Array(64 * WIDTH);
  count = 0;

  constructor(line: number) {
    this.clear(line);
  }

  /** A pivot at rest over the origin, with that much line out. */
  clear(line: number): this {
    this.count = 0;
    this.pieces.fill(0, 0, WIDTH);
    this.pieces[FIELD.line] = line;
    return this;
  }

  /** Time at the end of what was written [s]. */
  get end(): number {
    return this.#last(FIELD.t);
  }
  /** Where the pivot is at the end [m]. */
  get x(): number {
    return this.#last(FIELD.x);
  }
  get y(): number {
    return this.#last(FIELD.y);
  }
  /** Line out at the end [m]. */
  get line(): number {
    return this.#last(FIELD.line);
  }
  get lineSpeed(): number {
    return this.#last(FIELD.lineSpeed);
  }

  #last(field: number): number {
    return this.pieces[this.count * WIDTH + field]!;
  }

  /** Where the pivot is and how much line is out at a time [s]; past the end it is as at the end. */
  at(t: number): { readonly x: number; readonly y: number; readonly line: number } {
    const p = this.pieces;
    let piece = this.count;
    while (piece > 0 && p[piece * WIDTH + FIELD.t]! > t) piece--;
    const from = piece * WIDTH;
    const s = piece === this.count ? 0 : Math.max(0, t - p[from + FIELD.t]!);
    const along = (place: number, speed: number, a: number, j: number): number =>
      p[from + place]! + s * (p[from + speed]! + s * (p[from + a]! / 2 + (s * p[from + j]!) / 6));
    return {
      x: along(FIELD.x, FIELD.vx, FIELD.ax, FIELD.jx),
      y: along(FIELD.y, FIELD.vy, FIELD.ay, FIELD.jy),
      line: along(FIELD.line, FIELD.lineSpeed, FIELD.lineAcceleration, FIELD.lineJerk),
    };
  }

  /** Goes on for a time with these accelerations and jerks. Nothing is written for no time. */
  add(time: number, ax = 0, ay = 0, lineAcceleration = 0, jx = 0, jy = 0, lineJerk = 0): this {
    if (!(time > 0)) return this;
    if ((this.count + 2) * WIDTH > this.pieces.length) {
      const room = new Float64Array(2 * this.pieces.length);
      room.set(this.pieces);
      this.pieces = room;
    }
    const p = this.pieces;
    const at = this.count * WIDTH;
    [p[at + FIELD.ax], p[at + FIELD.jx], p[at + FIELD.ay], p[at + FIELD.jy]] = [ax, jx, ay, jy];
    [p[at + FIELD.lineAcceleration], p[at + FIELD.lineJerk]] = [lineAcceleration, lineJerk];
    const next = at + WIDTH;
    p.fill(0, next, next + WIDTH);
    p[next + FIELD.t] = p[at + FIELD.t]! + time;
    const move = (place: number, speed: number, a: number, j: number): void => {
      p[next + place] = p[at + place]! + time * (p[at + speed]! + time * (a / 2 + (time * j) / 6));
      p[next + speed] = p[at + speed]! + time * (a + (time * j) / 2);
    };
    move(FIELD.x, FIELD.vx, ax, jx);
    move(FIELD.y, FIELD.vy, ay, jy);
    move(FIELD.line, FIELD.lineSpeed, lineAcceleration, lineJerk);
    this.count++;
    return this;
  }

  /** Everything keeps its speed. */
  wait(time: number): this {
    return this.add(time);
  }

  #along(channel: Channel, stretches: readonly Stretch[]): this {
    for (const { time, a, j } of stretches) {
      if (channel === 'x') this.add(time, a, 0, 0, j);
      else if (channel === 'y') this.add(time, 0, a, 0, 0, j);
      else this.add(time, 0, 0, a, 0, 0, j);
    }
    return this;
  }

  /** From rest to rest over a distance; for the line, more of it is a way down. */
  travel(channel: Channel, distance: number, profile: Profile, impulses?: readonly Impulse[]): this {
    const plain = travelStretches(distance, profile);
    return this.#along(channel, impulses ? shaped(plain, impulses) : plain);
  }

  /** Driven for as long as somebody holds the stick, then to rest. `way` is 1 or −1. */
  jog(channel: Channel, way: number, hold: number, profile: Profile): this {
    const v = way * speedAfter(hold, profile);
    this.#along(channel, ramp(v, profile));
    this.wait(hold - rampTime(Math.abs(v), profile));
    return this.#along(channel, ramp(-v, profile));
  }
}

/** Time of a travel from rest to rest [s]. */
export const travelTime = (distance: number, profile: Profile): number => {
  const size = Math.abs(distance);
  if (size === 0) return 0;
  const v = speedOver(size, profile);
  return size / v + rampTime(v, profile);
};
