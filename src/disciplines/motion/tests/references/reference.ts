/** A value that others have worked out, keyed in by hand; `kind` says who. */
export interface Reference<T> {
  readonly kind: 'published' | 'published-secondary' | 'independent';
  readonly source: string;
  readonly given: T;
  readonly gives: number;
  /** Half of the last printed digit, unless a line says otherwise. */
  readonly within: number;
}

type Printed = Pick<Reference<unknown>, 'gives' | 'within'>;

/** A number as it was printed, with half of its last digit; `unit` is the SI value of the unit in which it was printed. */
export const printed = (text: string, unit = 1): Printed => {
  const [digits = '', exponent = '0'] = text.toLowerCase().split('e');
  const places = digits.split('.')[1]?.length ?? 0;
  return { gives: Number(text) * unit, within: 0.5 * 10 ** (Number(exponent) - places) * unit };
};

/** A number as the script prints it: ten significant digits, zeros at the end left out. */
export const tenDigits = (text: string, unit = 1): Printed => {
  const gives = Number(text);
  // Of nothing no digit is significant; what is left of a difference is rounding.
  const within = gives === 0 ? 1e-12 : 0.5 * 10 ** (Math.floor(Math.log10(Math.abs(gives))) - 9);
  return { gives: gives * unit, within: within * unit };
};

/** What tests/independent/motion.py prints, worked out without sight of the formulas. */
export const independent = { kind: 'independent', source: 'independent-computation' } as const;
