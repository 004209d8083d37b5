/** The index of formulas: each with its form, its working, its source and what it was checked against. */
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { FormulaCard, FormulaPage } from '../../desk/engine.ts';
import { useDesk } from '../desk.ts';
import { letScroll } from '../enliven.ts';
import { inner } from '../markup.ts';
import { hashOf } from '../routes.ts';

type Given = Readonly<Record<string, string>>;

const bySheet = (cards: readonly FormulaCard[]): readonly (readonly [string, readonly FormulaCard[]])[] => {
  const sheets = new Map<string, FormulaCard[]>();
  for (const card of cards) sheets.set(card.sheet, [...(sheets.get(card.sheet) ?? []), card]);
  return [...sheets];
};

const Index = ({ here }: { readonly here: string | undefined }) => {
  const desk = useDesk();
  const wanted = useSignal('');
  const cards = useSignal<readonly FormulaCard[] | undefined>(undefined);
  useEffect(() => {
    let isLater = false;
    void desk.engine.formulas(wanted.value).then((found) => {
      if (!isLater) cards.value = found;
    }, desk.failed);
    return () => {
      isLater = true;
    };
  }, [wanted.value]);
  const titles = new Map(desk.laid.value?.sheets.map(({ name, title }) => [name, title]));
  return (
    <nav class="index" aria-label="Formulas">
      <label>
        <span class="hidden">Search the formulas</span>
        <input
          type="search"
          placeholder="search: belt, period, ε …"
          value={wanted.value}
          onInput={({ currentTarget }) => (wanted.value = currentTarget.value)}
        />
      </label>
      {cards.value?.length === 0 ? <p class="quiet">No formula is named or described so.</p> : null}
      {bySheet(cards.value ?? []).map(([sheet, some]) => (
        <section key={sheet}>
          <h2>{titles.get(sheet) ?? sheet}</h2>
          <ul>
            {some.map(({ name, title }) => (
              <li key={name}>
                <a href={hashOf({ page: 'formulas', name })} aria-current={name === here ? 'page' : undefined}>
                  <span class="name mono">{name}</span> <span>{title}</span>
                </a>
              </li>
            ))}
          </ul>
        </section>
      ))}
    </nav>
  );
};

const Form = ({ name }: { readonly name: string }) => {
  const desk = useDesk();
  const given = useSignal<Given>({});
  const page = useSignal<FormulaPage | undefined>(undefined);
  const missing = useSignal(false);
  useEffect(() => {
    document.querySelector('.whole')?.scrollTo({ top: 0 });
  }, []);
  useEffect(() => {
    let isLater = false;
    void desk.engine.formula(name, given.value).then((found) => {
      if (isLater) return;
      page.value = found;
      missing.value = found === undefined;
    }, desk.failed);
    return () => {
      isLater = true;
    };
  }, [given.value]);
  if (missing.value)
    return (
      <p class="quiet">
        There is no formula named <code>{name}</code>.
      </p>
    );
  if (!page.value) return <p class="quiet">Being fetched …</p>;
  const { title, takes, problem, markup } = page.value;
  const examples = Object.fromEntries(takes.map((one) => [one.name, one.example]));
  return (
    <article>
      <h1>{title}</h1>
      <p class="tags mono">{name}</p>
      <form class="form" onSubmit={(event) => event.preventDefault()}>
        <table>
          <thead>
            <tr>
              <th scope="col">Symbol</th>
              <th scope="col">Means</th>
              <th scope="col">Value with unit</th>
              <th scope="col">May be</th>
            </tr>
          </thead>
          <tbody>
            {takes.map(({ name: input, symbol, means, example, range, otherwise, problem: wrong }) => {
              const id = `of-${input}`;
              const value = given.value[input] ?? '';
              return (
                <tr key={input}>
                  <td>{symbol}</td>
                  <th scope="row">
                    <label for={id}>{means}</label>
                  </th>
                  <td>
                    <input
                      id={id}
                      type="text"
                      value={value}
                      placeholder={otherwise ?? example}
                      aria-invalid={value !== '' && wrong !== undefined}
                      aria-describedby={value !== '' && wrong !== undefined ? `${id}-problem` : undefined}
                      onInput={({ currentTarget }) => (given.value = { ...given.value, [input]: currentTarget.value })}
                    />
                    {value !== '' && wrong !== undefined ? (
                      <p class="problem" id={`${id}-problem`}>
                        {wrong}
                      </p>
                    ) : null}
                  </td>
                  <td class="aside">
                    {range}
                    {otherwise === undefined ? '' : `; ${otherwise} when nothing is given`}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
        <div class="choices">
          <button type="button" onClick={() => (given.value = examples)}>
            Fill in an example
          </button>
          <button type="button" onClick={() => (given.value = {})}>
            Empty the form
          </button>
        </div>
      </form>
      {problem === undefined ? null : (
        <p class="problem" role="alert">
          {problem}
        </p>
      )}
      {markup === undefined ? (
        <p class="quiet">The working stands here as soon as the values are given.</p>
      ) : (
        <div
          class="outcome"
          ref={(element) => void (element && letScroll(element))}
          dangerouslySetInnerHTML={inner(markup)}
        />
      )}
    </article>
  );
};

export const Formulas = ({ name }: { readonly name: string | undefined }) => (
  <main class="whole" id="sheet">
    <div class="two" data-chosen={name === undefined ? undefined : ''}>
      <Index here={name} />
      {name === undefined ? (
        <div>
          <h1>Formulas</h1>
          <p class="lead">
            Every number on a sheet comes from one of these. Choose one to put in your own values and to see its
            working, where it comes from and what it was checked against.
          </p>
        </div>
      ) : (
        <div>
          <a class="all" href={hashOf({ page: 'formulas' })}>
            All formulas
          </a>
          <Form key={name} name={name} />
        </div>
      )}
    </div>
  </main>
);
