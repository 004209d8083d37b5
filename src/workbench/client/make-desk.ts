/** Puts the desk together: engine, laying, keeping, holding and the address. */
import { computed, effect, signal } from '@preact/signals';
import type { Edit } from '../../kernel/index.ts';
import type { BookText, Trial } from '../desk/engine.ts';
import type { Folder, Made } from '../desk/folder.ts';
import { LineLost } from '../desk/rpc.ts';
import type { Desk, Naming, Notice, Stretch } from './desk.ts';
import { startEngine } from './engine-line.ts';
import { demoFolder, looseFolder } from './folders/demos.ts';
import { wholeOf, type Kept, type Way } from './folders/drafts.ts';
import { directoryAgain, directoryOf, saveElsewhere } from './folders/files.ts';
import { randomId } from './folders/holders.ts';
import { mayLeaveWith } from './folders/leaving.ts';
import { atTheServer, makeAtTheServer, serverFolder, type Found } from './folders/server.ts';
import { holdingWith } from './holding.ts';
import { keepingWith } from './keeping.ts';
import { layingWith } from './laying.ts';
import { printAs } from './paper.ts';
import { hashOf, routeOf, type Route } from './routes.ts';

const wordsOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

export const makeDesk = (): Desk => {
  const notices = signal<readonly Notice[]>([]);
  const unsay = (says: string): void => {
    notices.value = notices.peek().filter((notice) => notice.says !== says);
  };
  /** Says something until it is dismissed or one of its choices is taken. */
  const say = (says: string, choices: Notice['choices'] = [{ word: 'Close', run: () => undefined }]): (() => void) => {
    const closing = choices.map(({ word, run }) => ({
      word,
      run: () => {
        unsay(says);
        run();
      },
    }));
    notices.value = [...notices.peek().filter((notice) => notice.says !== says), { says, choices: closing }];
    return () => unsay(says);
  };
  const failed = (error: unknown): void => {
    if (error instanceof LineLost) return;
    say(`Something went wrong: ${wordsOf(error)}`);
  };

  const { engine, restart } = startEngine({
    restarted: (why) => {
      say(`The engine stopped (${why}) and was started anew. The text is as it was.`);
      laying.again();
    },
    givenUp: (why) => {
      say(`The engine stops again and again (${why}). The text is kept; changing it may help.`, [
        {
          word: 'Start it once more',
          run: () => {
            restart();
            laying.again();
          },
        },
      ]);
    },
    silent: () =>
      say('The engine has been at this text for long.', [
        { word: 'Wait on', run: () => undefined },
        {
          word: 'Start it anew',
          run: () => {
            restart();
            laying.again();
          },
        },
      ]),
  });
  const laying = layingWith(engine, failed);

  const naming = signal<Naming | undefined>(undefined);
  let makes: ((name: string, book: BookText) => Promise<Made>) | undefined;
  const saveAs = async (book: BookText, name: string, folder: Folder): Promise<void> => {
    if (folder.make ?? makes) {
      naming.value = { book, name: nameFor(laying.laid.peek()?.title ?? name), make: folder.make ?? makes! };
      return;
    }
    const saved = await saveElsewhere(book);
    if (saved === 'downloaded') keeping.wasDownloaded(book.files);
    else if (saved) {
      keeping.wasMoved(book.files);
      await laidOut(saved, {}, wayOf(saved));
    }
  };
  const keeping = keepingWith({ say, failed, changed: laying.want, saveAs });
  const mayLeave = mayLeaveWith(say, keeping);
  // A browser that keeps nothing asks before it shuts the page.
  addEventListener('beforeunload', (event) => {
    if (keeping.isLoose() && !keeping.isKept()) event.preventDefault();
  });

  const started = signal(false);
  const route = signal<Route>(routeOf(location.hash));
  const lastSheet = signal<string | undefined>(undefined);
  const onTop = signal<'sheet' | 'text'>('sheet');
  const file = signal('book.yaml');
  const caretPath = signal<string | undefined>(undefined);
  const pointed = signal<Desk['pointed']['value']>(undefined);
  const goal = signal<Stretch | undefined>(undefined);

  addEventListener('hashchange', () => {
    route.value = routeOf(location.hash);
  });
  // Back to another book: the page begins anew with that one, and the browser has kept what was not saved.
  let shownSearch = location.search;
  addEventListener('popstate', () => {
    if (location.search !== shownSearch) location.reload();
  });
  const go = (to: Route): void => {
    const hash = hashOf(to);
    if (hash !== location.hash) location.hash = hash;
  };

  // The sheet that the address names, or the first one on which something fails, or the first.
  effect(() => {
    const laid = laying.laid.value;
    const at = route.value;
    if (!laid || at.page !== 'sheet') return;
    const named = laid.sheets.find(({ name }) => name === at.name);
    const kept = laid.sheets.find(({ name }) => name === lastSheet.peek());
    const troubled = laid.sheets.find(({ name }) =>
      laid.findings.some(({ sheet, verdict, accepted }) => sheet === name && verdict === 'fails' && !accepted),
    );
    const shown = (named ?? kept ?? troubled ?? laid.sheets[0])?.name;
    lastSheet.value = shown;
    laying.show(shown);
  });
  effect(() => {
    const laid = laying.laid.value;
    const page = laid?.sheets.find(({ name }) => name === lastSheet.value);
    const isSheet = route.value.page === 'sheet';
    if (laid) printAs(laid, lastSheet.value);
    document.title = laid ? `${laid.title}${isSheet && page ? `: ${page.title}` : ''}` : 'Gantrybook';
  });
  effect(() => {
    if (route.value.page === 'begin') void keeping.look();
  });
  effect(() => {
    const book = keeping.book.value;
    if (book && !(file.peek() in book.files)) file.value = book.main;
  });

  const tried = async (edits: readonly Edit[]): Promise<Trial | undefined> => {
    // What was overtaken is tried on the newer text.
    for (let tries = 0; tries < 5; tries++) {
      const version = await laying.settled();
      if (version === undefined) return undefined;
      const trial = await engine.trial(version, edits);
      if (trial) return trial;
    }
    return undefined;
  };
  const jumpTo: Desk['jumpTo'] = (place) => {
    const stretch: Stretch =
      'from' in place
        ? { file: place.file, from: place.from, to: place.to }
        : { file: place.file, ...stretchOf(keeping.book.peek()?.files[place.file] ?? '', place.line, place.column) };
    if (route.peek().page !== 'sheet') go({ page: 'sheet', name: lastSheet.peek() });
    onTop.value = 'text';
    file.value = stretch.file;
    goal.value = stretch;
  };
  const jump = async (path: string): Promise<void> => {
    const version = await laying.settled();
    const place = version === undefined ? undefined : await engine.placeOf(version, path);
    if (place) jumpTo(place);
  };
  let lastPointed: string | undefined;
  const point: Desk['point'] = (path, inSight = false) => {
    if (path === lastPointed && !inSight) return;
    lastPointed = path;
    if (path === undefined) {
      pointed.value = undefined;
      return;
    }
    void engine.placeOf(laying.version.peek(), path).then((place) => {
      if (path === lastPointed) pointed.value = place?.exact ? { ...place, inSight } : undefined;
    }, failed);
  };

  const { take, takeBack } = keeping;
  const holding = holdingWith({ engine, settled: laying.settled, tried, take, takeBack, jump, failed });
  /** The address says which book lies open, so that it lies open again after a reload. */
  const laidOut = async (
    folder: Folder,
    query: Readonly<Record<string, string>>,
    way: Way,
    kept?: Kept,
  ): Promise<void> => {
    if (!(await mayLeave())) return;
    await keeping.open(folder, way, kept);
    file.value = keeping.book.peek()?.main ?? 'book.yaml';
    lastSheet.value = undefined;
    onTop.value = 'sheet';
    const text = new URLSearchParams(query).toString();
    const search = text === '' ? '' : `?${text}`;
    if (started.peek()) history.pushState(null, '', `${location.pathname}${search}${hashOf({ page: 'sheet' })}`);
    shownSearch = location.search;
    route.value = routeOf(location.hash);
  };
  const openedDemo = (name: string, kept?: Kept): Promise<void> =>
    laidOut(demoFolder(name), { demo: name }, { kind: 'demo', name }, kept);
  /** A book that lies nowhere. Its number in the address finds it again among the drafts. */
  const begun = (name: string, own: string, book: BookText, kept?: Kept): Promise<void> =>
    laidOut(looseFolder(name, `begun ${own}`, book), { begun: own }, { kind: 'loose' }, kept);
  const begunAgain = (kept: Kept): Promise<void> =>
    begun(kept.name, kept.book.startsWith('begun ') ? kept.book.slice('begun '.length) : kept.id, wholeOf(kept), kept);
  /** The place of a kept text; nothing where it cannot be had now. */
  const placeOf = async ({ way, book }: Kept): Promise<(() => Promise<Folder | undefined>) | undefined> => {
    if (way.kind === 'folder') return () => directoryAgain(way.directory, book);
    if (way.kind !== 'server') return undefined;
    const found = await atTheServer(way.name);
    if (found.kind !== 'book' || found.opened.id !== book) return undefined;
    return () => Promise.resolve(serverFolder(way.name, found.opened));
  };
  const openDraft = async (id: string): Promise<void> => {
    const kept = await keeping.keptOf((one) => one.id === id);
    await keeping.look();
    if (!kept) return;
    const { way } = kept;
    if (way.kind === 'demo') return openedDemo(way.name, kept);
    const place = await placeOf(kept).catch(() => undefined);
    const folder = await place?.().catch(() => undefined);
    if (!folder) {
      if (way.kind !== 'loose')
        say(`The place of ${kept.name} cannot be had now. Its text lies here as a book of its own.`);
      return begunAgain(kept);
    }
    return laidOut(folder, way.kind === 'server' && way.name !== undefined ? { book: way.name } : {}, way, kept);
  };

  const start = async (found: Found, query: URLSearchParams): Promise<void> => {
    const [demo, own] = [query.get('demo'), query.get('begun')];
    if (found.kind === 'empty' && found.newBooksIn !== null) makes = makeAtTheServer;
    if (found.kind === 'refused') say(found.says);
    if (demo !== null) await openedDemo(demo);
    else if (own !== null) {
      const kept = await keeping.keptOf(({ book }) => book === `begun ${own}`).catch(() => undefined);
      if (kept) await begun(kept.name, own, wholeOf(kept));
      else say('The book that was begun under this address is not kept by this browser.');
    } else if (found.kind === 'book') {
      const name = query.get('book') ?? undefined;
      const folder = serverFolder(name, found.opened);
      await laidOut(folder, name === undefined ? {} : { book: name }, { kind: 'server', name });
    }
    started.value = true;
  };
  const nameIt = async (name: string): Promise<void> => {
    const wish = naming.peek();
    if (!wish) return;
    const files = keeping.book.peek()?.files ?? wish.book.files;
    const made = await wish.make(name.trim(), { ...wish.book, files });
    if (made.kind === 'refused') naming.value = { ...wish, name, problem: made.says };
    else {
      naming.value = undefined;
      keeping.wasMoved(files);
      await laidOut(serverFolder(made.name), { book: made.name }, { kind: 'server', name: made.name });
    }
  };

  return {
    ...laying,
    ...keeping,
    ...holding,
    hold: (element) => {
      holding.hold(element);
      point(element.dataset['path'], true);
    },
    engine,
    failed,
    route,
    go,
    lastSheet: computed(() => lastSheet.value),
    onTop,
    file,
    skip: (event) => {
      event.preventDefault();
      document.getElementById('sheet')?.focus();
    },
    notices,
    tried,
    take: (files, words) => take(files, words),
    start,
    started,
    open: (folder) => laidOut(folder, {}, wayOf(folder)),
    openDemo: (demo) => openedDemo(demo),
    begin: (book, name) => begun(name, randomId(), book),
    openDraft,
    naming,
    nameIt,
    caretPath,
    pointed,
    point,
    goal,
    jump,
    jumpTo,
  };
};

const wayOf = (folder: Folder): Way => {
  const directory = directoryOf(folder);
  return directory ? { kind: 'folder', directory } : { kind: 'loose' };
};

/** A name for a folder, made of a title. */
const nameFor = (title: string): string =>
  title
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-+|-+$/g, '') || 'my-book';

/** Offsets of a place that is given by line and column, both from 1. */
const stretchOf = (text: string, line: number, column: number): { from: number; to: number } => {
  const start = text.split('\n', line - 1).reduce((offset, one) => offset + one.length + 1, 0);
  const from = start + column - 1;
  return { from, to: from };
};
