/** The proof of the book's cycle, found once and kept. */
import { factToken } from '../../../contract/index.ts';
import { prove, type Proof } from './prove.ts';
import type { CycleSpec } from './spec.ts';

/** By `sequence`: what was searched, and what it showed. */
export const proofToken = factToken<{ readonly spec: CycleSpec; readonly proof: Proof }>('sequence.proof');

const MOST_KEPT = 8;
const kept = new Map<string, Proof>();

/** Books that differ in what no tick notices have one proof. */
export const proofOf = (spec: CycleSpec): Proof => {
  const key = JSON.stringify(spec);
  const before = kept.get(key);
  if (before) return before;
  const proof = prove(spec);
  const oldest = kept.keys().next().value;
  if (kept.size >= MOST_KEPT && oldest !== undefined) kept.delete(oldest);
  kept.set(key, proof);
  return proof;
};
