/** What was probably meant. */

const folded = (text: string): string => text.toLowerCase().replaceAll(/[\s_-]+/g, '-');

/** Letters changed, added, left out or swapped with a neighbour (Damerau's distance, optimal string alignment). */
export const distance = (a: string, b: string): number => {
  let before: number[] = [];
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let least = Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) least = Math.min(least, before[j - 2]! + 1);
      next.push(least);
    }
    before = row;
    row = next;
  }
  return row[b.length]!;
};

const LONGEST = 60;

/** The name that differs least from the given one, when it looks like a slip: at most one letter in three. */
export const nearest = (given: string, names: readonly string[]): string | undefined => {
  if (given.length > LONGEST) return undefined;
  const wanted = folded(given);
  let best: string | undefined;
  let least = Math.max(1, Math.floor(wanted.length / 3)) + 0.5;
  for (const name of names) {
    if (Math.abs(name.length - wanted.length) >= least) continue;
    const apart = distance(wanted, folded(name));
    if (apart < least) [best, least] = [name, apart];
  }
  return best;
};
