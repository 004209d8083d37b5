/** The engine behind the desk's interface. It has no page and no Node, so that it runs in a worker and in a test alike. */
import { houseOn, type House, type Machine } from '../../app/index.ts';
import type { Services } from '../../contract/index.ts';
import type { BookText, Engine, FactPlace, LaidBook, UnreadBook } from '../desk/engine.ts';
import type { Formulas } from './formulas.ts';
import { handleOf } from './handle.ts';
import { laidOf, movedFrom } from './laid.ts';
import { placesIn, problemsIn } from './places.ts';
import type { sheetsOf } from './sheets.ts';
import { trialOf } from './trial.ts';

/** What a verdict does not need is fetched when it is first asked for. */
const parts = {
  bench: () => import('./bench.ts'),
  first: () => import('./first-book.ts'),
  formulas: () => import('./formulas.ts'),
  sheets: () => import('./sheets.ts'),
  writing: () => import('./writing.ts'),
};

export interface EngineServices extends Services {
  /** Lets messages that have arrived be seen before work goes on. */
  readonly turn?: () => Promise<void>;
}

/** A book as it was read and worked out, with what is found out about it later. */
interface Laid {
  readonly machine: Machine;
  readonly placeOf: (path: string) => FactPlace | undefined;
  readonly sheets: () => Promise<ReturnType<typeof sheetsOf>>;
}

const later = (): Promise<void> => new Promise((resolve) => void setTimeout(resolve));

const ownText = ({ files }: BookText, name: string): string | undefined =>
  Object.hasOwn(files, name) ? files[name] : undefined;

export const engineFor = ({ turn = later, ...services }: EngineServices = {}): Engine => {
  const house: House = houseOn(services);
  let formulas: Formulas | undefined;
  const index = async (): Promise<Formulas> => (formulas ??= (await parts.formulas()).formulasIn(house));

  let wanted = -Infinity;
  let laying: { readonly version: number; readonly done: Promise<Laid | undefined> } | undefined;
  let latest: Machine | undefined;

  const read = (book: BookText, afresh: boolean) => {
    const from = performance.now();
    const result = house.read((name) => ownText(book, name), book.main);
    if (!result.ok) return { said: { ok: false, problems: problemsIn(result.problems, book.files) } as UnreadBook };
    const machine = house.open(result.book);
    const moved = afresh || !latest ? [] : movedFrom(latest.findings, machine.findings);
    latest = machine;
    let drawn: ReturnType<Laid['sheets']> | undefined;
    const sheets = (): ReturnType<Laid['sheets']> =>
      (drawn ??= parts.sheets().then((drawing) => drawing.sheetsOf(machine, house)));
    const laid: Laid = { machine, placeOf: placesIn(machine.book.files), sheets };
    const said: LaidBook = laidOf(machine, house, {
      moved,
      warnings: [...result.warnings, ...machine.warnings],
      took: performance.now() - from,
    });
    return { laid, said };
  };

  /** The book of that version once it is laid; nothing when it could not be read or a newer one is wanted. */
  const about = async (version: number): Promise<Laid | undefined> => {
    if (version !== wanted) return undefined;
    const laid = laying?.version === version ? await laying.done : undefined;
    // What is long may begin only after newer texts have been seen.
    await turn();
    return version === wanted ? laid : undefined;
  };
  const asked =
    <A extends readonly unknown[], R>(answer: (laid: Laid, ...args: A) => R | Promise<R>) =>
    async (version: number, ...args: A): Promise<R | undefined> => {
      const laid = await about(version);
      return laid && answer(laid, ...args);
    };

  return {
    lay: async (book, version, afresh = false) => {
      if (!(version > wanted)) return undefined;
      wanted = version;
      const done = turn().then(() => (version === wanted ? read(book, afresh) : undefined));
      laying = {
        version,
        // Whoever laid it hears of a fault; whoever asks about it has nothing to ask.
        done: done.then(
          (result) => result?.laid,
          () => undefined,
        ),
      };
      return (await done)?.said;
    },
    front: asked(async ({ machine }, name: string) => (await parts.sheets()).frontOf(machine, house, name)),
    sheet: asked(async ({ sheets }, name: string, folded?: boolean, early?: boolean) =>
      (await sheets()).view(name, folded, early),
    ),
    unfold: asked(async ({ sheets }, name: string, key: string) => (await sheets()).unfold(name, key)),
    questions: asked(({ machine }) => machine.questions()),
    questionsInFront: asked(async ({ machine }, name?: string) =>
      (await parts.sheets()).questionsMarkup(machine, machine.questions(), name),
    ),
    working: asked(async ({ machine }, key: string) => (await parts.sheets()).workingMarkup(machine, key)),
    remedies: asked(({ machine }, key: string) => machine.remedies(key)),
    trial: asked(({ machine }, edits: Parameters<Engine['trial']>[1]) => trialOf(machine, house, edits)),
    placeOf: asked(({ placeOf }, path: string) => placeOf(path)),
    handle: asked(({ machine, placeOf }, path: string) => handleOf(machine, house, path, placeOf(path))),
    suggest: async (book, file, offset) => (await parts.writing()).suggestionsAt(book, file, offset, house),
    help: async (book, file, offset) => (await parts.writing()).helpAt(book, file, offset, house),
    formulas: async (search) => (await index()).search(search),
    formula: async (name, inputs) => (await index()).page(name, inputs),
    bench: asked(async ({ machine }) => (await parts.bench()).benchCards(machine, house)),
    benchPage: asked(async ({ machine }, name: string, test: string) =>
      (await parts.bench()).benchPage(machine, house, name, test),
    ),
    benchResult: asked(
      async ({ machine }, name: string, test: string, readings: Parameters<Engine['benchResult']>[3]) =>
        (await parts.bench()).benchResult(machine, house, { name, test }, readings),
    ),
    firstChoices: async () => (await parts.first()).firstChoices(house),
    firstBook: async (facts) => (await parts.first()).firstBook(facts, house),
  };
};
