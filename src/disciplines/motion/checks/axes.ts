/** What the checks of axes share: which axes a question is about. */
import type { Check, Context, Subject } from '../../../contract/index.ts';
import { NotStated, type Edit, type Lever } from '../../../kernel/index.ts';
import type { MotionBook, SeenAxis } from '../schema.ts';

export type AxisCheck = Check<MotionBook>;
type Subjects = AxisCheck['subjects'];

/** One subject for each axis of which `which` is true. */
export const axesThat =
  (which: (axis: SeenAxis) => boolean): Subjects =>
  (book) =>
    Object.entries(book.axes ?? {})
      .filter(([, axis]) => which(axis))
      .map(([name]): Subject => ({ designations: [name], at: `axes.${name}` }));

/** One subject for each motor of each axis of which `which` is true; the axis alone where its motors are not stated. */
export const motorsOfAxesThat =
  (which: (axis: SeenAxis) => boolean): Subjects =>
  (book) =>
    Object.entries(book.axes ?? {})
      .filter(([, axis]) => which(axis))
      .flatMap(([name, { motors }]): Subject[] =>
        motors === undefined || motors.length === 0
          ? [{ designations: [name], at: `axes.${name}` }]
          : motors.map((motor) => ({ designations: [name, motor], at: `axes.${name}` })),
      );

/** Name of the axis that a subject is about. */
export const axisName = ({ designations: [name] }: Subject): string => name!;
/** Name of its motor, or NotStated. */
export const motorName = ({ designations: [, motor], at }: Subject): string => {
  if (motor === undefined) throw new NotStated([`${at}.motors`]);
  return motor;
};

export const isBelt = (axis: SeenAxis): boolean => axis.drive === 'belt';
export const isHoist = (axis: SeenAxis): boolean => axis.drive === 'hoist';
export const isScrew = (axis: SeenAxis): boolean => axis.drive === 'screw';
export const isPair = (axis: SeenAxis): boolean => (axis.motors?.length ?? 0) > 1;

type Book = Context<MotionBook>['book'];

/** Designations of signals that are used, whether or not the book describes them. */
const usedSignals = ({ signals, axes }: Book): ReadonlySet<string> =>
  new Set([
    ...Object.keys(signals ?? {}),
    ...Object.values(axes ?? {}).flatMap((axis) => [
      ...(axis.switches?.min ?? []),
      ...(axis.switches?.max ?? []),
      ...(axis['slack-switch'] === undefined ? [] : [axis['slack-switch']]),
    ]),
  ]);

const freeSignals = (book: Book, wanted: number): readonly string[] => {
  const used = usedSignals(book);
  const free: string[] = [];
  for (let number = 1; free.length < wanted; number++) if (!used.has(`S${number}`)) free.push(`S${number}`);
  return free;
};

/** Edits that describe a new switch, closed at rest so that a broken wire counts as pressed; none in a book that describes no signals. */
const switchNamed = ({ signals }: Book, name: string, about: string): readonly Edit[] =>
  signals === undefined
    ? []
    : [
        { path: `signals.${name}.kind`, text: 'switch' },
        { path: `signals.${name}.contact`, text: 'normally-closed' },
        { path: `signals.${name}.about`, text: about },
      ];

/** Adds a switch that feels slack line. */
export const addSlackSwitch = (book: Book, axis: string): Lever => {
  const [name] = freeSignals(book, 1);
  return {
    set: [...switchNamed(book, name!, 'slack line'), { path: `axes.${axis}.slack-switch`, text: name! }],
    means: 'a lever with a switch that feels slack line',
  };
};

/** Adds home switches to those that are there, until each side has one. */
export const addHomeSwitches = (book: Book, axis: string, there: readonly string[], sides: number): Lever => {
  const added = freeSignals(book, Math.max(0, sides - there.length));
  return {
    set: [
      ...added.flatMap((name) => switchNamed(book, name, `a side of ${axis} is home`)),
      { path: `axes.${axis}.switches.min`, text: `[${[...there, ...added].join(', ')}]` },
    ],
    means: 'a home switch for each side',
  };
};
