/** Asks before a book that is not saved gives way to another. */
import type { Notice } from '../desk.ts';

interface Leaving {
  readonly isLoose: () => boolean;
  readonly isKept: () => boolean;
  readonly save: () => Promise<void>;
}

const ASKED = {
  kept: 'What lies here is not saved. Kept by this browser, it is listed under Books and can be laid again.',
  lost: 'What lies here is not saved, and this browser keeps nothing: left now, it is lost.',
};

/**
 * @param say says something with choices, and gives what takes it back
 * @returns whether another book may be laid now
 */
export const mayLeaveWith = (
  say: (says: string, choices: Notice['choices']) => () => void,
  { isLoose, isKept, save }: Leaving,
): (() => Promise<boolean>) => {
  /** Answers the question that is asked at the moment. */
  let dismiss = (): void => undefined;
  return () => {
    dismiss();
    if (!isLoose()) return Promise.resolve(true);
    return new Promise((resolve) => {
      /** From then on nobody else answers: to save may itself lay another book. */
      const chosen = (go: () => void) => (): void => {
        dismiss = () => undefined;
        go();
      };
      const saved = async (): Promise<void> => {
        await save();
        resolve(!isLoose());
      };
      const unsay = say(isKept() ? ASKED.kept : ASKED.lost, [
        { word: 'Save it first', run: chosen(() => void saved().catch(() => resolve(false))) },
        { word: isKept() ? 'Keep it as a draft' : 'Leave it', run: chosen(() => resolve(true)) },
        { word: 'Stay here', run: chosen(() => resolve(false)) },
      ]);
      dismiss = () => {
        unsay();
        resolve(false);
      };
    });
  };
};
