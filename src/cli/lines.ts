import { createInterface } from 'node:readline';
import type { Readable, Writable } from 'node:stream';

/** Lines of an input, one by one. On a terminal they can be edited, and Ctrl-C ends them like the end of the input. */
export const linesFrom = (input: Readable & { readonly isTTY?: boolean }, output: Writable): AsyncIterator<string> => {
  const isTyped = input.isTTY === true;
  const reader = createInterface({ input, terminal: isTyped, ...(isTyped ? { output } : {}) });
  reader.on('SIGINT', () => reader.close());
  return reader[Symbol.asyncIterator]();
};
