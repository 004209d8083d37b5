/** Who is at work on an unsaved text: an opening of a book in a page that is there, or in one that is gone. */
const NAME = 'gantrybook text ';
/** How often a page without locks shows that it is there, in ms. One in the background is let run once a minute. */
const BEAT = 20_000;
const SILENT = 150_000;

export interface Holder {
  readonly id: string;
  /** From then on others see that it is there. */
  readonly ready: Promise<void>;
  readonly release: () => void;
}

export interface Holders {
  readonly take: () => Holder;
  readonly isGone: (id: string) => Promise<boolean>;
}

export const randomId = (): string =>
  [...crypto.getRandomValues(new Uint8Array(12))].map((byte) => byte.toString(16).padStart(2, '0')).join('');

/** Shows that a holder is there, until what it gives is called. */
type Show = (id: string) => { readonly ready: Promise<void>; readonly end: () => void };

const byLocks =
  (locks: LockManager): Show =>
  (id) => {
    let end = (): void => undefined;
    const ended = new Promise<void>((resolve) => {
      end = resolve;
    });
    const ready = new Promise<void>((resolve) => {
      const granted = async (): Promise<void> => {
        resolve();
        await ended;
      };
      locks.request(NAME + id, granted).catch(() => resolve());
    });
    return { ready, end };
  };

const byBeats: Show = (id) => {
  const beat = (): void => {
    try {
      localStorage.setItem(NAME + id, String(Date.now()));
    } catch {
      // A browser that keeps nothing has no drafts either.
    }
  };
  beat();
  const timer = setInterval(beat, BEAT);
  return {
    ready: Promise.resolve(),
    end: () => {
      clearInterval(timer);
      try {
        localStorage.removeItem(NAME + id);
      } catch {
        // As above.
      }
    },
  };
};

const isSilent = (id: string): boolean => {
  try {
    return !(Date.now() - Number(localStorage.getItem(NAME + id) ?? 0) < SILENT);
  } catch {
    return true;
  }
};

export const holdersHere = (): Holders => {
  const locks = (navigator as Partial<Navigator>).locks;
  const show = locks ? byLocks(locks) : byBeats;
  const shown = new Map<string, ReturnType<Show>>();
  // A page that is gone, also to where "back" finds it, leaves its texts to the next.
  addEventListener('pagehide', () => {
    for (const { end } of shown.values()) end();
  });
  addEventListener('pageshow', ({ persisted }) => {
    if (persisted) for (const id of shown.keys()) shown.set(id, show(id));
  });
  return {
    take: () => {
      const id = randomId();
      const showing = show(id);
      shown.set(id, showing);
      return {
        id,
        ready: showing.ready,
        release: () => {
          shown.get(id)?.end();
          shown.delete(id);
        },
      };
    },
    isGone: async (id) => {
      if (shown.has(id)) return false;
      if (!locks) return isSilent(id);
      const { held = [], pending = [] } = await locks.query();
      return ![...held, ...pending].some(({ name }) => name === NAME + id);
    },
  };
};
