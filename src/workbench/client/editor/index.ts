/** The text of one file of the book, to be written in. What it knows of the book, it asks; undo belongs to the whole desk. */
import { autocompletion, closeBrackets, closeBracketsKeymap, completionKeymap } from '@codemirror/autocomplete';
import { defaultKeymap, indentWithTab } from '@codemirror/commands';
import { yaml } from '@codemirror/lang-yaml';
import { bracketMatching, indentOnInput, indentUnit } from '@codemirror/language';
import { lintKeymap, setDiagnostics } from '@codemirror/lint';
import { highlightSelectionMatches, search, searchKeymap } from '@codemirror/search';
import { Annotation, EditorState, StateEffect, StateField, Transaction } from '@codemirror/state';
import {
  Decoration,
  drawSelection,
  EditorView,
  highlightActiveLine,
  highlightActiveLineGutter,
  highlightSpecialChars,
  hoverTooltip,
  keymap,
  lineNumbers,
  type DecorationSet,
  type Tooltip,
} from '@codemirror/view';
import type { KeyHelp, Suggestion, TextProblem } from '../../desk/engine.ts';
import { look } from './look.ts';

export interface EditorHooks {
  readonly changed: (text: string) => void;
  readonly caretAt: (offset: number) => void;
  readonly suggest: (offset: number) => Promise<readonly Suggestion[]>;
  readonly help: (offset: number) => Promise<KeyHelp | undefined>;
  readonly undo: () => void;
  readonly redo: () => void;
}

export interface Editor {
  /** Shows another file, or another text of the same one; the caret stays where it can. */
  readonly show: (file: string, text: string) => void;
  readonly problems: (problems: readonly TextProblem[]) => void;
  /** Puts the caret on a stretch and brings it into sight. */
  readonly reveal: (from: number, to: number) => void;
  /** Underlines the stretch that is meant elsewhere, or none, and brings it into sight where that is wished. */
  readonly point: (stretch?: { readonly from: number; readonly to: number; readonly inSight: boolean }) => void;
  readonly focus: () => void;
  readonly end: () => void;
}

/** Marks what comes from the desk, so that it is not told back to it. */
const fromDesk = Annotation.define<boolean>();
const pointAt = StateEffect.define<{ from: number; to: number } | null>();
const pointed = Decoration.mark({ class: 'cm-pointed' });

const pointing = StateField.define<DecorationSet>({
  create: () => Decoration.none,
  update: (marks, transaction) => {
    for (const effect of transaction.effects)
      if (effect.is(pointAt))
        return effect.value && effect.value.to > effect.value.from
          ? Decoration.set([pointed.range(effect.value.from, effect.value.to)])
          : Decoration.none;
    return marks.map(transaction.changes);
  },
  provide: (field) => EditorView.decorations.from(field),
});

const paragraph = (words: string, name = ''): HTMLElement => {
  const element = document.createElement('p');
  element.textContent = words;
  element.className = name;
  return element;
};

const rangeWords = {
  spread: 'A range here is spread: all of it occurs.',
  doubt: 'A range here is a doubt: one value, unknown.',
};

/** What a key means, as lines of text. */
const helpElement = ({ path, means, unit, example, range }: KeyHelp): HTMLElement => {
  const box = document.createElement('div');
  box.className = 'cm-key-help';
  box.append(paragraph(path, 'path'), paragraph(means));
  if (unit) box.append(paragraph(`In ${unit}${example ? `, such as ${example}` : ''}.`));
  else if (example) box.append(paragraph(`Such as ${example}.`));
  if (range) box.append(paragraph(rangeWords[range]));
  return box;
};

/** The smallest change that makes one text of another. */
const difference = (before: string, after: string): { from: number; to: number; insert: string } => {
  let from = 0;
  const least = Math.min(before.length, after.length);
  while (from < least && before[from] === after[from]) from += 1;
  let [to, end] = [before.length, after.length];
  while (to > from && end > from && before[to - 1] === after[end - 1]) {
    to -= 1;
    end -= 1;
  }
  return { from, to, insert: after.slice(from, end) };
};

/**
 * Opens the text in an element. It lives in a shadow tree, where its style sheets need no exception from the page's policy.
 * @param host an element without content
 */
export const openEditor = (host: HTMLElement, hooks: EditorHooks): Editor => {
  const root = host.shadowRoot ?? host.attachShadow({ mode: 'open' });
  let shown = '';

  const completion = autocompletion({
    icons: false,
    activateOnTypingDelay: 60,
    // Nothing is chosen until an arrow key chooses it, so that no key can take what was not meant.
    selectOnOpen: false,
    interactionDelay: 0,
    override: [
      async (context) => {
        // A number alone proposes nothing: Enter after it begins a new line.
        if (!context.explicit && !context.matchBefore(/[a-z][\w.-]*$/i)) return null;
        const found = await hooks.suggest(context.pos);
        const [first] = found;
        if (!first || context.aborted) return null;
        return {
          from: first.from,
          options: found.map(({ text, means }) => ({ label: text, ...(means ? { info: means } : {}) })),
          validFor: /^[\w./-]*$/,
        };
      },
    ],
  });
  const hover = hoverTooltip(async (_, position): Promise<Tooltip | null> => {
    const help = await hooks.help(position);
    return help ? { pos: help.from, end: help.to, above: true, create: () => ({ dom: helpElement(help) }) } : null;
  });
  const always = (run: () => void) => () => {
    run();
    return true;
  };

  const extensions = [
    lineNumbers(),
    // Marks that turn the direction of writing are shown, so that no line reads as another.
    highlightSpecialChars(),
    highlightActiveLine(),
    highlightActiveLineGutter(),
    drawSelection(),
    indentOnInput(),
    indentUnit.of('  '),
    bracketMatching(),
    closeBrackets(),
    highlightSelectionMatches(),
    search({ top: true }),
    EditorView.lineWrapping,
    EditorView.contentAttributes.of({ 'aria-label': 'Text of the book', spellcheck: 'false', tabindex: '0' }),
    yaml(),
    completion,
    hover,
    pointing,
    look,
    keymap.of([
      { key: 'Mod-z', run: always(hooks.undo), preventDefault: true },
      { key: 'Mod-y', run: always(hooks.redo), preventDefault: true },
      { key: 'Mod-Shift-z', run: always(hooks.redo), preventDefault: true },
      ...completionKeymap,
      ...closeBracketsKeymap,
      ...searchKeymap,
      ...lintKeymap,
      ...defaultKeymap,
      // Tab indents only after Escape has not been pressed: Escape, then Tab leaves the text.
      indentWithTab,
    ]),
    EditorView.updateListener.of((update) => {
      const own = update.transactions.some((transaction) => transaction.annotation(fromDesk));
      if (update.docChanged && !own) hooks.changed(update.state.doc.toString());
      if (update.selectionSet || update.docChanged) hooks.caretAt(update.state.selection.main.head);
    }),
  ];
  const view = new EditorView({ parent: root as unknown as Element, root, state: EditorState.create({ extensions }) });

  const inside = (offset: number): number => Math.max(0, Math.min(offset, view.state.doc.length));
  return {
    show: (file, text) => {
      if (file !== shown) {
        shown = file;
        view.setState(EditorState.create({ doc: text, extensions }));
        return;
      }
      const now = view.state.doc.toString();
      if (now === text) return;
      view.dispatch({
        changes: difference(now, text),
        annotations: [fromDesk.of(true), Transaction.addToHistory.of(false)],
      });
    },
    problems: (problems) => {
      const diagnostics = problems.map(({ from, to, says, keepsFromReading }) => ({
        from: inside(from),
        to: Math.max(inside(from), inside(to)),
        severity: keepsFromReading ? ('error' as const) : ('warning' as const),
        message: says,
      }));
      view.dispatch(setDiagnostics(view.state, diagnostics));
    },
    reveal: (from, to) => {
      view.dispatch({
        selection: { anchor: inside(from), head: inside(to) },
        effects: EditorView.scrollIntoView(inside(from), { y: 'center' }),
      });
      view.focus();
    },
    point: (stretch) => {
      const effect = pointAt.of(stretch ? { from: inside(stretch.from), to: inside(stretch.to) } : null);
      const sight = stretch?.inSight ? [EditorView.scrollIntoView(inside(stretch.from), { y: 'center' })] : [];
      view.dispatch({ effects: [effect, ...sight] });
    },
    focus: () => view.focus(),
    end: () => view.destroy(),
  };
};
