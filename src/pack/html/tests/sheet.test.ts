import { describe, expect, it } from 'vitest';
import { firstFault } from '../../../figures/tests/well-formed.ts';
import { cssText } from '../print-style.ts';
import { renderIndex, renderSheet, typefaceFrom } from '../index.ts';
import { byWeight, idOf } from '../words.ts';
import { cover, sheet } from './fixture.ts';
import { findings } from './fixture-findings.ts';

const html = renderSheet(sheet);
const index = renderIndex(cover);
const attributes = (page: string, name: string): readonly string[] =>
  [...page.matchAll(new RegExp(` ${name}="([^"]*)"`, 'g'))].map(([, value = '']) => value);
const words = (page: string): string =>
  page
    .replace(/<style>[^<]*<\/style>/g, '')
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ');

describe.each([
  ['a sheet', html],
  ['the cover', index],
])('%s', (_, page) => {
  it('is well formed and the same bytes every time', () => {
    expect(firstFault(page)).toBeUndefined();
    expect([renderSheet(sheet), renderIndex(cover)]).toContain(page);
  });

  it('asks for nothing from anywhere and runs nothing', () => {
    expect(page).toContain(
      `http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:"`,
    );
    expect(page).not.toMatch(/<script|<link|<img|<iframe|\son\w+=|@import|https?:\/\/(?!www\.w3\.org\/)|javascript:/i);
    expect(page).not.toMatch(/url\((?!data:)/);
  });

  it('has each id once, and each link within the page leads to one', () => {
    const ids = attributes(page, 'id');
    expect(new Set(ids).size).toBe(ids.length);
    for (const href of attributes(page, 'href').filter((one) => one.startsWith('#')))
      expect(ids).toContain(href.slice(1));
    for (const id of attributes(page, 'aria-labelledby')) expect(ids).toContain(id);
  });

  it('has one first heading and skips no level', () => {
    const levels = [...page.matchAll(/<h([1-6])/g)].map(([, level]) => Number(level));
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    for (const [i, level] of levels.entries()) expect(level - (levels[i - 1] ?? 0)).toBeLessThanOrEqual(1);
  });

  it('carries project, sheet, revision and stamp, and disclaims', () => {
    const block = words(page.slice(page.indexOf('class="title-block"')));
    expect(block).toContain('Project Tidepool');
    expect(block).toContain('Revision B');
    expect(block).toContain('Stamp 3f9a02c41be7');
    expect(block).toContain('A holds here is arithmetic, not permission.');
  });

  it('names every sheet of the set and marks itself', () => {
    expect(page).toContain('<a href="swing.html">Swing</a>');
    expect(page.match(/aria-current="page"/g)).toHaveLength(1);
  });
});

describe('the front of a sheet', () => {
  const front = html.slice(0, html.indexOf('id="zone-B"'));

  it('counts every verdict and says which are accepted', () => {
    const strip = words(front.slice(front.indexOf('class="strip"'), front.indexOf('class="worst"')));
    expect(strip).toMatch(/2 fails 1 accepted 1 open 1 tight 3 holds 1 not stated/);
  });

  it('shows the worst that nobody has accepted, worst first', () => {
    const worst = words(front.slice(front.indexOf('class="worst"'), front.indexOf('class="cautions"')));
    expect(worst).toMatch(/145 mN·m.*242 % of limit.*65.6 mN·m.*72–104 % of limit.*61 °C.*90 % of limit/);
    expect(worst).not.toContain('stands by');
  });

  it('has every caution before the findings, and none can be folded away', () => {
    for (const text of ['A raised load falls', 'Never unplug a motor', 'Keep hands out']) expect(front).toContain(text);
    expect(front).not.toContain('<details');
  });

  it('asks at most three questions and says how to measure', () => {
    const [first] = sheet.questions;
    const many = first ? Array.from({ length: 5 }, () => first) : [];
    const page = words(renderSheet({ ...sheet, questions: many }));
    expect(page.match(/stands at 0.9–1.3 N·m/g)).toHaveLength(3);
    expect(page).toContain('2 further doubtful facts matter less.');
    expect(page).toContain('a luggage scale on a 100 mm arm, ±5 %, about 15 minutes.');
  });
});

describe('findings and working', () => {
  it('lists every finding once, worst first, with its word', () => {
    const list = html.slice(html.indexOf('id="zone-B"'), html.indexOf('id="zone-C"'));
    const found = [...list.matchAll(/<li class="finding v-([\w-]+)" id="([^"]*)"/g)];
    expect(found.map(([, , id]) => id)).toEqual(byWeight(findings).map(({ key }) => idOf('finding', key)));
    expect(found.map(([, verdict]) => verdict)).toEqual([
      'fails',
      'fails',
      'open',
      'tight',
      'holds',
      'holds',
      'holds',
      'not-stated',
    ]);
    for (const { sentence } of findings) expect(words(list)).toContain(sentence);
  });

  it('says what a remedy cures and breaks, what is accepted until when, and what is missing', () => {
    const said = words(html);
    expect(said).toMatch(
      /Lower the acceleration of X to 450 mm\/s². Then: holds at 68 % of limit; also cures MOTION-030 M1 ?; makes worse SWING-020 X \(holds → tight\)\./,
    );
    expect(said).toContain('Accepted The claw rests in its dock then, until 2031-05.');
    expect(said).toContain('Missing motors.M3.inductance , motors.M3.leads');
    expect(said).toContain('a fact is in doubt: the holding torque of a motor without a plate.');
  });

  it('shows a shared step once and refers to it afterwards', () => {
    expect(html.match(/id="step-E1"/g)).toHaveLength(1);
    expect(words(html)).toMatch(/E1 r pitch radius of the pulley 6\.37 mm as above/);
  });

  it('gives each input its value and where it comes from', () => {
    const working = words(html.slice(html.indexOf('id="step-E2"')));
    expect(working).toContain('mass that moves 2.6 kg axes.x.mass measured, at its high end');
    expect(working).toMatch(/pitch radius of the pulley 6\.37 mm = 0\.006366 m E1/);
    expect(working).toContain('from memory, which is no evidence : rule of thumb of the trade');
  });

  it('puts numbers with units into the formula, those of earlier steps too', () => {
    const step = html.slice(html.indexOf('id="step-E2"'), html.indexOf('id="step-E3"')).replace(/<[^>]*>/g, '');
    expect(step).toContain('2.6 kg×0.7 m/s²+8 N');
    expect(step).toContain('9.82 N×0.006366 m');
  });

  it('is folded open, so that print shows all of it', () => {
    const details = html.match(/<details[^>]*>/g) ?? [];
    expect(details).toHaveLength(2);
    for (const one of details) expect(one).toContain(' open');
  });

  it('lists each source with how it was read, and refuses to cite one that is not listed', () => {
    const sources = words(html.slice(html.indexOf('>Sources</caption>')));
    expect(sources).toMatch(/STEP-7 Torque of stepping motors at speed, 1998 secondary quoted in MECH-2/);
    const { 'BELT-1': _, ...rest } = sheet.sources;
    expect(() => renderSheet({ ...sheet, sources: rest })).toThrow(
      'sheet motion: the source "BELT-1" is cited and not listed',
    );
  });
});

describe('texts of the book', () => {
  const hostile = `</style><script>alert(1)</script>"'&\u0000`;

  it('cannot leave their place', () => {
    const page = renderSheet({
      ...sheet,
      book: { title: hostile, revision: hostile, file: hostile },
      sheet: { ...sheet.sheet, title: hostile, asks: hostile },
      findings: findings.map((finding) => ({
        ...finding,
        sentence: hostile,
        key: `${finding.key}${hostile}`,
        working: [],
      })),
      document: {
        blocks: [{ kind: 'heading', text: hostile }, { kind: 'paragraph', text: hostile }, { kind: 'findings' }],
      },
    });
    expect(page).not.toContain('<script');
    expect(page.match(/<\/style>/g)).toHaveLength(1);
    expect(firstFault(page)).toBeUndefined();
  });

  it('are escaped in the running line of print', () => {
    expect(cssText('Tidepool · "B"</style>\\')).toBe('"Tidepool · \\22 B\\22 \\3c /style\\3e \\5c "');
  });

  it('make ids that differ where the texts differ', () => {
    expect(idOf('finding', 'A B')).not.toBe(idOf('finding', 'A_B'));
    expect(idOf('finding', 'MOTION-010 M1+M2 «x»')).toMatch(/^finding-[\p{L}\p{N}_.-]+$/u);
  });
});

describe('the sheet of an empty book', () => {
  it('says quietly that nothing is checked yet', () => {
    const page = renderSheet({ ...sheet, findings: [], questions: [] });
    expect(words(page)).toContain('Nothing is checked yet');
    expect(page).not.toContain('class="worst"');
    expect(firstFault(page)).toBeUndefined();
  });
});

describe('the shipped lettering', () => {
  it('goes into the file and keeps it small', () => {
    const faces = typefaceFrom(new URL('../../../../fonts', import.meta.url).pathname);
    expect(faces.match(/@font-face/g)).toHaveLength(5);
    // The fonts of one file stay under 120 kB, so that a printed set of thirteen sheets can be sent by mail.
    expect(faces.length).toBeLessThan(120_000);
    expect(renderSheet(sheet, faces)).toContain('font-family:gb-sans');
  });
});
