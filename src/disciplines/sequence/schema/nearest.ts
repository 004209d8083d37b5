import { nearest } from '../../../kernel/index.ts';

/** What is allowed in place of a name that is not known: the one nearest to it, or all. */
export const wouldDo = (given: string, names: readonly string[]): string => {
  const best = nearest(given, names);
  if (best !== undefined) return `Did you mean ${best}?`;
  return names.length > 0 ? `${names.slice(0, 24).join(', ')} would do.` : 'Nothing of that kind is there yet.';
};
