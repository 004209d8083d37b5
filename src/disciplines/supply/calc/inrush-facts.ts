/** Capacitors behind a fuse, and what stands in their way when a contact closes. */
import { need } from '../../../contract/index.ts';
import type { Value } from '../../../kernel/index.ts';
import { ofDriver, type SupplyContext } from './book.ts';
import { behind, feedOf, fuseEntry } from './branch-facts.ts';
import { inrushResistance } from './start.ts';

/** Capacitors of drivers and loads behind a fuse. */
export const capacitorsBehind = (context: SupplyContext, fuse: string): readonly Value[] => {
  const { drivers, loads } = behind(context, fuse);
  return [
    ...drivers.map((name) => ofDriver(context.book, name, 'capacitance')),
    ...loads.flatMap((name) => context.book.loads?.[name]?.capacitance ?? []),
  ];
};

/** Wire, contacts and capacitor behind a fuse. */
export const inrushLoop = (context: SupplyContext, fuse: string): Value => {
  const own = fuseEntry(context, fuse);
  const contacts = need(own, 'contact-resistance')['contact-resistance'];
  return own.cable === undefined ? contacts : inrushResistance.work({ contacts, feed: feedOf(context, fuse) });
};
