/** What the checks share: what a question is about, and what to turn when it fails. */
import type { Check, Subject } from '../../../contract/index.ts';
import type { Lever } from '../../../kernel/index.ts';
import { carriersOf, hoistsOf } from '../calc/book.ts';
import type { SwingBook } from '../schema.ts';

export type SwingCheck = Check<SwingBook>;

/** One subject for each hoist. */
export const eachHoist: SwingCheck['subjects'] = (book) =>
  hoistsOf(book).map((hoist): Subject => ({ designations: [hoist], at: `axes.${hoist}` }));

/** One subject for each hoist and each level axis that carries it. */
export const eachCarrier: SwingCheck['subjects'] = (book) =>
  hoistsOf(book).flatMap((hoist) =>
    carriersOf(book).map((axis): Subject => ({ designations: [hoist, axis], at: `axes.${axis}` })),
  );

export const hoistOf = ({ designations: [hoist] }: Subject): string => hoist!;
export const carrierOf = ({ designations: [, axis] }: Subject): string => axis!;

/** A cup that holds it while it travels. */
export const cup = (hoist: string): Lever => ({
  set: [{ path: `axes.${hoist}.dock.kind`, text: 'cup' }],
  means: 'a cup that holds the load while it travels',
});

/** What makes a travel start less swing. */
export const gentler = (axis: string): readonly Lever[] => [
  { turn: `axes.${axis}.acceleration`, toward: 'lower', means: 'speed up and slow down more gently' },
  { turn: `axes.${axis}.speed`, toward: 'lower', means: 'travel more slowly' },
];

/** What makes a hoisted load arrive nearer to the plumb line. */
export const calmer = (hoist: string): readonly Lever[] => [
  { turn: `axes.${hoist}.speed`, toward: 'lower', means: 'hoist more slowly, so that the swing has time to fade' },
];
