/** The worker itself: the engine at one end of a line. */
import { portOf, serve, type MessageEnd } from '../desk/rpc.ts';
import { engineFor } from './engine.ts';

/** A message to oneself comes after all that have arrived; a timer would wait longer. */
const turns = (): (() => Promise<void>) => {
  const { port1, port2 } = new MessageChannel();
  const waiting: (() => void)[] = [];
  port1.addEventListener('message', () => waiting.shift()?.());
  port1.start();
  return () =>
    new Promise((resolve) => {
      waiting.push(resolve);
      port2.postMessage(undefined, []);
    });
};

const today = new Date().toISOString().slice(0, 10);
serve(portOf(globalThis as unknown as MessageEnd), engineFor({ today, turn: turns() }));
