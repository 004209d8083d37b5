export { renderIndex } from './cover.ts';
export { typefaceFrom } from './typeface.ts';
export type { BookFacts, IndexInput, Revision, SheetInput, Sibling, SourceFacts, Stamp } from './model.ts';
export { renderSheet } from './sheet.ts';
