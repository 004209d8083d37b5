import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { holdersHere } from '../folders/holders.ts';

/** Listeners of one page, which goes away and comes back when a test says so. */
const page = () => {
  const listeners = new Map<string, (event: { persisted: boolean }) => void>();
  vi.stubGlobal('addEventListener', (what: string, run: (event: { persisted: boolean }) => void) =>
    listeners.set(what, run),
  );
  const holders = holdersHere();
  return {
    ...holders,
    goes: () => listeners.get('pagehide')?.({ persisted: true }),
    comesBack: () => listeners.get('pageshow')?.({ persisted: true }),
  };
};

/** Locks as a browser has them for all its pages. */
const lockManager = () => {
  const held = new Set<string>();
  return {
    request: async (name: string, work: () => Promise<void>): Promise<void> => {
      held.add(name);
      await work();
      held.delete(name);
    },
    query: () => Promise.resolve({ held: [...held].map((name) => ({ name })), pending: [] }),
  };
};

const storage = () => {
  const items = new Map<string, string>();
  return {
    getItem: (key: string) => items.get(key) ?? null,
    setItem: (key: string, value: string) => void items.set(key, value),
    removeItem: (key: string) => void items.delete(key),
  };
};

beforeEach(() => void vi.useFakeTimers());
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe.each(['locks', 'beats'])('who holds a text, by %s', (by) => {
  beforeEach(() => {
    vi.stubGlobal('navigator', by === 'locks' ? { locks: lockManager() } : {});
    vi.stubGlobal('localStorage', storage());
  });

  it('is there until it lets go, for its own page and for others', async () => {
    const [own, other] = [page(), page()];
    const holder = own.take();
    await holder.ready;
    expect([await own.isGone(holder.id), await other.isGone(holder.id)]).toEqual([false, false]);
    holder.release();
    await vi.advanceTimersByTimeAsync(0);
    expect([await own.isGone(holder.id), await other.isGone(holder.id)]).toEqual([true, true]);
  });

  it('goes with its page at once, and comes back with it', async () => {
    const [own, other] = [page(), page()];
    const holder = own.take();
    await holder.ready;
    own.goes();
    await vi.advanceTimersByTimeAsync(0);
    expect(await other.isGone(holder.id)).toBe(true);
    own.comesBack();
    await vi.advanceTimersByTimeAsync(0);
    expect(await other.isGone(holder.id)).toBe(false);
  });

  it('is there for as long as its page is, also in the background', async () => {
    const [own, other] = [page(), page()];
    const { id, ready } = own.take();
    await ready;
    await vi.advanceTimersByTimeAsync(3_600_000);
    expect(await other.isGone(id)).toBe(false);
  });

  it('never was where nobody knows it', async () => {
    expect(await page().isGone('somebody')).toBe(true);
  });
});

describe('a page without locks that crashed', () => {
  it('is taken for gone when it has been silent for minutes', async () => {
    vi.stubGlobal('navigator', {});
    vi.stubGlobal('localStorage', storage());
    const [own, other] = [page(), page()];
    const { id } = own.take();
    vi.clearAllTimers();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(await other.isGone(id)).toBe(false);
    await vi.advanceTimersByTimeAsync(120_000);
    expect(await other.isGone(id)).toBe(true);
  });
});
