/**
 * Two engines as one: what a key press waits for goes to the first, what takes longer to the second, so that a sheet that is
 * being drawn never stands in the way of the next verdict. The second reads a text only when it is asked about.
 */
import type { BookText, Engine, LaidBook, UnreadBook } from './engine.ts';

interface Wanted {
  readonly book: BookText;
  readonly version: number;
}

export const twoEngines = (quick: Engine, slow: Engine): Engine => {
  let wanted: Wanted | undefined;
  let reading: { readonly version: number; readonly done: Promise<LaidBook | UnreadBook | undefined> } | undefined;

  const read = ({ book, version }: Wanted): Promise<LaidBook | UnreadBook | undefined> => {
    const done = slow.lay(book, version, true);
    const mine = { version, done };
    reading = mine;
    // What was lost on the way is read anew by whoever asks next.
    done.catch(() => {
      if (reading === mine) reading = undefined;
    });
    return done;
  };
  const asked =
    <A extends readonly unknown[], R>(ask: (version: number, ...args: A) => Promise<R | undefined>) =>
    async (version: number, ...args: A): Promise<R | undefined> => {
      if (version !== wanted?.version) return undefined;
      if (reading?.version !== version) await read(wanted);
      else await reading.done;
      if (version !== wanted.version) return undefined;
      const answer = await ask(version, ...args);
      if (answer !== undefined || version !== wanted.version) return answer;
      // One that was started anew meanwhile knows nothing of it; any other drops the same text once more.
      return (await read(wanted)) === undefined ? undefined : ask(version, ...args);
    };

  const whole = asked(slow.sheet);
  return {
    lay: (book, version, afresh) => {
      if (!wanted || version > wanted.version) wanted = { book, version };
      return quick.lay(book, version, afresh);
    },
    sheet: (version, name, folded, early) =>
      early ? quick.sheet(version, name, folded, early) : whole(version, name, folded),
    front: quick.front,
    questions: quick.questions,
    questionsInFront: quick.questionsInFront,
    working: quick.working,
    trial: quick.trial,
    placeOf: quick.placeOf,
    handle: quick.handle,
    suggest: quick.suggest,
    help: quick.help,
    formulas: quick.formulas,
    formula: quick.formula,
    firstChoices: quick.firstChoices,
    firstBook: quick.firstBook,
    unfold: asked(slow.unfold),
    remedies: asked(slow.remedies),
    bench: asked(slow.bench),
    benchPage: asked(slow.benchPage),
    benchResult: asked(slow.benchResult),
  };
};
