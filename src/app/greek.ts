/** Greek letters by their names, for keyboards and terminals that have none. */

const greek: Readonly<Record<string, string>> = {
  α: 'alpha',
  β: 'beta',
  γ: 'gamma',
  δ: 'delta',
  ε: 'epsilon',
  ζ: 'zeta',
  η: 'eta',
  θ: 'theta',
  ι: 'iota',
  κ: 'kappa',
  λ: 'lambda',
  μ: 'mu',
  ν: 'nu',
  ξ: 'xi',
  ο: 'omicron',
  π: 'pi',
  ρ: 'rho',
  σ: 'sigma',
  ς: 'sigma',
  τ: 'tau',
  υ: 'upsilon',
  φ: 'phi',
  χ: 'chi',
  ψ: 'psi',
  ω: 'omega',
};

/** A Greek letter spelt out, `Ω` as `Omega`; nothing for any other letter. */
export const greekName = (letter: string): string | undefined => {
  const small = greek[letter.toLowerCase()];
  if (small === undefined) return undefined;
  return letter === letter.toLowerCase() ? small : small[0]!.toUpperCase() + small.slice(1);
};

/** A text with every Greek letter spelt out: `θ_0` as `theta_0`. */
export const typeable = (text: string): string =>
  text.replaceAll(/\p{Script=Greek}/gu, (letter) => greekName(letter) ?? letter);
