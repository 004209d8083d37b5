/** The life of a book: text read, made complete, questions asked over all ranges, findings formed; and again after an edit. */
import {
  Quantity,
  type Check,
  type Discipline,
  type Model,
  type ModelToken,
  type Pool,
  type Provider,
  type Services,
  type Study,
  type Subject,
  type Task,
} from '../contract/index.ts';
import {
  NotStated,
  seeded,
  type Edit,
  type Finding,
  type Question as OpenQuestion,
  type Remedy,
} from '../kernel/index.ts';
import { acceptanceOf, acceptedIn, strayAcceptances } from './acceptance.ts';
import { askerFor, finish, forStudy, tried } from './asking.ts';
import { Evaluator } from './evaluate.ts';
import { listFacts, type ListedFact } from './listing.ts';
import { Memory } from './memory.ts';
import { rank } from './ranking.ts';
import { CannotEdit, editBook } from './read/edit.ts';
import { readBook, type Book, type ReadResult } from './read/book.ts';
import { assembleSchema, type BookSchema } from './read/schema.ts';
import { remediesFor, type Trials } from './remedies.ts';
import { makeSheet, type MadeSheet } from './sheets.ts';
import { at, expand, markAt, type CatalogueRow, type Snapshot } from './snapshot.ts';
import { stampOf, type Stamp } from './stamp.ts';
import { authorsUnits, shown, unitsMark, type UnitChoice } from './units.ts';
import type { BookProblem } from './read/problem.ts';
import { findingFor, isAsGood, keyOf, type Question, type Tools, type Worked } from './verdict.ts';

export { finish } from './asking.ts';
export type { MadeSheet };

export interface HouseParts {
  readonly disciplines: readonly Discipline[];
  readonly catalogue: readonly CatalogueRow[];
  readonly services?: Services;
}

/** A book laid out for questions. */
interface Bench {
  readonly snapshot: Snapshot;
  readonly units: UnitChoice;
  readonly unitsMark: string;
  /** What stands at a path, as a text. */
  readonly markOf: (path: string) => string;
  readonly tools: Tools;
}

/** A finding with everything that it stands for. */
interface Kept {
  readonly worked: Worked;
  readonly subject: string;
  readonly unitsMark: string;
  readonly marks: readonly string[];
}

export interface Machine {
  readonly book: Book;
  readonly snapshot: Snapshot;
  readonly stamp: Stamp;
  readonly findings: readonly Finding[];
  /** Keys whose declared slopes were contradicted by a probe; empty unless a declaration is wrong. */
  readonly slopeFaults: readonly string[];
  /** What stands in the book and leads nowhere, such as an acceptance of a finding that is not there. */
  readonly warnings: readonly BookProblem[];
  readonly questions: () => readonly OpenQuestion[];
  readonly remedies: (key: string) => readonly Remedy[];
  /** The study's result, or undefined when it was cancelled. */
  readonly study: <A, R>(study: Study<A, R>, args: A) => R | undefined;
  /** A sheet; `later` leaves its studies out, so that it is there at once. */
  readonly sheet: (name: string, studies?: 'run' | 'later') => MadeSheet;
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

const MOST_KEPT = 5_000;

const byKey = <T, K>(list: readonly T[], key: (one: T) => K): ReadonlyMap<K, T> => {
  const map = new Map<K, T>();
  for (const one of list) {
    if (map.has(key(one))) throw new Error(`two trades or rows are both named ${String(key(one))}`);
    map.set(key(one), one);
  }
  return map;
};

/** A copy of a finding with more said of it; what it works out only when asked stays so. */
const withMore = (finding: Finding, more: Partial<Finding>): Finding =>
  Object.defineProperties(
    {},
    {
      ...Object.getOwnPropertyDescriptors(finding),
      ...Object.getOwnPropertyDescriptors(more),
    },
  ) as Finding;

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
  const read: House['read'] = (file, main) =>
    readBook(file, main, schema, { known: (kind) => (kind === 'parts' ? rows.map(({ name }) => name) : []) });
  const grow = (tree: Book['tree']): Snapshot => expand(tree, schema, catalogue, fillers);

  byKey(
    order.flatMap((d) => d.checks),
    (check: Check) => check.code,
  );

  const subjectsOf = (check: Check, evaluator: Evaluator): readonly Subject[] => {
    const { result } = evaluator.run('subjects', check.code, new Map(), () => check.subjects(evaluator.context.book));
    if (result.ok) return result.value;
    // Without the facts that name its subjects nothing is asked yet.
    if (result.error instanceof NotStated) return [];
    throw result.error;
  };
  const questionIn = (evaluator: Evaluator, { check, discipline, subject }: Question): Question | undefined => {
    const key = keyOf({ check, discipline, subject });
    return subjectsOf(check, evaluator)
      .map((one): Question => ({ discipline, check, subject: one }))
      .find((one) => keyOf(one) === key);
  };
  const questionsOf = (evaluator: Evaluator): readonly Question[] => {
    const questions = order.flatMap((discipline) =>
      discipline.checks.flatMap((check: Check) =>
        subjectsOf(check, evaluator).map((subject): Question => ({ discipline, check, subject })),
      ),
    );
    byKey(questions, keyOf);
    return questions;
  };

  /** What a finding stands for is only gathered when it is asked whether it still stands. */
  const keptOf = (worked: Worked, subject: string, bench: Bench): Kept => {
    let marks: readonly string[] | undefined;
    return {
      worked,
      subject,
      get unitsMark() {
        return bench.unitsMark;
      },
      get marks() {
        return (marks ??= worked.reads.map(bench.markOf));
      },
    };
  };

  /** A finding stands as long as its subject, every range and word behind it, and the units it is printed in, stand. */
  const kept = new Map<string, Kept>();
  /** `keep` is for the book's own findings; those of trials would push them out. */
  const work = (question: Question, bench: Bench, keep: boolean): Worked => {
    const { tools, markOf } = bench;
    const key = keyOf(question);
    const subject = JSON.stringify(question.subject);
    const before = kept.get(key);
    // Of a trial only verdicts are wanted, in whatever units.
    if (
      before?.subject === subject &&
      (!keep || before.unitsMark === bench.unitsMark) &&
      before.worked.reads.every((path, i) => markOf(path) === before.marks[i])
    )
      return before.worked;
    const worked = findingFor(question, tools);
    if (!keep) return worked;
    kept.set(key, keptOf(worked, subject, bench));
    return worked;
  };

  /** Most findings stand where they stood before the edit. */
  const placedBefore = new WeakMap<Finding, Finding>();
  const placed = (bare: Finding, place: Finding['place']): Finding => {
    if (!place) return bare;
    const before = placedBefore.get(bare);
    const at = before?.place;
    if (before && at?.file === place.file && at.line === place.line && at.column === place.column) return before;
    const finding = withMore(bare, { place });
    placedBefore.set(bare, finding);
    return finding;
  };

  const benchFor = (snapshot: Snapshot): Bench => {
    // Of a book that is only tried nothing is printed.
    let chosen: UnitChoice | undefined;
    const units: UnitChoice = (of) => (chosen ??= authorsUnits(snapshot))(of);
    const marks = new Map<string, string>();
    let mark: string | undefined;
    return {
      snapshot,
      units,
      get unitsMark() {
        return (mark ??= unitsMark(units));
      },
      markOf: (path) => {
        let mark = marks.get(path);
        if (mark === undefined) marks.set(path, (mark = markAt(path, snapshot)));
        return mark;
      },
      tools: {
        evaluator: new Evaluator(snapshot, providers, memory),
        text: (number, of) => shown(units, number, of),
        meansOf: (path) => schema.keyInfo(path, snapshot.tree)?.means ?? path,
        trusting: services.trusting === true,
      },
    };
  };

  const open = (book: Book): Machine => {
    // Findings of books that nobody opens any more go with the rest.
    if (kept.size > MOST_KEPT) kept.clear();
    const bench = benchFor(grow(book.tree));
    const { snapshot, units, tools } = bench;
    const { evaluator } = tools;
    const accepted = acceptedIn(book.tree);
    const worked = questionsOf(evaluator).flatMap((question) => {
      const result = work(question, bench, true);
      const { finding: bare, solved } = result;
      if (!bare) return [];
      const place = book.placeOf(question.subject.at);
      const acceptance = accepted.get(bare.key);
      const finding = acceptance
        ? withMore(bare, {
            ...(place ? { place } : {}),
            accepted: acceptanceOf(bare, acceptance, question.check, services.today),
          })
        : placed(bare, place);
      return [
        {
          question,
          finding,
          solved,
          get reads() {
            return result.reads;
          },
        },
      ];
    });
    const findings = worked.map(({ finding }) => finding);
    const asker = askerFor({
      book,
      snapshot,
      findings,
      schema,
      rows,
      findingsOf: (tree, only) => {
        const there = benchFor(grow(tree));
        const { evaluator: asked } = there.tools;
        // What is known here is asked for alone; what only arises there is found among all.
        const known = only && [...only].flatMap((key) => questionOf.get(key) ?? []);
        const questions =
          known?.length === only?.size && known
            ? known.flatMap((question) => questionIn(asked, question) ?? [])
            : questionsOf(asked).filter((question) => !only || only.has(keyOf(question)));
        return questions.flatMap((question) => work(question, there, false).finding ?? []);
      },
    });
    const questionOf = new Map(worked.map(({ question, finding }) => [finding.key, question]));
    const worstOf = new Map(worked.map(({ finding, solved }) => [finding.key, solved?.worst.scenario]));
    const trials: Trials = {
      numberOf: (edit) => {
        const tree = tried(book.tree, [edit], schema);
        const there = typeof tree === 'string' ? null : at(tree, edit.path);
        return there instanceof Quantity ? there.low : null;
      },
      readsWell: (edits) => {
        try {
          const texts = editBook(book, edits);
          return read((name) => texts.get(name) ?? book.files.get(name), book.main).ok;
        } catch (error) {
          if (error instanceof CannotEdit) return false;
          throw error;
        }
      },
      works: (edits, key, wanted) => {
        const tree = tried(book.tree, edits, schema);
        if (typeof tree === 'string') return false;
        const there = benchFor(grow(tree)).tools.evaluator;
        const asked = questionOf.get(key);
        const question = asked && questionIn(there, asked);
        return question !== undefined && isAsGood(question, there, wanted, worstOf.get(key) ?? new Map());
      },
    };

    const remedied = new Map<string, readonly Remedy[]>();
    let ranked: readonly OpenQuestion[] | undefined;
    return {
      book,
      snapshot,
      stamp: stampOf(book),
      findings,
      warnings: strayAcceptances(book, findings),
      slopeFaults: worked.filter(({ solved }) => solved?.slopeBroken).map(({ finding }) => finding.key),
      units,
      questions: () => (ranked ??= finish(rank({ findings: worked, evaluator, schema, book }))),
      remedies: (key) => {
        const known = remedied.get(key) ?? finish(remediesFor(forStudy(asker), { key, ...trials }));
        remedied.set(key, known);
        return known;
      },
      study: (study, args) => finish(study.run(forStudy(asker), args), services.cancelled),
      sheet: (name, studies = 'run') => {
        const discipline = order.find((d) => d.name === name);
        if (!discipline) throw new RangeError(`there is no sheet named ${name}`);
        const own = worked.filter(({ finding }) => finding.sheet === name);
        return makeSheet({ discipline, findings: own, asker, units, tools, studies });
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
    read,
  };
};
