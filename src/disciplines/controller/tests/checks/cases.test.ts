import { describe, expect, it } from 'vitest';
import { checkBook } from '../../../../app/testing.ts';
import { checks } from '../../checks/all.ts';
import { base, ownHouse } from '../base.ts';
import { cases } from '../cases.ts';

const machine = checkBook(base, ownHouse);

describe.each(cases)('$finding $verdict: $because', ({ finding, verdict, edits }) => {
  it('as it was reckoned', () => {
    const text = machine.editedTexts(edits).get(machine.book.main) ?? base;
    const found = checkBook(text, ownHouse).findings.find(({ key }) => key === finding);
    expect(found?.verdict, `${found?.sentence ?? 'no such finding'} ${found?.reason?.text ?? ''}`).toBe(verdict);
  });
});

it('each check has a case that holds and one that fails, and an open one where a fact behind it can be doubtful', () => {
  const seen = (code: string): readonly string[] =>
    cases.filter(({ finding }) => finding.startsWith(code)).map(({ verdict }) => verdict);
  const doubtful = new Set(
    machine.findings
      .filter(({ uses }) =>
        uses.some((path) => ownHouse.schema.keyInfo(path, machine.snapshot.tree)?.range === 'doubt'),
      )
      .map(({ code }) => code),
  );
  for (const { code } of checks) {
    expect(seen(code), code).toContain('holds');
    expect(seen(code), code).toContain('fails');
    if (doubtful.has(code)) expect(seen(code), code).toContain('open');
  }
});

it('on the base book everything that is asked holds', () => {
  const own = machine.findings.filter(({ sheet }) => sheet === 'controller');
  expect(own.filter(({ verdict }) => verdict !== 'holds').map(({ key }) => key)).toEqual([]);
});
