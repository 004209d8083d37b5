import { describe, expect, it } from 'vitest';
import type { Notice } from '../desk.ts';
import { mayLeaveWith } from '../folders/leaving.ts';
import { calm } from './shelf.ts';

const asking = ({ isKept = true } = {}) => {
  let isLoose = true;
  let asked: Notice | undefined;
  let save = (): Promise<void> => Promise.resolve();
  const mayLeave = mayLeaveWith(
    (says, choices) => {
      asked = { says, choices };
      return () => {
        asked = undefined;
      };
    },
    { isLoose: () => isLoose, isKept: () => isKept, save: () => save() },
  );
  return {
    mayLeave,
    asked: () => asked,
    choose: (word: string) => asked?.choices.find((choice) => choice.word === word)?.run(),
    saves: (work: () => Promise<void>) => {
      save = work;
    },
    isSaved: () => {
      isLoose = false;
    },
  };
};

describe('a book that gives way to another', () => {
  it('is asked about only when it is not saved', async () => {
    const one = asking();
    one.isSaved();
    expect(await one.mayLeave()).toBe(true);
    expect(one.asked()).toBeUndefined();
  });

  it.each([
    ['Keep it as a draft', true],
    ['Stay here', false],
  ])('after "%s": %s', async (word, may) => {
    const one = asking();
    const answer = one.mayLeave();
    one.choose(word);
    expect(await answer).toBe(may);
  });

  it('goes when it was saved first, and stays when that failed', async () => {
    const one = asking();
    const refused = one.mayLeave();
    one.choose('Save it first');
    expect(await refused).toBe(false);
    const broken = one.mayLeave();
    one.saves(() => Promise.reject(new Error('made up')));
    one.choose('Save it first');
    expect(await broken).toBe(false);
    const good = one.mayLeave();
    one.saves(() => Promise.resolve(one.isSaved()));
    one.choose('Save it first');
    expect(await good).toBe(true);
  });

  it('may itself lay its new place while it is saved', async () => {
    const one = asking();
    const answer = one.mayLeave();
    one.saves(async () => {
      one.isSaved();
      expect(await one.mayLeave()).toBe(true);
    });
    one.choose('Save it first');
    expect(await answer).toBe(true);
  });

  it('is asked about once: a second wish takes the place of the first', async () => {
    const one = asking();
    const [first, second] = [one.mayLeave(), one.mayLeave()];
    expect(await first).toBe(false);
    await calm();
    one.choose('Keep it as a draft');
    expect(await second).toBe(true);
  });

  it('is called lost where the browser keeps nothing', () => {
    const one = asking({ isKept: false });
    void one.mayLeave();
    expect(one.asked()?.says).toContain('it is lost');
    expect(one.asked()?.choices.map(({ word }) => word)).toEqual(['Save it first', 'Leave it', 'Stay here']);
  });
});
