/** Reads what stands in the book about an axis; what does not follow from anything else is NotStated. */
import { entry, need, pathOf, type Context } from '../../../contract/index.ts';
import { constant, given, greatest, NotStated, type Value } from '../../../kernel/index.ts';
import type { MotionBook, SeenAxis } from '../schema.ts';
import { evenShare, massTogether } from './axis-load.ts';
import { beltStiffness } from './belt-stretch.ts';
import { spanTension } from './belt-tension.ts';
import { firstLayerLength, layersNeeded, turnsOnDrum, turnsPerLayer } from './drum.ts';
import { stoppingDistance } from './trapezoid.ts';

export type MotionContext = Context<MotionBook>;

/** The axis of that name, or NotStated. */
export const axisOf = ({ book }: MotionContext, name: string): SeenAxis => entry(book.axes, 'axes', name, 'axes');

/** A count of the book as a value that knows where it stands. */
export const counted = <T extends object>(of: T, key: keyof T & string): Value => {
  const path = `${pathOf(of)}.${key}`;
  const found = (need(of, key) as unknown as Readonly<Record<string, number>>)[key]!;
  return given(found, 'count', path);
};

/** A group of keys such as `drum`, or NotStated. */
export const groupOf = <K extends 'drum' | 'line' | 'fairlead' | 'screw' | 'stopping'>(
  axis: SeenAxis,
  key: K,
): NonNullable<SeenAxis[K]> => {
  const group = axis[key];
  if (group === undefined) throw new NotStated([`${pathOf(axis)}.${key}`]);
  return group;
};

export const beltOf = ({ book }: MotionContext, axis: SeenAxis) =>
  entry(book.parts, 'parts', axis.belt, `${pathOf(axis)}.belt`);

export const motorsOf = (axis: SeenAxis): readonly string[] => {
  const { motors } = need(axis, 'motors');
  if (motors.length === 0) throw new NotStated([`${pathOf(axis)}.motors`]);
  return motors;
};

/** Belts side by side: as stated, or one for each motor. */
export const beltsOf = (axis: SeenAxis): Value =>
  axis.belts === undefined ? given(motorsOf(axis).length, 'count', `${pathOf(axis)}.motors`) : counted(axis, 'belts');

/** Whether what it moves hangs on it. */
export const isRaising = (axis: SeenAxis): boolean =>
  axis.drive === 'hoist' || (axis.incline !== undefined && axis.incline.number > 0);

/** The largest share of the axis on one motor: even where nothing is said, and never less than that. */
export const shareOf = (axis: SeenAxis): Value => {
  const even = evenShare.work({ motors: given(motorsOf(axis).length, 'count', `${pathOf(axis)}.motors`) });
  return axis.share === undefined || motorsOf(axis).length === 1 ? even : greatest(axis.share, even);
};

export const massOf = (axis: SeenAxis): Value => {
  const own = need(axis, 'moving-mass')['moving-mass'];
  return axis.load === undefined ? own : massTogether.work({ own, load: axis.load });
};

/** Line on the drum with the load at the top, dead turns included. */
export const lineOnDrum = (axis: SeenAxis): Value => {
  const drum = groupOf(axis, 'drum');
  const sizes = { drum: need(drum, 'diameter').diameter, line: need(groupOf(axis, 'line'), 'diameter').diameter };
  const { travel } = need(axis, 'travel');
  const turns = turnsOnDrum.work({ travel, ...sizes, dead: counted(drum, 'dead-turns') });
  return firstLayerLength.work({ turns, ...sizes });
};

/** Distance from turn to turn: as cut, or line beside line. */
export const layOf = (axis: SeenAxis): Value =>
  groupOf(axis, 'drum').lay ?? need(groupOf(axis, 'line'), 'diameter').diameter;

export const layersOf = (axis: SeenAxis): Value => {
  const drum = groupOf(axis, 'drum');
  const { diameter } = need(groupOf(axis, 'line'), 'diameter');
  const turns = turnsPerLayer.work({ width: need(drum, 'width').width, lay: layOf(axis) });
  return layersNeeded.work({ length: lineOnDrum(axis), turns, drum: need(drum, 'diameter').diameter, line: diameter });
};

/** Tension of the belt at rest: as stated, or from the note of a span. */
export const pretensionOf = (context: MotionContext, axis: SeenAxis): Value => {
  const { note } = axis;
  if (axis.pretension !== undefined || note === undefined) return need(axis, 'pretension').pretension;
  const { span, tone } = need(note, 'span', 'tone');
  return spanTension.work({ mass: need(beltOf(context, axis), 'mass-per-length')['mass-per-length'], span, tone });
};

/** Stiffness of the belts with the carriage farthest from the motor, where it is least. */
export const softestDrive = (context: MotionContext, axis: SeenAxis): Value => {
  const span = need(axis, 'belt-span')['belt-span'];
  const axial = need(beltOf(context, axis), 'axial-stiffness')['axial-stiffness'];
  return beltStiffness.work({ axial, short: span, long: span, belts: beltsOf(axis) });
};

const WHOLE = constant(1, 'ratio', 'one belt carries everything');
const STILL = constant(0, 'ratio', 'a frame that does not move with the weather');

/** Share of the force that one of the belts carries. */
export const beltShare = (axis: SeenAxis): Value => {
  const belts = beltsOf(axis);
  if (belts.number === 1) return WHOLE;
  const even = evenShare.work({ motors: belts });
  return axis.share === undefined ? even : greatest(axis.share, even);
};

/** Growing and shrinking of the frame; a frame of which nothing is said is taken to stand still. */
export const frameMovementOf = (axis: SeenAxis): Value => axis['frame-movement'] ?? STILL;

/** Said where nothing is said of the frame. */
export const frameTaken = (axis: SeenAxis): string =>
  axis['frame-movement'] === undefined ? ' Its frame is taken to stand still in every weather.' : '';

/** Way that an axis goes on from a speed after a contact. */
export const stopOf = (axis: SeenAxis, speed: Value): Value => {
  const stopping = groupOf(axis, 'stopping');
  const acceleration = stopping.acceleration ?? need(axis, 'acceleration').acceleration;
  return stoppingDistance.work({ speed, reaction: need(stopping, 'reaction').reaction, acceleration });
};

/** Whether the driver of a motor is off while the machine stands by. */
export const sleeps = ({ book }: MotionContext, motor: string): boolean => {
  const driver = book.motors?.[motor]?.driver;
  return driver !== undefined && book.drivers?.[driver]?.['standing-by'] === 'unpowered';
};
