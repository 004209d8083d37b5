/** Which lines of two texts differ, so that a person sees where to look. */

export interface Line {
  readonly text: string;
  readonly differs: boolean;
}

/** Beyond this product the table of the comparison would be felt; the middle then counts as different as a whole. */
const LARGEST = 4_000_000;

/** For each line of two stretches, whether it has a fellow in the longest common sequence. */
const common = (a: readonly string[], b: readonly string[]): [Set<number>, Set<number>] => {
  const width = b.length + 1;
  const lengths = new Uint32Array((a.length + 1) * width);
  const at = (i: number, j: number): number => lengths[i * width + j] ?? 0;
  for (let i = a.length - 1; i >= 0; i--)
    for (let j = b.length - 1; j >= 0; j--)
      lengths[i * width + j] = a[i] === b[j] ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1));
  const [inA, inB] = [new Set<number>(), new Set<number>()];
  let [i, j] = [0, 0];
  while (i < a.length && j < b.length) {
    if (a[i] === b[j]) {
      inA.add(i++);
      inB.add(j++);
    } else if (at(i + 1, j) >= at(i, j + 1)) i++;
    else j++;
  }
  return [inA, inB];
};

/**
 * Compares two texts line by line.
 * @returns the lines of each, with whether the other has them not
 */
export const lineDifferences = (before: string, after: string): [readonly Line[], readonly Line[]] => {
  const [a, b] = [before.split(/\r?\n/), after.split(/\r?\n/)];
  let head = 0;
  while (head < a.length && head < b.length && a[head] === b[head]) head++;
  let tail = 0;
  while (tail < a.length - head && tail < b.length - head && a.at(-1 - tail) === b.at(-1 - tail)) tail++;
  const [middleA, middleB] = [a.slice(head, a.length - tail), b.slice(head, b.length - tail)];
  const [inA, inB] =
    middleA.length * middleB.length > LARGEST ? [new Set<number>(), new Set<number>()] : common(middleA, middleB);
  const lines = (all: readonly string[], same: ReadonlySet<number>): readonly Line[] =>
    all.map((text, i) => ({ text, differs: i >= head && i < all.length - tail && !same.has(i - head) }));
  return [lines(a, inA), lines(b, inB)];
};
