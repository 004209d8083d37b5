/** What can be taken hold of on a sheet, beside what the book says there. */
import type { Machine } from '../../../../app/index.ts';
import { Quantity } from '../../../../contract/index.ts';
import { at } from '../../../../engine/snapshot.ts';
import { shown } from '../../../../engine/units.ts';

export interface Held {
  readonly path: string;
  readonly text: string;
  /** How the fact reads in the author's unit, in either way of writing a range; nothing where the book has no such fact. */
  readonly reads: readonly string[];
}

const readingsOf = ({ snapshot, units }: Machine, path: string): readonly string[] => {
  const fact = at(snapshot.tree, path);
  if (!(fact instanceof Quantity)) return typeof fact === 'string' || typeof fact === 'number' ? [String(fact)] : [];
  const [low, high] = [fact.low, fact.high].map((end) => shown(units, end, fact.of)) as [string, string];
  return low === high ? [high] : [`${low.replace(/\s*[^\d.,−]+$/u, '')}–${high}`, `${low} to ${high}`];
};

/** Every cell of the sheet that can be taken hold of. */
export const heldOn = (machine: Machine, trade: string): readonly Held[] =>
  machine.sheet(trade, 'later').document.blocks.flatMap((block) =>
    block.kind !== 'table'
      ? []
      : block.rows.flat().flatMap((cell): Held[] => {
          if (typeof cell === 'string' || cell.path === undefined) return [];
          return [{ path: cell.path, text: cell.text, reads: readingsOf(machine, cell.path) }];
        }),
  );

/** Cells that show something else than the fact of which they are the handle; `bare` takes off what is written around it. */
export const misleading = (held: readonly Held[], bare: (text: string) => string = (text) => text): readonly Held[] =>
  held.filter(({ text, reads }) => !reads.includes(bare(text)));
