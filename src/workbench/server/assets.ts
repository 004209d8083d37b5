/** The desk's own files, read once: what a request names is looked up in a list and never on the disk. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Refused } from '../../pack/refused.ts';
import { hashOf } from './texts.ts';

export interface Asset {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly type: string;
  readonly tag: string;
}

const types: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  css: 'text/css; charset=utf-8',
  json: 'application/json; charset=utf-8',
  map: 'application/json; charset=utf-8',
  webmanifest: 'application/manifest+json; charset=utf-8',
  svg: 'image/svg+xml',
  png: 'image/png',
  ico: 'image/x-icon',
  woff2: 'font/woff2',
  ttf: 'font/ttf',
  otf: 'font/otf',
  txt: 'text/plain; charset=utf-8',
};

/** Names as an address writes them without any escape. */
const PLAIN = /^[\w-][\w.-]*(\/[\w-][\w.-]*)*$/;

/** Names of plain files below a folder. A link is not followed, neither to a file nor to a folder. */
const filesBelow = (folder: string, above = ''): readonly string[] =>
  readdirSync(join(folder, above), { withFileTypes: true }).flatMap((entry) => {
    const name = above + entry.name;
    if (!PLAIN.test(name)) return [];
    return entry.isDirectory() ? filesBelow(folder, `${name}/`) : entry.isFile() ? [name] : [];
  });

/**
 * Every plain file of a folder by its path in an address.
 *
 * @throws Refused when there is no page in it
 */
export const assetsIn = (folder: string): ReadonlyMap<string, Asset> => {
  const assets = new Map<string, Asset>();
  for (const name of existsSync(folder) ? filesBelow(folder) : []) {
    const type = types[name.split('.').at(-1) ?? ''];
    if (type === undefined) continue;
    const bytes = readFileSync(join(folder, name));
    assets.set(`/${name}`, { bytes: new Uint8Array(bytes), type, tag: `"${hashOf(bytes)}"` });
  }
  const page = assets.get('/index.html');
  if (!page) throw new Refused(`The desk's page is not in ${folder}. In a checkout, npm run build makes it.`);
  assets.set('/', page);
  return assets;
};
