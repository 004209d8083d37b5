/** The bench: what can be measured, the form to do it by, and what the readings would do to the book. */
import { useSignal, useSignalEffect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { Question } from '../../../kernel/index.ts';
import type { BenchCard, BenchPage, BenchResult, Moved } from '../../desk/engine.ts';
import { useDesk } from '../desk.ts';
import { hashOf } from '../routes.ts';
import { MovedList } from '../uses.tsx';

/** How many questions stand in front. */
const FRONT = 3;

/** The questions that settle most, each with the form that answers it. */
const Telling = ({ cards, here }: { readonly cards: readonly BenchCard[]; readonly here: string }) => {
  const desk = useDesk();
  const questions = useSignal<readonly Question[]>([]);
  useSignalEffect(() => {
    const version = desk.version.value;
    if (version === 0) return;
    void desk.engine.questions(version).then((found) => {
      if (found) questions.value = found;
    }, desk.failed);
  });
  const rows = questions.value
    .flatMap(({ path, stands, settles, narrows }) => {
      const card = cards.find((one) => one.path === path);
      return card ? [{ card, stands, settles: settles.length, narrows: narrows.length }] : [];
    })
    .slice(0, FRONT);
  if (rows.length === 0) return null;
  return (
    <section class="telling">
      <h2>What tells most</h2>
      <ol>
        {rows.map(({ card: { name, test, what }, stands, settles, narrows }) => (
          <li key={`${name} ${test}`}>
            <a
              href={hashOf({ page: 'bench', name, test })}
              aria-current={`${name} ${test}` === here ? 'page' : undefined}
            >
              <span class="name">
                {what} of {name}
              </span>
              <br />
              <span class="stands">
                {stands}; {settles > 0 ? `can settle ${findings(settles)}` : `narrows ${findings(narrows)}`}
              </span>
            </a>
          </li>
        ))}
      </ol>
    </section>
  );
};

const findings = (count: number): string => (count === 1 ? 'one finding' : `${count} findings`);

const Index = ({ here }: { readonly here: string }) => {
  const desk = useDesk();
  const cards = useSignal<readonly BenchCard[] | undefined>(undefined);
  useSignalEffect(() => {
    const version = desk.version.value;
    if (version === 0) return;
    void desk.engine.bench(version).then((found) => {
      if (found) cards.value = found;
    }, desk.failed);
  });
  const names = [...new Set(cards.value?.map(({ name }) => name))];
  return (
    <nav class="index" aria-label="Measurements">
      {cards.value === undefined ? (
        <p class="quiet">
          {desk.current.value
            ? 'Being looked up …'
            : 'The book cannot be read as it stands, so that the bench is closed.'}
        </p>
      ) : null}
      {cards.value?.length === 0 ? (
        <p class="quiet">The book holds no doubt that a measurement of ours would narrow.</p>
      ) : null}
      <Telling cards={cards.value ?? []} here={here} />
      {names.map((name) => (
        <section key={name}>
          <h2>{name}</h2>
          <ul>
            {cards.value
              ?.filter((card) => card.name === name)
              .map(({ test, what, stands }) => (
                <li key={test}>
                  <a
                    href={hashOf({ page: 'bench', name, test })}
                    aria-current={`${name} ${test}` === here ? 'page' : undefined}
                  >
                    <span class="name">{what}</span>
                    <br />
                    <span class="stands">{stands}</span>
                  </a>
                </li>
              ))}
          </ul>
        </section>
      ))}
    </nav>
  );
};

const Form = ({ name, test }: { readonly name: string; readonly test: string }) => {
  const desk = useDesk();
  const page = useSignal<BenchPage | undefined>(undefined);
  const times = useSignal(1);
  const readings = useSignal<Readonly<Record<string, readonly string[]>>>({});
  const result = useSignal<BenchResult | undefined>(undefined);
  const taken = useSignal<readonly Moved[] | undefined>(undefined);
  const told = useRef<HTMLElement>(null);
  useSignalEffect(() => {
    const version = desk.version.value;
    if (version === 0) return;
    void desk.engine.benchPage(version, name, test).then((found) => {
      if (!found) return;
      if (!page.peek()) times.value = found.times[0];
      page.value = found;
    }, desk.failed);
  });
  useEffect(() => {
    document.querySelector('.whole')?.scrollTo({ top: 0 });
  }, []);
  if (!page.value)
    return (
      <p class="quiet">
        {desk.current.value
          ? 'Being looked up …'
          : 'The book cannot be read as it stands, so that the bench is closed.'}
      </p>
    );
  const { what, stands, path, instrument, procedure, cautions, asks, times: often } = page.value;
  const columns = Array.from({ length: times.value }, (_, i) => i);
  const put = (reading: string, time: number, value: string): void => {
    const row = columns.map((i) => readings.value[reading]?.[i] ?? '');
    row[time] = value;
    readings.value = { ...readings.value, [reading]: row };
    result.value = undefined;
    taken.value = undefined;
  };
  const take = (): void => {
    const trial = result.value?.trial;
    if (!trial) return;
    desk.take(trial.files, `the measurement of ${name}`);
    result.value = undefined;
    taken.value = trial.moved.filter(({ before, after }) => before?.verdict !== after?.verdict);
    requestAnimationFrame(() => told.current?.focus());
  };
  const work = async (): Promise<void> => {
    const sent = Object.fromEntries(
      asks.map(({ name: reading }) => [reading, columns.map((i) => readings.value[reading]?.[i] ?? '')]),
    );
    result.value = await desk.engine.benchResult(desk.version.value, name, test, sent);
  };
  const wrong = (reading: string, time: number): string | undefined =>
    result.value?.problems.find((one) => one.name === reading && (one.time ?? 0) === time)?.says;
  const general = result.value?.problems.filter((one) => !asks.some((asked) => asked.name === one.name)) ?? [];
  return (
    <article>
      <h1>{what}</h1>
      <p>
        of <b>{name}</b>, which stands at <b>{stands}</b> <code class="mono">{path}</code>{' '}
        <button type="button" class="bare" onClick={() => void desk.jump(path)}>
          Show in the text
        </button>
      </p>
      <p class="lead">With {instrument}.</p>
      {cautions.length > 0 ? (
        <section class="cautions" aria-labelledby="bench-cautions">
          <h2 id="bench-cautions">Caution</h2>
          <ul>
            {cautions.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </section>
      ) : null}
      <h2>How</h2>
      <ol class="steps-list">
        {procedure.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ol>
      <h2>Readings</h2>
      <form
        class="form"
        onSubmit={(event) => {
          event.preventDefault();
          void work().catch(desk.failed);
        }}
      >
        <table>
          <thead>
            <tr>
              <th scope="col">Reading</th>
              {columns.map((i) => (
                <th scope="col" key={i}>
                  {columns.length > 1 ? `${i + 1}.` : 'Value with unit'}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {asks.map(({ name: reading, means, unit, example, instrument: by }) => (
              <tr key={reading}>
                <th scope="row">
                  {means}
                  <br />
                  <span class="aside">{by}</span>
                </th>
                {columns.map((i) => {
                  const id = `reading-${reading}-${i}`;
                  const says = wrong(reading, i);
                  return (
                    <td key={i}>
                      <input
                        id={id}
                        type="text"
                        aria-label={columns.length > 1 ? `${means}, ${i + 1}. time` : means}
                        placeholder={`${example}`}
                        title={unit}
                        value={readings.value[reading]?.[i] ?? ''}
                        aria-invalid={says !== undefined}
                        aria-describedby={says === undefined ? undefined : `${id}-problem`}
                        onInput={({ currentTarget }) => put(reading, i, currentTarget.value)}
                      />
                      {says === undefined ? null : (
                        <p class="problem" id={`${id}-problem`}>
                          {says}
                        </p>
                      )}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
        <div class="choices">
          <button type="submit" class="first" disabled={!desk.current.value}>
            Work it out
          </button>
          <button type="button" disabled={times.value >= often[1]} onClick={() => (times.value += 1)}>
            Measure once more
          </button>
          {often[0] > 1 ? <span class="aside">Advised: {often[0]} times.</span> : null}
        </div>
      </form>
      {result.value ? (
        <section class="outcome" aria-label="Result" role="status">
          {general.map(({ says }) => (
            <p class="problem" key={says}>
              {says}
            </p>
          ))}
          {result.value.says.map((says) => (
            <p key={says}>{says}</p>
          ))}
          {result.value.trial ? (
            <div class="tried">
              {result.value.trial.moved.length > 0 ? (
                <MovedList moved={result.value.trial.moved} most={8} />
              ) : (
                <p>No verdict moves.</p>
              )}
              <div class="choices">
                <button type="button" class="first" onClick={take}>
                  Take it into the book
                </button>
                <button type="button" onClick={() => (result.value = undefined)}>
                  Leave it
                </button>
              </div>
            </div>
          ) : null}
        </section>
      ) : null}
      {taken.value ? (
        <section class="outcome" aria-label="What was taken" tabIndex={-1} ref={told}>
          <p>
            <b>
              Taken into the book: {what} of {name}
              {desk.current.value ? `, which now stands at ${stands}` : ''}.
            </b>{' '}
            <button type="button" class="bare" onClick={() => void desk.jump(path)}>
              Show in the text
            </button>
          </p>
          <div class="tried">
            {taken.value.length > 0 ? (
              <MovedList moved={taken.value} most={8} />
            ) : (
              <p>No verdict has changed by it; what moved within its verdict stands on the sheets.</p>
            )}
          </div>
        </section>
      ) : null}
    </article>
  );
};

export const Bench = ({ name, test }: { readonly name: string | undefined; readonly test: string | undefined }) => (
  <main class="whole" id="sheet">
    <div class="two" data-chosen={name === undefined ? undefined : ''}>
      <Index here={`${name ?? ''} ${test ?? ''}`} />
      {name === undefined || test === undefined ? (
        <div>
          <h1>The bench</h1>
          <p class="lead">
            What the book doubts can be measured. Choose a measurement: its form says how, and its result narrows the
            fact in the text when you take it.
          </p>
        </div>
      ) : (
        <div>
          <a class="all" href={hashOf({ page: 'bench' })}>
            All measurements
          </a>
          <Form key={`${name} ${test}`} name={name} test={test} />
        </div>
      )}
    </div>
  </main>
);
