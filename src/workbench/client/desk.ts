/** What the parts of the page have in common: the book that lies open, what is known of it, and what can be done. */
import type { ReadonlySignal, Signal } from '@preact/signals';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Edit, Place } from '../../kernel/index.ts';
import type {
  BookText,
  Engine,
  FactPlace,
  LaidBook,
  Moved,
  SheetPart,
  SheetView,
  TextProblem,
  Trial,
} from '../desk/engine.ts';
import type { Folder, Made, OpenedBook } from '../desk/folder.ts';
import type { Found } from './folders/server.ts';
import type { Route } from './routes.ts';

export interface ShownSheet {
  readonly name: string;
  readonly parts: readonly SheetPart[];
  /** False while only its front is there. */
  readonly complete: boolean;
  /** Why the rest of it cannot be drawn. */
  readonly problem?: string;
}

/** Something that the desk has to say, and what can be done about it. */
export interface Notice {
  readonly says: string;
  readonly choices: readonly { readonly word: string; readonly run: () => void }[];
}

/** A text that is not saved and that this browser keeps. It lies open in no page. */
export interface KeptText {
  readonly id: string;
  /** Name of its folder or file, or the title that it was begun with. */
  readonly name: string;
  /** Where its book lies, in words: "a demo", "a folder of this machine", "nowhere but here". */
  readonly where: string;
  /** When it was last written, in milliseconds since 1970. */
  readonly at: number;
}

/** A book that waits for a name under which it is made. */
export interface Naming {
  readonly book: BookText;
  readonly name: string;
  readonly problem?: string;
  readonly make: (name: string, book: BookText) => Promise<Made>;
}

/** A number that was taken hold of. */
export interface Held {
  readonly path: string;
  readonly means: string;
  readonly text: string;
  /** False until the engine has said what it is. */
  readonly ready: boolean;
  readonly problem?: string;
  /** Where on the screen it was taken hold of. */
  readonly at: { readonly left: number; readonly top: number; readonly bottom: number };
}

export type Stretch = Pick<FactPlace, 'file' | 'from' | 'to'>;

export interface Desk {
  readonly engine: Engine;
  /** For whatever an engine's call fails with. */
  readonly failed: (error: unknown) => void;

  readonly route: ReadonlySignal<Route>;
  readonly go: (route: Route) => void;
  readonly lastSheet: ReadonlySignal<string | undefined>;
  readonly skip: (event: Event) => void;
  /** Which leaf lies on top where there is room for one. */
  readonly onTop: Signal<'sheet' | 'text'>;

  readonly opened: ReadonlySignal<OpenedBook | undefined>;
  /** The text as it stands now. */
  readonly book: ReadonlySignal<BookText | undefined>;
  readonly file: Signal<string>;
  /** The last text that could be read, worked out. */
  readonly laid: ReadonlySignal<LaidBook | undefined>;
  /** Which text that was; 0 before there is one. */
  readonly version: ReadonlySignal<number>;
  /** Whether that is the text as it stands now. */
  readonly current: ReadonlySignal<boolean>;
  readonly problems: ReadonlySignal<readonly TextProblem[]>;
  readonly moved: Signal<readonly Moved[]>;
  readonly sheet: ReadonlySignal<ShownSheet | undefined>;
  /** The same with every working drawn, for paper. */
  readonly paper: ReadonlySignal<SheetView | undefined>;
  readonly unfold: (key: string) => Promise<string | undefined>;

  readonly write: (file: string, text: string) => void;
  /** Puts changed files into the book as one thing that can be undone. */
  readonly take: (files: Readonly<Record<string, string>>, words: string) => void;
  /** Tries edits on a copy of the text as it stands; nothing when it cannot be read. */
  readonly tried: (edits: readonly Edit[]) => Promise<Trial | undefined>;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly undoWords: ReadonlySignal<string | undefined>;
  readonly redoWords: ReadonlySignal<string | undefined>;

  /** Opens what the address and the server have. */
  readonly start: (found: Found, query: URLSearchParams) => Promise<void>;
  readonly started: ReadonlySignal<boolean>;
  readonly open: (folder: Folder) => Promise<void>;
  readonly openDemo: (name: string) => Promise<void>;
  /** Lays a book that was written by answers. */
  readonly begin: (book: BookText, name: string) => Promise<void>;
  /** What is not saved yet and kept by this browser, the latest first. */
  readonly drafts: ReadonlySignal<readonly KeptText[]>;
  /** Lays a kept text again: in its book where that can be had, as a book of its own where not. */
  readonly openDraft: (id: string) => Promise<void>;
  /** Throws a kept text away; nothing brings it back. */
  readonly dropDraft: (id: string) => Promise<void>;
  readonly save: () => Promise<void>;
  readonly canSave: ReadonlySignal<boolean>;
  /** Whether something is not saved. */
  readonly dirty: ReadonlySignal<boolean>;
  /** The state of saving in words. */
  readonly saving: ReadonlySignal<string>;
  readonly notices: ReadonlySignal<readonly Notice[]>;
  readonly naming: Signal<Naming | undefined>;
  readonly nameIt: (name: string) => Promise<void>;
  readonly conflict: ReadonlySignal<{ readonly theirs: Readonly<Record<string, string | null>> } | undefined>;
  readonly conflictShown: ReadonlySignal<boolean>;
  readonly settle: (choices: Readonly<Record<string, 'mine' | 'theirs'>>) => void;
  readonly lookAway: () => void;
  readonly showConflict: () => void;

  readonly caretPath: Signal<string | undefined>;
  readonly pointed: ReadonlySignal<(Stretch & { readonly inSight: boolean }) | undefined>;
  /** Marks in the text what is meant on the sheet. */
  readonly point: (path: string | undefined, inSight?: boolean) => void;
  /** Where the caret is to go as soon as the text is there. */
  readonly goal: Signal<Stretch | undefined>;
  readonly jump: (path: string) => Promise<void>;
  readonly jumpTo: (place: Stretch | Place) => void;

  readonly held: ReadonlySignal<Held | undefined>;
  readonly hold: (element: HTMLElement) => void;
  readonly turn: (steps: number) => void;
  /** Writes into the small field. */
  readonly hand: (text: string) => void;
  readonly letGo: (keep: boolean) => void;
}

export const DeskContext = createContext<Desk | undefined>(undefined);

export const useDesk = (): Desk => {
  const desk = useContext(DeskContext);
  if (!desk) throw new TypeError('this part lies on no desk');
  return desk;
};
