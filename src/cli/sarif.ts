/** Findings as SARIF 2.1.0, which code hosts and editors show beside the lines that they are about. */
import { relative, resolve, sep } from 'node:path';
import type { House } from '../app/index.ts';
import { useText } from '../figures/index.ts';
import type { Finding, Verdict } from '../kernel/index.ts';
import type { BookPlace } from './books.ts';
import { cureText, usedBy } from './summary.ts';

const SCHEMA = 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json';

const levels: Partial<Record<Verdict, 'error' | 'warning' | 'note'>> = {
  fails: 'error',
  open: 'warning',
  tight: 'note',
};

/** A path as a reference in a URI, relative to where the command ran wherever that is possible. */
const uriOf = (folder: string, file: string, from: string): string => {
  const path = relative(from, resolve(folder, file));
  // A book outside the working directory is named from its own folder: no path of this machine is given away.
  const shown = path.startsWith('..') || path === resolve(folder, file) ? file : path;
  return shown.split(sep).map(encodeURIComponent).join('/');
};

const messageOf = (finding: Finding): string => {
  const used = usedBy(finding);
  const [remedy] = finding.remedies ?? [];
  return [
    finding.sentence,
    ...(used
      ? [`It ${finding.verdict === 'fails' ? 'fails' : `is ${finding.verdict}`}, at ${useText(used)} of limit.`]
      : []),
    ...(finding.reason ? [`Open: ${finding.reason.text}.`] : []),
    ...(finding.accepted
      ? [`${finding.accepted.counts ? 'Accepted' : 'Accepted, and it does not count'}: ${finding.accepted.because}.`]
      : []),
    ...(remedy ? [`${cureText(remedy)}.`] : []),
  ].join(' ');
};

export interface SarifInput {
  readonly place: BookPlace;
  readonly house: Pick<House, 'disciplines'>;
  readonly findings: readonly Finding[];
  readonly version: string;
  /** The folder that the command ran in. */
  readonly from: string;
}

/** The log of one run: a rule for each check of every trade, a result for each finding that fails, is open or is tight. */
export const sarifOf = ({ place, house, findings, version, from }: SarifInput): object => {
  const checks = house.disciplines.flatMap(({ name, title, checks: own }) =>
    own.map(({ code, asks }) => ({ code, asks, name, title })),
  );
  const results = findings.flatMap((finding) => {
    const level = levels[finding.verdict];
    if (level === undefined) return [];
    const { code, key, sheet, place: at, accepted } = finding;
    const used = usedBy(finding);
    return [
      {
        ruleId: code,
        ruleIndex: checks.findIndex((check) => check.code === code),
        level,
        message: { text: messageOf(finding) },
        locations: [
          {
            physicalLocation: {
              artifactLocation: { uri: uriOf(place.folder, at?.file ?? place.main, from) },
              region: { startLine: at?.line ?? 1, startColumn: at?.column ?? 1 },
            },
            logicalLocations: [{ fullyQualifiedName: key }],
          },
        ],
        partialFingerprints: { 'findingKey/v1': key },
        ...(accepted?.counts ? { suppressions: [{ kind: 'inSource', justification: accepted.because }] } : {}),
        properties: {
          key,
          sheet,
          verdict: finding.verdict,
          ...(finding.reason ? { reason: finding.reason.kind } : {}),
          ...(used && Number.isFinite(used.worst) ? { ofLimit: used.worst } : {}),
        },
      },
    ];
  });
  return {
    $schema: SCHEMA,
    version: '2.1.0',
    runs: [
      {
        tool: {
          driver: {
            name: 'Gantrybook',
            semanticVersion: version,
            rules: checks.map(({ code, asks, name, title }) => ({
              id: code,
              name: `${title} ${code.split('-').at(-1) ?? ''}`.trim(),
              shortDescription: { text: asks },
              properties: { sheet: name },
            })),
          },
        },
        columnKind: 'utf16CodeUnits',
        results,
      },
    ],
  };
};
