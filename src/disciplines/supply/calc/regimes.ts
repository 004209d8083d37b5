/**
 * What can go on for so long that things settle: players who queue, so that the modes of play follow each other by their
 * shares of the time; and each idle mode by itself, for nights.
 */
import { entry, need } from '../../../contract/index.ts';
import type { Value } from '../../../kernel/index.ts';
import { isIdle, modesOf, type SupplyContext } from './book.ts';
import { meanPower } from './loads.ts';

type Book = SupplyContext['book'];

/** Modes that follow each other. */
export type Regime = readonly string[];

export const regimesOf = (book: Book): readonly Regime[] => {
  const modes = modesOf(book);
  const play = modes.filter((mode) => !isIdle(book, mode));
  return [...(play.length > 0 ? [play] : []), ...modes.filter((mode) => isIdle(book, mode)).map((mode) => [mode])];
};

/** Shares of the opening time of the modes of a regime. */
export const dutiesOf = (book: Book, regime: Regime): readonly Value[] =>
  regime.map((mode) => need(entry(book.modes, 'modes', mode, 'modes'), 'duty').duty);

/** Mean power over a regime; a mode that goes on by itself needs no share. */
export const meanOver = (book: Book, regime: Regime, powers: readonly Value[]): Value =>
  powers.length === 1 ? powers[0]! : meanPower.work({ duties: dutiesOf(book, regime), powers });
