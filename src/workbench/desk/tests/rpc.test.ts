import { afterEach, describe, expect, it } from 'vitest';
import { CallFailed, lineTo, LineLost, portOf, serve, type Line, type MessageEnd, type Port } from '../rpc.ts';

interface Sums {
  readonly add: (a: number, b: number) => Promise<number>;
  readonly fail: () => Promise<never>;
  readonly odd: () => Promise<unknown>;
  readonly never: () => Promise<void>;
  readonly echo: (x: unknown) => Promise<unknown>;
}

const sums: Sums = {
  add: async (a, b) => a + b,
  fail: async () => {
    throw new RangeError('there is no such number');
  },
  // No message can hold a function.
  odd: async () => () => 1,
  never: () => new Promise(() => {}),
  echo: async (x) => x,
};

const open: Line<Sums>[] = [];
afterEach(() => open.splice(0).forEach((line) => line.close()));

/** A line to an end in this very process. `ends` are the far ends, one for each start. */
const begin = (target: Sums = sums, lost?: (why: string) => void) => {
  const far: MessageEnd[] = [];
  const line = lineTo<Sums>(() => {
    const { port1, port2 } = new MessageChannel();
    serve(portOf(port2), target);
    far.push(port2);
    return portOf(port1);
  }, lost);
  open.push(line);
  return { line, far };
};

describe('a line of calls', () => {
  it('brings arguments there and answers back, in any order', async () => {
    const { line } = begin({ ...sums, add: async (a, b) => (a === 1 ? sums.echo(a + b).then(Number) : a + b) });
    expect(await Promise.all([line.calls.add(1, 2), line.calls.add(30, 4)])).toEqual([3, 34]);
    expect(await line.calls.echo({ list: [1, undefined, null, 'ä'] })).toEqual({ list: [1, undefined, null, 'ä'] });
  });

  it('brings an error across by its name and message', async () => {
    const { line } = begin();
    const error = await line.calls.fail().catch((e: unknown) => e);
    expect(error).toBeInstanceOf(CallFailed);
    expect(error).toMatchObject({ kind: 'RangeError', message: 'there is no such number' });
  });

  it('rejects what no message can hold, on either side', async () => {
    const { line } = begin();
    await expect(line.calls.odd()).rejects.toBeInstanceOf(CallFailed);
    await expect(line.calls.echo(() => 1)).rejects.toThrow(/clone/i);
    expect(await line.calls.add(2, 2)).toBe(4);
  });

  it('calls nothing that the other end did not offer', async () => {
    const { line } = begin();
    const any = line.calls as unknown as Record<string, () => Promise<unknown>>;
    await expect(any['toString']!()).rejects.toMatchObject({ kind: 'TypeError' });
    await expect(any['constructor']!()).rejects.toMatchObject({ kind: 'TypeError' });
  });

  it('can be awaited itself without being called', async () => {
    const { line } = begin();
    expect(await Promise.resolve(line.calls)).toBe(line.calls);
  });

  it('ignores messages that are no calls and no answers', async () => {
    const { line, far } = begin();
    for (const odd of [null, 7, 'call', { call: 1 }, { id: 999, value: 1 }, { id: 'x' }]) far[0]!.postMessage(odd, []);
    expect(await line.calls.add(1, 1)).toBe(2);
  });
});

describe('a lost line', () => {
  /** A port that dies when told. */
  const dying = () => {
    const deaths: ((why: string) => void)[] = [];
    const closed: number[] = [];
    let starts = 0;
    const make = (): Port => {
      const index = starts++;
      return {
        post: () => {},
        hear: (_, gone) => void deaths.push(gone),
        close: () => void closed.push(index),
      };
    };
    return { make, deaths, closed };
  };

  it('rejects what waits, tells once, and refuses more until it is started anew', async () => {
    const { make, deaths, closed } = dying();
    const told: string[] = [];
    const line = lineTo<Sums>(make, (why) => told.push(why));
    const waits = line.calls.never();
    deaths[0]!('out of memory');
    deaths[0]!('out of memory');
    await expect(waits).rejects.toBeInstanceOf(LineLost);
    await expect(line.calls.add(1, 1)).rejects.toBeInstanceOf(LineLost);
    expect(told).toEqual(['out of memory']);
    expect(closed).toEqual([0]);
    line.restart();
    const again = line.calls.never();
    // A late word from the old end means nothing to the new one.
    deaths[0]!('out of memory');
    expect(told).toHaveLength(1);
    line.close();
    await expect(again).rejects.toBeInstanceOf(LineLost);
  });

  it('works again after a restart, and answers of the old end are not mistaken for new ones', async () => {
    const { line } = begin();
    const waits = line.calls.never();
    line.restart();
    await expect(waits).rejects.toThrow('it was started anew');
    expect(await line.calls.add(20, 3)).toBe(23);
  });

  it('hears of a worker that cannot start', async () => {
    const listeners = new Map<string, (event: unknown) => void>();
    const line = lineTo<Sums>(() =>
      portOf({
        postMessage: () => {},
        addEventListener: (type, listener) => void listeners.set(type, listener),
        terminate: () => {},
      }),
    );
    const waits = line.calls.add(1, 1);
    listeners.get('error')!({ message: 'not found' });
    await expect(waits).rejects.toThrow('not found');
  });
});
