/** Capacitors behind a fuse, and what stands in their way when a contact closes. */
import { behind } from './layout.ts';
import { need } from '../../../contract/index.ts';
import type { Value } from '../../../kernel/index.ts';
import type { SupplyContext } from './book.ts';
import { fuseEntry, loopOf } from './branch-facts.ts';
import { capacitorsOf } from './regeneration-facts.ts';
import { inrushResistance } from './start.ts';

/** Capacitors of drivers, loads and converters behind a fuse. */
export const capacitorsBehind = (context: SupplyContext, fuse: string): readonly Value[] =>
  capacitorsOf(context, behind(context, fuse));

/** Wire, fuse, contacts and capacitor behind a fuse. */
export const inrushLoop = (context: SupplyContext, fuse: string): Value => {
  const own = need(fuseEntry(context, fuse), 'contact-resistance', 'resistance');
  const contacts = own['contact-resistance'];
  return inrushResistance.work({
    contacts,
    feed: fuseEntry(context, fuse).cable === undefined ? own.resistance : loopOf(context, fuse),
  });
};
