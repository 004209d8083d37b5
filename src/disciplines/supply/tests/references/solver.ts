/** A general library for differential equations as a judge. */
import { createRequire } from 'node:module';

interface Solver {
  relativeTolerance: number;
  absoluteTolerance: number;
  solve(f: (t: number, y: number[]) => number[], from: number, y: number[], to: number): { readonly y: number[] };
}
// The library's own types are sources that stricter settings than its own refuse.
const library = createRequire(import.meta.url)('odex') as { readonly Solver: new (n: number) => Solver };

export const integrate = (f: (t: number, y: number[]) => number[], start: number[], to: number): readonly number[] => {
  const solver = new library.Solver(start.length);
  solver.relativeTolerance = 1e-10;
  solver.absoluteTolerance = 1e-10;
  return solver.solve(f, 0, start, to).y;
};

export interface Lumps {
  readonly cold: number;
  readonly iron: number;
  readonly inside: number;
  readonly outside: number;
  readonly windingCapacity: number;
  readonly caseCapacity: number;
  readonly coefficient: number;
}

/** Rises of winding and case of two lumps, from cold, by the library. */
export const warmed = (m: Lumps, time: number): readonly number[] =>
  integrate(
    (_t, [w = NaN, c = NaN]) => [
      (m.cold * (1 + m.coefficient * w) - (w - c) / m.inside) / m.windingCapacity,
      ((w - c) / m.inside - c / m.outside + m.iron) / m.caseCapacity,
    ],
    [0, 0],
    time,
  );

/** Heat of each phase with the winding as cold as the air, and how long a mode lasts. */
export interface Episode {
  readonly phases: readonly [number, number];
  readonly seconds: number;
}

/**
 * The warmest that either phase gets while modes follow each other again and again, by the library: two phases, each
 * with half of the winding's capacity and twice its resistance to the case, and copper that warms.
 */
export const warmestOf = (m: Omit<Lumps, 'cold'>, episodes: readonly Episode[], rounds: number): number => {
  let state: readonly number[] = [0, 0, 0];
  let warmest = 0;
  for (let round = 0; round < rounds; round++)
    for (const { phases, seconds } of episodes) {
      state = integrate(
        (_t, [a = NaN, b = NaN, c = NaN]) => {
          const [fromA, fromB] = [(a - c) / (2 * m.inside), (b - c) / (2 * m.inside)];
          return [
            (phases[0] * (1 + m.coefficient * a) - fromA) / (m.windingCapacity / 2),
            (phases[1] * (1 + m.coefficient * b) - fromB) / (m.windingCapacity / 2),
            (fromA + fromB - c / m.outside + m.iron) / m.caseCapacity,
          ];
        },
        [...state],
        seconds,
      );
      warmest = Math.max(warmest, state[0]!, state[1]!);
    }
  return warmest;
};
