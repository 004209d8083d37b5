import { describe, expect, it } from 'vitest';
import type { BookText, Engine, LaidBook } from '../engine.ts';
import { twoEngines } from '../two-engines.ts';

const book = (text: string): BookText => ({ main: 'b', files: { b: text } });
const laid = { ok: true, title: '' } as LaidBook;

/** An engine that notes what it is asked and answers about the text laid last. */
const noting = (name: string) => {
  const calls: string[] = [];
  let version = -1;
  let text = '';
  const about =
    (call: string) =>
    async (of: number): Promise<never> => {
      calls.push(`${call} ${of}`);
      return (of === version ? `${name}: ${call} of ${text}` : undefined) as never;
    };
  const free = (call: string) => async () => `${name}: ${call}` as never;
  const engine: Engine = {
    lay: async ({ files }, of) => {
      calls.push(`lay ${of}`);
      if (!(of > version)) return undefined;
      [version, text] = [of, files['b']!];
      return laid;
    },
    front: about('front'),
    sheet: about('sheet'),
    unfold: about('unfold'),
    questions: about('questions'),
    questionsInFront: about('questionsInFront'),
    working: about('working'),
    remedies: about('remedies'),
    trial: about('trial'),
    placeOf: about('placeOf'),
    handle: about('handle'),
    bench: about('bench'),
    benchPage: about('benchPage'),
    benchResult: about('benchResult'),
    suggest: free('suggest'),
    help: free('help'),
    formulas: free('formulas'),
    formula: free('formula'),
    firstChoices: free('firstChoices'),
    firstBook: free('firstBook'),
  };
  return { engine, calls, forget: () => void (version = -1) };
};

const begin = () => {
  const [quick, slow] = [noting('quick'), noting('slow')];
  return { quick, slow, engine: twoEngines(quick.engine, slow.engine) };
};

describe('two engines', () => {
  it('lay and judge in the first, and let the second read only what it is asked about', async () => {
    const { engine, quick, slow } = begin();
    await engine.lay(book('one'), 1);
    await engine.lay(book('two'), 2);
    expect(await engine.front(2, 's')).toBe('quick: front of two');
    expect(await engine.trial(2, [])).toBe('quick: trial of two');
    expect(await engine.sheet(2, 's', false, true)).toBe('quick: sheet of two');
    expect(slow.calls).toEqual([]);
    expect(await engine.sheet(2, 's')).toBe('slow: sheet of two');
    expect(await engine.remedies(2, 'k')).toBe('slow: remedies of two');
    expect(slow.calls).toEqual(['lay 2', 'sheet 2', 'remedies 2']);
    expect(await engine.questions(2)).toBe('quick: questions of two');
    expect(quick.calls).toEqual(['lay 1', 'lay 2', 'front 2', 'trial 2', 'sheet 2', 'questions 2']);
    expect(await engine.formulas('')).toBe('quick: formulas');
    expect(await engine.suggest(book(''), 'b', 0)).toBe('quick: suggest');
  });

  it('read once for questions asked at the same time', async () => {
    const { engine, slow } = begin();
    await engine.lay(book('one'), 1);
    const answers = await Promise.all([engine.sheet(1, 's'), engine.bench(1), engine.remedies(1, 'k')]);
    expect(answers).toEqual(['slow: sheet of one', 'slow: bench of one', 'slow: remedies of one']);
    expect(slow.calls.filter((call) => call.startsWith('lay'))).toEqual(['lay 1']);
  });

  it('answer nothing about an earlier text, nor about one that was overtaken while it was read', async () => {
    const { engine, slow } = begin();
    await engine.lay(book('one'), 1);
    const overtaken = engine.sheet(1, 's');
    await engine.lay(book('two'), 2);
    expect(await overtaken).toBeUndefined();
    expect(await engine.sheet(1, 's')).toBeUndefined();
    expect(slow.calls).toEqual(['lay 1']);
    expect(await engine.sheet(2, 's')).toBe('slow: sheet of two');
  });

  it('read anew after the second was lost while it read', async () => {
    const { quick, slow } = begin();
    let losses = 1;
    const lossy: Engine = {
      ...slow.engine,
      lay: (...args) => (losses-- > 0 ? Promise.reject(new Error('lost')) : slow.engine.lay(...args)),
    };
    const engine = twoEngines(quick.engine, lossy);
    await engine.lay(book('one'), 1);
    await expect(engine.sheet(1, 's')).rejects.toThrow('lost');
    expect(await engine.sheet(1, 's')).toBe('slow: sheet of one');
  });

  it('let one that was started anew read the text again', async () => {
    const { engine, slow } = begin();
    await engine.lay(book('one'), 1);
    await engine.sheet(1, 's');
    slow.forget();
    expect(await engine.sheet(1, 's')).toBe('slow: sheet of one');
    expect(slow.calls).toEqual(['lay 1', 'sheet 1', 'sheet 1', 'lay 1', 'sheet 1']);
  });
});
