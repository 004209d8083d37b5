/** Two texts of one file: the desk's and the one that stands on the disk. Nothing is written until somebody chose. */
import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { useDesk } from './desk.ts';
import { lineDifferences } from './lines.ts';

type Choice = 'mine' | 'theirs';

/** Brings the first line that differs into sight, with a few before it. */
const showFirst = (pre: HTMLPreElement | null): void => {
  const first = pre?.querySelector<HTMLElement>('.differs');
  if (pre && first && pre.scrollTop === 0) pre.scrollTop = Math.max(0, first.offsetTop - pre.clientHeight / 3);
};

const Side = ({
  title,
  lines,
}: {
  readonly title: string;
  readonly lines: readonly { text: string; differs: boolean }[];
}) => (
  <section class="side" aria-label={title}>
    <h3>{title}</h3>
    <pre tabIndex={0} ref={showFirst}>
      {lines.map(({ text, differs }, i) => (
        <span key={i} class={differs ? 'line differs' : 'line'}>
          {text}
        </span>
      ))}
    </pre>
  </section>
);

const File = ({
  name,
  mine,
  theirs,
  isMain,
  choice,
  choose,
}: {
  readonly name: string;
  readonly mine: string;
  readonly theirs: string | null;
  /** Without its main file there is no book, so that it cannot be let go. */
  readonly isMain: boolean;
  readonly choice: Choice | undefined;
  readonly choose: (choice: Choice) => void;
}) => {
  const [left, right] = lineDifferences(mine, theirs ?? '');
  return (
    <section aria-label={name}>
      <h2>{name}</h2>
      <div class="sides">
        <Side title="On this desk" lines={left} />
        {theirs === null ? (
          <section class="side">
            <h3>On the disk</h3>
            <p class="quiet">The file is gone.</p>
          </section>
        ) : (
          <Side title="On the disk" lines={right} />
        )}
      </div>
      <fieldset>
        <legend class="hidden">Which text of {name} stays</legend>
        <label>
          <input type="radio" name={`of ${name}`} checked={choice === 'mine'} onChange={() => choose('mine')} /> keep
          the desk's text
        </label>
        {theirs === null && isMain ? null : (
          <label>
            <input type="radio" name={`of ${name}`} checked={choice === 'theirs'} onChange={() => choose('theirs')} />{' '}
            {theirs === null ? 'let it be gone' : "take the disk's text"}
          </label>
        )}
      </fieldset>
    </section>
  );
};

/** For how many frames the sheet is waited for: it may not be worked out yet. */
const FRAMES = 600;

/** The keyboard goes on at the sheet, unless it has gone elsewhere by then. */
const focusSheet = (frames: number): void => {
  requestAnimationFrame(() => {
    if (document.activeElement !== document.body) return;
    const sheet = document.getElementById('sheet');
    if (sheet) sheet.focus();
    else if (frames > 0) focusSheet(frames - 1);
  });
};

export const Conflict = () => {
  const desk = useDesk();
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const choices = useSignal<Readonly<Record<string, Choice>>>({});
  const conflict = desk.conflict.value;
  const book = desk.book.value;
  if (!conflict || !book) return null;
  const names = Object.keys(conflict.theirs);
  const all = names.every((name) => choices.value[name] !== undefined);
  const settle = (): void => {
    desk.settle(choices.value);
    focusSheet(FRAMES);
  };
  return (
    <div class="whole">
      <h1 tabIndex={-1} ref={heading}>
        Changed in two places
      </h1>
      <p class="lead">
        Somebody else changed the book on the disk while it was changed here. Nothing has been written. Choose for each
        file which text stays; what is not chosen can be had back by undoing.
      </p>
      <div class="conflict">
        {names.map((name) => (
          <File
            key={name}
            name={name}
            mine={book.files[name] ?? ''}
            theirs={conflict.theirs[name] ?? null}
            isMain={name === book.main}
            choice={choices.value[name]}
            choose={(choice) => (choices.value = { ...choices.value, [name]: choice })}
          />
        ))}
        <div class="choices">
          <button type="button" class="first" disabled={!all} onClick={settle}>
            Go on with these
          </button>
          <button type="button" onClick={() => desk.lookAway()}>
            Not now
          </button>
        </div>
      </div>
    </div>
  );
};
