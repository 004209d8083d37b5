import { describe, expect, it } from 'vitest';
import { firstFault } from '../../../figures/tests/well-formed.ts';
import type { BookText, LaidBook, UnreadBook } from '../../desk/engine.ts';
import { engineFor } from '../engine.ts';
import { begin, bookOf, changed, demo } from './books.ts';

const lay = (book: BookText): Promise<LaidBook | UnreadBook | undefined> =>
  engineFor({ turn: async () => {} }).lay(book, 1);
const head = '# YAML 1.2\nbook: 1\nrevision: A\n';

const everything = async (book: BookText): Promise<string> => {
  const { engine, laid } = await begin(book);
  const texts: (string | undefined)[] = [await engine.questionsInFront(1)];
  for (const { name } of laid.sheets)
    texts.push(...((await engine.sheet(1, name))?.parts ?? []).map(({ markup }) => markup));
  for (const { key } of laid.findings.slice(0, 20)) texts.push(await engine.working(1, key));
  return texts.join('\n');
};

describe('a book from a stranger', () => {
  it('never becomes markup, wherever it is shown', async () => {
    const evil = `<img src=x onerror=alert(1)>`;
    const quoted = (name: string): string => JSON.stringify(`"'${evil}&<script>${name}`);
    let book = demo('five-facts');
    book = changed(
      book,
      'title: Five facts',
      `title: ${quoted('t')}\nabout: ${quoted('a')}\nrevisions: [{ revision: ${quoted('r')}, says: ${quoted('s')} }]`,
    );
    book = changed(book, 'revision: A', `revision: ${quoted('A')}`);
    book = changed(book, 'axes:\n  x:', `axes:\n  ${quoted('x')}:`);
    const text = ['M1', 'D1', '12V', 'G1', 'drawer-23'].reduce(
      (whole, name) =>
        whole.replaceAll(new RegExp(`(?<![\\w ])${name}(?!\\w)|(?<=[{ ])${name}(?=[:, ])(?! V)`, 'g'), quoted(name)),
      book.files['book.yaml']!,
    );
    const markup = await everything(bookOf(text));
    expect(firstFault(`<div>${markup}</div>`)).toBeUndefined();
    expect(markup.includes('&lt;img src=x onerror=alert(1)&gt;')).toBe(true);
    const outsideOfQuotes = markup.replaceAll(/"[^"]*"/g, '""');
    expect(/<(img|script)|<[^>]*\son\w+=/i.exec(outsideOfQuotes)).toBeNull();
  });

  it('has marks that turn lines round and zero bytes shown, not obeyed', async () => {
    const book = changed(demo('five-facts'), 'title: Five facts', 'title: "a\\0b\\u202Ec\\uFFFE"');
    const markup = await everything(book);
    expect(markup).not.toContain('\0');
    expect(firstFault(`<div>${markup}</div>`)).toBeUndefined();
  });

  it.each([
    ['a zero byte', `${head}title: "a\0b"\n`],
    ['more than two mebibytes', `${head}title: T\nabout: ${'x'.repeat(2 * 1024 * 1024)}\n`],
    ['deep nesting', `${head}title: ${'['.repeat(100_000)}`],
    ['deep blocks', `${head}title: T\n${Array.from({ length: 1500 }, (_, i) => `${' '.repeat(i)}a:\n`).join('')}`],
    [
      'a bomb of aliases',
      `${head}a: &a [x,x,x,x,x,x,x,x,x]\n${'bcdefghij'
        .split('')
        .map((c, i) => `${c}: &${c} [${Array.from({ length: 9 }, () => `*${'abcdefghi'[i]!}`).join(',')}]\n`)
        .join('')}`,
    ],
    ['names of the language', `${head}title: T\n__proto__: { polluted: 1 }\nconstructor: 1\n`],
    ['nothing', ''],
    ['no YAML', '\u0000\u0001{{{{:::'],
    ['an include of itself', `${head}title: T\ninclude: [book.yaml]\n`],
    [
      'an include from outside',
      `${head}title: T\ninclude: [../secret.yaml, /etc/passwd, 'C:\\\\x', https://a.test/b.yaml]\n`,
    ],
    ['an include by a name of the language', `${head}title: T\ninclude: [toString, __proto__]\n`],
  ])('is refused with reasons: %s', async (_, text) => {
    const from = performance.now();
    const result = await lay(bookOf(text));
    expect(performance.now() - from).toBeLessThan(10_000);
    if (!result || result.ok) throw new Error('it was read');
    expect(result.problems.length).toBeGreaterThan(0);
    for (const { from, to, says } of result.problems) {
      expect(0 <= from && from <= to && to <= text.length).toBe(true);
      expect(says).not.toBe('');
    }
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
  });

  it('with a main file that is not there is refused', async () => {
    expect(await lay({ main: 'book.yaml', files: {} })).toMatchObject({ ok: false, problems: [{ from: 0, to: 0 }] });
    expect(await lay({ main: 'toString', files: {} })).toMatchObject({ ok: false });
  });

  it('leaves the engine able to read the next one', async () => {
    const engine = engineFor({ turn: async () => {} });
    await engine.lay(bookOf('\0'), 1);
    expect(await engine.lay(demo('five-facts'), 2)).toMatchObject({ ok: true });
  });
});

describe('what is asked of the engine', () => {
  it('may be nonsense', async () => {
    const { engine } = await begin(demo('five-facts'));
    for (const odd of ['', '.', '..', 'a..b', '__proto__', 'constructor.name', 'x'.repeat(10_000), '<b>', '\0']) {
      expect(await engine.placeOf(1, odd)).toBeUndefined();
      expect(await engine.handle(1, odd)).toBeUndefined();
      expect(await engine.working(1, odd)).toBeUndefined();
      expect(await engine.remedies(1, odd)).toEqual([]);
      expect(await engine.formula(odd, {})).toBeUndefined();
      expect(await engine.benchPage(1, odd, odd)).toBeUndefined();
      expect(await engine.benchResult(1, odd, odd, {})).toBeUndefined();
      expect(Array.isArray(await engine.formulas(odd))).toBe(true);
    }
  });
});
