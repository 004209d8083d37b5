/**
 * Gives everything that wants pins or timers what it needs, at the least cost, and proves that nothing is cheaper.
 *
 * Each item takes one of its options; an option claims resources: pins, channels, timers. A resource that is claimed
 * twice is a conflict, unless both claim it in the same mode that can be shared. Branch and bound: each item by itself
 * and each class of resources as a matching give a bound; where the cheapest choices conflict, either the one or the
 * other may not have the resource in that way.
 */
import { cheapestMatching } from './matching.ts';

/** A resource in the mode in which it is claimed; an empty mode is never shared. */
export interface Claim {
  /** `class:name`, such as `pin:22`. */
  readonly resource: string;
  readonly mode: string;
}

export interface Option {
  readonly claims: readonly Claim[];
  /** Wires that have landed elsewhere. */
  readonly moved: number;
  /** A whole number of what is better avoided, and below it one that keeps the chart in order. */
  readonly cost: number;
  readonly order: number;
}

export interface Item {
  readonly name: string;
  readonly options: readonly Option[];
}

export interface Choice {
  /** Index of the option that each item takes. */
  readonly chosen: readonly number[];
  readonly moved: number;
  readonly cost: number;
  /** How many partial choices were looked at. */
  readonly nodes: number;
}

/** One moved wire outweighs every cost, one cost every order; all stay exact as whole numbers. */
const MOVED = 1e11;
const COST = 1e6;
const price = ({ moved, cost, order }: Option): number => moved * MOVED + cost * COST + order;

const classOf = (resource: string): string => resource.slice(0, resource.indexOf(':'));

/** For each item, which of its options are still open. */
type Open = readonly (readonly number[])[];

/** The resources of one class that are claimed alone, as columns of a matching. */
interface Columns {
  readonly count: number;
  /** By item and option: the columns that it claims, in the order of its claims. */
  readonly at: readonly (readonly (readonly number[])[])[];
}

interface Problem {
  readonly items: readonly Item[];
  readonly prices: readonly (readonly number[])[];
  readonly classes: readonly Columns[];
}

const prepare = (items: readonly Item[]): Problem => {
  const names = new Map<string, Map<string, number>>();
  for (const { options } of items)
    for (const { claims } of options)
      for (const { resource, mode } of claims) {
        if (mode !== '') continue;
        const known = names.get(classOf(resource)) ?? new Map<string, number>();
        names.set(classOf(resource), known);
        if (!known.has(resource)) known.set(resource, known.size);
      }
  const classes = [...names].map(([name, known]): Columns => ({
    count: known.size,
    at: items.map(({ options }) =>
      options.map(({ claims }) =>
        claims.flatMap(({ resource, mode }) =>
          mode === '' && classOf(resource) === name ? [known.get(resource)!] : [],
        ),
      ),
    ),
  }));
  return { items, prices: items.map(({ options }) => options.map(price)), classes };
};

interface Bound {
  readonly low: number;
  readonly choice: readonly number[];
}

/** Rows of a matching: an item once for each resource of the class that all of its open options claim; the first bears the price. */
const rowsOf = ({ items }: Problem, { at }: Columns, open: Open): readonly (readonly [item: number, slot: number])[] =>
  items.flatMap((_, item) => {
    const slots = open[item]!.reduce((least, option) => Math.min(least, at[item]![option]!.length), Infinity);
    return Array.from({ length: slots }, (__, slot) => [item, slot] as const);
  });

/** The cheapest option of each item by itself. */
const cheapestOf = ({ prices }: Problem, open: Open): readonly number[] =>
  open.map((options, item) =>
    options.reduce((best, option) => (prices[item]![option]! < prices[item]![best]! ? option : best), options[0]!),
  );

/**
 * What a choice costs at least, and the one behind that: the cheapest options, those of one class each in a column of its own.
 * Null where the items of a class find no columns.
 */
const boundOf = (problem: Problem, open: Open): Bound | null => {
  const { prices, classes } = problem;
  const cheapest = cheapestOf(problem, open);
  const alone = cheapest.reduce((sum, option, item) => sum + prices[item]![option]!, 0);
  let best: Bound = { low: alone, choice: cheapest };
  for (const columns of classes) {
    const rows = rowsOf(problem, columns, open);
    if (rows.length === 0) continue;
    const costs = rows.map(() => new Float64Array(columns.count).fill(Infinity));
    const optionAt = rows.map(() => new Int32Array(columns.count).fill(-1));
    rows.forEach(([item, slot], row) => {
      for (const option of open[item]!) {
        const column = columns.at[item]![option]![slot]!;
        const cost = slot === 0 ? prices[item]![option]! : 0;
        if (cost >= costs[row]![column]!) continue;
        costs[row]![column] = cost;
        optionAt[row]![column] = option;
      }
    });
    const found = cheapestMatching(costs);
    if (found === null) return null;
    const placed = rows.flatMap(([item, slot], row) =>
      slot === 0 ? [[item, optionAt[row]![found.columns[row]!]!] as const] : [],
    );
    const low = alone + found.cost - placed.reduce((sum, [item]) => sum + prices[item]![cheapest[item]!]!, 0);
    if (low < best.low) continue;
    const choice = [...cheapest];
    for (const [item, option] of placed) choice[item] = option;
    best = { low, choice };
  }
  return best;
};

interface Clash {
  readonly item: number;
  readonly other: number;
  readonly claims: readonly [Claim, Claim];
}

const clashIn = ({ items }: Problem, choice: readonly number[]): Clash | null => {
  const holders = new Map<string, { readonly item: number; readonly claim: Claim }[]>();
  for (let item = 0; item < items.length; item++)
    for (const claim of items[item]!.options[choice[item]!]!.claims) {
      const before = holders.get(claim.resource) ?? [];
      const against = before.find((one) => one.claim.mode === '' || one.claim.mode !== claim.mode);
      if (against !== undefined) return { item: against.item, other: item, claims: [against.claim, claim] };
      holders.set(claim.resource, [...before, { item, claim }]);
    }
  return null;
};

/** The openings without the options of one item that claim a resource in a mode; null when it is left with none. */
const without = ({ items }: Problem, open: Open, item: number, claim: Claim): Open | null => {
  const left = open[item]!.filter(
    (option) =>
      !items[item]!.options[option]!.claims.some(
        ({ resource, mode }) => resource === claim.resource && mode === claim.mode,
      ),
  );
  return left.length === 0 ? null : open.map((options, k) => (k === item ? left : options));
};

/**
 * The openings once every item that has one option left has it for good: what conflicts with that is gone, and so on.
 * Null where an item is left with none.
 */
const settled = ({ items }: Problem, open: Open): Open | null => {
  const left = [...open];
  const done = new Set<number>();
  for (;;) {
    const item = left.findIndex((options, k) => options.length === 1 && !done.has(k));
    if (item < 0) return left;
    done.add(item);
    const own = items[item]!.options[left[item]![0]!]!.claims;
    for (let other = 0; other < items.length; other++) {
      if (other === item) continue;
      const { options } = items[other]!;
      const kept = left[other]!.filter((option) =>
        options[option]!.claims.every((claim) =>
          own.every(({ resource, mode }) => resource !== claim.resource || (mode !== '' && mode === claim.mode)),
        ),
      );
      if (kept.length === 0) return null;
      if (kept.length < left[other]!.length) left[other] = kept;
    }
  }
};

const only = (open: Open, item: number, chosen: number): Open =>
  open.map((options, other) => (other === item ? [chosen] : options));

const leftOut = (open: Open, item: number, chosen: number): Open | null =>
  open[item]!.length === 1
    ? null
    : open.map((options, other) => (other === item ? options.filter((option) => option !== chosen) : options));

/**
 * The two ways on where a choice conflicts. What claims several pins at once, or keeps a timer from many, is settled or
 * left out as a whole.
 */
const branches = (problem: Problem, open: Open, choice: readonly number[], clash: Clash): readonly (Open | null)[] => {
  const sides = [clash.item, clash.other] as const;
  const isBroad = (item: number, side: number): boolean =>
    problem.items[item]!.options[choice[item]!]!.claims.length > 2 ||
    (clash.claims[side]!.mode === '' && clash.claims[1 - side]!.mode !== '');
  const whole = sides.find((item, side) => open[item]!.length > 1 && isBroad(item, side));
  return whole === undefined
    ? [without(problem, open, clash.item, clash.claims[0]), without(problem, open, clash.other, clash.claims[1])]
    : [leftOut(open, whole, choice[whole]!), only(open, whole, choice[whole]!)];
};

interface Waiting {
  readonly open: Open;
  readonly bound: Bound;
}

/** Takes out what promises most: of the cheapest, the one that came last and is settled farthest. */
const takeCheapest = (waiting: Waiting[]): Waiting => {
  let best = waiting.length - 1;
  for (let k = best - 1; k >= 0; k--) if (waiting[k]!.bound.low < waiting[best]!.bound.low) best = k;
  return waiting.splice(best, 1)[0]!;
};

/**
 * Looks at partial choices, the one that may be cheapest first. The first without a conflict costs what it costs at
 * least, and no other can cost less: it is the cheapest of all.
 */
const search = (items: readonly Item[], isAnyEnough: boolean): Choice | null => {
  if (items.some(({ options }) => options.length === 0)) return null;
  const problem = prepare(items);
  const waiting: Waiting[] = [];
  const lookAt = (open: Open | null): void => {
    const left = open && settled(problem, open);
    const bound = left && boundOf(problem, left);
    if (left && bound) waiting.push({ open: left, bound });
  };
  lookAt(items.map(({ options }) => options.map((_, k) => k)));
  for (let nodes = 1; waiting.length > 0; nodes++) {
    const { open, bound } = isAnyEnough ? waiting.pop()! : takeCheapest(waiting);
    const clash = clashIn(problem, bound.choice);
    if (clash === null) {
      const options = bound.choice.map((option, item) => items[item]!.options[option]!);
      return {
        chosen: bound.choice,
        moved: options.reduce((sum, { moved }) => sum + moved, 0),
        cost: options.reduce((sum, { cost }) => sum + cost, 0),
        nodes,
      };
    }
    for (const next of branches(problem, open, bound.choice, clash)) lookAt(next);
  }
  return null;
};

/**
 * The cheapest choice of all: fewest moved wires, then least cost, then the best order.
 *
 * @returns the choice with the number of partial choices looked at, or null when there is none
 */
export const assign = (items: readonly Item[]): Choice | null => search(items, false);

export const isPossible = (items: readonly Item[]): boolean => search(items, true) !== null;

/**
 * Items that cannot be had together, and of which none can be left out: without any one of them the others find room.
 *
 * @param items a set that cannot be had together
 */
export const smallestClash = (items: readonly Item[]): readonly Item[] => {
  let kept = [...items];
  for (const item of items) {
    const rest = kept.filter((one) => one !== item);
    if (!isPossible(rest)) kept = rest;
  }
  return kept;
};
