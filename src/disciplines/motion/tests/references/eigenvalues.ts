/**
 * Eigenvalues of a small real matrix: the characteristic polynomial by Faddeev and LeVerrier, its roots by Durand and
 * Kerner. Only to judge closed forms by; compared with another program where it is used.
 */
export const eigenvalues = (given: readonly (readonly number[])[]): [re: number, im: number][] => {
  const n = given.length;
  // A common unit of time keeps the coefficients within a few powers of ten.
  const scale = Math.max(...given.flat().map(Math.abs)) ** 0.5;
  const A = given.map((row) => row.map((x) => x / scale));
  const times = (a: readonly (readonly number[])[], b: readonly (readonly number[])[]) =>
    a.map((row) => b[0]!.map((_, j) => row.reduce((sum, x, k) => sum + x * b[k]![j]!, 0)));
  const coefficients = [1];
  let M = A.map((row) => row.map(() => 0));
  for (let k = 1; k <= n; k++) {
    const last = coefficients[k - 1]!;
    M = times(A, M).map((row, i) => row.map((x, j) => x + (i === j ? last : 0)));
    const AM = times(A, M);
    coefficients.push(-AM.reduce((sum, row, i) => sum + row[i]!, 0) / k);
  }
  type Complex = [number, number];
  const product = ([a, b]: Complex, [c, d]: Complex): Complex => [a * c - b * d, a * d + b * c];
  const at = (z: Complex): Complex =>
    coefficients.reduce<Complex>(
      (sum, c) => {
        const [re, im] = product(sum, z);
        return [re + c, im];
      },
      [0, 0],
    );
  const radius = 1 + Math.max(...coefficients.slice(1).map((c, i) => Math.abs(c) ** (1 / (i + 1))));
  let roots = Array.from({ length: n }, (_, i): Complex => {
    const turn = (2 * Math.PI * i) / n + 0.4;
    return [radius * Math.cos(turn), radius * Math.sin(turn)];
  });
  for (let round = 0; round < 500; round++) {
    roots = roots.map((z, i) => {
      let below: Complex = [1, 0];
      roots.forEach((other, j) => {
        if (j !== i) below = product(below, [z[0] - other[0], z[1] - other[1]]);
      });
      const above = at(z);
      const size = below[0] ** 2 + below[1] ** 2;
      const [re, im] = product(above, [below[0] / size, -below[1] / size]);
      return [z[0] - re, z[1] - im];
    });
  }
  return roots.map(([re, im]) => [re * scale, im * scale]);
};

interface Winding {
  readonly constant: number;
  readonly loop: number;
  readonly inductance: number;
  readonly teeth: number;
}

/**
 * Fastest growth of a small disturbance about steady running, from the eigenvalues of the two-phase machine on a fixed
 * voltage: currents along and across the flux, speed, load angle. Independent of the closed form.
 */
export const fastest = (
  m: Winding,
  J: number,
  B: number,
  volts: number,
  load: number,
  w: number,
): number | undefined => {
  const { constant: K, loop: R, inductance: L, teeth: N } = m;
  const X = N * w * L;
  const Z = Math.hypot(R, X);
  const E = K * w;
  const turn = Math.atan2(X, R);
  const cosine = ((load / K + (E * R) / Z ** 2) * Z) / volts;
  if (!(cosine < 1)) return undefined;
  const angle = turn - Math.acos(cosine);
  const q = load / K;
  const d = -(volts / Z) * Math.sin(angle - turn) - (E * X) / Z ** 2;
  const found = eigenvalues([
    [-R / L, N * w, N * q, (-volts * Math.cos(angle)) / L],
    [-N * w, -R / L, -N * d - K / L, (-volts * Math.sin(angle)) / L],
    [0, K / J, -B / J, 0],
    [0, 0, -N, 0],
  ]);
  return Math.max(...found.map(([re]) => re));
};
