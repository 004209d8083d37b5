import { describe, expect, it } from 'vitest';
import { firstFault } from '../../../figures/tests/well-formed.ts';
import { houseOn } from '../../../app/index.ts';
import type { BookText, SheetPart } from '../../desk/engine.ts';
import { engineFor } from '../engine.ts';
import { begin, bookOf, cardIn, changed, demo } from './books.ts';

const five = demo('five-facts');
const faster = changed(five, 'speed: 220 mm/s', 'speed: 900 mm/s');
const attributes = (markup: string, name: string): readonly string[] =>
  [...markup.matchAll(new RegExp(` ${name}="([^"]*)"`, 'g'))].map(([, value = '']) => value);

describe('a book that is laid', () => {
  it('says what it is and how each finding stands, as the engine finds it', async () => {
    const { laid } = await begin(five);
    expect(laid).toMatchObject({ title: 'Five facts', revision: 'A', moved: [], warnings: [] });
    expect(laid.stamp).toMatch(/^[0-9a-f]{12}$/);
    const house = houseOn();
    const read = house.read((name) => five.files[name], 'book.yaml');
    const findings = read.ok ? house.open(read.book).findings : [];
    expect(laid.findings.map(({ key, verdict, sentence }) => [key, verdict, sentence])).toEqual(
      findings.map(({ key, verdict, sentence }) => [key, verdict, sentence]),
    );
    expect(laid.sheets.map(({ name }) => name)).toEqual(house.disciplines.map(({ name }) => name));
  });

  it('can go through a message', async () => {
    const { engine, laid } = await begin(demo('tidepool'));
    expect(structuredClone(laid)).toEqual(laid);
    for (const answer of [
      await engine.sheet(1, laid.sheets[0]!.name),
      await engine.questions(1),
      await engine.bench(1),
      await engine.firstChoices(),
      await engine.formulas(''),
    ])
      expect(structuredClone(answer)).toEqual(answer);
  });

  it('says what moved against the text before, with both uses on one ruler', async () => {
    const { engine } = await begin(five);
    const next = await engine.lay(faster, 2);
    if (!next?.ok) throw new Error('unread');
    expect(next.moved.length).toBeGreaterThan(0);
    const [was, is] = [sidesIn(five), sidesIn(faster)];
    for (const { key, before, after, ruler } of next.moved) {
      expect(before).toEqual(was.get(key));
      expect(after).toEqual(is.get(key));
      if (before?.use && after?.use) expect(ruler).toContain('Before: ');
      if (ruler) expect(firstFault(ruler)).toBeUndefined();
    }
    // What did not move is not named.
    const named = new Set(next.moved.map(({ key }) => key));
    for (const [key, side] of is)
      if (!named.has(key))
        expect([side.verdict, side.use?.worst]).toEqual([was.get(key)?.verdict, was.get(key)?.use?.worst]);
    const back = await engine.lay(five, 3);
    expect(back?.ok && back.moved.map(({ key }) => key)).toEqual(next.moved.map(({ key }) => key));
  });

  it('moves against nothing when it is another book', async () => {
    const { engine } = await begin(five);
    expect(await engine.lay(faster, 2, true)).toMatchObject({ ok: true, moved: [] });
  });

  it('compares with the last text that could be read', async () => {
    const { engine } = await begin(five);
    expect(await engine.lay(bookOf('book: ['), 2)).toMatchObject({ ok: false });
    expect(await engine.lay(five, 3)).toMatchObject({ ok: true, moved: [] });
  });
});

/** How each finding of a book stands, asked of an engine that never saw another text. */
const sidesIn = (book: BookText) => {
  const house = houseOn();
  const read = house.read((name) => book.files[name], book.main);
  if (!read.ok) throw new Error('unread');
  return new Map(
    house
      .open(read.book)
      .findings.map(({ key, verdict, use, sense }) => [
        key,
        { verdict, ...(use && sense !== 'yes-no' ? { use: { ...use, verdict } } : {}) },
      ]),
  );
};

describe('an earlier text', () => {
  it('is dropped as soon as a later one is laid', async () => {
    const engine = engineFor();
    const first = engine.lay(five, 1);
    const sheet = engine.sheet(1, 'any');
    const second = engine.lay(faster, 2);
    expect(await first).toBeUndefined();
    expect(await sheet).toBeUndefined();
    expect(await second).toMatchObject({ ok: true });
    expect(await engine.questions(1)).toBeUndefined();
    expect(await engine.lay(five, 1)).toBeUndefined();
  });

  it('cannot be asked about, nor can one that was not read', async () => {
    const { engine } = await begin(five);
    await engine.lay(bookOf(''), 2);
    expect(await engine.sheet(1, 'any')).toBeUndefined();
    expect(await engine.placeOf(2, 'title')).toBeUndefined();
    expect(await engine.questions(3)).toBeUndefined();
  });

  it('gives way before what is long: a newer message is seen first', async () => {
    const turns: (() => void)[] = [];
    const engine = engineFor({ turn: () => new Promise((resolve) => void turns.push(resolve)) });
    const laying = engine.lay(five, 1);
    turns.shift()!();
    await laying;
    const sheet = engine.sheet(1, (await engine.firstChoices()) && 'none');
    await Promise.resolve();
    await Promise.resolve();
    // The newer text arrives while the sheet waits for its turn.
    const newer = engine.lay(faster, 2);
    turns.splice(0).forEach((go) => go());
    expect(await sheet).toBeUndefined();
    expect(await newer).toMatchObject({ ok: true });
  });

  it('asked about at once waits until it is laid', async () => {
    const engine = engineFor();
    const laying = engine.lay(five, 1);
    const place = engine.placeOf(1, 'axes.x.speed');
    await laying;
    expect(await place).toMatchObject({ exact: true });
  });
});

describe('a sheet', () => {
  it('comes in parts with ids of their own, well formed, and only what changed differs', async () => {
    const { engine, laid } = await begin(demo('tidepool'));
    for (const { name } of laid.sheets) {
      const view = (await engine.sheet(1, name))!;
      const ids = view.parts.map(({ id }) => id);
      expect(new Set(ids).size).toBe(ids.length);
      expect(ids.slice(0, 2)).toEqual(['title', 'strip']);
      expect(ids.at(-1)).toBe('title-block');
      for (const { markup } of view.parts) expect(firstFault(`<div>${markup}</div>`)).toBeUndefined();
      const whole = view.parts.map(({ markup }) => markup).join('');
      const anchors = attributes(whole, 'id');
      expect(new Set(anchors).size).toBe(anchors.length);
      for (const href of attributes(whole, 'href')) expect(anchors).toContain(href.slice(1));
      const keys = new Set(laid.findings.map(({ key }) => key));
      for (const key of attributes(whole, 'data-key')) expect(keys).toContain(key.replaceAll('&#39;', "'"));
      const front = (await engine.front(1, name))!;
      for (const part of front) expect(view.parts).toContainEqual(part);
    }
    const before = new Map((await engine.sheet(1, laid.sheets[0]!.name))!.parts.map(({ id, markup }) => [id, markup]));
    await engine.lay(changed(demo('tidepool'), 'ambient: 8..32', 'ambient: 8..33'), 2);
    const after: readonly SheetPart[] = (await engine.sheet(2, laid.sheets[0]!.name))!.parts;
    expect(after.filter(({ id, markup }) => before.get(id) === markup).map(({ id }) => id)).toContain('title');
    expect(after.some(({ id, markup }) => before.get(id) !== markup)).toBe(true);
  });

  it('may have its workings folded, and unfolds each to what it would have been', async () => {
    const { engine, laid } = await begin(five);
    const { name } = laid.sheets[0]!;
    const whole = (await engine.sheet(1, name))!.parts.map(({ markup }) => markup).join('');
    const folded = (await engine.sheet(1, name, true))!.parts.map(({ markup }) => markup).join('');
    expect(folded.length).toBeLessThan(whole.length / 2);
    expect(firstFault(`<div>${folded}</div>`)).toBeUndefined();
    const details =
      /<details class="working" (open|data-steps="[^"]*") (id="[^"]*" data-key="([^"]*)"><summary>.*?<\/summary>)/g;
    const all = [...folded.matchAll(details)];
    expect(all.length).toBeGreaterThan(0);
    let again = folded;
    for (const [found, state = '', rest = '', key = ''] of all) {
      const entries = (await engine.unfold(1, name, key))!;
      const steps = /"(.*)"/.exec(state)![1]!.split(' ').filter(Boolean);
      expect(attributes(entries, 'id').filter((id) => id.startsWith('step-'))).toEqual(
        steps.map((ref) => `step-${ref}`),
      );
      again = again.replace(found, () => `<details class="working" open ${rest}${entries}`);
    }
    expect(again === whole).toBe(true);
    expect(await engine.unfold(1, name, 'NONE-010')).toBeUndefined();
    expect(await engine.unfold(1, 'none', all[0]![3]!)).toBeUndefined();
  });

  it('that is not there is nothing', async () => {
    const { engine } = await begin(five);
    for (const name of ['', 'toString', '__proto__']) {
      expect(await engine.sheet(1, name)).toBeUndefined();
      expect(await engine.front(1, name)).toBeUndefined();
    }
  });
});

describe('a finding', () => {
  it('shows its working with the paths of what it was worked from', async () => {
    const { engine, laid } = await begin(five);
    const { key } = laid.findings.find(({ code, verdict }) => code === 'MOTION-010' && verdict !== 'not-stated')!;
    const working = (await engine.working(1, key))!;
    expect(firstFault(`<div>${working}</div>`)).toBeUndefined();
    const paths = attributes(working, 'data-path');
    expect(paths).toContain('axes.x.acceleration');
    expect(attributes(working, 'id').filter((id) => /^(finding|working)-/.test(id))).toEqual([]);
    expect(await engine.working(1, 'NONE-010')).toBeUndefined();
  });

  it('has its remedies tried, and taking one does what it says', async () => {
    const draft = demo('tidepool-first-draft');
    const { engine, laid } = await begin(draft);
    const failing = laid.findings.filter(({ verdict, hasLevers }) => verdict === 'fails' && hasLevers);
    let taken = 0;
    for (const { key } of failing.slice(0, 4)) {
      const [remedy] = (await engine.remedies(1, key))!;
      if (!remedy) continue;
      taken++;
      const edits = remedy.edits.map(({ path, after }) => ({ path, text: after }));
      const trial = (await engine.trial(1, edits))!;
      expect(trial.problem).toBeUndefined();
      const moved = trial.moved.find((one) => one.key === key);
      expect(moved?.before?.verdict).toBe('fails');
      expect(moved?.after?.verdict ?? 'holds').toBe(remedy.verdict);
      // Trying leaves the book as it is.
      expect(cardIn(laid, key).verdict).toBe('fails');
      const lies = await engine.trial(1, []);
      expect(lies).toEqual({ moved: [], files: {} });
    }
    expect(taken).toBeGreaterThan(0);
  });

  it('stands behind the questions that are asked', async () => {
    const { engine, laid } = await begin(demo('tidepool'));
    const questions = (await engine.questions(1))!;
    expect(questions.length).toBeGreaterThan(0);
    const markup = (await engine.questionsInFront(1))!;
    expect(firstFault(markup)).toBeUndefined();
    expect(attributes(markup, 'data-path')).toEqual(questions.slice(0, 3).map(({ path }) => path));
    for (const { name } of laid.sheets) {
      const own = (await engine.questionsInFront(1, name))!;
      const keys = attributes(own, 'data-key');
      for (const key of keys) expect(cardIn(laid, key).sheet).toBe(name);
    }
  });
});
