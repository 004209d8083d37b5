/** Serves a pack to the person at this machine and to nobody else. */
import { createServer, type Server } from 'node:http';
import { realpathSync } from 'node:fs';
import { join } from 'node:path';
import { getRequestListener } from '@hono/node-server';
import { Hono } from 'hono';
import { disk } from '../pack/disk.ts';
import { MANIFEST, readManifest } from '../pack/manifest.ts';

const HOST = '127.0.0.1';
/** Ports that are tried, from the wished one on. */
const TRIES = 20;

const types: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  csv: 'text/csv; charset=utf-8',
  json: 'application/json; charset=utf-8',
  svg: 'image/svg+xml',
};

const headers: Readonly<Record<string, string>> = {
  'content-security-policy':
    "default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
  'cache-control': 'no-store',
};

/** What a page at this machine calls the server. Any other name was put there by a page from elsewhere. */
const ownNames = (port: number): readonly string[] => [`${HOST}:${port}`, `localhost:${port}`, `[::1]:${port}`];

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
  app.use((context, next) => {
    const names = ownNames(port());
    const host = context.req.header('host');
    const origin = context.req.header('origin');
    const isOwn =
      host !== undefined &&
      names.includes(host) &&
      (origin === undefined || names.some((name) => origin === `http://${name}`));
    if (!isOwn)
      return Promise.resolve(
        context.text('This is served to the machine that it runs on, under its own name only.\n', 403, headers),
      );
    if (context.req.method !== 'GET' && context.req.method !== 'HEAD')
      return Promise.resolve(context.text('Only reading is possible here.\n', 405, { ...headers, allow: 'GET, HEAD' }));
    return next();
  });
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

export interface Served {
  readonly address: string;
  readonly port: number;
  /** True when the wished port was taken. */
  readonly moved: boolean;
  readonly close: () => Promise<void>;
}

const listening = (server: Server, port: number): Promise<boolean> =>
  new Promise((resolve, reject) => {
    const failed = (error: NodeJS.ErrnoException): void => {
      if (error.code === 'EADDRINUSE' || error.code === 'EACCES') resolve(false);
      else reject(error);
    };
    server.once('error', failed);
    server.listen({ host: HOST, port }, () => {
      server.off('error', failed);
      resolve(true);
    });
  });

/**
 * Serves a pack on this machine only, at the wished port or the next that is free.
 *
 * @param wished port; 0 for any
 * @throws Error when none of the ports is free
 */
export const serve = async (folder: string, wished: number): Promise<Served> => {
  let port = wished;
  const listener = getRequestListener(answersFor(folder, () => port).fetch, { overrideGlobalObjects: false });
  const server = createServer((request, response) => void listener(request, response));
  for (let tried = 0; tried < TRIES && wished + tried <= 65_535; tried++) {
    if (!(await listening(server, wished + tried))) continue;
    const address = server.address();
    port = typeof address === 'object' && address !== null ? address.port : wished + tried;
    return {
      address: `http://${HOST}:${port}/`,
      port,
      moved: wished !== 0 && port !== wished,
      close: () =>
        new Promise((resolve) => {
          server.close(() => resolve());
          server.closeAllConnections();
        }),
    };
  }
  throw new Error(`no port from ${wished} on is free`);
};
