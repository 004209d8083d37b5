export { readBook, type Book, type ReadOptions, type ReadResult, type Tree } from './book.ts';
export { type BookProblem } from './problem.ts';
export { assembleSchema, type BookSchema, type NamedPart } from './schema.ts';
export { CannotEdit, editBook } from './edit.ts';
export { frameOf } from './frame.ts';
export { nearest } from '../../kernel/nearest.ts';
