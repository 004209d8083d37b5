/** In which unit a result is printed: the book's preference, else the unit that its author used most for the dimension. */
import { Quantity } from '../contract/index.ts';
import { dimensions, isProblem, show, toUnit, unitNamed, type Dimension, type Unit } from '../kernel/index.ts';
import type { Snapshot } from './snapshot.ts';

export type UnitChoice = (of: Dimension) => Unit | undefined;

export const authorsUnits = (snapshot: Snapshot): UnitChoice => {
  const tally = new Map<Dimension, Map<string, { unit: Unit; times: number }>>();
  for (const [path, node] of snapshot.nodes) {
    if (node.kind !== 'leaf' || !(node.leaf instanceof Quantity) || !snapshot.stated(path)) continue;
    const { of, unit } = node.leaf;
    // What is counted in one place, swings or turns, is not what is counted in another.
    if (of === 'count') continue;
    const units = tally.get(of) ?? new Map<string, { unit: Unit; times: number }>();
    tally.set(of, units);
    const seen = units.get(unit.print);
    units.set(unit.print, { unit, times: (seen?.times ?? 0) + 1 });
  }
  const chosen = new Map<Dimension, Unit>();
  for (const [of, units] of tally) {
    const most = [...units.values()].reduce((a, b) => (b.times > a.times ? b : a));
    chosen.set(of, most.unit);
  }
  const preferred = snapshot.tree['units'];
  if (preferred && typeof preferred === 'object')
    for (const [of, text] of Object.entries(preferred)) {
      const unit = unitNamed(String(text), of as Dimension);
      if (!isProblem(unit)) chosen.set(of as Dimension, unit);
    }
  return (of) => chosen.get(of);
};

/** The whole choice as a text; two that print alike give the same. */
export const unitsMark = (units: UnitChoice): string =>
  dimensions.map(({ name }) => units(name)?.print ?? '').join(' ');

/** A number with its unit, as the author would read it; a unit in which the number would be all noughts gives way. */
export const shown = (units: UnitChoice, number: number, of: Dimension): string => {
  if (!Number.isFinite(number)) return number > 0 ? 'beyond all bounds' : 'no number';
  const unit = units(of);
  if (!unit) return show(number, of);
  const size = Math.abs(toUnit(number, unit));
  return size === 0 || (size >= 0.01 && size < 1e4) ? show(number, of, unit) : show(number, of);
};
