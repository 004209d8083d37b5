/** One sheet on the terminal, as long as it is: every finding with its scenario, working and cures. */
import type { Discipline } from '../contract/index.ts';
import { worstFirst, verdictWord } from '../figures/index.ts';
import type { Finding } from '../kernel/index.ts';
import { cureText, headLine, header, paintOf, strip, worstFirstOf, type SummaryInput } from './summary.ts';
import type { Terminal } from './terminal.ts';
import { wrap } from './text.ts';

const endText = { low: 'at its low end', high: 'at its high end', inside: 'inside its range' } as const;

/** Where to follow a number with a pencil: the formulas in their order, each of which `gantrybook work` runs alone. */
const workedBy = ({ working }: Finding): string | undefined =>
  working.length === 0 ? undefined : [...new Set(working.map(({ formula }) => formula))].join(', ');

const details = (finding: Finding): readonly string[] => {
  const { reason, accepted, demand, limit, scenario, searched, beside, questions, remedies } = finding;
  const worked = workedBy(finding);
  return [
    ...(reason ? [`open: ${reason.text}`] : []),
    ...(accepted
      ? [
          `${accepted.counts ? 'accepted' : 'accepted, and it does not count'}: ${accepted.because}${accepted.until ? `, until ${accepted.until}` : ''}${accepted.note ? ` (${accepted.note})` : ''}`,
        ]
      : []),
    ...(demand && limit
      ? [`${demand.text} of ${finding.sense === 'at-least' ? 'at least' : 'at most'} ${limit.text}`]
      : []),
    ...(scenario.length > 0
      ? [
          `decided with ${scenario.map(({ path, text, end }) => `${path} ${text} ${endText[end]}`).join('; ')}${searched ? '; searched' : ''}`,
        ]
      : []),
    ...Object.entries(beside).map(([name, { text }]) => `${name}: ${text}`),
    ...(worked ? [`worked by ${worked}`] : []),
    ...(questions ?? []).map(
      ({ path, stands, measure }) =>
        `would be settled by ${path} (${stands})${measure ? `, with ${measure.instrument}` : ''}`,
    ),
    ...(remedies ?? []).map(cureText),
  ];
};

const block = (finding: Finding, terminal: Terminal): string[] => {
  const { columns, text } = terminal;
  const indented = (words: string): string[] => wrap(text(words), { width: columns, first: '  ', next: '    ' });
  return [
    headLine(finding, terminal),
    ...wrap(text(finding.asks), { width: columns, first: '  ' }).map(terminal.colours.dim),
    ...wrap(text(finding.sentence), { width: columns, first: '  ' }),
    ...details(finding).flatMap(indented),
    '',
  ];
};

export const sheetView = (input: SummaryInput, discipline: Discipline, terminal: Terminal): string[] => {
  const own = input.findings.filter(({ sheet }) => sheet === discipline.name);
  const { colours, text, columns } = terminal;
  const groups = worstFirst.flatMap((verdict) => {
    const some = worstFirstOf(own.filter((finding) => finding.verdict === verdict));
    if (some.length === 0) return [];
    const words = paintOf(terminal, verdict)(colours.bold(verdictWord[verdict].toUpperCase()));
    return [words, ...some.flatMap((finding) => block(finding, terminal))];
  });
  return [
    header(input, terminal),
    '',
    ...strip({ findings: own, house: { disciplines: [discipline] } }, terminal),
    ...wrap(text(discipline.asks), { width: columns }).map(colours.dim),
    '',
    ...groups,
    ...(discipline.cautions.length > 0
      ? [
          colours.bold('CAUTIONS'),
          ...discipline.cautions.flatMap((caution) => wrap(text(caution), { width: columns, first: '- ', next: '  ' })),
          '',
        ]
      : []),
    colours.dim(text('Any formula alone, with numbers of your own: gantrybook work NAME')),
  ];
};
