/** The list of a pack's files, from which everything about it is told: whether it is whole, and what has gone stale. */
import type { Stamp } from '../engine/stamp.ts';

export const MANIFEST = 'manifest.json';
/** Format of the manifest; a change of what stands in it makes it 2. */
export const PACK_FORMAT = 1;

export interface ManifestFile {
  readonly name: string;
  /** The trade whose sheet it is or belongs to; absent for what belongs to the whole set. */
  readonly sheet?: string;
  readonly bytes: number;
  readonly sha256: string;
  /** Hash over the facts that the file was made from. Without one, it was made from the whole book. */
  readonly factsHash?: string;
}

export interface Manifest {
  readonly gantrybook: { readonly pack: number; readonly version: string };
  readonly book: { readonly title: string; readonly file: string };
  readonly stamp: Stamp;
  readonly files: readonly ManifestFile[];
}

/** A name that can stand for nothing but a file in the pack's own folder. */
export const isPlainName = (name: string): boolean => /^[A-Za-z0-9][A-Za-z0-9._-]{0,120}$/.test(name);

export const manifestText = (manifest: Manifest): string => `${JSON.stringify(manifest, undefined, 2)}\n`;

const isObject = (x: unknown): x is Readonly<Record<string, unknown>> =>
  x !== null && typeof x === 'object' && !Array.isArray(x);

const fileOf = (x: unknown): ManifestFile | undefined => {
  if (!isObject(x) || typeof x['name'] !== 'string' || !isPlainName(x['name']) || x['name'] === MANIFEST)
    return undefined;
  if (typeof x['bytes'] !== 'number' || typeof x['sha256'] !== 'string') return undefined;
  return {
    name: x['name'],
    ...(typeof x['sheet'] === 'string' ? { sheet: x['sheet'] } : {}),
    bytes: x['bytes'],
    sha256: x['sha256'],
    ...(typeof x['factsHash'] === 'string' ? { factsHash: x['factsHash'] } : {}),
  };
};

/**
 * Reads a manifest. It may come with a folder from a stranger: a name that leads elsewhere makes it none at all,
 * because names in it say what may be replaced and removed.
 */
export const readManifest = (text: string): Manifest | undefined => {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return undefined;
  }
  if (!isObject(json)) return undefined;
  const { gantrybook, book, stamp, files } = json;
  if (!isObject(gantrybook) || gantrybook['pack'] !== PACK_FORMAT || typeof gantrybook['version'] !== 'string')
    return undefined;
  if (!isObject(book) || typeof book['title'] !== 'string' || typeof book['file'] !== 'string') return undefined;
  if (!isObject(stamp) || typeof stamp['revision'] !== 'string' || typeof stamp['content'] !== 'string')
    return undefined;
  if (!Array.isArray(files)) return undefined;
  const read = files.map(fileOf);
  if (read.includes(undefined)) return undefined;
  return {
    gantrybook: { pack: PACK_FORMAT, version: gantrybook['version'] },
    book: { title: book['title'], file: book['file'] },
    stamp: { revision: stamp['revision'], content: stamp['content'] },
    files: read.filter((file) => file !== undefined),
  };
};
