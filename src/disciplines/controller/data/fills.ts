/** What is taken for contacts, pull-ups, cells and the stepping interrupt where the book is silent. */
import type { Fill, FillView } from '../../../contract/index.ts';
import type { Citation } from '../../../kernel/index.ts';
import { boardNamed } from './boards.ts';

const EXPERIENCE: Citation = { id: 'controller-experience' };
const contacts: readonly string[] = ['switch', 'button', 'stop', 'door'];

const fill = (path: string, text: string, means: string, source: Citation): Fill => ({
  path,
  text,
  provenance: 'table',
  source,
  means,
});

const ofSignals = (book: FillView): Fill[] => {
  const board = boardNamed(book.text('controller.board') ?? '');
  return book.names('signals').flatMap((name): Fill[] => {
    const at = `signals.${name}`;
    const pull = board?.pull;
    return [
      ...(contacts.includes(book.text(`${at}.kind`) ?? '')
        ? [fill(`${at}.bounce`, '0.5..6 ms', 'contacts of small switches', EXPERIENCE)]
        : []),
      ...(pull && book.text(`${at}.pull`) === 'internal'
        ? [
            fill(
              `${at}.pull-resistance`,
              `${pull.is[0] / 1000}..${pull.is[1] / 1000} kohm`,
              `pull-up inside the ${board.name}`,
              pull.source,
            ),
          ]
        : []),
    ];
  });
};

/** For books that name a board. */
export const controllerFills = (book: FillView): readonly Fill[] => {
  const board = boardNamed(book.text('controller.board') ?? '');
  if (board === undefined) return [];
  return [
    ...ofSignals(book),
    ...(book.has('controller.stepping')
      ? [
          fill(
            'controller.stepping.cycles',
            board.cycles.is.own,
            'entry, exit and bookkeeping of such an interrupt',
            board.cycles.source,
          ),
          fill(
            'controller.stepping.cycles-each',
            board.cycles.is.each,
            'adding up, comparing and setting pins for one drive',
            board.cycles.source,
          ),
        ]
      : []),
    ...(book.has('controller.keeps')
      ? [
          fill(
            'controller.keeps.bears',
            board.wear.is[0] === board.wear.is[1]
              ? String(board.wear.is[0])
              : `${board.wear.is[0]}..${board.wear.is[1]}`,
            `cells of the ${board.name}`,
            board.wear.source,
          ),
        ]
      : []),
  ];
};
