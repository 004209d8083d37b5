/** What pages print beside findings: the sources that they cite, the revisions that the book lists. */
import type { Machine } from '../../app/index.ts';
import type { SourceCard } from '../../app/sources.ts';
import type { Finding, WorkingEntry } from '../../kernel/report.ts';
import type { Revision, SourceFacts } from './model.ts';

const statuses: Readonly<Record<string, SourceFacts['status']>> = {
  published: 'published',
  'published-secondary': 'secondary',
  'own-derivation': 'derived',
  memory: 'memory',
};

const statusOf = ({ id, status }: SourceCard): SourceFacts['status'] => {
  const known = statuses[status];
  if (!known) throw new TypeError(`the source ${id} has the status ${status}, which means nothing`);
  return known;
};

/** Ids of every source that workings cite. */
export const citedIn = (working: readonly WorkingEntry[]): ReadonlySet<string> =>
  new Set(
    working.flatMap(({ source, checked, inputs }) => [
      ...source.map(({ id }) => id),
      ...checked.flatMap((evidence) => (evidence.source ? [evidence.source.id] : [])),
      ...inputs.flatMap(({ from }) => (from.kind === 'constant' && from.source ? [from.source.id] : [])),
    ]),
  );

/**
 * The cited sources, in the order of their ids.
 *
 * @throws TypeError when one that is cited is not there
 */
export const sourceFacts = (
  cited: Iterable<string>,
  sources: ReadonlyMap<string, SourceCard>,
): Record<string, SourceFacts> => {
  const facts: Record<string, SourceFacts> = {};
  for (const id of [...cited].toSorted()) {
    const card = sources.get(id);
    if (!card) throw new TypeError(`${id} is cited, and no source has that name`);
    facts[id] = {
      title: card.title,
      ...(card.edition ? { edition: card.edition } : {}),
      status: statusOf(card),
      where: card.copy ? `${card.read} (${card.copy})` : card.read,
    };
  }
  return facts;
};

/** The sources that findings and their workings cite. */
export const sourcesOf = (
  findings: readonly Finding[],
  sources: ReadonlyMap<string, SourceCard>,
): Record<string, SourceFacts> => sourceFacts(citedIn(findings.flatMap(({ working }) => working)), sources);

export const revisionsOf = ({ book }: Pick<Machine, 'book'>): readonly Revision[] => {
  const listed = book.tree['revisions'];
  if (!Array.isArray(listed)) return [];
  return (listed as readonly { readonly revision?: string; readonly says?: string }[]).map(({ revision, says }) => ({
    revision: revision ?? '',
    text: says ?? '',
  }));
};
