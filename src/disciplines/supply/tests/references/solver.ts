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
