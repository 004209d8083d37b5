/** The words that sheets use for kinds of data. */
import { tag, useText, worstFirst, type Markup, type Used } from '../../figures/index.ts';
import { percentText } from '../../kernel/percent.ts';
import type { Evidence } from '../../kernel/formula.ts';
import type { OpenReason } from '../../kernel/findings.ts';
import type { Finding, Provenance } from '../../kernel/report.ts';
import type { Citation } from '../../kernel/values.ts';
import type { SourceFacts } from './model.ts';

export const provenanceWord: Readonly<Record<Provenance, string>> = {
  stated: 'stated',
  measured: 'measured',
  plate: 'type plate',
  datasheet: 'data sheet',
  table: 'table',
  guess: 'a guess',
};

export const endWord = { low: 'at its low end', high: 'at its high end', inside: 'inside its range' } as const;

export const evidenceWord: Readonly<Record<Evidence['kind'], string>> = {
  published: 'published values',
  'published-secondary': 'published values, read at second hand',
  independent: 'independent calculation',
  law: 'law',
  memory: 'from memory, which is no evidence',
};

export const statusWord: Readonly<Record<SourceFacts['status'], string>> = {
  published: 'published',
  secondary: 'secondary',
  derived: 'own derivation',
  memory: 'memory',
};

export const reasonWord: Readonly<Record<OpenReason, string>> = {
  doubt: 'a fact is in doubt',
  outside: 'outside the range of the formula',
  'did-not-converge': 'the calculation did not converge',
  'still-running': 'still being worked out',
};

/** An id that a page may carry; the same text gives the same id. */
export const idOf = (kind: string, text: string): string =>
  `${kind}-${text.replace(/[^\p{L}\p{N}.-]+/gu, (found) => `_${found.codePointAt(0)?.toString(36) ?? ''}`)}`;

export const cite = (citations: readonly Citation[]): Markup =>
  tag`${citations.map(
    ({ id, at }, i) => tag`${i > 0 ? '; ' : null}<a href="#${idOf('source', id)}">${id}</a>${at ? `, ${at}` : null}`,
  )}`;

export const usedBy = ({ use, verdict, sense }: Finding): Used | undefined =>
  use && sense !== 'yes-no' ? { ...use, verdict } : undefined;

/** `94 % of limit`, with the range where a doubtful fact makes it one. */
export const ofLimit = (used: Used): string => `${useText(used)} of limit`;

export const advisedText = ({ advised }: Used): string => `advised up to ${percentText(advised)}`;

/** Worst verdict first, then the highest use; equal ones keep their order. */
export const byWeight = (findings: readonly Finding[]): readonly Finding[] =>
  findings.toSorted(
    (a, b) =>
      worstFirst.indexOf(a.verdict) - worstFirst.indexOf(b.verdict) || weight(b.use?.worst) - weight(a.use?.worst) || 0,
  );

const weight = (share: number | undefined): number =>
  share === undefined || Number.isNaN(share) ? 0 : Math.min(share, 1e9);

export const count = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;
