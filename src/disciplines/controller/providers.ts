/** Facts of steps, contacts and currents. */
import { provide, type Provider } from '../../contract/index.ts';
import { constant, greatest, NotStated, type Value } from '../../kernel/index.ts';
import { driveFacts, effectiveRadius, motorFacts, travelProfile } from '../motion/facts.ts';
import {
  assignment,
  believedAfter,
  BOARD,
  boardName,
  pinOf,
  stepRate,
  steppingShare,
  stepTicks,
  type PinFacts,
} from './facts.ts';
import type { ControllerBook } from './schema.ts';
import {
  boardOf,
  debounceOf,
  driverNames,
  isContact,
  ofTable,
  signalNames,
  steppedAxes,
  tableOf,
  type Book,
  type ControllerContext,
} from './calc/book.ts';
import { assignmentOf, pinIn } from './calc/pins.ts';
import { interruptShare, stepFrequency, timeToBelieve } from './calc/timing.ts';

const rateOf = (context: ControllerContext, axis: string): Value => {
  const motors = context.book.axes?.[axis]?.motors ?? [];
  if (motors.length === 0) throw new NotStated([`axes.${axis}.motors`]);
  const { speed } = context.get(travelProfile, axis);
  const radius = context.get(effectiveRadius, axis);
  return greatest(
    ...motors.map((motor) =>
      stepFrequency.work({
        speed,
        radius,
        teeth: context.get(motorFacts.teeth, motor),
        microsteps: context.get(driveFacts.microsteps, motor),
      }),
    ),
  );
};

const ofStepping = (book: Book, key: 'ticks' | 'cycles' | 'cycles-each'): Value => {
  const found = tableOf(book).stepping?.[key];
  if (found === undefined) throw new NotStated([`controller.stepping.${key}`]);
  return found;
};

const shareOf = ({ book, get }: ControllerContext): Value => {
  const board = boardOf(book);
  return interruptShare.work({
    ticks: get(stepTicks, BOARD),
    own: ofStepping(book, 'cycles'),
    each: ofStepping(book, 'cycles-each'),
    drives: constant(driverNames(book).length, 'count', 'drives of the book'),
    clock: constant(board.clock.is, 'frequency', `clock of the ${board.name}`, board.clock.source),
  });
};

const believed = ({ book }: ControllerContext, signal: string): Value =>
  timeToBelieve.work({ debounce: debounceOf(book, signal), scan: ofTable(book, 'scan') });

const has = (book: Book): readonly string[] => (book.controller === undefined ? [] : [BOARD]);

export const providers: readonly Provider<ControllerBook>[] = [
  provide<ControllerBook, ReturnType<typeof assignmentOf>>(assignment, assignmentOf),
  provide<ControllerBook, PinFacts>(pinOf, (context, signal) => pinIn(context.get(assignment, BOARD), signal)),
  provide<ControllerBook, string>(boardName, ({ book }) => boardOf(book).name),
  provide<ControllerBook, Value>(stepRate, rateOf, steppedAxes),
  provide<ControllerBook, Value>(
    stepTicks,
    ({ book }) => ofStepping(book, 'ticks'),
    (book) => (book.controller?.stepping === undefined ? [] : has(book)),
  ),
  provide<ControllerBook, Value>(steppingShare, shareOf, (book) =>
    book.controller?.stepping === undefined ? [] : has(book),
  ),
  provide<ControllerBook, Value>(believedAfter, believed, (book) =>
    book.controller === undefined ? [] : signalNames(book).filter((name) => isContact(book, name)),
  ),
];
