/** Help for whoever is writing: what may stand at the caret, and what a key is about. */
export { helpAt } from './help.ts';
export { suggestionsAt } from './suggest.ts';
