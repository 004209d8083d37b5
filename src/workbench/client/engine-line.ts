/**
 * The engine in its worker, and a second one for what takes longer, so that no sheet stands in the way of a verdict. When a
 * worker dies it is started anew, a few times.
 */
import type { Engine } from '../desk/engine.ts';
import { lineTo, portOf, type Line } from '../desk/rpc.ts';
import { twoEngines } from '../desk/two-engines.ts';
import { scriptAddress } from './markup.ts';

declare const __WORKER__: string;

/** How long the engine may take over one text, in milliseconds, before somebody is asked whether to wait. */
const PATIENCE = 20_000;
/** Deaths in a row, without an answer between them, after which it is left alone. */
const TRIES = 3;

export interface Worked {
  readonly engine: Engine;
  /** Begins once more after it was given up. */
  readonly restart: () => void;
}

export const startEngine = (told: {
  readonly restarted: (why: string) => void;
  readonly givenUp: (why: string) => void;
  /** It does not answer; gives what to do when it does after all. */
  readonly silent: () => () => void;
}): Worked => {
  let deaths = 0;
  const open = () => portOf(new Worker(scriptAddress(__WORKER__), { type: 'module', name: 'engine' }));
  const line: Line<Engine> = lineTo<Engine>(open, (why) => {
    deaths += 1;
    if (deaths > TRIES) {
      told.givenUp(why);
      return;
    }
    line.restart();
    told.restarted(why);
  });
  const lay: Engine['lay'] = async (...args) => {
    let answered = (): void => undefined;
    const patience = setTimeout(() => (answered = told.silent()), PATIENCE);
    try {
      const result = await line.calls.lay(...args);
      deaths = 0;
      return result;
    } finally {
      clearTimeout(patience);
      answered();
    }
  };
  const quick = new Proxy(line.calls, {
    get: (calls, name) => (name === 'lay' ? lay : Reflect.get(calls, name)),
  });
  // Opened by the first question for it, when the first verdicts are there.
  let second: Line<Engine> | undefined;
  const slow = new Proxy({} as Engine, {
    get:
      (_, name: keyof Engine) =>
      (...args: readonly unknown[]) => {
        second ??= lineTo<Engine>(open, () => (second = undefined));
        return (second.calls[name] as (...given: readonly unknown[]) => unknown)(...args);
      },
  });
  return {
    engine: twoEngines(quick, slow),
    restart: () => {
      deaths = 0;
      line.restart();
    },
  };
};
