import { describe, expect, it } from 'vitest';
import type { Finding } from '../../kernel/index.ts';
import { acceptanceOf } from '../acceptance.ts';
import { base, find, houseOf, open } from './bench.ts';

/** 5·40·g·0.8³/(32·10 GPa·0.3 m·(18 mm)³) = 1.794 mm of 1.2 mm: 149.5 %, by pencil. */
const sagging = base.replace('10..20 kg', '40 kg');
const accepted = (entry: string, { today, book = sagging }: { today?: string; book?: string } = {}): Finding =>
  find(
    open(`${book}accepted: [${entry}]\n`, houseOf(today === undefined ? {} : { today })),
    /finding: ([^ ,}]+)/.exec(entry)![1]!,
  );
const on = (more: string) => `{ finding: SHELF-010/top, because: it is only for a week${more} }`;

describe('an acceptance', () => {
  it('leaves the verdict and says why it does not count', () => {
    const finding = accepted(on(', at: 150 %'));
    expect(finding.verdict).toBe('fails');
    expect(finding.accepted).toEqual({ because: 'it is only for a week', counts: true });
  });

  it('counts up to the percentage at which it was given, and not when it got worse', () => {
    expect(accepted(on(', at: 149.5 %')).accepted?.counts).toBe(true);
    const worse = accepted(on(', at: 140 %')).accepted;
    expect(worse?.counts).toBe(false);
    expect(worse?.note).toBe('accepted at 140 % of limit, and it has got worse');
  });

  it('of a failure wants the percentage', () => {
    expect(accepted(on('')).accepted?.note).toContain('add `at: … %`');
    const yesNo = accepted('{ finding: SHELF-030/top, because: a wall }', {
      book: base.replace('    backstop: true\n', ''),
    });
    expect(yesNo.verdict).toBe('fails');
    expect(yesNo.accepted?.counts).toBe(true);
  });

  it('runs out on the day after it was given for, when there is a calendar', () => {
    const until = on(', at: 150 %, until: 2027-05-01');
    expect(accepted(until, { today: '2027-05-01' }).accepted?.counts).toBe(true);
    const over = accepted(until, { today: '2027-05-02' }).accepted;
    expect(over).toMatchObject({ counts: false, until: '2027-05-01' });
    expect(over?.note).toBe('accepted until 2027-05-01, which has passed');
    expect(accepted(until).accepted).toMatchObject({ counts: true, until: '2027-05-01' });
  });

  it('without a real day does not last for ever', () => {
    for (const day of ['next spring', '2027-5-1', 'May 2027'])
      expect(accepted(on(`, at: 150 %, until: "${day}"`), { today: '2026-01-01' }).accepted?.counts).toBe(false);
  });

  it('never takes away what guards people', () => {
    const low = base.replace('1.2..1.5 m', '0.8 m');
    const finding = accepted('{ finding: SHELF-050/top, because: nobody comes here, at: 200 % }', { book: low });
    expect(finding.verdict).toBe('fails');
    expect(finding.accepted).toMatchObject({ counts: false, note: 'what guards people cannot be accepted away' });
  });

  it('at a percentage does not cover that there is none any more', () => {
    const entry = open(`${sagging}accepted: [${on(', at: 150 %')}]\n`);
    const finding = find(entry, 'SHELF-010/top');
    const given = {
      finding: finding.key,
      because: 'so',
      at: (entry.book.tree['accepted'] as readonly { at: never }[])[0]!.at,
    };
    const { use: _use, sense: _sense, ...bare } = finding;
    expect(acceptanceOf(bare, given, {} as never, undefined).counts).toBe(false);
    expect(acceptanceOf(finding, given, {} as never, undefined).counts).toBe(true);
  });

  it('of a finding that is not there is told, with the nearest key', () => {
    const { warnings } = open(`${sagging}accepted: [{ finding: SHELF-010/tap, because: mistyped }]\n`);
    expect(warnings).toEqual([
      expect.objectContaining({
        path: 'accepted.0.finding',
        severity: 'warning',
        what: 'This book has no finding SHELF-010/tap, so nothing is accepted by it.',
        allowed: 'SHELF-010/top is the nearest.',
      }),
    ]);
    expect(open(`${sagging}accepted: [${on(', at: 150 %')}]\n`).warnings).toEqual([]);
  });
});
