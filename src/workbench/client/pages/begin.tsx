/** The first visit: a demo, a book from the disk, or five questions that write a book. */
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { FirstChoice, FirstFacts } from '../../desk/engine.ts';
import { useDesk } from '../desk.ts';
import { demos, type Demo } from '../folders/demos.ts';
import { canOpenFolders, chooseFolder, filesFolder } from '../folders/files.ts';

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

export const Begin = () => {
  const desk = useDesk();
  const shown = useSignal<readonly Demo[]>([]);
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
      {shown.value.length > 0 ? (
        <section aria-labelledby="demos">
          <h2 id="demos">Look at a demo</h2>
          <ul class="demos">
            {shown.value.map(({ name, title, revision, about }) => (
              <li key={name}>
                <b>{title}</b> <span class="aside">revision {revision}</span>
                <p>{about || 'The smallest book that gets an answer.'}</p>
                <button type="button" onClick={() => void desk.openDemo(name).catch(desk.failed)}>
                  Open {title} {revision}
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
