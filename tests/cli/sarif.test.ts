import { readFileSync } from 'node:fs';
import Ajv from 'ajv-draft-04';
import addFormats from 'ajv-formats';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { sarifOf } from '../../src/cli/sarif.ts';
import type { House } from '../../src/app/index.ts';
import type { Finding } from '../../src/kernel/index.ts';
import { finding, remedy } from './findings.ts';

// The schema of the OASIS standard, release 2.1.0-rtm.5, as a package brings it.
const schemaFile = new URL(
  '../../node_modules/@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json',
  import.meta.url,
);
const ajv = new Ajv({ strict: false, allErrors: true, unicodeRegExp: false });
addFormats(ajv);
const isSarif = ajv.compile(JSON.parse(readFileSync(fileURLToPath(schemaFile), 'utf8')) as object);

const house = {
  disciplines: [
    {
      name: 'trial',
      title: 'Trial',
      checks: ['TRIAL-001', 'TRIAL-002', 'TRIAL-003', 'TRIAL-004', 'TRIAL-005', 'TRIAL-006'].map((code) => ({
        code,
        asks: `Does ${code} hold?`,
      })),
    },
  ],
} as unknown as Pick<House, 'disciplines'>;

const findings: readonly Finding[] = [
  finding('fails', 1, { remedies: [remedy] }),
  finding('fails', 2, { accepted: { because: 'padded there', counts: true } }),
  finding('fails', 3, {
    accepted: { because: 'padded', counts: false, note: 'it has got worse' },
    use: { worst: Infinity, best: Infinity, advised: 1 },
  }),
  finding('open', 4),
  finding('tight', 5, { place: undefined }),
  finding('holds', 6),
  finding('not-stated', 6),
];

interface Log {
  readonly runs: readonly [
    {
      readonly tool: { readonly driver: { readonly rules: readonly { readonly id: string }[] } };
      readonly results: readonly {
        readonly ruleId: string;
        readonly ruleIndex: number;
        readonly level: string;
        readonly message: { readonly text: string };
        readonly suppressions?: readonly object[];
        readonly partialFingerprints: object;
        readonly locations: readonly [
          {
            readonly physicalLocation: { readonly artifactLocation: { readonly uri: string }; readonly region: object };
          },
        ];
      }[];
    },
  ];
}

const log = (from = '/repo', folder = '/repo/books/tide pool'): Log =>
  sarifOf({ place: { folder, main: 'book.yaml', typed: '' }, house, findings, version: '1.2.3', from }) as Log;

describe('the SARIF log', () => {
  it('is valid by the schema of the standard', () => {
    expect(isSarif(log()), JSON.stringify(isSarif.errors)).toBe(true);
    expect(isSarif({ ...log(), runs: [{ results: [] }] })).toBe(false);
  });

  it('has a rule for each check, and a result for what fails, is open or is tight', () => {
    const [{ tool, results }] = log().runs;
    expect(tool.driver.rules).toHaveLength(6);
    expect(results.map(({ ruleId, level }) => [ruleId, level])).toEqual([
      ['TRIAL-001', 'error'],
      ['TRIAL-002', 'error'],
      ['TRIAL-003', 'error'],
      ['TRIAL-004', 'warning'],
      ['TRIAL-005', 'note'],
    ]);
    for (const { ruleId, ruleIndex } of results) expect(tool.driver.rules[ruleIndex]?.id).toBe(ruleId);
  });

  it('suppresses what is accepted as long as that counts', () => {
    const [{ results }] = log().runs;
    expect(results.map(({ suppressions }) => suppressions)).toEqual([
      undefined,
      [{ kind: 'inSource', justification: 'padded there' }],
      undefined,
      undefined,
      undefined,
    ]);
  });

  it('names the line, from where the command ran, and no path of this machine', () => {
    const uri = (from: string, folder: string): string | undefined =>
      log(from, folder).runs[0].results[0]?.locations[0].physicalLocation.artifactLocation.uri;
    expect(uri('/repo', '/repo/books/tide pool')).toBe('books/tide%20pool/book.yaml');
    expect(uri('/repo', '/repo')).toBe('book.yaml');
    expect(uri('/elsewhere', '/repo/books')).toBe('book.yaml');
    expect(log().runs[0].results[0]?.locations[0].physicalLocation.region).toEqual({ startLine: 41, startColumn: 5 });
  });

  it('knows a finding again by its key, wherever it has moved', () => {
    expect(log().runs[0].results[0]?.partialFingerprints).toEqual({ 'findingKey/v1': 'TRIAL-001/x+M1' });
  });

  it('says the sentence, the use of the limit and the cure', () => {
    const text = log().runs[0].results[0]?.message.text ?? '';
    expect(text).toContain('Motor M1 must give 0.41 N·m');
    expect(text).toContain('It fails, at 61–182 % of limit.');
    expect(text).toContain('cure: feed it from the higher rail');
  });
});

it('the log of a real book is valid too', async () => {
  const { ran } = await import('./terminals.ts');
  const { shelf, failing } = await import('./books.ts');
  const books = shelf();
  const folder = books.book(failing);
  const file = join(folder, 'log.sarif');
  expect((await ran(['check', folder, '--sarif', file, '--quick'])).code).toBe(1);
  expect(isSarif(JSON.parse(readFileSync(file, 'utf8'))), JSON.stringify(isSarif.errors)).toBe(true);
  books.remove();
});
