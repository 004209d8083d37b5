/** Says on a terminal what is being worked on, once it takes longer than a second. */
import type { Surroundings } from './terminal.ts';
import { cut } from './text.ts';

export interface Progress {
  /** About to begin this. */
  readonly step: (what: string) => void;
  /** Takes away what was said. */
  readonly done: () => void;
}

const PATIENCE = 1000;
const CLEAR = '\r\u001b[K';

/** @param now milliseconds that only grow */
export const progressOn = (err: Surroundings['err'], now: () => number = () => performance.now()): Progress => {
  const start = now();
  let said = false;
  if (err.isTTY !== true) return { step: () => undefined, done: () => undefined };
  return {
    step: (what) => {
      if (now() - start < PATIENCE) return;
      err.write(`${CLEAR}${cut(`working on ${what}`, 76, '...')} `);
      said = true;
    },
    done: () => {
      if (said) err.write(CLEAR);
      said = false;
    },
  };
};
