/** Every finding of the sheet, worst first. */
import {
  raw,
  tag,
  useScaleSvg,
  useText,
  verdictWord,
  worstFirst,
  type Markup,
  type Used,
} from '../../figures/index.ts';
import { percentText } from '../../kernel/percent.ts';
import type { Verdict } from '../../kernel/findings.ts';
import type { Acceptance, Finding, Remedy } from '../../kernel/report.ts';
import { mark } from './strip.ts';
import { advisedText, byWeight, count, endWord, idOf, reasonWord, usedBy } from './words.ts';

const headings: Readonly<Record<Verdict, string>> = {
  fails: 'What fails',
  open: 'What is open',
  tight: 'What is tight',
  holds: 'What holds',
  'not-stated': 'What is not stated yet',
};

const line = (label: string, content: Markup | string): Markup => tag`<p class="more"><b>${label}</b> ${content}</p>`;

const acceptance = ({ because, until, counts, note }: Acceptance): Markup =>
  line(
    counts ? 'Accepted' : 'No longer accepted',
    `${because}${until ? `, until ${until}` : ''}${/[.!?]$/.test(because) && !until ? '' : '.'}${note ? ` ${note}` : ''}`,
  );

const toFinding = (key: string): Markup => tag`<a href="#${idOf('finding', key)}" data-key="${key}">${key}</a>`;
const listed = (items: readonly Markup[]): Markup => tag`${items.map((item, i) => tag`${i > 0 ? ', ' : null}${item}`)}`;

/** @param own keys of the findings on this sheet, to which a link leads */
const remedy = ({ says, verdict, percent, alsoCures, breaks, edits }: Remedy, own: ReadonlySet<string>): Markup => {
  const named = (key: string): Markup => (own.has(key) ? toFinding(key) : tag`${key}`);
  return line(
    'Remedy',
    tag`${says} Then: ${mark(verdict)}${percent === undefined ? null : ` at ${percentText(percent)} of limit`}${
      alsoCures.length > 0 ? tag`; also cures ${listed(alsoCures.map(named))}` : null
    }${
      breaks.length > 0
        ? tag`; <b>makes worse</b> ${listed(breaks.map(({ key, before, after }) => tag`${named(key)} (${verdictWord[before]} → ${verdictWord[after]})`))}`
        : null
    }.${edits.map(
      ({ path, before, after }) =>
        tag` <span class="edit"><code data-path="${path}">${path}</code> ${before ?? 'not stated'} → ${after ?? 'taken out'}</span>`,
    )}`,
  );
};

const scenario = (finding: Finding): Markup | null => {
  if (finding.scenario.length === 0) return null;
  const ends = finding.scenario.map(
    ({ path, text, end, range }, i) =>
      tag`${i > 0 ? '; ' : null}<code data-path="${path}">${path}</code> ${text} (${range}, ${endWord[end]})`,
  );
  return line('Decided with', tag`${ends}${finding.searched ? '; found by search' : null}.`);
};

/** A share of all of something says the same as the percentage beside it. */
const isShare = ({ demand, limit }: Finding): boolean => demand?.of === 'ratio' && limit?.number === 1;

const asComparison = (finding: Finding): Markup | null => {
  const { demand, limit, sense } = finding;
  return demand && limit && sense !== 'yes-no' && !isShare(finding)
    ? tag`<p class="compare">${demand.text} <span class="aside">${sense === 'at-least' ? 'of at least' : 'of at most'}</span> ${limit.text}</p>`
    : null;
};

const row = (finding: Finding, ref: string, working: string | undefined, own: ReadonlySet<string>): Markup => {
  const { code, designations, mode, place, verdict, reason, missing, key } = finding;
  const used = usedBy(finding);
  const tags = [code, ...designations, ...(mode ? [mode] : [])].join(' · ');
  return tag`<li class="finding v-${verdict}" id="${idOf('finding', key)}" data-key="${key}"><div class="ref">${ref}</div><div class="says"><p class="sentence">${mark(verdict)} ${finding.sentence}</p><p class="tags"><span class="mono">${tags}</span>${
    place ? tag` <span class="place">${place.file}:${place.line}</span>` : null
  }${working ? tag` <a href="#${idOf('working', key)}">working ${working}</a>` : null}</p>${[
    reason ? line('Open because', `${reasonWord[reason.kind]}: ${reason.text}`) : null,
    missing && missing.length > 0
      ? line(
          'Missing',
          tag`${missing.map((path, i) => tag`${i > 0 ? ', ' : null}<code data-path="${path}">${path}</code>`)}`,
        )
      : null,
    finding.accepted ? acceptance(finding.accepted) : null,
    verdict === 'holds' || verdict === 'not-stated' ? null : scenario(finding),
    ...(finding.remedies ?? []).slice(0, 3).map((one) => remedy(one, own)),
  ]}</div>${used && verdict !== 'not-stated' ? usedColumn(finding, used) : null}</li>`;
};

const usedColumn = (finding: Finding, used: Used): Markup =>
  tag`<div class="used"><p class="on-scale">${raw(useScaleSvg(used, 'small', true))} <span class="percent"><b>${useText(used)}</b> <span class="aside">of limit</span></span></p>${asComparison(finding)}${
    finding.verdict === 'holds' ? null : tag`<p class="aside advised">${advisedText(used)}</p>`
  }</div>`;

/**
 * Numbers findings as they stand in the list, worst first.
 * @param findings of one sheet
 * @param zone letter before the numbers
 * @returns number by key
 */
export const numberFindings = (findings: readonly Finding[], zone: string): ReadonlyMap<string, string> =>
  new Map(byWeight(findings).map((finding, i) => [finding.key, `${zone}${i + 1}`]));

/**
 * The list of findings, grouped by verdict.
 * @param findings of this sheet
 * @param refs number of each finding on the sheet
 * @param workingOf where the working of a finding stands
 */
export const findingsList = (
  findings: readonly Finding[],
  refs: ReadonlyMap<string, string>,
  workingOf: (key: string) => string | undefined,
): Markup => {
  if (findings.length === 0)
    return tag`<p class="quiet">Nothing is checked yet: the book states none of the facts that this sheet needs.</p>`;
  const sorted = byWeight(findings);
  const own = new Set(sorted.map(({ key }) => key));
  return tag`${worstFirst.map((verdict) => {
    const same = sorted.filter((finding) => finding.verdict === verdict);
    if (same.length === 0) return null;
    return tag`<section class="group" aria-labelledby="${verdict}"><h3 id="${verdict}">${headings[verdict]} <span class="aside">${count(same.length, 'finding')}</span></h3><ol class="findings">${same.map(
      (finding) => row(finding, refs.get(finding.key) ?? '', workingOf(finding.key), own),
    )}</ol></section>`;
  })}`;
};
