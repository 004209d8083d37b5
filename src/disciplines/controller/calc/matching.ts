/** Cheapest way to give each row a column of its own: shortest augmenting paths with potentials. */

/** Costs are not negative; Infinity where a row cannot have a column. */
export type Costs = readonly ArrayLike<number>[];

/**
 * The cheapest matching that covers every row.
 *
 * @param costs one row each for what must be placed, one column for each place; no more rows than columns
 * @returns column of each row and their cost together, or null when the rows cannot all be placed
 */
export const cheapestMatching = (
  costs: Costs,
): { readonly columns: readonly number[]; readonly cost: number } | null => {
  const rows = costs.length;
  const columns = costs[0]?.length ?? 0;
  if (rows > columns) return null;
  // Row and column 0 stand outside: a path begins in row `rowAt[0]`.
  const rowPotential = new Float64Array(rows + 1);
  const columnPotential = new Float64Array(columns + 1);
  const rowAt = new Int32Array(columns + 1);
  const before = new Int32Array(columns + 1);
  for (let row = 1; row <= rows; row++) {
    rowAt[0] = row;
    const least = new Float64Array(columns + 1).fill(Infinity);
    const used = new Uint8Array(columns + 1);
    let here = 0;
    do {
      used[here] = 1;
      const from = rowAt[here]!;
      let step = Infinity;
      let next = 0;
      for (let column = 1; column <= columns; column++) {
        if (used[column]) continue;
        const reduced = costs[from - 1]![column - 1]! - rowPotential[from]! - columnPotential[column]!;
        if (reduced < least[column]!) {
          least[column] = reduced;
          before[column] = here;
        }
        if (least[column]! < step) {
          step = least[column]!;
          next = column;
        }
      }
      if (step === Infinity) return null;
      for (let column = 0; column <= columns; column++)
        if (used[column]) {
          rowPotential[rowAt[column]!]! += step;
          columnPotential[column]! -= step;
        } else least[column]! -= step;
      here = next;
    } while (rowAt[here] !== 0);
    while (here !== 0) {
      const back = before[here]!;
      rowAt[here] = rowAt[back]!;
      here = back;
    }
  }
  const found = Array.from({ length: rows }, () => -1);
  let cost = 0;
  for (let column = 1; column <= columns; column++) {
    const row = rowAt[column]!;
    if (row === 0) continue;
    found[row - 1] = column - 1;
    cost += costs[row - 1]![column - 1]!;
  }
  return { columns: found, cost };
};
