import { slopesAgainst, type Citation, type Slope, type Value } from './values.ts';

export const verdicts = ['holds', 'tight', 'fails', 'open', 'not-stated'] as const;
export type Verdict = (typeof verdicts)[number];

/** Why a finding is open. */
export type OpenReason = 'doubt' | 'outside' | 'did-not-converge' | 'still-running';

/** A share of the limit that good practice leaves free, and who says so. */
export interface Advice {
  /** Demand up to this share of the limit holds; above it, up to the limit, is tight. 0.7 leaves 30 %. */
  readonly share: number;
  readonly because: string;
  readonly source?: Citation;
}

/** A change to the book that might make a finding hold. Data only: a study tries it on a copy. */
export type Lever =
  | {
      readonly turn: string;
      readonly toward: 'lower' | 'higher';
      readonly means: string;
      readonly least?: number;
      readonly most?: number;
    }
  | { readonly set: readonly Edit[]; readonly means: string }
  | { readonly substitute: string; readonly kind: string; readonly means: string };

/** One edit of the book: the fact at `path` becomes `text` (as the author would write it); null takes it out. */
export interface Edit {
  readonly path: string;
  readonly text: string | null;
}

/** Sentences are made last, from shown numbers. */
export interface Shown {
  readonly demand: string;
  readonly limit: string;
  readonly percent: string;
  readonly verdict: Verdict;
}

interface Common {
  readonly says: (shown: Shown) => string;
  /** What might be turned; a function where it is only worth working out for the scenario that decides. */
  readonly levers?: readonly Lever[] | (() => readonly Lever[]);
  /** Other values worth reading beside the finding, by name. */
  readonly beside?: Beside | (() => Beside);
}

type Beside = Readonly<Record<string, Value>>;

/** What a check found at one scenario, before the engine forms a verdict over all of them. */
export type Outcome =
  | (Common & {
      readonly kind: 'limit';
      readonly sense: 'at-most' | 'at-least';
      readonly demand: Value;
      readonly limit: Value;
      /** Zero of the scale when it is not 0: percentages of a temperature are of the rise above this. */
      readonly base?: Value;
      /** The demand above the base, where it is worked out by itself: what moves the base then moves the percentage one way. */
      readonly above?: Value;
      readonly advice?: Advice;
    })
  | (Common & { readonly kind: 'yes-no'; readonly holds: boolean; readonly because: readonly Value[] });

const comparable = (code: string, a: Value, b: Value): void => {
  if (a.of !== b.of) throw new TypeError(`${code}: a ${a.of} cannot be held against a ${b.of}`);
};

/** Above the base stands what the demand has more than it, but for rounding. */
const consistent = (code: string, demand: Value, { base, above }: Extras): void => {
  if (!base || !above) return;
  const rest = demand.number - base.number - above.number;
  if (Math.abs(rest) > 1e-9 * Math.abs(demand.number))
    throw new TypeError(`${code}: above its base the demand has ${demand.number - base.number}, not ${above.number}`);
};

type Extras = Common & { readonly advice?: Advice; readonly base?: Value; readonly above?: Value };

/** The demand may be at most the limit. Refuses to hold a length against a mass. */
export const atMost = (demand: Value, limit: Value, extras: Extras): Outcome => {
  comparable('atMost', demand, limit);
  consistent('atMost', demand, extras);
  return { kind: 'limit', sense: 'at-most', demand, limit, ...extras };
};

/** The actual value must be at least the limit. The percentage is limit over actual. */
export const atLeast = (actual: Value, limit: Value, extras: Extras): Outcome => {
  comparable('atLeast', actual, limit);
  consistent('atLeast', actual, extras);
  return { kind: 'limit', sense: 'at-least', demand: actual, limit, ...extras };
};

/** A yes or no that has no percentage; `because` names the values that it depends on. */
export const mustBe = (holds: boolean, extras: Common & { readonly because?: readonly Value[] }): Outcome => ({
  kind: 'yes-no',
  because: [],
  ...extras,
  holds,
});

/**
 * How much of the limit is used, 1 at the limit; NaN never holds. A yes or no is 0 or 2.
 * Where there is no room above the base, what does not hold is infinitely too much; what holds on less than nothing uses nothing.
 */
export const usage = (outcome: Outcome): number => {
  if (outcome.kind === 'yes-no') return outcome.holds ? 0 : 2;
  const base = outcome.base?.number ?? 0;
  const demand = outcome.base && outcome.above ? outcome.above.number : outcome.demand.number - base;
  const limit = outcome.limit.number - base;
  const [part, whole] = outcome.sense === 'at-most' ? [demand, limit] : [limit, demand];
  if (Number.isNaN(part) || Number.isNaN(whole)) return NaN;
  // A quotient may round down to 1 where the demand is only just too much.
  if (!(part <= whole)) return whole > 0 ? Math.max(part / whole, 1 + Number.EPSILON) : Infinity;
  return part > 0 ? part / whole : 0;
};

/** How the usage moves with each book fact behind the outcome. A yes or no is searched. */
export const usageSlopes = (outcome: Outcome): ReadonlyMap<string, Slope> => {
  if (outcome.kind === 'yes-no') return slopesAgainst(outcome.because, outcome.because);
  const { demand, limit, base, above, sense } = outcome;
  if (base && above)
    return sense === 'at-most' ? slopesAgainst([above, base], [limit]) : slopesAgainst([limit], [above, base]);
  const [part, whole] = sense === 'at-most' ? [demand, limit] : [limit, demand];
  // A moving zero shifts demand and limit together; which way the quotient goes depends on both.
  return base ? slopesAgainst([part, base], [whole, base]) : slopesAgainst([part], [whole]);
};
