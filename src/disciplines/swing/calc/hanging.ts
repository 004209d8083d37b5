import { Integrator, type OdeEvents } from '../../../kernel/ode.ts';
import { FIELD, WIDTH, type Track } from './track.ts';

/** Where walls stand, as coordinates in the frame in which the track begins at the origin [m]. */
export interface Walls {
  readonly xLow: number;
  readonly xHigh: number;
  readonly yLow: number;
  readonly yHigh: number;
}

/** What belongs to the load and its surroundings, and not to one motion. */
export interface Surroundings {
  readonly gravity: number;
  /** Time in which the swing fades to 1/e, the same at every length; Infinity without damping [s]. */
  readonly fadingTime: number;
  /** Error allowed in a step, in components of the direction and of its rate, as a share of `swing` and of themselves. */
  readonly tolerance: number;
  /** Size of the swings that are looked at [rad]; 1 where none is said, so that a step of a small swing is off by less than a `tolerance` of a radian. */
  readonly swing?: number;
  readonly walls?: Walls;
  /** Depth of the hook below the pivot at which a load that rises docks [m]. */
  readonly dockDepth?: number;
  /** Distance from the hook down to the centre of mass, at which the line of the model ends [m]. */
  readonly belowHook?: number;
  /** Whether `xLow` to `yHigh` of what is seen are wanted exactly; else they are those at peaks and ends of pieces. */
  readonly reach?: true;
}

/** What was seen of a load since it was hung up. Angles are from the plumb line under the pivot. */
export interface Seen {
  /** Largest angle [rad] and largest distance from the plumb line [m]. */
  angle: number;
  sideways: number;
  /** Ends of where the load was, in the frame of the track [m]. */
  xLow: number;
  xHigh: number;
  yLow: number;
  yHigh: number;
  /** Least pull of the line for each kilogram, at the ends of steps, pieces and swings [m/s²]. */
  pull: number;
  /** When the line went slack, it swung up to the horizontal, a wall was first touched, it docked [s]; NaN when never. */
  slackAt: number;
  overAt: number;
  touchedAt: number;
  dockedAt: number;
}

/** How a run ended. */
export type Ending = 'end' | 'slack' | 'over' | 'docked';

export interface HangingLoad {
  /** Direction of the line, as its x and y, and their rates; its z follows. Read only. */
  readonly state: Float64Array;
  readonly seen: Seen;
  readonly time: () => number;
  /** Steps of the integrator taken and thrown away since it was made. */
  readonly effort: () => { readonly steps: number; readonly rejected: number };
  /** Hangs the load up anew, out of plumb by `x` and `y` metres and turning at these rates; forgets what was seen. */
  readonly hang: (track: Track, x?: number, y?: number, rateX?: number, rateY?: number) => void;
  /** Goes along a track from where the load was hung up, to its end or to where it docks, swings over or the line goes slack. */
  readonly run: (track: Track) => Ending;
  /** Goes on for a time under these accelerations of pivot and line, from wherever it is. */
  readonly push: (time: number, ax: number, ay: number, lineAcceleration: number) => Ending;
  /** Distance from the plumb line [m] and angle [rad] now. */
  readonly sideways: () => number;
  readonly angle: () => number;
  /** Angle up to which the load would swing if the pivot and the line stood still from now on [rad]; exact in a plane. */
  readonly amplitude: () => number;
  /** Line out now, down to the centre of mass [m], and its rate [m/s]. */
  readonly line: () => number;
  readonly lineSpeed: () => number;
  /** The state at any time of the stretch just passed; only inside `passed`. */
  readonly at: (t: number, into: Float64Array) => void;
}

const [SLACK, DOCK, OUTWARD, WALL, OVER, ALONG_X, ALONG_Y] = [0, 1, 2, 3, 4, 5, 6];
/** Steps of one piece of a track, after which it gives up. */
const MOST = 100_000;
/** Square of the cosine at which a load counts as swung up to the horizontal: 84° from the plumb line. */
const LEVEL = 0.01;

/**
 * A load on a line of changing length under a pivot that moves: n̈ = [(I − n nᵀ)(−g·ẑ − q̈) − 2·L̇·ṅ]/L − (c/m)·ṅ − |ṅ|²·n
 * with the unit vector n from pivot to load, and c/m twice the reciprocal of the fading time. n is held as its x and y,
 * from which its z below the pivot follows, so that |n| is 1; a load that swings up to the horizontal ends a run. The line
 * is taut while −n·(g·ẑ + q̈) − L̈ + L·|ṅ|² > 0; a slack line ends a run, since nothing of this holds from there on.
 *
 * Source: own derivation, Newton's law for a point on a line in a frame that moves with the pivot.
 * Checked against: the same load in rectangular coordinates under a line force, solved by a general library; Bessel's
 * solution for steady hoisting; conservation of energy.
 *
 * @param surroundings what belongs to the load
 * @param passed told of every stretch of time that was accepted
 */
export const hangingLoad = (
  { gravity, fadingTime, tolerance, swing, walls, dockDepth, belowHook = 0, reach }: Surroundings,
  passed?: (from: number, to: number) => void,
): HangingLoad => {
  const damping = 2 / fadingTime;
  // The piece that is being run.
  const now = new Float64Array(WIDTH);
  const { t: T, ax: AX, jx: JX, ay: AY, jy: JY, x: X, vx: VX, y: Y, vy: VY } = FIELD;
  const { line: LINE, lineSpeed: LINE_SPEED, lineAcceleration: LINE_ACCELERATION, lineJerk: LINE_JERK } = FIELD;

  const lineAt = (s: number): number =>
    now[LINE]! + s * (now[LINE_SPEED]! + s * (now[LINE_ACCELERATION]! / 2 + (s * now[LINE_JERK]!) / 6));
  const lineSpeedAt = (s: number): number =>
    now[LINE_SPEED]! + s * (now[LINE_ACCELERATION]! + (s * now[LINE_JERK]!) / 2);
  const xAt = (s: number): number => now[X]! + s * (now[VX]! + s * (now[AX]! / 2 + (s * now[JX]!) / 6));
  const yAt = (s: number): number => now[Y]! + s * (now[VY]! + s * (now[AY]! / 2 + (s * now[JY]!) / 6));
  const speedAt = (s: number, speed: number, a: number, j: number): number =>
    now[speed]! + s * (now[a]! + (s * now[j]!) / 2);

  const derive = (t: number, y: Float64Array, slope: Float64Array): void => {
    const s = t - now[T]!;
    const each = 1 / lineAt(s);
    const ax = -now[AX]! - s * now[JX]!;
    const ay = -now[AY]! - s * now[JY]!;
    const nx = y[0]!;
    const ny = y[1]!;
    const vx = y[2]!;
    const vy = y[3]!;
    const nz = -Math.sqrt(1 - nx * nx - ny * ny);
    const vz = -(nx * vx + ny * vy) / nz;
    const along = (nx * ax + ny * ay - nz * gravity) * each + vx * vx + vy * vy + vz * vz;
    const drag = 2 * lineSpeedAt(s) * each + damping;
    slope[0] = vx;
    slope[1] = vy;
    slope[2] = ax * each - along * nx - drag * vx;
    slope[3] = ay * each - along * ny - drag * vy;
  };

  /** |ṅ|² */
  const turning = (y: Float64Array): number => {
    const along = y[0]! * y[2]! + y[1]! * y[3]!;
    return y[2]! * y[2]! + y[3]! * y[3]! + (along * along) / (1 - y[0]! * y[0]! - y[1]! * y[1]!);
  };
  /** Cosine of the angle from the plumb line, −n_z. */
  const upright = (y: Float64Array): number => Math.sqrt(1 - y[0]! * y[0]! - y[1]! * y[1]!);

  /** Pull of the line for each kilogram. */
  const pullAt = (s: number, y: Float64Array): number =>
    upright(y) * gravity -
    y[0]! * (now[AX]! + s * now[JX]!) -
    y[1]! * (now[AY]! + s * now[JY]!) -
    (now[LINE_ACCELERATION]! + s * now[LINE_JERK]!) +
    lineAt(s) * turning(y);

  const clearance = (s: number, y: Float64Array, room: Walls): number => {
    const line = lineAt(s);
    const x = xAt(s) + line * y[0]!;
    const depth = yAt(s) + line * y[1]!;
    const inX = x - room.xLow < room.xHigh - x ? x - room.xLow : room.xHigh - x;
    const inY = depth - room.yLow < room.yHigh - depth ? depth - room.yLow : room.yHigh - depth;
    return inX < inY ? inX : inY;
  };

  const seen: Seen = {
    angle: 0,
    sideways: 0,
    xLow: 0,
    xHigh: 0,
    yLow: 0,
    yHigh: 0,
    pull: 0,
    slackAt: NaN,
    overAt: NaN,
    touchedAt: NaN,
    dockedAt: NaN,
  };

  /** Takes note of a state; gives the pull of the line there. */
  const see = (t: number, y: Float64Array): number => {
    const s = t - now[T]!;
    const out = Math.sqrt(y[0]! * y[0]! + y[1]! * y[1]!);
    const line = lineAt(s);
    const angle = Math.asin(Math.min(1, out));
    if (angle > seen.angle) seen.angle = angle;
    if (line * out > seen.sideways) seen.sideways = line * out;
    const x = xAt(s) + line * y[0]!;
    const depth = yAt(s) + line * y[1]!;
    if (x < seen.xLow) seen.xLow = x;
    if (x > seen.xHigh) seen.xHigh = x;
    if (depth < seen.yLow) seen.yLow = depth;
    if (depth > seen.yHigh) seen.yHigh = depth;
    const pull = pullAt(s, y);
    if (pull < seen.pull) seen.pull = pull;
    if (walls && Number.isNaN(seen.touchedAt) && clearance(s, y, walls) < 0) seen.touchedAt = t;
    return pull;
  };

  // Pull of the line, depth below the dock, speed outward, clearance of walls, room below the horizontal; speeds along x, y.
  const falling = ['falling', 'falling', 'falling', 'falling', 'falling'] as const;
  const events: OdeEvents = {
    ways: reach ? [...falling, 'either', 'either'] : falling,
    measure: (t, y, into) => {
      const s = t - now[T]!;
      const line = lineAt(s);
      const pull = pullAt(s, y);
      if (pull < seen.pull) seen.pull = pull;
      into[SLACK] = pull;
      into[DOCK] = dockDepth === undefined ? 1 : (line - belowHook) * upright(y) - dockDepth;
      into[OUTWARD] = y[0]! * y[2]! + y[1]! * y[3]!;
      into[OVER] = 1 - y[0]! * y[0]! - y[1]! * y[1]! - LEVEL;
      into[WALL] = walls ? clearance(s, y, walls) : 1;
      if (!reach) return;
      const lineSpeed = lineSpeedAt(s);
      into[ALONG_X] = speedAt(s, VX, AX, JX) + line * y[2]! + lineSpeed * y[0]!;
      into[ALONG_Y] = speedAt(s, VY, AY, JY) + line * y[3]! + lineSpeed * y[1]!;
    },
    happens: (which, t, y) => {
      // At the end of a swing the pull may be gone and come back within one step.
      if (!(see(t, y) > 0) || which === SLACK) {
        seen.slackAt = t;
        return true;
      }
      if (which === OVER) seen.overAt = t;
      if (which === DOCK) seen.dockedAt = t;
      if (which === WALL && Number.isNaN(seen.touchedAt)) seen.touchedAt = t;
      return which === DOCK || which === OVER;
    },
  };

  const integrator = new Integrator({ size: 4, derive, events, ...(passed ? { passed } : {}) }, tolerance, MOST, swing);
  const { y } = integrator;
  const enter = (track: Track, piece: number): void => {
    const at = piece * WIDTH;
    for (let i = 0; i < WIDTH; i++) now[i] = track.pieces[at + i]!;
  };

  const hang: HangingLoad['hang'] = (track, x = 0, depth = 0, rateX = 0, rateY = 0) => {
    enter(track, 0);
    y[0] = x / now[LINE]!;
    y[1] = depth / now[LINE]!;
    y[2] = rateX;
    y[3] = rateY;
    integrator.begin(0, 0.02);
    seen.angle = seen.sideways = 0;
    seen.xLow = seen.yLow = Infinity;
    seen.xHigh = seen.yHigh = -Infinity;
    seen.pull = Infinity;
    seen.slackAt = seen.overAt = seen.touchedAt = seen.dockedAt = NaN;
  };

  /** A line may be slack from the moment in which an acceleration jumps. */
  const isSlack = (): boolean => {
    const slack = !(pullAt(integrator.t - now[T]!, y) > 0);
    if (slack) seen.slackAt = integrator.t;
    return slack;
  };
  const ending = (stopped: number): Ending =>
    stopped < 0 ? 'end' : !Number.isNaN(seen.slackAt) ? 'slack' : stopped === OVER ? 'over' : 'docked';
  const run: HangingLoad['run'] = (track) => {
    for (let piece = 0; piece < track.count; piece++) {
      enter(track, piece);
      see(integrator.t, y);
      if (isSlack()) return 'slack';
      const ended = ending(integrator.run(track.pieces[(piece + 1) * WIDTH + T]!));
      if (ended !== 'end') return ended;
      see(integrator.t, y);
    }
    // What stands at the end follows the last piece.
    enter(track, track.count);
    return 'end';
  };

  const push: HangingLoad['push'] = (time, ax, ay, lineAcceleration) => {
    const s = integrator.t - now[T]!;
    const here = [lineAt(s), lineSpeedAt(s), xAt(s), speedAt(s, VX, AX, JX), yAt(s), speedAt(s, VY, AY, JY)] as const;
    now.fill(0);
    now[T] = integrator.t;
    [now[LINE], now[LINE_SPEED], now[X], now[VX], now[Y], now[VY]] = here;
    [now[AX], now[AY], now[LINE_ACCELERATION]] = [ax, ay, lineAcceleration];
    see(integrator.t, y);
    if (isSlack()) return 'slack';
    const ended = ending(integrator.run(integrator.t + time));
    see(integrator.t, y);
    return ended;
  };

  const line = (): number => lineAt(integrator.t - now[T]!);
  const out = (): number => Math.sqrt(y[0]! ** 2 + y[1]! ** 2);
  return {
    state: y,
    seen,
    time: () => integrator.t,
    effort: () => ({ steps: integrator.steps, rejected: integrator.rejected }),
    hang,
    run,
    push,
    line,
    lineSpeed: () => lineSpeedAt(integrator.t - now[T]!),
    sideways: () => line() * out(),
    angle: () => Math.asin(Math.min(1, out())),
    amplitude: () => {
      // 1 − cos of the angle, without the loss of digits near the plumb line.
      const rise = out() ** 2 / (1 + upright(y)) + (line() * turning(y)) / (2 * gravity);
      return rise <= 2 ? 2 * Math.asin(Math.sqrt(rise / 2)) : Math.PI;
    },
    at: (t, into) => integrator.at(t, into),
  };
};
