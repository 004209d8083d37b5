import type { Loop } from '../contract/index.ts';
import { constant, formula, NoSolution, root, type Dimension, type Formula, type Value } from '../kernel/index.ts';

const SCAN = 64;
const closings = new Map<Dimension, Formula>();

/** The last line of a loop in the shown working: what went in must come out again. */
const closing = (of: Dimension): Formula => {
  const known = closings.get(of);
  if (known) return known;
  const made = formula({
    name: `closed-loop-${of}`,
    gives: { symbol: 'x', of, means: 'value at which the loop closes' },
    takes: {
      out: {
        symbol: 'x_out',
        of,
        means: 'what the loop gives back when x is put in',
        slope: 'either',
        typical: [1, 2],
      },
      put: { symbol: 'x_in', of, means: 'what was put in', slope: 'either', typical: [1, 2] },
      within: { symbol: 'δ', of, means: 'allowed difference', slope: 'either', from: 0, typical: [0, 1] },
    },
    steps: ({ out, put, within }, step) => {
      step('δ_loop', 'abs(x_out - x_in)', Math.abs(out - put), of);
      return step.solved('x', 'x_out - x', put, of, within);
    },
    assumes: ['the lowest of several closing values is the one that the machine reaches from cold'],
    source: [{ id: 'own-derivation', at: 'fixed point' }],
    checked: [{ kind: 'law', against: 'the residual is recomputed and shown' }],
    accuracy: 'to the shown difference',
  }) as unknown as Formula;
  closings.set(of, made);
  return made;
};

/**
 * Solves x = f(x) from `from` upward: the first crossing is the one that the machine reaches from cold.
 *
 * @throws NoSolution when f(x) stays above x up to `most`
 * @throws NotConverged when the crossing cannot be narrowed to the tolerance
 */
export const closeLoop = ({ name, from, most, tolerance, next, otherwise }: Loop): Value => {
  const width = most.number - from.number;
  if (!(width > 0)) throw new RangeError(`${name}: the loop has no room between its ends`);
  const within = tolerance * width;
  const put = (x: number): Value => constant(x, from.of, `trial value of ${name}`);
  const gap = (x: number): number => next(put(x)).number - x;
  let low = from.number;
  const first = gap(low);
  if (!(first > 0)) {
    if (Math.abs(first) <= within) return finish(put(low), within, next);
    throw new NoSolution(name, `${otherwise} (it already falls below its start)`);
  }
  for (let i = 1; i <= SCAN; i++) {
    const high = from.number + (width * i) / SCAN;
    if (!(gap(high) > 0)) {
      const x = root(gap, low, high, within / 4);
      return finish(put(x), within, next);
    }
    low = high;
  }
  throw new NoSolution(name, otherwise);
};

const finish = (x: Value, within: number, next: (x: Value) => Value): Value =>
  closing(x.of).work({ out: next(x), put: x, within: constant(within, x.of, 'tolerance of the loop') });
