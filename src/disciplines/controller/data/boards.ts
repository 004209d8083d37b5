/** The boards that the trade knows, by the name under which a book calls them. */
import { atmega2560 } from './atmega2560.ts';
import { atmega328p } from './atmega328p.ts';
import type { Board, Pin } from './board.ts';
import { esp32 } from './esp32.ts';
import { rp2040 } from './rp2040.ts';

export const boards: readonly Board[] = [atmega2560, atmega328p, rp2040, esp32];

export const boardNamed = (name: string): Board | undefined => boards.find((board) => board.name === name);

/** The pin that a book means by a name, or none. */
export const pinNamed = (board: Board, name: string): Pin | undefined => {
  const wanted = name.toLowerCase();
  return board.pins.find(({ name: own, also }) => [own, ...also].some((one) => one.toLowerCase() === wanted));
};
