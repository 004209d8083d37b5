/** What makes each question hold, fail and stay open. Numbers in the reasons were reckoned apart from the program. */
import type { CheckCase } from '../../../contract/index.ts';
import type { Edit, Verdict } from '../../../kernel/index.ts';

export { base } from './base.ts';

const at = (path: string, text: string | null): Edit => ({ path, text });
const of =
  (finding: string) =>
  (verdict: Verdict, because: string, ...edits: readonly Edit[]): CheckCase => ({ finding, verdict, because, edits });

const travel = of('SWING-010/z+x');
const drive = of('SWING-015/z+x');
const wall = of('SWING-020/z+x');
const dock = of('SWING-030/z');
const head = of('SWING-035/z');
const lean = of('SWING-040/z');
const taut = of('SWING-050/z');
const miss = of('SWING-060/z');
const trials = of('SWING-065/z');
const above = of('SWING-910/hanging+swing-fading');
const below = of('SWING-911/hanging+swing-fading');

const calm = (text: string): Edit => at('hanging.calm', text);
const halves = (text: string): Edit => at('hanging.halves-after', text);
const caught = (text: string): Edit => at('axes.z.dock.caught', text);
const left = (least: string, most: string): Edit =>
  at('bench.0', `{ by: swing-fading, of: hanging, least: ${least} swings, most: ${most} swings }`);
const dwell = (text: string): Edit => at('hanging.dwell', text);
const mouth = (text: string): Edit => at('axes.z.dock.catch', text);
const long = (...edits: readonly Edit[]): readonly Edit[] => [
  at('axes.x.speed', '220 mm/s'),
  at('axes.x.acceleration', '700 mm/s²'),
  at('axes.x.travel', '550 mm'),
  at('axes.z.dock.below-pivot', '430 mm'),
  halves('2000 swings'),
  dwell('0 s'),
  ...edits,
];
const mass = (text: string): Edit => at('hanging.centre-of-mass-below-hook', text);
const cupped = at('axes.z.dock.kind', 'cup');

export const cases: readonly CheckCase[] = [
  travel('holds', '1.53° · e^(−1/27.6) = 1.47° for 8°'),
  travel('fails', '1.47° for 1°', calm('1°')),
  travel('open', 'after 10 s 0.85° or 1.18° are left for 1°', calm('1°'), dwell('10 s'), halves('6..14 swings')),
  travel('holds', 'a pendulum of 0.50 m keeps 7.1°', ...long()),
  travel('holds', 'a pendulum of 0.90 m keeps 6.8°', ...long(mass('470 mm'))),
  travel('fails', 'between them a pendulum of 0.64 m keeps 9.3°', ...long(mass('70..470 mm'))),

  drive('holds', '4·0.25/9.81·sin(6.83·0.1/0.25/2) is 5.7°, less what fades in 1 s'),
  drive('fails', '5.5° for 5°', calm('5°')),
  drive('open', 'after 10 s 3.1° or 4.4° are left for 4°', calm('4°'), dwell('10 s'), halves('6..14 swings')),

  wall('holds', '210 mm · sin 5.5° · (0.91/0.21)^¼ · √(10.31/9.31) · e^(−0.7/0.16/27.6) + 85 mm = 111 mm of 200 mm'),
  wall('fails', '111 mm of 110 mm; up, it would be 106 mm', at('axes.x.wall', '110 mm')),
  wall(
    'fails',
    '300 mm/s at 1500 mm/s² is 22°: 99 mm + 85 mm of 170 mm',
    at('axes.x.wall', '170 mm'),
    at('axes.x.speed', '300 mm/s'),
    at('axes.x.acceleration', '1500 mm/s²'),
  ),

  wall('open', '106 mm or 115 mm of 110 mm', at('axes.x.wall', '110 mm'), halves('4..40 swings')),

  dock('holds', '(20 mm + 26.2 mm) · (0.21/0.91)^¼ · √(10.31/9.31) · e^(−4.7/27.6) · 140/210 = 18.9 mm within 25 mm'),
  dock('fails', '18.9 mm within (46 mm − 10 mm)/2', mouth('46 mm')),
  dock('holds', 'without 26.2 mm from the drive 8.2 mm within 18 mm', mouth('46 mm'), cupped),
  dock('fails', '8.2 mm within (22 mm − 10 mm)/2', mouth('22 mm'), cupped),
  dock('open', '13.1 mm or 23.4 mm within 18 mm', mouth('46 mm'), halves('4..40 swings')),

  head('holds', '10 mm into 60 mm'),
  head('fails', '65 mm into 60 mm', at('hanging.head', '65 mm')),

  lean('holds', 'asin(28.4/210) = 7.8° of 15°'),
  lean('fails', '7.8° of 7°', at('axes.z.dock.lean', '7°')),
  lean('holds', 'asin(12.3/210) = 3.4° of 7°', at('axes.z.dock.lean', '7°'), cupped),
  lean('open', '5.4° or 9.6° of 7°', at('axes.z.dock.lean', '7°'), halves('4..40 swings')),

  taut('holds', 'half a metre per second squared of 9.8'),
  taut('fails', 'it lowers faster than the load falls', at('axes.z.acceleration', '9.9 m/s²')),
  taut('fails', 'a stop as hard as that', at('axes.z.stopping.acceleration', '10 m/s²')),
  taut(
    'fails',
    '0.5 + 60·(21 + 20)/210 of 9.8·cos 11°: a stop of the carriage that flings it',
    at('axes.x.stopping.acceleration', '60 m/s²'),
  ),

  taut(
    'open',
    '0.5 + 40·(21 + 20)/210 of 9.6, or 0.5 + 40·(13 + 20)/130 of 9.5',
    at('axes.x.stopping.acceleration', '40 m/s²'),
    at('axes.z.dock.below-pivot', '60..140 mm'),
  ),

  miss('holds', '25 mm less 10.7 mm from the drive are 3.5 standard deviations of 4.1 mm: one in 400'),
  miss('fails', '15 mm less 10.7 mm are one of them: more than half', mouth('40 mm')),
  miss('holds', 'a cup leaves all of the 15 mm, 3.7 of them: one in 800', mouth('40 mm'), cupped),
  miss('fails', '6 mm are 1.46 of them: one in three', mouth('22 mm'), cupped),
  miss(
    'open',
    '20 mm less 10.7 mm: 8 % or, with half the spread, none',
    mouth('50 mm'),
    at('hanging.lift-off-scatter', '5..10 mm'),
  ),

  trials('holds', '20 of 20 docked, and 20 % may miss', caught('83.1..100 %'), at('axes.z.dock.misses', '20 %')),
  trials('fails', '5 of 20 docked', caught('8.6..49.2 %')),
  trials('open', '19 of 20 docked: a miss in a hundred or one in four', caught('75.1..99.9 %')),

  above('holds', '10 swings of 12', left('8', '12')),
  above('fails', '10 swings of 9', left('8', '9')),
  above('open', '8 or 12 swings of 10', left('7', '10'), halves('8..12 swings')),
  below('holds', '10 swings, of which 8 are left', left('8', '12')),
  below('fails', '10 swings where 11 are left', left('11', '12')),
  below('open', '8 or 12 swings where 10 are left', left('10', '14'), halves('8..12 swings')),
];
