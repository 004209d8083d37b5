/** The name that was probably meant. */

/** Letters changed, added or left out. */
const apart = (a: string, b: string): number => {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++)
      next.push(Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)));
    row = next;
  }
  return row[b.length]!;
};

/** What is allowed in place of a name that is not known: the one nearest to it, or all. */
export const wouldDo = (given: string, names: readonly string[]): string => {
  const ranked = names
    .map((name) => ({ name, far: apart(given.toLowerCase(), name.toLowerCase()) }))
    .sort((a, b) => a.far - b.far);
  const [best] = ranked;
  if (best && best.far <= Math.max(1, Math.floor(given.length / 3))) return `Did you mean ${best.name}?`;
  return names.length > 0 ? `${names.slice(0, 24).join(', ')} would do.` : 'Nothing of that kind is there yet.';
};
