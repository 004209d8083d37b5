/**
 * The stamp: what a made file came from. Its parts are fixed, so that telling what is stale changes no format:
 * the revision, a hash over the book's files, and for each made file a hash over the facts that it used.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { Book } from './read/book.ts';
import { markAt, type Snapshot } from './snapshot.ts';

export interface Stamp {
  readonly revision: string;
  /** SHA-256 over names and texts of the book's files, in order of name. */
  readonly content: string;
}

const hash = (text: string): string => bytesToHex(sha256(utf8ToBytes(text)));

/** Length before each text, so that no two lists of texts run together into the same bytes. */
const framed = (texts: readonly string[]): string => texts.map((text) => `${text.length}:${text}`).join('');

export const stampOf = (book: Book): Stamp => ({
  revision: typeof book.tree['revision'] === 'string' ? book.tree['revision'] : '',
  content: hash(framed([...book.files].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)).flat())),
});

/**
 * SHA-256 over what stands at these paths: kind of range, both ends and origin, or the word.
 *
 * @param besides what a made file shows and no path tells, such as what a study came to
 */
export const factsHash = (paths: Iterable<string>, snapshot: Snapshot, besides: readonly string[] = []): string =>
  hash(framed([...[...new Set(paths)].sort().flatMap((path) => [path, markAt(path, snapshot)]), ...besides]));
