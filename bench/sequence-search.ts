/** What the bench of the search runs: the demonstration's cycle, read from its book, and its model for a model checker. */
import { readFileSync } from 'node:fs';
import { explore, prove } from '../src/disciplines/sequence/calc/prove.ts';
import type { CycleSpec } from '../src/disciplines/sequence/calc/spec.ts';
import { promela } from '../src/disciplines/sequence/tests/references/promela.ts';
import { specFrom } from '../src/disciplines/sequence/tests/references/specs.ts';

/** The cycle of a book, with so many faults at once. */
export const cycleOf = (path: string, atMost: number): CycleSpec => ({
  ...specFrom(readFileSync(path, 'utf8')),
  atMost,
});

export const model = (spec: CycleSpec): string => promela(spec, false);

/** States found, and bytes for each. */
export const searched = (spec: CycleSpec): { readonly states: number; readonly bytesEach: number } => {
  const { explorer, graph } = explore(spec);
  return { states: graph.count, bytesEach: Math.round(explorer.codec.space.bytes / graph.count) };
};

/** Everything that the sheet wants. */
export const proven = (spec: CycleSpec): boolean => prove(spec).cut === null;
