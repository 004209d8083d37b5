/** The desk: its edge with what can be done, what it has to say, and the page that lies on it. */
import { useEffect, useRef } from 'preact/hooks';
import { Conflict } from './conflict.tsx';
import { useDesk } from './desk.ts';
import { ChooseLook, Look } from './look.tsx';
import { mostTelling, movedWords } from './moved.ts';
import { About } from './pages/about.tsx';
import { Begin } from './pages/begin.tsx';
import { Bench } from './pages/bench.tsx';
import { Formulas } from './pages/formulas.tsx';
import { Register } from './register.tsx';
import { hashOf, type Route } from './routes.ts';
import { Sheet } from './sheet.tsx';
import { textWidth } from './splitter.tsx';
import { Text } from './text.tsx';
import { MovedList } from './uses.tsx';

const Way = ({ to, here, children }: { readonly to: Route; readonly here: Route; readonly children: string }) => (
  <a href={hashOf(to)} aria-current={to.page === here.page ? 'page' : undefined}>
    {children}
  </a>
);

const Edge = () => {
  const desk = useDesk();
  const route = desk.route.value;
  const laid = desk.laid.value;
  const opened = desk.opened.value;
  return (
    <header class="edge">
      <p class="set">
        {laid?.title ?? opened?.name ?? 'Gantrybook'}{' '}
        {laid ? <span class="aside">revision {laid.revision}</span> : null}
      </p>
      <nav class="ways" aria-label="Pages">
        {opened ? (
          <>
            <Way to={{ page: 'sheet', name: desk.lastSheet.value }} here={route}>
              Sheets
            </Way>
            <Way to={{ page: 'bench' }} here={route}>
              Bench
            </Way>
          </>
        ) : null}
        <Way to={{ page: 'formulas' }} here={route}>
          Formulas
        </Way>
        <Way to={{ page: 'begin' }} here={route}>
          Books
        </Way>
        <Way to={{ page: 'about' }} here={route}>
          About
        </Way>
      </nav>
      <div class="doings">
        {opened ? (
          <>
            <button
              type="button"
              disabled={desk.undoWords.value === undefined}
              onClick={desk.undo}
              title={desk.undoWords.value === undefined ? undefined : `Undo ${desk.undoWords.value}`}
            >
              Undo
            </button>
            <button
              type="button"
              disabled={desk.redoWords.value === undefined}
              onClick={desk.redo}
              title={desk.redoWords.value === undefined ? undefined : `Redo ${desk.redoWords.value}`}
            >
              Redo
            </button>
            <button
              type="button"
              class={desk.dirty.value ? 'first' : ''}
              disabled={!desk.canSave.value}
              onClick={() => void desk.save()}
            >
              {opened.canSave ? 'Save' : 'Save as'}
            </button>
            <span class="saving" role="status">
              {desk.saving.value}
            </span>
            {desk.conflict.value && !desk.conflictShown.value ? (
              <button type="button" onClick={desk.showConflict}>
                Choose
              </button>
            ) : null}
          </>
        ) : null}
        <Look />
        <ChooseLook short />
      </div>
    </header>
  );
};

const Notices = () => {
  const desk = useDesk();
  return (
    <div class="words-from-desk">
      {desk.notices.value.map((notice) => (
        <div class="notice" role="alert" key={notice.says}>
          <p>{notice.says}</p>
          <div class="choices">
            {notice.choices.map(({ word, run }) => (
              <button type="button" key={word} onClick={run}>
                {word}
              </button>
            ))}
          </div>
        </div>
      ))}
      <NameIt />
    </div>
  );
};

/** Asks under which name a new book is made. */
const NameIt = () => {
  const desk = useDesk();
  const wish = desk.naming.value;
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.select(), [wish === undefined]);
  if (!wish) return null;
  return (
    <form
      class="notice"
      aria-label="A new book"
      onSubmit={(event) => {
        event.preventDefault();
        void desk.nameIt(field.current?.value ?? '').catch(desk.failed);
      }}
    >
      <p>
        <label>
          Save it as a new book in a folder named{' '}
          <input ref={field} type="text" name="name" value={wish.name} aria-invalid={wish.problem !== undefined} />
        </label>{' '}
        {wish.problem === undefined ? null : (
          <span class="problem" role="alert">
            {wish.problem}
          </span>
        )}
      </p>
      <div class="choices">
        <button type="submit" class="first">
          Save
        </button>
        <button type="button" onClick={() => (desk.naming.value = undefined)}>
          Not now
        </button>
      </div>
    </form>
  );
};

const MovedStrip = () => {
  const desk = useDesk();
  const moved = desk.moved.value;
  if (moved.length === 0) return null;
  return (
    <section class="moved not-printed" aria-labelledby="moved">
      <h2 id="moved">
        <span>Moved: {moved.length === 1 ? 'one finding' : `${moved.length} findings`}</span>
        <button type="button" class="bare" onClick={() => (desk.moved.value = [])}>
          Fold
        </button>
      </h2>
      <MovedList moved={moved} most={3} />
    </section>
  );
};

const Sheets = () => {
  const desk = useDesk();
  const laid = desk.laid.value;
  const onTop = desk.onTop.value;
  return (
    <div class="leaves" data-on-top={onTop} style={textWidth()}>
      <div class="turn" role="group" aria-label="Which leaf lies on top">
        <button type="button" aria-pressed={onTop === 'sheet'} onClick={() => (desk.onTop.value = 'sheet')}>
          Sheet
        </button>
        <button type="button" aria-pressed={onTop === 'text'} onClick={() => (desk.onTop.value = 'text')}>
          Text
        </button>
      </div>
      <div class="leaf-sheet" data-version={desk.version.value}>
        {laid ? (
          <>
            <Register laid={laid} here={desk.sheet.value?.name} />
            <Sheet />
            <MovedStrip />
          </>
        ) : (
          <div class="lying">
            <p class="quiet">
              {desk.problems.value.length > 0
                ? 'There is no sheet yet: the book cannot be read. What is in the way stands beside the text.'
                : 'Working it out …'}
            </p>
          </div>
        )}
      </div>
      <Text />
    </div>
  );
};

const Page = () => {
  const desk = useDesk();
  const route = desk.route.value;
  if (!desk.started.value && !desk.opened.value) return <p class="waiting">The desk is being laid.</p>;
  if (desk.conflict.value && desk.conflictShown.value) return <Conflict />;
  switch (route.page) {
    case 'formulas':
      return <Formulas name={route.name} />;
    case 'bench':
      return desk.opened.value ? <Bench name={route.name} test={route.test} /> : <Begin />;
    case 'about':
      return <About />;
    case 'begin':
      return <Begin />;
    case 'sheet':
      return desk.opened.value ? <Sheets /> : <Begin />;
  }
};

export const App = () => {
  const desk = useDesk();
  useEffect(() => {
    const pressed = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      const inField = event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement;
      if (key === 's') void desk.save();
      else if (inField) return;
      else if (key === 'z') (event.shiftKey ? desk.redo : desk.undo)();
      else if (key === 'y') desk.redo();
      else return;
      event.preventDefault();
    };
    addEventListener('keydown', pressed);
    return () => removeEventListener('keydown', pressed);
  }, []);
  const moved = desk.moved.value;
  return (
    <div class="table-top">
      <a class="skip" href="#sheet" onClick={desk.skip}>
        Skip to the sheet
      </a>
      <Edge />
      <Notices />
      <Page />
      <p class="hidden" role="status" aria-live="polite">
        {mostTelling(moved).slice(0, 2).map(movedWords).join(' ')}
        {moved.length > 2 ? ` And ${moved.length - 2} more moved.` : ''}
      </p>
    </div>
  );
};
