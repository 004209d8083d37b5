/** The leaf with the book's text: its files, the text to write in, what is wrong with it, what the key at the caret means. */
import { useSignal, useSignalEffect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { BookText, KeyHelp, TextProblem } from '../desk/engine.ts';
import { useDesk } from './desk.ts';
import type { Editor } from './editor/index.ts';
import { firstChange } from './first-change.ts';
import { Splitter } from './splitter.tsx';

/** Rest of the caret, in milliseconds, after which it is asked what stands there. */
const REST = 120;

const Problems = ({ problems }: { readonly problems: readonly TextProblem[] }) => {
  const desk = useDesk();
  const stops = problems.filter(({ keepsFromReading }) => keepsFromReading);
  const shown = stops.length > 0 ? stops : problems;
  if (shown.length === 0) return null;
  return (
    <section class="text-problems" aria-labelledby="text-problems" role={stops.length > 0 ? 'alert' : undefined}>
      <h3 id="text-problems">
        {stops.length > 0
          ? `The book cannot be read: ${stops.length === 1 ? 'one thing is' : `${stops.length} things are`} in the way`
          : `${shown.length === 1 ? 'One thing' : `${shown.length} things`} to look at`}
      </h3>
      <ol>
        {shown.slice(0, 20).map((problem) => (
          <li key={`${problem.place.file}:${problem.from}:${problem.says}`}>
            <button type="button" onClick={() => desk.jumpTo({ ...problem.place, from: problem.from, to: problem.to })}>
              <span class="place">
                {problem.place.file}:{problem.place.line}
              </span>{' '}
              {problem.says}
            </button>
          </li>
        ))}
      </ol>
      {shown.length > 20 ? <p class="aside">and {shown.length - 20} more</p> : null}
    </section>
  );
};

const KeyFoot = ({ help }: { readonly help: KeyHelp | undefined }) => (
  <div class="key-foot">
    {help ? (
      <>
        <p>{help.means}</p>
        <p class="path">
          <span class="mono">{help.path}</span>
          {help.unit ? ` in ${help.unit}` : ''}
          {help.example ? `, such as ${help.example}` : ''}
          {help.range === 'spread' ? '; a range is spread: all of it occurs' : ''}
          {help.range === 'doubt' ? '; a range is a doubt: one value, unknown' : ''}
        </p>
      </>
    ) : (
      <p class="path">What the key at the caret means stands here. Escape, then Tab, leaves the text.</p>
    )}
  </div>
);

export const Text = () => {
  const desk = useDesk();
  const host = useRef<HTMLDivElement>(null);
  const editor = useSignal<Editor | undefined>(undefined);
  const help = useSignal<KeyHelp | undefined>(undefined);
  const last = useRef<{ readonly opened: unknown; readonly files: BookText['files'] | undefined } | undefined>(
    undefined,
  );
  const typed = useRef<string | undefined>(undefined);
  const book = desk.book.value;

  useEffect(() => {
    let isGone = false;
    let rest: ReturnType<typeof setTimeout> | undefined;
    let opened: Editor | undefined;
    const asked = async (offset: number): Promise<void> => {
      const text = desk.book.peek();
      if (!text) return;
      const file = desk.file.peek();
      const found = await desk.engine.help(text, file, offset);
      help.value = found;
      desk.caretPath.value = found?.path;
    };
    void import('./editor/index.ts').then(({ openEditor }) => {
      if (isGone || !host.current) return;
      opened = openEditor(host.current, {
        changed: (text) => {
          typed.current = text;
          desk.write(desk.file.peek(), text);
        },
        caretAt: (offset) => {
          clearTimeout(rest);
          rest = setTimeout(() => void asked(offset).catch(desk.failed), REST);
        },
        suggest: async (offset) => {
          const text = desk.book.peek();
          return text ? desk.engine.suggest(text, desk.file.peek(), offset).catch(() => []) : [];
        },
        help: async (offset) => {
          const text = desk.book.peek();
          return text ? desk.engine.help(text, desk.file.peek(), offset).catch(() => undefined) : undefined;
        },
        undo: desk.undo,
        redo: desk.redo,
      });
      editor.value = opened;
    }, desk.failed);
    return () => {
      isGone = true;
      clearTimeout(rest);
      opened?.end();
    };
  }, []);

  useSignalEffect(() => {
    const file = desk.file.value;
    const text = desk.book.value?.files[file];
    if (text !== undefined) editor.value?.show(file, text);
  });
  // What was put into the text elsewhere, or undone, is shown where it stands.
  useSignalEffect(() => {
    const [opened, now] = [desk.opened.value, desk.book.value];
    const before = last.current;
    last.current = { opened, files: now?.files };
    if (!before?.files || before.opened !== opened || !now || !editor.peek()) return;
    const changed = firstChange(before.files, now.files, desk.file.peek());
    if (!changed || now.files[changed.file] === typed.current) return;
    desk.file.value = changed.file;
    editor.peek()?.point({ from: changed.from, to: changed.to, inSight: true });
  });
  useSignalEffect(() => {
    const file = desk.file.value;
    editor.value?.problems(desk.problems.value.filter(({ place }) => place.file === file));
  });
  useSignalEffect(() => {
    const meant = desk.pointed.value;
    editor.value?.point(meant?.file === desk.file.value ? meant : undefined);
  });
  useSignalEffect(() => {
    const goal = desk.goal.value;
    if (!goal || !editor.value || goal.file !== desk.file.value) return;
    editor.value.reveal(goal.from, goal.to);
    desk.goal.value = undefined;
  });

  if (!book) return null;
  const names = Object.keys(book.files);
  return (
    <section class="leaf-text" aria-label="The book's text">
      <Splitter />
      <header>
        <h2>{names.length > 1 ? 'The book' : book.main}</h2>
        {names.length > 1 ? (
          <div class="files" role="group" aria-label="Files of the book">
            {names.map((name) => (
              <button
                type="button"
                key={name}
                aria-pressed={name === desk.file.value}
                onClick={() => (desk.file.value = name)}
              >
                {name}
              </button>
            ))}
          </div>
        ) : null}
      </header>
      {editor.value ? null : <pre class="until-then">{book.files[desk.file.value]}</pre>}
      <div class="editor" ref={host} hidden={!editor.value} />
      <Problems problems={desk.problems.value} />
      <KeyFoot help={help.value} />
    </section>
  );
};
