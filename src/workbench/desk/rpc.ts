/** Calls over a port: what a page asks of its worker, typed on both sides. Only plain data crosses. */

/** One end of a line of messages. */
export interface Port {
  readonly post: (message: unknown) => void;
  /** Told of each message, and once when the other end is gone. */
  readonly hear: (heard: (message: unknown) => void, gone: (why: string) => void) => void;
  /** Lets go of the other end; a worker ends. */
  readonly close: () => void;
}

/** What a `Worker`, a `MessagePort` and the scope of a worker have in common. */
export interface MessageEnd {
  postMessage(message: unknown, transfer: never[]): void;
  addEventListener(type: 'message' | 'messageerror' | 'error', listener: (event: unknown) => void): void;
  start?(): void;
  terminate?(): void;
  close?(): void;
}

const fieldOf = (event: unknown, name: string): unknown =>
  typeof event === 'object' && event !== null ? (event as Readonly<Record<string, unknown>>)[name] : undefined;

export const portOf = (end: MessageEnd): Port => ({
  post: (message) => end.postMessage(message, []),
  hear: (heard, gone) => {
    end.addEventListener('message', (event) => heard(fieldOf(event, 'data')));
    end.addEventListener('messageerror', () => gone('a message could not be read'));
    end.addEventListener('error', (event) => gone(String(fieldOf(event, 'message') ?? 'it could not be started')));
    end.start?.();
  },
  close: () => (end.terminate ? end.terminate() : end.close?.()),
});

interface Call {
  readonly call: string;
  readonly id: number;
  readonly args: readonly unknown[];
}

/** An error as data: classes do not cross. */
interface Trouble {
  readonly name: string;
  readonly message: string;
}
type Answer = { readonly id: number } & ({ readonly value: unknown } | { readonly trouble: Trouble });

const isCall = (message: unknown): message is Call =>
  typeof fieldOf(message, 'call') === 'string' &&
  typeof fieldOf(message, 'id') === 'number' &&
  Array.isArray(fieldOf(message, 'args'));

const isAnswer = (message: unknown): message is Answer =>
  typeof fieldOf(message, 'id') === 'number' && fieldOf(message, 'call') === undefined;

const troubleOf = (error: unknown): Trouble =>
  error instanceof Error ? { name: error.name, message: error.message } : { name: 'Error', message: String(error) };

type Answering<T> = { readonly [K in keyof T]: (...args: never[]) => Promise<unknown> };

/** Answers calls with the functions of an object. */
export const serve = <T extends Answering<T>>(port: Port, target: T): void => {
  const functions = target as unknown as Readonly<Record<string, (...args: unknown[]) => Promise<unknown>>>;
  port.hear(
    (message) => {
      if (!isCall(message)) return;
      const { id, call, args } = message;
      const answer = (answered: Answer): void => {
        try {
          port.post(answered);
        } catch (error) {
          // What no message can hold is a fault of ours; the caller must not wait for ever.
          port.post({ id, trouble: troubleOf(error) } satisfies Answer);
        }
      };
      const work = async (): Promise<Answer> => {
        const work = Object.hasOwn(functions, call) ? functions[call] : undefined;
        if (!work) throw new TypeError(`there is no ${call} to call`);
        return { id, value: await work(...args) };
      };
      work().then(answer, (error: unknown) => answer({ id, trouble: troubleOf(error) }));
    },
    () => undefined,
  );
};

/** The other end failed at a call. */
export class CallFailed extends Error {
  override readonly name = 'CallFailed';
  constructor(
    /** Name of the error over there. */
    readonly kind: string,
    message: string,
  ) {
    super(message);
  }
}

/** The other end is gone, and with it what it knew. */
export class LineLost extends Error {
  override readonly name = 'LineLost';
}

export interface Line<T> {
  /** Each call rejects with CallFailed or LineLost where there is no answer. */
  readonly calls: T;
  /** Begins anew at the other end; calls that wait for an answer reject with LineLost. */
  readonly restart: () => void;
  readonly close: () => void;
}

interface Waiting {
  readonly resolve: (value: unknown) => void;
  readonly reject: (error: Error) => void;
}

/**
 * Calls to the other end of a port.
 *
 * @param open makes the other end, for instance starts a worker; called at once and for each restart
 * @param lost told when the other end is gone by itself; `restart` begins anew
 */
export const lineTo = <T extends Answering<T>>(open: () => Port, lost: (why: string) => void = () => {}): Line<T> => {
  let next = 0;
  let port: Port | undefined;
  const waiting = new Map<number, Waiting>();

  const rejectAll = (why: string): void => {
    const all = [...waiting.values()];
    waiting.clear();
    for (const { reject } of all) reject(new LineLost(why));
  };
  const connect = (): void => {
    const here = open();
    port = here;
    here.hear(
      (message) => {
        if (here !== port || !isAnswer(message)) return;
        const call = waiting.get(message.id);
        waiting.delete(message.id);
        if ('trouble' in message) call?.reject(new CallFailed(message.trouble.name, message.trouble.message));
        else call?.resolve(message.value);
      },
      (why) => {
        if (here !== port) return;
        port = undefined;
        here.close();
        rejectAll(why);
        lost(why);
      },
    );
  };
  const close = (why: string): void => {
    const here = port;
    port = undefined;
    here?.close();
    rejectAll(why);
  };
  const call = (name: string, args: readonly unknown[]): Promise<unknown> =>
    new Promise((resolve, reject) => {
      const id = next++;
      if (!port) {
        reject(new LineLost('the other end is gone'));
        return;
      }
      waiting.set(id, { resolve, reject });
      try {
        port.post({ call: name, id, args } satisfies Call);
      } catch (error) {
        waiting.delete(id);
        reject(error instanceof Error ? error : new Error(String(error)));
      }
    });

  connect();
  const known = new Map<string, (...args: unknown[]) => Promise<unknown>>();
  const calls = new Proxy(
    {},
    {
      get: (_, name) => {
        // A promise would be looked for in whatever is awaited.
        if (typeof name !== 'string' || name === 'then') return undefined;
        const made = known.get(name) ?? ((...args: unknown[]) => call(name, args));
        known.set(name, made);
        return made;
      },
    },
  ) as T;
  return {
    calls,
    restart: () => {
      close('it was started anew');
      connect();
    },
    close: () => close('it was closed'),
  };
};
