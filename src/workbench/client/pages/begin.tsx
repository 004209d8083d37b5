/** The first visit: a demo, a book from the disk, or five questions that write a book. */
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { FirstChoice, FirstFacts } from '../../desk/engine.ts';
import { useDesk } from '../desk.ts';
import { demos, type Demo } from '../folders/demos.ts';
import { canOpenFolders, chooseFolder, filesFolder } from '../folders/files.ts';
import { hashOf } from '../routes.ts';

type Answers = Partial<Record<keyof FirstFacts, string>>;

const Asked = ({
  choice,
  answer,
  problem,
  give,
}: {
  readonly choice: FirstChoice;
  readonly answer: string;
  readonly problem: string | undefined;
  readonly give: (answer: string) => void;
}) => {
  const { name, asks, because, words, example } = choice;
  const id = `first-${name}`;
  const described = `${id}-because${problem === undefined ? '' : ` ${id}-problem`}`;
  return (
    <div class="asked">
      <label for={id}>{asks}</label>
      <p class="because" id={`${id}-because`}>
        {because}
      </p>
      <div class="given">
        {words.length > 0 ? (
          <select
            id={id}
            value={answer}
            aria-describedby={described}
            onChange={({ currentTarget }) => give(currentTarget.value)}
          >
            <option value="">not known yet</option>
            {words.map(({ word, means }) => (
              <option value={word} key={word}>
                {means === '' || means === word ? word : `${word}: ${means}`}
              </option>
            ))}
          </select>
        ) : (
          <input
            id={id}
            type="text"
            value={answer}
            placeholder={example}
            aria-describedby={described}
            aria-invalid={problem !== undefined}
            onInput={({ currentTarget }) => give(currentTarget.value)}
          />
        )}
        {problem === undefined ? null : (
          <p class="problem" id={`${id}-problem`}>
            {problem}
          </p>
        )}
      </div>
    </div>
  );
};

const Questions = () => {
  const desk = useDesk();
  const choices = useSignal<readonly FirstChoice[]>([]);
  const answers = useSignal<Answers>({});
  const problems = useSignal<Answers>({});
  useEffect(() => {
    void desk.engine.firstChoices().then((found) => (choices.value = found), desk.failed);
  }, []);
  const write = async (): Promise<void> => {
    const given = Object.fromEntries(Object.entries(answers.value).filter(([, answer]) => answer.trim() !== ''));
    const made = await desk.engine.firstBook(given);
    if ('problems' in made) problems.value = made.problems;
    else await desk.begin(made, answers.value.title?.trim() || 'A new book');
  };
  return (
    <form
      class="answers"
      onSubmit={(event) => {
        event.preventDefault();
        void write().catch(desk.failed);
      }}
    >
      {choices.value.map((choice) => (
        <Asked
          key={choice.name}
          choice={choice}
          answer={answers.value[choice.name] ?? ''}
          problem={problems.value[choice.name]}
          give={(answer) => {
            answers.value = { ...answers.value, [choice.name]: answer };
            problems.value = { ...problems.value, [choice.name]: undefined };
          }}
        />
      ))}
      <p class="foot">
        <button type="submit" class="first" disabled={choices.value.length === 0}>
          Write the book
        </button>
        <span class="aside">What you leave out stays out; the sheets say "not stated" until you know it.</span>
      </p>
    </form>
  );
};

const when = (at: number): string =>
  new Date(at).toLocaleString('en', { dateStyle: 'medium', timeStyle: 'short', hour12: false });

/** Texts that were written here and saved nowhere. */
const Kept = () => {
  const desk = useDesk();
  const asked = useSignal<string | undefined>(undefined);
  const drafts = desk.drafts.value;
  if (drafts.length === 0) return null;
  return (
    <section aria-labelledby="kept">
      <h2 id="kept">Not saved yet</h2>
      <p class="aside">This browser keeps what was written until it is saved.</p>
      <ul class="kept">
        {drafts.map(({ id, name, where, at }) => (
          <li key={id}>
            <span class="says">
              <b>{name}</b>{' '}
              <span class="aside">
                {where}
                {at > 0 ? `, written ${when(at)}` : ''}
              </span>
            </span>
            <button type="button" onClick={() => void desk.openDraft(id).catch(desk.failed)}>
              Go on with {name}
            </button>
            {asked.value === id ? (
              <>
                <button type="button" onClick={() => void desk.dropDraft(id).catch(desk.failed)}>
                  Throw it away for good
                </button>
                <button type="button" onClick={() => (asked.value = undefined)}>
                  Keep it
                </button>
              </>
            ) : (
              <button type="button" class="bare" onClick={() => (asked.value = id)}>
                Throw away …
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
};

/** Books of one title are told apart by their revision, which then stands first. */
const titled = ({ title, revision }: Demo, all: readonly Demo[]): string =>
  all.filter((one) => one.title === title).length > 1 ? `Revision ${revision} of ${title}` : `${title} ${revision}`;

/** What a folder's name adds to its title, in words: how this one differs from another of that title. */
const differs = ({ name, title }: Demo): string => {
  const plain = title.toLowerCase().replaceAll(' ', '-');
  return name.startsWith(`${plain}-`) ? name.slice(plain.length + 1).replaceAll('-', ' ') : '';
};

export const Begin = () => {
  const desk = useDesk();
  const shown = useSignal<readonly Demo[]>([]);
  useEffect(() => {
    if (desk.opened.peek() || desk.route.peek().page === 'begin') return;
    // Where nothing lies open the address says so; the desk then looks for what it keeps.
    history.replaceState(history.state, '', hashOf({ page: 'begin' }));
    dispatchEvent(new HashChangeEvent('hashchange'));
  }, []);
  useEffect(() => {
    void demos().then(
      (found) => (shown.value = found),
      () => (shown.value = []),
    );
  }, []);
  return (
    <main class="whole" id="sheet">
      <h1>{desk.opened.value ? 'Books' : 'What lies on the desk?'}</h1>
      <p class="lead">
        A book is one text with the facts of a gantry machine: axes, motors, supplies. The sheets say what holds, what
        is tight, what fails, and what to measure next.
      </p>
      <Kept />
      {shown.value.length > 0 ? (
        <section aria-labelledby="demos">
          <h2 id="demos">Look at a demo</h2>
          <ul class="demos">
            {shown.value.map((demo) => (
              <li key={demo.name}>
                <b>{titled(demo, shown.value)}</b>
                {differs(demo) === '' ? null : `: ${differs(demo)}`}
                <p>{demo.about || 'The smallest book that gets an answer.'}</p>
                <button type="button" onClick={() => void desk.openDemo(demo.name).catch(desk.failed)}>
                  Open {demo.title} {demo.revision}
                </button>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      <section aria-labelledby="five">
        <h2 id="five">Begin a book with five answers</h2>
        <Questions />
      </section>
      <section aria-labelledby="own">
        <h2 id="own">Open a book from this machine</h2>
        {canOpenFolders() ? (
          <p>
            <button
              type="button"
              onClick={() =>
                void chooseFolder()
                  .then((folder) => folder && desk.open(folder))
                  .catch(desk.failed)
              }
            >
              Choose its folder
            </button>{' '}
            <span class="aside">It is saved where it lies.</span>
          </p>
        ) : (
          <p>
            <label>
              Choose its files{' '}
              <input
                type="file"
                multiple
                accept=".yaml,.yml"
                onChange={({ currentTarget }) =>
                  currentTarget.files &&
                  void filesFolder(currentTarget.files)
                    .then((folder) => desk.open(folder))
                    .catch(desk.failed)
                }
              />
            </label>{' '}
            <span class="aside">This browser cannot write into a folder: saving gives you a download.</span>
          </p>
        )}
      </section>
    </main>
  );
};
