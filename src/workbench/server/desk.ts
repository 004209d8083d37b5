/** What the desk's server answers, without a network. */
import { Hono, type Context } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { streamSSE } from 'hono/streaming';
import * as z from 'zod';
import type { Seen } from '../desk/folder.ts';
import type { Asset } from './assets.ts';
import type { Books, DeskBook } from './books.ts';
import { deskHeaders, guard, isReading } from './guard.ts';

/** Of a request in bytes; a text of 2 MiB that is all escapes in JSON fits. */
const MOST_BODY = 16 * 1024 * 1024;
/** Pages that hear of changes at the same time. */
const MOST_FOLLOWERS = 64;
/** Lets both ends notice that the other is gone, in ms. */
const HEARTBEAT = 15_000;
/** How soon a page tries again when the server is gone, in ms. */
const RETRY = 1000;

/** Names with a text each. Every name is looked at later, also such as mean something to the language. */
const texts = z.custom<Readonly<Record<string, string>>>(
  (value) =>
    typeof value === 'object' &&
    value !== null &&
    !Array.isArray(value) &&
    Object.values(value).every((text) => typeof text === 'string'),
  'names, each with a text, belong here',
);
const saving = z.strictObject({ files: texts, seen: texts, desk: z.string().max(100).optional() });
const making = z.strictObject({ name: z.string(), files: texts });

const refused = (says: string) => ({ kind: 'refused' as const, says });
const json = (context: Context, status: 200 | 201 | 400 | 404 | 409 | 413 | 415 | 422 | 503, body: object) =>
  context.json(body, status, { ...deskHeaders });
const notAllowed = (context: Context, allow: string): Response =>
  context.text(`Only ${allow} is possible here.\n`, 405, { ...deskHeaders, allow });

const limit = bodyLimit({
  maxSize: MOST_BODY,
  onError: (context) => json(context, 413, refused('This is more text than a book has: 2 MiB a file at most.')),
});

/** The body of a request as it must be, or the answer that says why it is not. */
const bodyOf = async <T>(context: Context, shape: z.ZodType<T>): Promise<T | Response> => {
  const type = context.req.header('content-type') ?? '';
  if (!/^application\/json(;\s*charset=utf-8)?$/i.test(type))
    return json(context, 415, refused('Texts are sent here as application/json.'));
  let value: unknown;
  try {
    value = JSON.parse(await context.req.text());
  } catch {
    return json(context, 400, refused('What was sent is no JSON, or was broken off.'));
  }
  const parsed = shape.safeParse(value);
  if (parsed.success) return parsed.data;
  return json(context, 400, refused(`What was sent does not fit: ${z.prettifyError(parsed.error)}`));
};

const seenIn = (text: string | undefined): Seen | undefined | 'none' => {
  if (text === undefined) return undefined;
  try {
    return texts.parse(JSON.parse(text));
  } catch {
    return 'none';
  }
};

const nothingOpen = (books: Books) => ({
  kind: 'none',
  says: 'No book lies on this desk yet.',
  newBooksIn: books.newBooksIn ?? null,
});

/** Tells a page of changes until it leaves or the server ends. */
const changes = (context: Context, book: DeskBook, seen: Seen | undefined, desk: string): Response => {
  for (const [name, value] of Object.entries(deskHeaders)) context.header(name, value);
  const follower = book.follow(desk, seen);
  return streamSSE(context, async (stream) => {
    stream.onAbort(() => follower.stop());
    const beat = setInterval(() => void stream.write(': \n\n'), HEARTBEAT);
    try {
      await stream.write(`retry: ${RETRY}\n\n`);
      for (let change = await follower.next(); change && !stream.aborted; change = await follower.next())
        await stream.writeSSE({ event: 'changed', data: JSON.stringify(change) });
    } finally {
      clearInterval(beat);
      follower.stop();
    }
  });
};

/**
 * The answers of the desk's server.
 *
 * @param assets the desk's own files by their path
 * @param port that the server has, which a request has to name
 */
export const deskAnswers = (books: Books, assets: ReadonlyMap<string, Asset>, port: () => number): Hono => {
  const app = new Hono();
  const bookOf = (context: Context): DeskBook | undefined => books.get(context.req.query('book'));
  app.use(guard(port, deskHeaders));

  app.get('/book', (context) => {
    if (context.req.method !== 'GET') return notAllowed(context, 'GET, PUT');
    const opened = bookOf(context)?.open();
    if (!opened) return json(context, 404, nothingOpen(books));
    return json(context, 'kind' in opened ? 422 : 200, opened);
  });
  app.put('/book', limit, async (context) => {
    const book = bookOf(context);
    if (!book) return json(context, 404, refused('This book is not open here. Save it as a new book.'));
    const body = await bodyOf(context, saving);
    if (body instanceof Response) return body;
    const saved = await book.save(body.files, body.seen, body.desk ?? '');
    return json(context, saved.kind === 'saved' ? 200 : saved.kind === 'conflict' ? 409 : 422, saved);
  });
  app.all('/book', (context) => notAllowed(context, 'GET, PUT'));

  app.get('/changes', (context) => {
    if (context.req.method !== 'GET') return notAllowed(context, 'GET');
    const book = bookOf(context);
    if (!book) return json(context, 404, nothingOpen(books));
    if (books.followers() >= MOST_FOLLOWERS)
      return json(context, 503, refused('Too many pages follow this desk. Close some of them.'));
    const seen = seenIn(context.req.query('seen'));
    if (seen === 'none') return json(context, 400, refused('seen is a map from names to hashes, as JSON.'));
    return changes(context, book, seen, context.req.query('desk') ?? '');
  });
  app.all('/changes', (context) => notAllowed(context, 'GET'));

  app.post('/books', limit, async (context) => {
    const body = await bodyOf(context, making);
    if (body instanceof Response) return body;
    const made = books.make(body.name, body.files);
    return json(context, made.kind === 'made' ? 201 : 422, made);
  });
  app.all('/books', (context) => notAllowed(context, 'POST'));

  app.all('*', (context) => {
    if (!isReading(context.req.method)) return notAllowed(context, 'GET, HEAD');
    const asset = assets.get(context.req.path);
    if (!asset) return context.text('There is no such file here.\n', 404, { ...deskHeaders });
    const headers = { ...deskHeaders, 'cache-control': 'no-cache', etag: asset.tag };
    if (context.req.header('if-none-match') === asset.tag) return context.body(null, 304, headers);
    return context.body(asset.bytes, 200, { ...headers, 'content-type': asset.type });
  });
  app.onError((_, context) => context.json(refused('This could not be answered.'), 500, { ...deskHeaders }));
  return app;
};
