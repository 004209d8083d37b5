/** Sequence's part of the book. */
import type { Quantity, SchemaPart, Topology } from '../../contract/index.ts';
import { cycleShape, type CycleEntry } from './schema/keys.ts';
import { objectionsTo } from './schema/refine.ts';

const cycle = cycleShape.superRefine((given, context) => {
  for (const { path, what, allowed, at } of objectionsTo(given as CycleEntry))
    context.addIssue({
      code: 'custom',
      message: what,
      path: [...path],
      params: { what, allowed, ...(at ? { at } : {}) },
    });
});

export const schema: SchemaPart = { top: { sequence: cycle } };

/** What is read of an axis; all are others' keys. */
export type AxisEntry = NonNullable<Topology['axes']>[string] & {
  readonly drive: 'belt' | 'screw' | 'hoist';
  readonly 'slack-switch'?: string;
  readonly travel?: Quantity;
  readonly 'approach-speed'?: Quantity;
  readonly unpowered?: 'free' | 'windings shorted' | 'brake';
  readonly 'rests-on'?: 'its drive' | 'a catch' | 'the ground';
  readonly 'harmless-energy'?: Quantity;
};

/** The book as Sequence sees it. */
export interface SequenceBook extends Omit<Topology, 'axes'> {
  readonly axes?: Readonly<Record<string, AxisEntry>>;
  readonly sequence?: CycleEntry;
}
