/** The life of a book: text read, made complete, questions asked over all ranges, findings formed; and again after an edit. */
import {
  Quantity,
  type Asker,
  type Check,
  type Discipline,
  type MadeFile,
  type Model,
  type ModelToken,
  type Pool,
  type Provider,
  type Services,
  type SheetContext,
  type SheetDocument,
  type Study,
  type Subject,
  type Task,
} from '../contract/index.ts';
import {
  isNoNumber,
  NotStated,
  seeded,
  show,
  slopes,
  type Edit,
  type Finding,
  type NoNumber,
  type Question as OpenQuestion,
  type Remedy,
  type Value,
} from '../kernel/index.ts';
import { acceptanceOf, acceptedIn } from './acceptance.ts';
import { Evaluator, Memory } from './evaluate.ts';
import { listFacts, type ListedFact } from './listing.ts';
import { rank } from './ranking.ts';
import { editBook } from './read/edit.ts';
import { readBook, type Book, type ReadResult } from './read/book.ts';
import { assembleSchema, type BookSchema } from './read/schema.ts';
import { remediesFor } from './remedies.ts';
import { extremes } from './scenarios.ts';
import { edited, expand, markAt, quantityAt, rangesAmong, type CatalogueRow, type Snapshot } from './snapshot.ts';
import { factsHash, stampOf, type Stamp } from './stamp.ts';
import { authorsUnits, shown, type UnitChoice } from './units.ts';
import { findingFor, keyOf, type Question, type Tools, type Worked } from './verdict.ts';

export interface HouseParts {
  readonly disciplines: readonly Discipline[];
  readonly catalogue: readonly CatalogueRow[];
  readonly services?: Services;
}

export interface MadeSheet {
  readonly discipline: Discipline;
  readonly document: SheetDocument;
  readonly files: readonly MadeFile[];
  /** Hash over the facts that this sheet used. */
  readonly factsHash: string;
}

export interface Machine {
  readonly book: Book;
  readonly snapshot: Snapshot;
  readonly stamp: Stamp;
  readonly findings: readonly Finding[];
  /** Keys whose declared slopes were contradicted by a probe; empty unless a declaration is wrong. */
  readonly slopeFaults: readonly string[];
  readonly questions: () => readonly OpenQuestion[];
  readonly remedies: (key: string) => readonly Remedy[];
  /** The study's result, or undefined when it was cancelled. */
  readonly study: <A, R>(study: Study<A, R>, args: A) => R | undefined;
  readonly sheet: (name: string) => MadeSheet;
  readonly facts: () => readonly ListedFact[];
  readonly units: UnitChoice;
  /** Texts of the files that these edits change. */
  readonly editedTexts: (edits: readonly Edit[]) => ReadonlyMap<string, string>;
}

export interface House {
  readonly schema: BookSchema;
  readonly disciplines: readonly Discipline[];
  readonly catalogue: ReadonlyMap<string, CatalogueRow>;
  readonly read: (read: (name: string) => string | undefined, main: string) => ReadResult;
  readonly open: (book: Book) => Machine;
  /** A model of a trade, made from plain parameters; the same in a worker. */
  readonly model: <P, M>(token: ModelToken<P, M>, parameters: P) => M;
  /** Runs jobs here, one after another: the pool of a page without workers, and the worker's own half of any other. */
  readonly inline: Pool;
}

const byKey = <T, K>(list: readonly T[], key: (one: T) => K): ReadonlyMap<K, T> => {
  const map = new Map<K, T>();
  for (const one of list) {
    if (map.has(key(one))) throw new Error(`two trades or rows are both named ${String(key(one))}`);
    map.set(key(one), one);
  }
  return map;
};

/** Puts trades and catalogue together. Refuses, by throwing, trades that contradict each other. */
export const createHouse = ({ disciplines, catalogue: rows, services = {} }: HouseParts): House => {
  const order = [...disciplines].sort((a, b) => a.number - b.number);
  const schema = assembleSchema(order);
  const catalogue = byKey(rows, (row) => row.name);
  const providers = byKey(
    order.flatMap((d) => d.facts),
    (provider: Provider) => provider.token.name,
  );
  const fillers = order.flatMap((d) => (d.fills ? [d.fills] : []));
  const memory = new Memory();
  const grow = (tree: Book['tree']): Snapshot => expand(tree, schema, catalogue, fillers);

  const questionsOf = (evaluator: Evaluator): Question[] =>
    order.flatMap((discipline) =>
      discipline.checks.flatMap((check: Check) => {
        const { result } = evaluator.run(`subjects of ${check.code}`, new Map(), () =>
          check.subjects(evaluator.context.book),
        );
        if (!result.ok) throw result.error;
        return result.value.map((subject: Subject): Question => ({ discipline, check, subject }));
      }),
    );

  /** A finding stands as long as every range and word behind it, and the units it is printed in, stand. */
  const kept = new Map<string, Worked & { readonly mark: string }>();
  const standing = (key: string, snapshot: Snapshot, unitsMark: string): Finding | undefined => {
    const before = kept.get(key);
    return before && before.mark === unitsMark + factsMark(before.reads, snapshot) ? before.finding : undefined;
  };
  /** `keep` is for the book's own findings; those of trials would push them out. */
  const work = (question: Question, tools: Tools, unitsMark: string, keep: boolean): Finding | null => {
    const key = keyOf(question);
    const { snapshot } = tools.evaluator;
    const known = standing(key, snapshot, unitsMark);
    if (known) return known;
    const worked = findingFor(question, tools);
    if (keep && worked) kept.set(key, { ...worked, mark: unitsMark + factsMark(worked.reads, snapshot) });
    return worked?.finding ?? null;
  };

  const toolsFor = (snapshot: Snapshot, faults?: string[]): { tools: Tools; units: UnitChoice; mark: string } => {
    memory.trim();
    const units = authorsUnits(snapshot);
    return {
      units,
      mark: `${unitsText(units, snapshot)}\n`,
      tools: {
        evaluator: new Evaluator(snapshot, providers, memory),
        text: (number, of) => shown(units, number, of),
        meansOf: (path) => schema.keyInfo(path)?.means ?? path,
        ...(faults ? { slopeFault: (key: string) => faults.push(key) } : {}),
      },
    };
  };

  const open = (book: Book): Machine => {
    const snapshot = grow(book.tree);
    const slopeFaults: string[] = [];
    const { tools, units, mark } = toolsFor(snapshot, slopeFaults);
    const { evaluator } = tools;
    const accepted = acceptedIn(book.tree);
    const pairs = questionsOf(evaluator).flatMap((question) => {
      const bare = work(question, tools, mark, true);
      if (!bare) return [];
      const place = book.placeOf(question.subject.at);
      const acceptance = accepted.get(bare.key);
      const finding: Finding = {
        ...bare,
        ...(place ? { place } : {}),
        ...(acceptance ? { accepted: acceptanceOf(bare, acceptance, question.check, services.today) } : {}),
      };
      return [{ question, finding }];
    });
    const findings = pairs.map(({ finding }) => finding);

    const ask: Asker['ask'] = (edits, only) => {
      const { tools: there, mark: unitsMark } = toolsFor(grow(edited(book.tree, edits, schema)));
      return questionsOf(there.evaluator)
        .filter((question) => !only || only.includes(keyOf(question)))
        .flatMap((question) => work(question, there, unitsMark, false) ?? []);
    };
    const asker: Asker = {
      findings,
      textAt: (path) => book.textAt(path),
      rangeAt: (path) => {
        const leaf = quantityAt(path, snapshot);
        return leaf ? { low: leaf.low, high: leaf.high, text: leaf.text } : null;
      },
      write: (path, number, figures = 2) => {
        const leaf = quantityAt(path, snapshot);
        if (!leaf) throw new RangeError(`no quantity stands at ${path}`);
        return show(number, leaf.of, leaf.unit, { figures, ascii: true });
      },
      ask,
      partsOf: (kind) => {
        const own = Object.entries((book.tree['parts'] ?? {}) as Record<string, { kind?: string }>);
        return [
          ...new Set([
            ...own.filter(([, part]) => part.kind === kind).map(([name]) => name),
            ...rows.filter((row) => row.kind === kind).map((row) => row.name),
          ]),
        ];
      },
      random: seeded(1),
    };

    const remedied = new Map<string, readonly Remedy[]>();
    let ranked: readonly OpenQuestion[] | undefined;
    return {
      book,
      snapshot,
      stamp: stampOf(book),
      findings,
      slopeFaults,
      units,
      questions: () => (ranked ??= finish(rank({ findings: pairs, evaluator, schema, book }))),
      remedies: (key) => {
        const known = remedied.get(key) ?? finish(remediesFor(asker, { key }));
        remedied.set(key, known);
        return known;
      },
      study: (study, args) => finish(study.run(asker, args), services.cancelled),
      sheet: (name) => {
        const discipline = order.find((d) => d.name === name);
        if (!discipline) throw new RangeError(`there is no sheet named ${name}`);
        const own = findings.filter((finding) => finding.sheet === name);
        const context = sheetContext(evaluator, own, asker, units, tools);
        const { value, paths } = evaluator.trace(new Map(), () => ({
          document: discipline.sheet(context as SheetContext<never>),
          files: discipline.makes?.(context as SheetContext<never>) ?? [],
        }));
        const uses = [...paths, ...own.flatMap((finding) => finding.uses)];
        return { discipline, ...value, factsHash: factsHash(uses, snapshot) };
      },
      facts: () =>
        listFacts(
          evaluator,
          order.flatMap((d) => d.facts),
        ),
      editedTexts: (edits) => editBook(book, edits),
    };
  };

  const models = byKey(
    order.flatMap((d) => d.models ?? []),
    (model: Model) => model.token.name,
  );
  const tasks = byKey(
    order.flatMap((d) => d.tasks ?? []),
    (task: Task) => task.name,
  );
  const named = <T>(map: ReadonlyMap<string, T>, kind: string, name: string): T => {
    const found = map.get(name);
    if (!found) throw new RangeError(`there is no ${kind} named ${name}`);
    return found;
  };
  const inline: Pool = {
    run: async (jobs) =>
      jobs.map(({ task, args, seed }) => named(tasks, 'task', task).run(args as never, seeded(seed))),
  };

  return {
    inline,
    model: <P, M>(token: ModelToken<P, M>, parameters: P): M =>
      named(models, 'model', token.name).create(parameters as never) as M,
    schema,
    disciplines: order,
    catalogue,
    open,
    read: (read, main) =>
      readBook(read, main, schema, { known: (kind) => rows.filter(() => kind === 'parts').map((row) => row.name) }),
  };
};

/** Runs a study to its end, or until it is cancelled. */
export function finish<T>(study: Generator<T, T, void>): T;
export function finish<T>(study: Generator<T, T, void>, cancelled: (() => boolean) | undefined): T | undefined;
export function finish<T>(study: Generator<T, T, void>, cancelled?: () => boolean): T | undefined {
  for (;;) {
    const step = study.next();
    if (step.done) return step.value;
    if (cancelled?.()) return undefined;
  }
}

const factsMark = (paths: readonly string[], snapshot: Snapshot): string =>
  paths.map((path) => markAt(path, snapshot)).join('|');

const unitsText = (units: UnitChoice, snapshot: Snapshot): string => {
  const seen = new Set<string>();
  for (const node of snapshot.nodes.values())
    if (node.kind === 'leaf' && node.leaf instanceof Quantity)
      seen.add(`${node.leaf.of} ${units(node.leaf.of)?.text ?? ''}`);
  return [...seen].sort().join(',');
};

const whyNot = (error: NoNumber, tools: Tools): string =>
  error instanceof NotStated
    ? `not stated yet: ${error.paths.map((path) => `${tools.meansOf(path)} (${path})`).join('; ')}`
    : error.message;

const sheetContext = (
  evaluator: Evaluator,
  findings: readonly Finding[],
  asker: Asker,
  units: UnitChoice,
  tools: Tools,
): SheetContext<never> => ({
  ...evaluator.context,
  findings,
  show: (value: Value) => shown(units, value.number, value.of),
  study: (study, args) => finish(study.run(asker, args)),
  attempt: (run) => {
    try {
      return { ok: true, value: run() };
    } catch (error) {
      if (!isNoNumber(error)) throw error;
      return { ok: false, why: whyNot(error, tools) };
    }
  },
  ends: (run) =>
    extremes((scenario) => {
      const { value, paths } = evaluator.trace(scenario, run);
      return { number: value.number, slopes: slopes(value), axes: rangesAmong(paths, evaluator.snapshot) };
    }),
});
