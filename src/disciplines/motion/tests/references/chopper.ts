/**
 * A whole drive in time: two phases, their switching chopper and the rotor, by a general library for differential
 * equations. Independent of every closed form of the trade: no phasors, no averages, no limits but those of the bridge.
 */
import { createRequire } from 'node:module';

interface Solver {
  initialStepSize: number;
  relativeTolerance: number;
  absoluteTolerance: number;
  solve(f: (t: number, y: number[]) => number[], from: number, y: number[], to: number): { readonly y: number[] };
}
// The library's own types are sources that stricter settings than its own refuse.
const { Solver } = createRequire(import.meta.url)('odex') as { readonly Solver: new (n: number) => Solver };

export interface Drive {
  readonly constant: number;
  readonly loop: number;
  readonly inductance: number;
  readonly teeth: number;
  readonly volts: number;
  /** Peak of the sinusoids that the driver follows. */
  readonly peak: number;
  readonly decay: 'slow' | 'mixed' | 'fast';
  /** Time between two decisions of the chopper. */
  readonly clock: number;
}

/** Of every clock, this much decays fast in mixed decay. */
const FAST_SHARE = 0.3;

const solver = (n: number, clock: number): Solver => {
  const s = new Solver(n);
  s.initialStepSize = clock / 2;
  s.relativeTolerance = 1e-6;
  s.absoluteTolerance = 1e-7;
  return s;
};

/** What one bridge does in this clock: the voltage first, the voltage then. */
const bridge = (drive: Drive, current: number, wanted: number): readonly [number, number] => {
  const sense = wanted < 0 ? -1 : 1;
  if (sense * current < Math.abs(wanted)) return [sense * drive.volts, sense * drive.volts];
  const against = -Math.sign(current) * drive.volts;
  return drive.decay === 'slow' ? [0, 0] : drive.decay === 'fast' ? [against, against] : [against, 0];
};

/** State: both currents, speed, angle. `load` resists; `inertia` undefined keeps the speed. */
const advance = (
  drive: Drive,
  s: Solver,
  state: number[],
  from: number,
  volts: readonly [number, number],
  time: number,
  mechanics: { readonly inertia: number; readonly damping: number; readonly load: number } | undefined,
): number[] => {
  const { constant: K, loop: R, inductance: L, teeth: N } = drive;
  return s.solve(
    (_t, [a, b, w, angle]) => {
      const [sin, cos] = [Math.sin(N * angle!), Math.cos(N * angle!)];
      const torque = K * (b! * cos - a! * sin);
      return [
        (volts[0] - R * a! + K * w! * sin) / L,
        (volts[1] - R * b! - K * w! * cos) / L,
        mechanics ? (torque - mechanics.damping * w! - mechanics.load) / mechanics.inertia : 0,
        w!,
      ];
    },
    from,
    state,
    from + time,
  ).y;
};

const clockOf = (
  drive: Drive,
  s: Solver,
  state: number[],
  t: number,
  phase: number,
  mechanics?: { readonly inertia: number; readonly damping: number; readonly load: number },
): number[] => {
  const a = bridge(drive, state[0]!, drive.peak * Math.cos(phase));
  const b = bridge(drive, state[1]!, drive.peak * Math.sin(phase));
  if (a[0] === a[1] && b[0] === b[1]) return advance(drive, s, state, t, [a[0], b[0]], drive.clock, mechanics);
  const fast = FAST_SHARE * drive.clock;
  const middle = advance(drive, s, state, t, [a[0], b[0]], fast, mechanics);
  return advance(drive, s, middle, t + fast, [a[1], b[1]], drive.clock - fast, mechanics);
};

/** Mean torque at a speed that does not give way, with the wanted currents `lead` ahead of the rotor. */
export const lockedTorque = (drive: Drive, speed: number, lead: number): number => {
  const s = solver(4, drive.clock);
  const period = (2 * Math.PI) / (drive.teeth * speed);
  // Three electrical times, then whole turns of the field of at least 200 clocks.
  const settle = Math.ceil((3 * drive.inductance) / drive.loop / period) * period;
  const measured = Math.ceil((200 * drive.clock) / period) * period;
  let state = [0, 0, speed, 0];
  let [sum, count] = [0, 0];
  for (let t = 0; t < settle + measured; t += drive.clock) {
    state = clockOf(drive, s, state, t, drive.teeth * speed * t + lead);
    if (t < settle) continue;
    const angle = drive.teeth * state[3]!;
    sum += drive.constant * (state[1]! * Math.cos(angle) - state[0]! * Math.sin(angle));
    count++;
  }
  return sum / count;
};

/** Greatest mean torque over the lead, every ten degrees; that is within half a per cent of the top of a sinusoid. */
export const lockedPullOut = (drive: Drive, speed: number): number =>
  Math.max(...Array.from({ length: 20 }, (_, i) => lockedTorque(drive, speed, ((50 + 10 * i) * Math.PI) / 180)));

/**
 * Load at which a free rotor falls out of step: brought from rest to a commanded speed in 0.3 s, then loaded evenly from
 * nothing to `most` over `time`. Returns `most` when it stays in step, nothing when it falls out on the way up.
 */
export const rampedPullOut = (
  drive: Drive,
  speed: number,
  mechanics: { readonly inertia: number; readonly damping: number },
  most: number,
  time: number,
): number => {
  const s = solver(4, drive.clock);
  const N = drive.teeth;
  const up = 0.3;
  let state = [0, 0, 0, 0];
  for (let t = 0; t < up + time; t += drive.clock) {
    const angle = t < up ? (speed * t * t) / (2 * up) : speed * (t - up / 2);
    const load = most * Math.max(0, (t - up) / time);
    state = clockOf(drive, s, state, t, N * angle, { ...mechanics, load });
    if (Math.abs(N * (angle - state[3]!)) > 2 * Math.PI) return load;
  }
  return most;
};
