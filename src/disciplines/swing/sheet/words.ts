/** Values as a reader sees them on the sheet. */
import { pathOf, type Block, type Cell, type SheetContext } from '../../../contract/index.ts';
import { constant, type Dimension, type Value } from '../../../kernel/index.ts';
import type { SwingBook } from '../schema.ts';

export type Sheet = SheetContext<SwingBook>;

/** A bare number of a simulation, in the author's unit; times of swings and plays in seconds, as they are counted. */
export const text = (sheet: Sheet, number: number, of: Dimension): string =>
  of === 'time' && number >= 0.1
    ? `${Number(number.toPrecision(3))} s`
    : sheet.show(constant(number, of, 'of a simulation'));

/** Stands where there is nothing to show. */
export const NONE = '—';

/** A value with its range; a dash where it cannot be worked out. */
export const ranged = (sheet: Sheet, run: () => Value): string => {
  const worked = sheet.attempt(() => {
    const { of } = run();
    const { low, high } = sheet.ends(run);
    const [least, most] = [text(sheet, low, of), text(sheet, high, of)];
    return least === most ? most : `${least} to ${most}`;
  });
  return worked.ok ? worked.value : NONE;
};

/** The fact of the book that a value is; none where it was worked out of others. */
const factOf = ({ origin }: Value): string | undefined => (origin.kind === 'given' ? origin.path : undefined);

/** A value with its range as a cell, which can be taken hold of where it is one fact of the book in every scenario. */
export const held = (sheet: Sheet, run: () => Value): Cell => {
  const facts = new Set<string | undefined>();
  const text = ranged(sheet, () => {
    const value = run();
    facts.add(factOf(value));
    return value;
  });
  const [path] = facts;
  return path === undefined || facts.size > 1 || text === NONE ? text : { text, path };
};

/** What the book says under a key, as a cell that can be taken hold of. */
export const said = <T extends object, K extends keyof T & string>(
  of: T,
  key: K,
  {
    write = String,
    none = NONE,
  }: { readonly write?: (said: NonNullable<T[K]>) => string; readonly none?: string } = {},
): Cell => {
  const stands = of[key];
  return stands === undefined || stands === null ? none : { text: write(stands), path: `${pathOf(of)}.${key}` };
};

/** Blocks, or a sentence that says why there are none. */
export const attempted = (sheet: Sheet, what: string, run: () => readonly Block[]): readonly Block[] => {
  const worked = sheet.attempt(run);
  return worked.ok ? worked.value : [{ kind: 'paragraph', text: `${what}: ${worked.why}.` }];
};
