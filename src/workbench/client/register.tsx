/** The list of the set: each sheet by its number, with its worst verdict and how many of them. */
import { worstFirst, verdictWord } from '../../figures/mark.ts';
import type { Verdict } from '../../kernel/index.ts';
import type { FindingCard, LaidBook } from '../desk/engine.ts';
import { useDesk } from './desk.ts';
import { hashOf } from './routes.ts';
import { Mark } from './uses.tsx';

/** The worst verdict that counts, and how many findings have it. What the author accepted counts only when nothing else does. */
const worstOf = (findings: readonly FindingCard[]): { verdict: Verdict; count: number } | undefined => {
  for (const among of [findings.filter(({ accepted }) => !accepted), findings]) {
    for (const verdict of worstFirst) {
      const count = among.filter((finding) => finding.verdict === verdict).length;
      if (count > 0) return { verdict, count };
    }
  }
  return undefined;
};

const countWords = (findings: readonly FindingCard[]): string =>
  worstFirst
    .map((verdict) => ({ verdict, count: findings.filter((finding) => finding.verdict === verdict).length }))
    .filter(({ count }) => count > 0)
    .map(({ verdict, count }) => `${count} ${verdictWord[verdict]}`)
    .join(', ');

export const Register = ({ laid, here }: { readonly laid: LaidBook; readonly here: string | undefined }) => {
  const desk = useDesk();
  const moved = new Set(desk.moved.value.map(({ sheet }) => sheet));
  return (
    <nav aria-label="Sheets of the set">
      <ol class="register">
        {laid.sheets.map(({ name, number, title, asks }) => {
          const findings = laid.findings.filter(({ sheet }) => sheet === name);
          const worst = worstOf(findings);
          return (
            <li key={name}>
              <a
                href={hashOf({ page: 'sheet', name })}
                title={`${asks}\n${countWords(findings)}`}
                aria-current={name === here ? 'page' : undefined}
                class={moved.has(name) ? 'has-moved' : ''}
              >
                <span class="number">{number}</span>
                <span class="title">{title}</span>
                <span class="state">
                  {worst ? (
                    <>
                      {worst.count} <Mark verdict={worst.verdict} />
                      <span class="aside">of {findings.length}</span>
                    </>
                  ) : (
                    <span class="aside">nothing asked yet</span>
                  )}
                </span>
              </a>
            </li>
          );
        })}
      </ol>
    </nav>
  );
};
