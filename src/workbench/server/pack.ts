/** Serves a pack to the person at this machine and to nobody else. */
import { realpathSync } from 'node:fs';
import { join } from 'node:path';
import { getRequestListener } from '@hono/node-server';
import { Hono } from 'hono';
import { disk } from '../../pack/disk.ts';
import { MANIFEST, readManifest } from '../../pack/manifest.ts';
import { guard, isReading, packHeaders as headers } from './guard.ts';
import { listen, type Served } from './listen.ts';

export type { Served } from './listen.ts';

const types: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  csv: 'text/csv; charset=utf-8',
  json: 'application/json; charset=utf-8',
  svg: 'image/svg+xml',
};

/** The text of a file of the pack. Only what the manifest names is served, so that no path leads elsewhere. */
const fileOf = (folder: string, name: string): Buffer | undefined => {
  const bytes = disk.read(join(folder, MANIFEST));
  const manifest = bytes && readManifest(bytes.toString('utf8'));
  if (!manifest) return undefined;
  if (name === MANIFEST) return bytes;
  return manifest.files.some((file) => file.name === name) ? disk.read(join(folder, name)) : undefined;
};

/**
 * The answers of the server, without a network.
 *
 * @param folder with a pack in it
 * @param port that the server has, which a request has to name
 */
export const answersFor = (folder: string, port: () => number): Hono => {
  const home = realpathSync(folder);
  const app = new Hono();
  app.use((context, next) =>
    isReading(context.req.method)
      ? next()
      : Promise.resolve(context.text('Only reading is possible here.\n', 405, { ...headers, allow: 'GET, HEAD' })),
  );
  app.use(guard(port, headers));
  app.get('*', (context) => {
    const { path } = context.req;
    const name = path === '/' ? 'index.html' : path.slice(1);
    const bytes = fileOf(home, name);
    if (!bytes) return context.text('There is no such file in this pack.\n', 404, headers);
    const type = types[name.split('.').at(-1) ?? ''] ?? 'text/plain; charset=utf-8';
    return context.body(new Uint8Array(bytes), 200, { ...headers, 'content-type': type });
  });
  app.onError((_, context) => context.text('This could not be answered.\n', 500, headers));
  return app;
};

/**
 * Serves a pack on this machine only, at the wished port or the next that is free.
 *
 * @param wished port; 0 for any
 * @throws Error when none of the ports is free
 */
export const serve = (folder: string, wished: number): Promise<Served> => {
  let own = 0;
  const listener = getRequestListener(answersFor(folder, () => own).fetch, { overrideGlobalObjects: false });
  return listen((request, response, port) => {
    own = port;
    void listener(request, response);
  }, wished);
};
