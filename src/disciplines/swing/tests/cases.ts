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

const calm = (text: string): Edit => at('hanging.calm', text);
const halves = (text: string): Edit => at('hanging.halves-after', text);
const dwell = (text: string): Edit => at('hanging.dwell', text);
const mouth = (text: string): Edit => at('axes.z.dock.catch', text);
const long = (text: string): readonly Edit[] => [
  at('axes.x.speed', '220 mm/s'),
  at('axes.x.acceleration', '700 mm/s²'),
  at('axes.x.travel', '550 mm'),
  at('axes.z.dock.below-pivot', text),
  halves('2000 swings'),
  dwell('0 s'),
];

export const cases: readonly CheckCase[] = [
  travel('holds', '1.53° · e^(−1/27.6) = 1.47° for 8°'),
  travel('fails', '1.47° for 1°', calm('1°')),
  travel('open', 'after 10 s 0.85° or 1.18° are left for 1°', calm('1°'), dwell('10 s'), halves('6..14 swings')),
  travel('holds', 'a pendulum of 0.50 m keeps 7.1°', ...long('430 mm')),
  travel('holds', 'a pendulum of 0.90 m keeps 6.8°', ...long('830 mm')),
  travel('fails', 'between them a pendulum of 0.64 m keeps 9.3°', ...long('430..830 mm')),

  drive('holds', '4·0.25/9.81·sin(6.83·0.1/0.25/2) is 5.7°, less what fades in 1 s'),
  drive('fails', '5.5° for 5°', calm('5°')),
  drive('open', 'after 10 s 3.1° or 4.4° are left for 4°', calm('4°'), dwell('10 s'), halves('6..14 swings')),

  wall('holds', '210 mm · sin 5.7° + 85 mm = 106 mm of 200 mm'),
  wall('fails', '106 mm of 100 mm', at('axes.x.wall', '100 mm')),
  wall(
    'fails',
    '300 mm/s at 1500 mm/s² is 22°: 79 mm + 85 mm of 150 mm',
    at('axes.x.wall', '150 mm'),
    at('axes.x.speed', '300 mm/s'),
    at('axes.x.acceleration', '1500 mm/s²'),
  ),

  dock('holds', '20 mm · (0.21/0.91)^¼ · √(10.31/9.31) · e^(−4.7/27.6) · 140/210 = 8.2 mm within 17.5 mm'),
  dock('fails', '8.2 mm within (22 mm − 10 mm)/2', mouth('22 mm')),
  dock('open', '6.4 mm or 9.3 mm within 8 mm', mouth('26 mm'), halves('4..40 swings')),

  head('holds', '10 mm into 45 mm'),
  head('fails', '50 mm into 45 mm', at('hanging.head', '50 mm')),

  lean('holds', 'asin(12.3/210) = 3.4° of 15°'),
  lean('fails', '3.4° of 3°', at('axes.z.dock.lean', '3°')),
  lean('open', '2.6° or 3.8° of 3°', at('axes.z.dock.lean', '3°'), halves('4..40 swings')),

  taut('holds', 'half a metre per second squared of 9.8'),
  taut('fails', 'it lowers faster than the load falls', at('axes.z.acceleration', '9.9 m/s²')),
  taut('fails', 'a stop as hard as that', at('axes.z.stopping.acceleration', '10 m/s²')),

  miss('holds', '17.5 mm are four standard deviations of 4.1 mm'),
  miss('fails', '6 mm are 1.46 of them: one in seven', mouth('22 mm')),
  miss('open', '14 % or, with half the spread, 0.3 %', mouth('22 mm'), at('hanging.lift-off-scatter', '5..10 mm')),
];
