/** Two bridges that chop, step by step in time: what the rail gives is counted at the switches. */
export interface Bridge {
  readonly rail: number;
  readonly peak: number;
  readonly resistance: number;
  readonly inductance: number;
  /** Electrical turns a second. */
  readonly frequency: number;
  /** Amplitude of the back-EMF of a phase, together with its current in time. */
  readonly emf: number;
}

/** Mean power from the rail, and the RMS of its current beside the mean, over whole electrical turns after one to settle. */
export const fromRail = (
  { rail, peak, resistance: R, inductance: L, frequency, emf }: Bridge,
  turns: number,
): { readonly power: number; readonly ripple: number } => {
  // So short that the ripple of the judge itself stays below 0.5 % of the peak.
  const dt = 2.5e-7;
  const perTurn = Math.round(1 / frequency / dt);
  const state = [peak, 0];
  let [charge, squares] = [0, 0];
  for (let n = 0; n < perTurn * (turns + 1); n++) {
    let drawn = 0;
    for (const phase of [0, 1]) {
      const angle = (2 * Math.PI * n) / perTurn - (phase * Math.PI) / 2;
      const wanted = peak * Math.cos(angle);
      const i = state[phase]!;
      const sense = Math.sign(wanted) || 1;
      const short = sense * (wanted - i);
      // Slow decay, and against the current only where the wanted one falls faster than that.
      const volts = (short > 0 ? sense : short < -0.02 * peak ? -sense : 0) * rail;
      state[phase] = i + ((volts - R * i - emf * Math.cos(angle)) / L) * dt;
      drawn += (volts * i) / rail;
    }
    if (n < perTurn) continue;
    charge += drawn * dt;
    squares += drawn ** 2 * dt;
  }
  const time = turns * perTurn * dt;
  const mean = charge / time;
  return { power: mean * rail, ripple: Math.sqrt(squares / time - mean ** 2) };
};
