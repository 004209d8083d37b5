/** Keeps the engine working on the newest text, and the sheet in front in step with it. What was overtaken is left out. */
import { computed, signal, type ReadonlySignal, type Signal } from '@preact/signals';
import type { BookText, Engine, LaidBook, Moved, SheetPart, SheetView, TextProblem } from '../desk/engine.ts';
import { CallFailed, LineLost } from '../desk/rpc.ts';
import type { ShownSheet } from './desk.ts';
import { together } from './moved.ts';

/** Pauses in milliseconds before what takes longer, so that the next key press finds the engine free. */
const BEFORE_SHEET = 30;
const BEFORE_QUESTIONS = 300;
const BEFORE_STUDIES = 1200;
const BEFORE_PAPER = 600;
/** How long what moved is shown. */
const SETTLES = 9000;
/** Steps that follow each other within this time are one edit. */
const PAUSE = 2500;

const pause = (time: number): Promise<void> => new Promise((resolve) => void setTimeout(resolve, time));

export interface Laying {
  readonly laid: ReadonlySignal<LaidBook | undefined>;
  readonly version: ReadonlySignal<number>;
  readonly current: ReadonlySignal<boolean>;
  readonly problems: ReadonlySignal<readonly TextProblem[]>;
  readonly moved: Signal<readonly Moved[]>;
  readonly sheet: ReadonlySignal<ShownSheet | undefined>;
  /** @param afresh true for another book than the one before */
  readonly want: (book: BookText, afresh: boolean) => void;
  /** Which sheet is in front. */
  readonly show: (name: string | undefined) => void;
  /** Version of the text as it stands, once it is laid; nothing when it cannot be read. */
  readonly settled: () => Promise<number | undefined>;
  /** The sheet in front with every working drawn, as paper needs it; comes last. */
  readonly paper: ReadonlySignal<SheetView | undefined>;
  /** What is in a folded working of the sheet in front; nothing where that was overtaken. */
  readonly unfold: (key: string) => Promise<string | undefined>;
  /** Lays the text once more, after the engine was started anew. */
  readonly again: () => void;
}

/** The parts of one drawing in the place of those of another; questions stand behind the cautions. */
const merged = (old: readonly SheetPart[], fresh: readonly SheetPart[]): readonly SheetPart[] => {
  const byId = new Map(fresh.map((part) => [part.id, part]));
  return old.map((part) => byId.get(part.id) ?? part);
};

const withQuestions = (parts: readonly SheetPart[], questions: SheetPart | undefined): readonly SheetPart[] => {
  const others = parts.filter(({ id }) => id !== 'questions');
  if (!questions || questions.markup === '') return others;
  const at = others.findIndex(({ id }) => id.startsWith('zone-') || id === 'title-block');
  return at < 0 ? [...others, questions] : [...others.slice(0, at), questions, ...others.slice(at)];
};

export const layingWith = (engine: Engine, failed: (error: unknown) => void): Laying => {
  const laid = signal<LaidBook | undefined>(undefined);
  const version = signal(0);
  const wantedVersion = signal(0);
  const problems = signal<readonly TextProblem[]>([]);
  const moved = signal<readonly Moved[]>([]);
  const sheet = signal<ShownSheet | undefined>(undefined);
  const paper = signal<SheetView | undefined>(undefined);
  const current = computed(() => version.value === wantedVersion.value && version.value > 0);

  let next: { book: BookText; version: number; afresh: boolean } | undefined;
  let last: BookText | undefined;
  let busy = false;
  let waiting: ((version: number | undefined) => void)[] = [];
  let name: string | undefined;
  let settling: ReturnType<typeof setTimeout> | undefined;

  let movedAt = 0;
  const showMoved = (step: readonly Moved[], afresh: boolean): void => {
    const now = performance.now();
    const goesOn = !afresh && now - movedAt < PAUSE;
    movedAt = now;
    const all = goesOn ? together(moved.peek(), step) : step;
    moved.value = all;
    clearTimeout(settling);
    const settle = (): void => {
      if (document.querySelector('.moved:hover, .moved:focus-within')) settling = setTimeout(settle, SETTLES / 4);
      else moved.value = [];
    };
    if (all.length > 0) settling = setTimeout(settle, SETTLES);
  };

  /** Draws the sheet in front: first what follows from the verdicts, then the rest, then what asks longest. */
  const draw = async (): Promise<void> => {
    const [at, wanted] = [version.peek(), name];
    const isOver = (): boolean => at !== wantedVersion.peek() || wanted !== name;
    if (wanted === undefined || at === 0 || isOver()) return;
    const before = sheet.peek();
    const same = before?.name === wanted ? before : undefined;
    paper.value = undefined;
    const front = await engine.front(at, wanted);
    if (!front || isOver()) return;
    sheet.value = {
      name: wanted,
      parts: same?.complete ? merged(same.parts, front) : front,
      complete: same?.complete === true,
    };
    await pause(same ? BEFORE_SHEET : 0);
    if (isOver()) return;
    const view = await engine.sheet(at, wanted, true, true).catch((error: unknown) => {
      // One sheet that cannot be drawn must not take the verdicts with it.
      if (error instanceof CallFailed && !isOver())
        sheet.value = { name: wanted, parts: front, complete: true, problem: error.message };
      else throw error;
    });
    if (!view || isOver()) return;
    const old = same?.parts.find(({ id }) => id === 'questions');
    sheet.value = { name: wanted, parts: withQuestions(view.parts, old), complete: true };
    await pause(same ? BEFORE_QUESTIONS : 0);
    if (isOver()) return;
    const questions = await engine.questionsInFront(at, wanted);
    if (questions === undefined || isOver()) return;
    const inFront = { id: 'questions', markup: questions };
    sheet.value = { name: wanted, parts: withQuestions(view.parts, inFront), complete: true };
    if (view.awaits > 0) {
      // While somebody goes on typing, a second core is better left to the page.
      await pause(same ? BEFORE_STUDIES : 0);
      if (isOver()) return;
      const whole = await engine.sheet(at, wanted, true);
      if (!whole || isOver()) return;
      sheet.value = { name: wanted, parts: withQuestions(whole.parts, inFront), complete: true };
    }
    await pause(BEFORE_PAPER);
    if (isOver()) return;
    const drawn = await engine.sheet(at, wanted);
    if (!drawn || isOver()) return;
    paper.value = { ...drawn, parts: withQuestions(drawn.parts, inFront) };
  };
  const unfold = async (key: string): Promise<string | undefined> => {
    const [at, wanted] = [version.peek(), name];
    if (wanted === undefined) return undefined;
    const found = await engine.unfold(at, wanted, key);
    if (found !== undefined || at !== version.peek()) return found;
    // The engine that is asked may not have drawn this sheet yet.
    await engine.sheet(at, wanted, true);
    return engine.unfold(at, wanted, key);
  };

  const tell = (result: number | undefined): void => {
    const all = waiting;
    waiting = [];
    for (const one of all) one(result);
  };

  const run = async (): Promise<void> => {
    busy = true;
    try {
      while (next) {
        const { book, version: own, afresh } = next;
        next = undefined;
        const result = await engine.lay(book, own, afresh);
        if (!result || own !== wantedVersion.peek()) continue;
        if (!result.ok) {
          problems.value = result.problems;
          tell(undefined);
          continue;
        }
        if (afresh) sheet.value = undefined;
        problems.value = result.warnings;
        laid.value = result;
        version.value = own;
        showMoved(result.moved, afresh);
        tell(own);
        void draw().catch(fails);
      }
    } finally {
      busy = false;
    }
  };
  const fails = (error: unknown): void => {
    // Of a lost line it has been told already, and the text is laid anew.
    if (!(error instanceof LineLost)) failed(error);
  };
  const want = (book: BookText, afresh: boolean): void => {
    last = book;
    if (afresh) {
      laid.value = undefined;
      version.value = 0;
      problems.value = [];
    }
    wantedVersion.value += 1;
    next = { book, version: wantedVersion.peek(), afresh: afresh || next?.afresh === true || version.peek() === 0 };
    if (!busy) void run().catch(fails);
  };

  return {
    laid,
    version,
    current,
    problems,
    moved,
    sheet,
    paper,
    unfold,
    want,
    show: (wanted) => {
      if (wanted === name) return;
      name = wanted;
      void draw().catch(fails);
    },
    settled: () => {
      if (current.peek()) return Promise.resolve(version.peek());
      if (!busy && !next) return Promise.resolve(undefined);
      return new Promise((resolve) => waiting.push(resolve));
    },
    again: () => {
      tell(undefined);
      busy = false;
      if (last) want(last, false);
    },
  };
};
