/** What is taken for an axis of which little is said. From experience, therefore wide; a measurement narrows it. */
import type { Fill, FillView } from '../../../contract/index.ts';

const source = { id: 'axis-experience' } as const;

const GRAVITY = 9.80665;
/** Least and greatest running force of guided wheels and slides over the weight that they carry. */
const ROLLING = [0.02, 0.1] as const;

const efficiencies: Readonly<Record<string, { readonly text: string; readonly means: string }>> = {
  belt: { text: '90..98 %', means: 'toothed belt and its bearings' },
  hoist: { text: '75..95 %', means: 'drum, fairlead and bearings of a small hoist' },
  ball: { text: '85..95 %', means: 'ball screw' },
  sliding: { text: '25..60 %', means: 'sliding screw of which the thread is not stated' },
};

const efficiency = (book: FillView, axis: string): Fill | undefined => {
  const at = `axes.${axis}`;
  const drive = book.text(`${at}.drive`);
  const screw = ['thread', 'lead', 'diameter', 'friction'].every((key) => book.has(`${at}.screw.${key}`));
  const ball = book.text(`${at}.screw.thread`) === 'ball';
  if (drive === 'screw' && screw && !ball) return undefined;
  const found = efficiencies[drive === 'screw' ? (ball ? 'ball' : 'sliding') : (drive ?? '')];
  return found && { path: `${at}.efficiency`, provenance: 'table', source, ...found };
};

const runningForce = (book: FillView, axis: string): Fill | undefined => {
  const at = `axes.${axis}`;
  const mass = book.ends(`${at}.moving-mass`);
  if (book.text(`${at}.drive`) === 'hoist' || mass === undefined) return undefined;
  const [least, most] = [mass[0] * GRAVITY * ROLLING[0], mass[1] * GRAVITY * ROLLING[1]];
  return {
    path: `${at}.running-force`,
    text: `${least.toPrecision(2)}..${most.toPrecision(2)} N`,
    provenance: 'table',
    source,
    means: '2 to 10 % of the weight on wheels or slides',
  };
};

/** Facts of axes that follow from others by experience. */
export const axisFills = (book: FillView): readonly Fill[] =>
  book
    .names('axes')
    .flatMap((axis) => [efficiency(book, axis), runningForce(book, axis)])
    .filter((fill) => fill !== undefined);
