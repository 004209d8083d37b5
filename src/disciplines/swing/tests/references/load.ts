/**
 * The same load in rectangular coordinates: s = r − q from pivot to load, a drag across the line, and a line force per
 * kilogram τ that keeps |s| = L. Another derivation than the one of the discipline, solved by a general library.
 */
import { createRequire } from 'node:module';

interface Solver {
  relativeTolerance: number;
  absoluteTolerance: number;
  solve(f: (t: number, y: number[]) => number[], from: number, y: number[], to: number): { readonly y: number[] };
}
// The library's own types are sources that stricter settings than its own refuse.
const { Solver } = createRequire(import.meta.url)('odex') as { readonly Solver: new (n: number) => Solver };

/** Accelerations at the start of one stretch of time, and how they grow through it. */
export interface Stretch {
  readonly time: number;
  readonly ax: number;
  readonly ay: number;
  readonly line: number;
  readonly jx?: number;
  readonly jy?: number;
  readonly lineJerk?: number;
}

export interface Judged {
  /** Direction from pivot to load at the end, and its rate. */
  readonly n: readonly [number, number, number];
  readonly rate: readonly [number, number, number];
  /** Least line force for each kilogram, at the ends of the parts of each stretch. */
  readonly pull: number;
}

const PARTS = 40;

/** Goes along the stretches from a direction and its rate. */
export const judge = (
  {
    line,
    lineSpeed = 0,
    n,
    rate,
    fadingTime,
    g,
  }: {
    line: number;
    lineSpeed?: number;
    n: readonly number[];
    rate: readonly number[];
    fadingTime: number;
    g: number;
  },
  stretches: readonly Stretch[],
): Judged => {
  let [L, speed] = [line, lineSpeed];
  let state = [...n.map((c) => c * L), ...rate.map((c, i) => c * L + lineSpeed * n[i]!)];
  let pull = Infinity;
  for (const { time, ax, ay, line: aL, jx = 0, jy = 0, lineJerk = 0 } of stretches) {
    const [L0, V0] = [L, speed];
    const force = (t: number, y: readonly number[]) => {
      const length = L0 + t * (V0 + t * (aL / 2 + (t * lineJerk) / 6));
      const [x, yy, z, vx, vy, vz] = y as [number, number, number, number, number, number];
      const n = [x / length, yy / length, z / length] as const;
      const radial = vx * n[0] + vy * n[1] + vz * n[2];
      // What goes across the line; `radial` is the line's own rate but for what integration loses.
      const across = [vx - radial * n[0], vy - radial * n[1], vz - radial * n[2]] as const;
      const free = [-ax - t * jx, -ay - t * jy, -g] as const;
      const turning = across[0] ** 2 + across[1] ** 2 + across[2] ** 2;
      const tau = free[0] * n[0] + free[1] * n[1] + free[2] * n[2] + turning / length - aL - t * lineJerk;
      const c = 2 / fadingTime;
      return { tau, a: free.map((f, i) => f - c * across[i]! - tau * n[i]!) };
    };
    const solver = new Solver(6);
    solver.relativeTolerance = solver.absoluteTolerance = 1e-12;
    for (let i = 0; i < PARTS; i++) {
      pull = Math.min(pull, force((time * i) / PARTS, state).tau);
      const slope = (t: number, y: number[]): number[] => [...y.slice(3), ...force(t, y).a];
      state = solver.solve(slope, (time * i) / PARTS, state, (time * (i + 1)) / PARTS).y;
      pull = Math.min(pull, force((time * (i + 1)) / PARTS, state).tau);
    }
    L = L0 + time * (V0 + time * (aL / 2 + (time * lineJerk) / 6));
    speed = V0 + time * (aL + (time * lineJerk) / 2);
  }
  const size = Math.hypot(state[0]!, state[1]!, state[2]!);
  const at = (i: number): number => state[i]! / size;
  const along = at(0) * state[3]! + at(1) * state[4]! + at(2) * state[5]!;
  const turns = (i: number): number => (state[i + 3]! - along * at(i)) / size;
  return { n: [at(0), at(1), at(2)], rate: [turns(0), turns(1), turns(2)], pull };
};
