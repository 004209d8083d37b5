// Splits the worker: what draws a trade's sheet is fetched after the verdicts, and the part that draws waits for all of it.
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

const DOOR = /[\\/]src[\\/]disciplines[\\/][\w-]+[\\/]index\.ts$/;
const DRAWING = /[\\/]src[\\/]workbench[\\/]worker[\\/]sheets\.ts$/;
const QUEUE = 'later-sheets';

/** Stands at a trade's door in place of its sheet until the sheet is there. */
const standIn = `
import { awaited } from '${QUEUE}';
let part;
export const cautions = [];
export const sheet = (context) => part.sheet(context);
export const makes = (context) => part.makes(context);
awaited.push(async () => {
  part = await import('./sheet.ts');
  cautions.push(...part.cautions);
});
`;

/** A plugin of the bundler. A trade imports its own sheet as ever; only its door gets the stand-in. */
export const laterSheets = {
  name: QUEUE,
  setup(build) {
    build.onResolve({ filter: /^\.\/sheet\.ts$/ }, ({ importer, resolveDir }) =>
      DOOR.test(importer) ? { path: join(resolveDir, 'sheet.ts'), namespace: 'stand-in' } : undefined,
    );
    build.onLoad({ filter: /./, namespace: 'stand-in' }, ({ path }) => ({
      contents: standIn,
      resolveDir: dirname(path),
    }));
    build.onResolve({ filter: new RegExp(`^${QUEUE}$`) }, () => ({ path: QUEUE, namespace: 'queue' }));
    build.onLoad({ filter: /./, namespace: 'queue' }, () => ({ contents: 'export const awaited = [];' }));
    build.onLoad({ filter: DRAWING }, ({ path }) => ({
      contents: `${readFileSync(path, 'utf8')}
import { awaited } from '${QUEUE}';
await Promise.all(awaited.map((come) => come()));
`,
      loader: 'ts',
    }));
  },
};
