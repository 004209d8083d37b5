/** Who may ask, and what every answer carries. */
import type { Context, MiddlewareHandler } from 'hono';
import { HOST } from './listen.ts';
import { deskPolicy } from './policy.ts';

/** What a page at this machine calls the server. Any other name was put there by a page from elsewhere. */
const ownNames = (port: number): readonly string[] => [`${HOST}:${port}`, `localhost:${port}`, `[::1]:${port}`];

const common: Readonly<Record<string, string>> = {
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(), microphone=(), geolocation=()',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
};

/** For pages that hold everything themselves and run nothing. */
export const packHeaders: Readonly<Record<string, string>> = {
  ...common,
  'content-security-policy':
    "default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  'cache-control': 'no-store',
};

export const deskHeaders: Readonly<Record<string, string>> = {
  ...common,
  'content-security-policy': deskPolicy,
  'cache-control': 'no-store',
};

const strangers = 'This is served to the machine that it runs on, under its own name only.\n';

export const isReading = (method: string): boolean => method === 'GET' || method === 'HEAD';

/** Somebody followed a link to the first page, such as in a terminal that is a page itself. */
const isVisit = ({ req }: Context): boolean =>
  req.method === 'GET' &&
  req.path === '/' &&
  req.header('sec-fetch-mode') === 'navigate' &&
  req.header('sec-fetch-dest') === 'document';

/** Whether a request comes from a page of this server, or from no page at all and only wants to read. */
const isOwn = (context: Context, port: number): boolean => {
  const { req } = context;
  const host = req.header('host');
  const origin = req.header('origin');
  const site = req.header('sec-fetch-site') ?? 'same-origin';
  if (host === undefined || !ownNames(port).includes(host)) return false;
  if (origin !== undefined && origin !== `http://${host}`) return false;
  if (isReading(req.method)) return site === 'same-origin' || site === 'none' || isVisit(context);
  return origin !== undefined && site === 'same-origin';
};

/** Turns away whatever a page from elsewhere had a browser send. */
export const guard =
  (port: () => number, headers: Readonly<Record<string, string>>): MiddlewareHandler =>
  async (context, next) => {
    if (!isOwn(context, port())) return context.text(strangers, 403, { ...headers });
    await next();
    return undefined;
  };
