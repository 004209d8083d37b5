/**
 * Bessel functions of order n for large arguments, by Hankel's asymptotic series (DLMF §10.17(i)), as independent judges.
 * From x = 15 the series reaches 1e-13 before its terms grow again.
 */
const hankel = (n: number, x: number): { J: number; Y: number } => {
  if (!(x >= 15)) throw new RangeError('the series wants a large argument');
  const mu = 4 * n * n;
  let [P, Q, term] = [0, 0, 1];
  for (let k = 0; k < 30; k++) {
    const sign = Math.floor(k / 2) % 2 === 0 ? 1 : -1;
    if (k % 2 === 0) P += sign * term;
    else Q += sign * term;
    const next = (term * (mu - (2 * k + 1) ** 2)) / ((k + 1) * 8 * x);
    if (Math.abs(next) > Math.abs(term) || Math.abs(next) < 1e-18) break;
    term = next;
  }
  const chi = x - (n / 2 + 1 / 4) * Math.PI;
  const scale = Math.sqrt(2 / (Math.PI * x));
  return {
    J: scale * (P * Math.cos(chi) - Q * Math.sin(chi)),
    Y: scale * (P * Math.sin(chi) + Q * Math.cos(chi)),
  };
};

/**
 * Angle and rate of a small swing on a line that changes steadily, L θ″ + 2 L′ θ′ + g θ = 0 with L = L₀ + v·t, from rest at θ₀:
 * θ = [A·J₁(u) + B·Y₁(u)]/u, u = 2√(g·L)/|v|, with [J₁(u)/u]′ = −J₂(u)/u.
 */
export const steadyHoist = (
  { from, to, speed, start }: { from: number; to: number; speed: number; start: number },
  g: number,
): { angle: number; rate: number; envelope: number } => {
  const at = (L: number): number => (2 * Math.sqrt(g * L)) / Math.abs(speed);
  const u0 = at(from);
  const [one0, two0] = [hankel(1, u0), hankel(2, u0)];
  // θ(u0) = start and θ′ = 0: A·J2 + B·Y2 = 0.
  const scale = (start * u0) / (one0.J * two0.Y - one0.Y * two0.J);
  const [A, B] = [scale * two0.Y, -scale * two0.J];
  const u = at(to);
  const [one, two] = [hankel(1, u), hankel(2, u)];
  const angle = (A * one.J + B * one.Y) / u;
  // du/dt = (du/dL)·v = u·v/(2L)
  const rate = ((-(A * two.J + B * two.Y) / u) * (u * speed)) / (2 * to);
  return { angle, rate, envelope: Math.hypot(angle, rate / Math.sqrt(g / to)) };
};
