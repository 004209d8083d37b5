/** What stands in front: how many hold, what is worst, what to beware of, what to measure first. */
import { markSvg, raw, tag, useScaleSvg, verdictWord, worstFirst, type Markup } from '../../figures/index.ts';
import type { Verdict } from '../../kernel/findings.ts';
import { percentText } from '../../kernel/percent.ts';
import type { Finding, Question } from '../../kernel/report.ts';
import { byWeight, count, idOf, ofLimit, usedBy } from './words.ts';

export const mark = (verdict: Verdict): Markup =>
  tag`<span class="mark v-${verdict}">${raw(markSvg(verdict))}<span class="word">${verdictWord[verdict]}</span></span>`;

const accepted = (finding: Finding): boolean => finding.accepted?.counts === true;

export interface Tally {
  readonly verdict: Verdict;
  readonly all: number;
  readonly accepted: number;
}

export const tally = (findings: readonly Finding[]): readonly Tally[] =>
  worstFirst.map((verdict) => {
    const same = findings.filter((finding) => finding.verdict === verdict);
    return { verdict, all: same.length, accepted: same.filter(accepted).length };
  });

/** Counts by verdict, each with its mark and word; links to where they stand, on a sheet that lists them. */
export const verdictStrip = (findings: readonly Finding[], linked: boolean): Markup =>
  tag`<ul class="strip" aria-label="Verdicts">${tally(findings).map(({ verdict, all, accepted: some }) => {
    const inner = tag`<span class="count">${all}</span> ${mark(verdict)}${some > 0 ? tag` <span class="aside">${some} accepted</span>` : null}`;
    const none = all === 0 ? ' none' : '';
    return tag`<li class="v-${verdict}${none}">${linked && all > 0 ? tag`<a href="#${verdict}">${inner}</a>` : inner}</li>`;
  })}</ul>`;

/** The findings that a reader must not miss: at most three that fail, are open or tight, each on its scale. */
export const worstOf = (findings: readonly Finding[]): Markup | null => {
  const worst = byWeight(findings.filter((f) => ['fails', 'open', 'tight'].includes(f.verdict) && !accepted(f))).slice(
    0,
    3,
  );
  if (worst.length === 0) return null;
  return tag`<ol class="worst" aria-label="The worst">${worst.map((finding) => {
    const used = usedBy(finding);
    return tag`<li data-key="${finding.key}"><p>${mark(finding.verdict)} <a href="#${idOf('finding', finding.key)}">${finding.sentence}</a></p>${
      used
        ? tag`<div class="scale">${raw(useScaleSvg(used, 'large', true))}<span class="percent">${ofLimit(used)}</span></div>`
        : null
    }</li>`;
  })}</ol>`;
};

/** Cautions in their frame; they are never folded away. */
export const cautions = (texts: readonly string[]): Markup | null =>
  texts.length === 0
    ? null
    : tag`<section class="cautions" aria-labelledby="cautions"><h2 id="cautions">Caution</h2><ul>${texts.map((text) => tag`<li>${text}</li>`)}</ul></section>`;

const share = (part: number): string =>
  part >= 0.995 ? 'wherever it lies' : `in ${Math.round(part * 100)} % of its range`;

const question = ({ path, stands, settles, narrows, measure, place }: Question, known: ReadonlySet<string>): Markup => {
  const linked = (key: string): Markup | string =>
    known.has(key) ? tag`<a href="#${idOf('finding', key)}" data-key="${key}">${key}</a>` : key;
  const settled = settles
    .slice(0, 3)
    .map(({ key, share: part }, i) => tag`${i > 0 ? '; ' : null}${linked(key)} ${share(part)}`);
  const narrowed = narrows
    .slice(0, 3)
    .map(
      ({ key, from, to }, i) =>
        tag`${i > 0 ? '; ' : null}${linked(key)} from ${percentText(from)} of limit to ${percentText(to)} at best`,
    );
  const more = settles.length > 3 ? ` and ${settles.length - 3} more` : '';
  return tag`<li><p><code data-path="${path}">${path}</code> stands at <b>${stands}</b>${place ? tag` <span class="place">${place.file}:${place.line}</span>` : null}.</p>${
    measure
      ? tag`<p>Measure ${measure.what} with ${measure.instrument}, ${measure.error}, about ${count(measure.minutes, 'minute')}. ${measure.procedure}</p>`
      : null
  }${settles.length > 0 ? tag`<p class="aside">Settles ${settled}${more}.</p>` : null}${
    narrows.length > 0 ? tag`<p class="aside">Narrows ${narrowed}.</p>` : null
  }</li>`;
};

/**
 * The questions in front, at most three.
 * @param questions most telling first
 * @param keys findings that this page shows and can link to
 */
export const questionsInFront = (questions: readonly Question[], keys: ReadonlySet<string>): Markup | null =>
  questions.length === 0
    ? null
    : tag`<section class="questions" aria-labelledby="questions"><h2 id="questions">What would settle it</h2><ol>${questions
        .slice(0, 3)
        .map((one) =>
          question(one, keys),
        )}</ol>${questions.length > 3 ? tag`<p class="aside">${questions.length - 3} further doubtful facts matter less.</p>` : null}</section>`;
