import { describe, expect, it } from 'vitest';
import type { Machine } from '../../src/app/index.ts';
import { summary, ROWS, type SummaryInput } from '../../src/cli/summary.ts';
import { displayWidth } from '../../src/engine/read/frame.ts';
import type { Discipline } from '../../src/contract/index.ts';
import type { Finding } from '../../src/kernel/index.ts';
import { finding, many, question, remedy } from './findings.ts';
import { terminal, type Around } from './terminals.ts';

const machine = {
  book: { tree: { title: 'Tidepool', revision: 'B' } },
  stamp: { revision: 'B', content: '0123456789abcdef'.repeat(4) },
} as unknown as Machine;
const trial = { name: 'trial', title: 'Trial' } as unknown as Discipline;

const lines = (findings: readonly Finding[], more: Partial<SummaryInput> = {}, around: Around = {}): string[] =>
  summary(
    { machine, house: { disciplines: [trial] }, findings, questions: [], typed: 'books/tidepool', ...more },
    terminal(around),
  );

const everything = [
  ...many('fails', 40, { remedies: [remedy] }),
  ...many('open', 40),
  ...many('tight', 40),
  ...many('holds', 400),
  ...many('not-stated', 40),
];
const questions = [1, 2, 3, 4].map(question);

describe('the summary', () => {
  it('fits a screen of 80 columns and 40 rows, whatever was found', () => {
    const long = 'a-very-long-designation'.repeat(5);
    for (const findings of [
      everything,
      many('fails', 3, { key: `TRIAL-001/${long}`, sentence: `${long} `.repeat(20), remedies: [remedy] }),
      many('open', 90),
      many('tight', 90),
      [],
    ]) {
      const shown = lines(findings, { questions, typed: 'books/with a space/tidepool' });
      expect(shown.length).toBeLessThanOrEqual(ROWS);
      expect(shown.filter((line) => displayWidth(line) > 80)).toEqual([]);
    }
  });

  it('shows some of each, the worst first, and says how many are left out and where they are', () => {
    const text = lines(everything, { questions }).join('\n');
    expect(text).toMatch(/40 fails.*40 open.*40 tight.*400 holds.*40 not stated/);
    const order = ['FAILS (40)', 'TO MEASURE FIRST', 'OPEN (40)', 'TIGHT (40)'].map((heading) =>
      text.indexOf(`\n${heading}\n`),
    );
    expect(order).toEqual(order.toSorted((a, b) => a - b));
    expect(order[0]).toBeGreaterThan(0);
    expect(text).toMatch(/and \d+ more: gantrybook check books\/tidepool --sheet trial/);
  });

  it('asks three questions at most, with instrument, error and what each would settle', () => {
    const text = lines(many('open', 2), { questions }).join('\n');
    expect(text).toContain('3 parts.scrap-3.holding-torque: 0.9..1.3 N·m');
    expect(text).not.toContain('scrap-4');
    expect(text.replaceAll(/\s+/g, ' ')).toContain('with luggage scale and a pulley, 15 min, error ±5 %: Wind a cord');
    expect(text).toContain('settles TRIAL-009/x+M9 in 80 % of that range and 1 more');
  });

  it('names one cure in one sentence, with what else it cures and breaks', () => {
    const says = (alone: Finding): string => lines([alone]).join(' ').replaceAll(/\s+/g, ' ');
    expect(says(finding('fails', 1, { remedies: [remedy] }))).toContain(
      'cure: feed it from the higher rail (drivers.D3.rail 12V → 24V); also cures TRIAL-007/x+M7; no other verdict gets worse',
    );
    const harmful = {
      ...remedy,
      verdict: 'tight' as const,
      alsoCures: [],
      breaks: [{ key: 'TRIAL-002/y', before: 'holds' as const, after: 'fails' as const }],
    };
    expect(says(finding('fails', 1, { remedies: [harmful] }))).toContain(
      '(drivers.D3.rail 12V → 24V); then tight; breaks TRIAL-002/y',
    );
  });

  it('prints what is accepted, and what it no longer is', () => {
    const accepted = finding('fails', 1, { accepted: { because: 'padded there', counts: true } });
    const refused = finding('fails', 2, { accepted: { because: 'padded', counts: false, note: 'it has got worse' } });
    const text = lines([accepted, refused]).join('\n');
    expect(text).toContain('accepted: padded there');
    expect(text).toContain('accepted, and it does not count: it has got worse');
    expect(text).toContain('1 of 2 findings counts against this book (1 accepted).');
  });

  it('keeps to plain ASCII where the terminal knows no more', () => {
    const text = lines(everything, { questions }, { env: { LANG: 'C' } }).join('\n');
    expect(text).toMatch(/^\p{ASCII}*$/u);
    expect(text).toContain('X 40 fails');
  });

  it('is coloured on a terminal only, and not where NO_COLOR asks for none', () => {
    const escape = '\u001b[';
    expect(lines(everything, {}, { live: true }).join('')).toContain(escape);
    expect(lines(everything, {}, { live: true, env: { LANG: 'C.UTF-8', NO_COLOR: '1' } }).join('')).not.toContain(
      escape,
    );
    expect(lines(everything, {}, { env: { LANG: 'C.UTF-8', FORCE_COLOR: '1' } }).join('')).not.toContain(escape);
  });

  it('lets nothing from a book take hold of the terminal', () => {
    const text = lines([
      finding('fails', 1, { sentence: 'M1 \u001b[2J\u0007 is hot.', key: 'TRIAL-001/\u001b]0;x' }),
    ]).join('');
    for (const escape of ['\u001b', '\u0007']) expect(text).not.toContain(escape);
  });

  it('is as wide as the terminal', () => {
    const wide = lines(many('fails', 3), {}, { live: true, columns: 60, env: { LANG: 'C.UTF-8', NO_COLOR: '1' } });
    expect(Math.max(...wide.map(displayWidth))).toBeLessThanOrEqual(60);
  });
});
