/** The facts that Swing tells, worked out from the book. */
import { provide, type Provider } from '../../contract/index.ts';
import { belowHook, belowPivot, fadingOf, hoistsOf } from './calc/book.ts';
import { GRAVITY } from './calc/takes.ts';
import { hangingParameters, type HangingParameters } from './facts.ts';
import type { SwingBook } from './schema.ts';

export const facts: readonly Provider<SwingBook>[] = [
  provide<SwingBook, HangingParameters>(
    hangingParameters,
    (context, hoist) => ({
      gravity: GRAVITY,
      fadingTime: fadingOf(context, hoist).number,
      belowHook: belowHook(context).number,
      line: belowPivot(context, hoist).number,
    }),
    hoistsOf,
  ),
];
