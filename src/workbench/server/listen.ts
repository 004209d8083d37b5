/** A port of this machine that only this machine reaches. */
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';

export const HOST = '127.0.0.1';
/** Ports that are tried, from the wished one on. */
const TRIES = 20;
/** Of what a request says before its body, in bytes: the names and hashes of a book's files fit. */
const LONGEST_HEAD = 64 * 1024;
/** How long an answer that was begun may take when the server ends, in ms. */
const GRACE = 300;

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

const closed = (server: Server): Promise<void> =>
  new Promise((resolve) => {
    const late = setTimeout(() => server.closeAllConnections(), GRACE);
    server.close(() => {
      clearTimeout(late);
      resolve();
    });
    server.closeIdleConnections();
  });

/**
 * Serves on this machine only, at the wished port or the next that is free.
 *
 * @param answer to one request
 * @param wished port; 0 for any
 * @param ending what is done first when the server is closed
 * @throws Error when none of the ports is free
 */
export const listen = async (
  answer: (request: IncomingMessage, response: ServerResponse, port: number) => void,
  wished: number,
  ending: () => Promise<void> = () => Promise.resolve(),
): Promise<Served> => {
  let port = wished;
  const server = createServer({ maxHeaderSize: LONGEST_HEAD }, (request, response) => answer(request, response, port));
  for (let tried = 0; tried < TRIES && wished + tried <= 65_535; tried++) {
    if (!(await listening(server, wished + tried))) continue;
    const address = server.address();
    port = typeof address === 'object' && address !== null ? address.port : wished + tried;
    let ended: Promise<void> | undefined;
    return {
      address: `http://${HOST}:${port}/`,
      port,
      moved: wished !== 0 && port !== wished,
      close: () => (ended ??= ending().then(() => closed(server))),
    };
  }
  throw new Error(`no port from ${wished} on is free`);
};
