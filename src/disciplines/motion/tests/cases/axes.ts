/** What makes each question about axes hold, fail and stay open. */
import type { CheckCase } from '../../../../contract/index.ts';
import type { Edit, Verdict } from '../../../../kernel/index.ts';

const at = (path: string, text: string | null): Edit => ({ path, text });
const of =
  (finding: string) =>
  (verdict: Verdict, because: string, ...edits: readonly Edit[]): CheckCase => ({ finding, verdict, because, edits });

const belt = of('MOTION-110/x');
const mesh = of('MOTION-120/x');
const taut = of('MOTION-130/x');
const tight = of('MOTION-135/x');
const lost = of('MOTION-140/x');
const ring = of('MOTION-150/x');
const up = of('MOTION-210/z+M4');
const idle = of('MOTION-215/z+M4');
const brake = of('MOTION-220/z+M4');
const lands = of('MOTION-225/z+M4');
const width = of('MOTION-230/z');
const dead = of('MOTION-235/z');
const flange = of('MOTION-240/z');
const keeper = of('MOTION-245/z');
const fleet = of('MOTION-250/z');
const bend = of('MOTION-260/z');
const slack = of('MOTION-270/z');
const loose = of('MOTION-280/z');
const square = of('MOTION-410/y');
const relax = of('MOTION-420/y');
const rack = of('MOTION-430/y+M2');
const screwUp = of('MOTION-510/lift+M5');
const screwLands = of('MOTION-225/lift+M5');
const whip = of('MOTION-520/lift');
const buckle = of('MOTION-525/lift');
const stop = of('MOTION-610/x');

const free = at('axes.z.unpowered', 'free');
const onItsDrive = at('axes.z.rests-on', 'its drive');
const noSlackSwitch = at('axes.z.slack-switch', null);

export const axisCases: readonly CheckCase[] = [
  belt('holds', '2.5 kg · 0.7 m/s² + 6 N = 7.75 N on a belt for 28 N'),
  belt('fails', '7.75 N on a belt for 7 N', at('parts.B1.allowable-tension', '7 N')),
  belt(
    'tight',
    '7.75 N on a belt for 10 N: less than the service factor of 1.5',
    at('parts.B1.allowable-tension', '10 N'),
  ),
  belt('open', '7.75 N on a belt for 7 N or for 28 N', at('parts.B1.allowable-tension', '7..28 N')),

  mesh('holds', 'half of 20 teeth'),
  mesh('fails', 'half of 10 teeth', at('axes.x.pulley-teeth', '10')),
  mesh('fails', 'a quarter of 20 teeth', at('axes.x.wrap', '90°')),

  taut('holds', '15 N − 15 kN · 0.02 % = 12 N against 7.75 N'),
  taut('fails', '10 N − 3 N = 7 N against 7.75 N', at('axes.x.pretension', '10 N')),
  taut('open', '7 N or 12 N against 7.75 N', at('axes.x.pretension', '10..15 N')),
  taut('fails', 'a frame that moves by 0.05 % takes 7.5 N off', at('axes.x.frame-movement', '0..0.05 %')),
  taut(
    'holds',
    'a note of 60 Hz on 400 mm is 19.4 N',
    at('axes.x.pretension', null),
    at('axes.x.note.span', '400 mm'),
    at('axes.x.note.tone', '60 Hz'),
  ),
  taut(
    'fails',
    'a note of 40 Hz on 400 mm is 8.6 N',
    at('axes.x.pretension', null),
    at('axes.x.note.span', '400 mm'),
    at('axes.x.note.tone', '40 Hz'),
  ),

  tight('holds', '15 N + 3 N + 7.75 N = 25.75 N on a belt for 28 N'),
  tight('fails', '20 N + 3 N + 7.75 N = 30.75 N', at('axes.x.pretension', '20 N')),
  tight('open', '25.75 N or 30.75 N', at('axes.x.pretension', '15..20 N')),

  lost('holds', '2 · 6 N / 42.9 N/mm = 0.28 mm, lag and play a tenth of that'),
  lost('fails', '2 · 30 N / 42.9 N/mm = 1.4 mm', at('axes.x.running-force', '30 N')),
  lost('open', '0.28 mm or 1.4 mm', at('axes.x.running-force', '6..30 N')),

  ring('holds', 'full steps at 1100 Hz and their subharmonics far above 21 Hz'),
  ring('fails', '16.6 mm/s is 20.75 Hz, on the natural frequency of 20.8 Hz', at('axes.x.approach-speed', '16.6 mm/s')),
  ring(
    'open',
    'the natural frequency lies between 19 and 27 Hz: on the tone inside the range, clear of it at the light end',
    at('axes.x.approach-speed', '16.6 mm/s'),
    at('axes.x.moving-mass', '1.5..3 kg'),
  ),
  ring(
    'open',
    'both ends of the range are clear of 20.75 and 41.5 Hz by a fifth, the middle is not: the worst lies inside',
    at('axes.x.approach-speed', '16.6 mm/s'),
    at('axes.x.moving-mass', '1.5..4 kg'),
  ),

  up('holds', '0.122 N·m against a detent of 0.3 N·m', free, at('parts.stepper-23.detent-torque', '0.3 N·m')),
  up(
    'tight',
    '0.122 N·m against a detent of 0.2 N·m: a knock starts it',
    free,
    at('parts.stepper-23.detent-torque', '0.2 N·m'),
  ),
  up('fails', '0.122 N·m against a detent of 0.05 N·m', free),
  up('open', '0.05 or 0.3 N·m', free, at('parts.stepper-23.detent-torque', '0.05..0.3 N·m')),

  idle(
    'holds',
    'shorted: 0.122 N·m against a detent of 0.3 N·m',
    onItsDrive,
    at('parts.stepper-23.detent-torque', '0.3 N·m'),
  ),
  idle('tight', 'against 0.2 N·m', onItsDrive, at('parts.stepper-23.detent-torque', '0.2 N·m')),
  idle('fails', 'against 0.05 N·m: it sinks', onItsDrive),
  idle('open', '0.05 or 0.3 N·m', onItsDrive, at('parts.stepper-23.detent-torque', '0.05..0.3 N·m')),

  brake('holds', 'K²/(2·N_r·L) = 0.278²/(100 · 3 mH) = 0.258 N·m against 0.122 N·m'),
  brake('fails', '0.097 N·m at 8 mH', at('parts.stepper-23.phase-inductance', '8 mH')),
  brake('open', '0.258 or 0.097 N·m', at('parts.stepper-23.phase-inductance', '3..8 mH')),

  lands('holds', 'sinks at some centimetres a second'),
  lands('fails', 'falls 0.7 m with 0.76 kg and a rotor: 4.6 J', free),
  lands('open', '3.1 J with 0.54 kg, 4.6 J with 0.76 kg', free, at('axes.z.moving-mass', '400..620 g')),
  lands('fails', 'more than shorted windings brake at any speed', at('parts.stepper-23.phase-inductance', '8 mH')),
  lands(
    'fails',
    'less is said to be harmless',
    free,
    at('axes.z.moving-mass', '400 g'),
    at('axes.z.harmless-energy', '2 J'),
  ),

  lands(
    'tight',
    'sinks at 40 mm/s: less than 1 mJ of 2 mJ, six times as much when it is let go',
    at('axes.z.harmless-energy', '0.002 J'),
  ),
  screwLands('holds', '1.2 kg and 18 kg of rotor: 0.18 J of 4 J'),
  screwLands('fails', 'of 0.1 J', at('axes.lift.harmless-energy', '0.1 J')),

  width('holds', '6.7 + 4 + 1 turns of 1.2 mm are 14 mm of 24 mm'),
  width('fails', '14 mm of 12 mm', at('axes.z.drum.width', '12 mm')),
  width('holds', 'two layers want half of it', at('axes.z.drum.width', '12 mm'), at('axes.z.drum.layers', '2')),

  dead('holds', 'four of two'),
  dead('tight', 'three of two: four are advised', at('axes.z.drum.dead-turns', '3')),
  dead('fails', 'one of two', at('axes.z.drum.dead-turns', '1')),

  flange('holds', 'two lines of 1.2 mm in 6 mm'),
  flange('fails', 'two lines of 1.2 mm in 2 mm', at('axes.z.drum.flange', '2 mm')),
  flange(
    'fails',
    'six turns a layer make two layers: three lines in 3 mm',
    at('axes.z.drum.width', '7.5 mm'),
    at('axes.z.drum.flange', '3 mm'),
  ),

  keeper('holds', '0.5 mm under a line of 1.2 mm'),
  keeper('tight', '0.9 mm lets a flat braid through', at('axes.z.drum.keeper-gap', '0.9 mm')),
  keeper('fails', '1.5 mm', at('axes.z.drum.keeper-gap', '1.5 mm')),

  fleet('holds', 'atan(7 mm / 220 mm) = 1.8° on a grooved drum'),
  fleet('tight', 'atan(7 mm / 150 mm) = 2.7° on a grooved drum', at('axes.z.fairlead.distance', '150 mm')),
  fleet('fails', 'atan(7 mm / 60 mm) = 6.7°', at('axes.z.fairlead.distance', '60 mm')),
  fleet(
    'fails',
    '3.3° on a smooth drum',
    at('axes.z.fairlead.distance', '120 mm'),
    at('axes.z.drum.surface', 'smooth'),
  ),
  fleet(
    'fails',
    '10 mm beside the middle: 4.4° on a smooth drum',
    at('axes.z.fairlead.offset', '10 mm'),
    at('axes.z.drum.surface', 'smooth'),
  ),

  bend('holds', '32 mm over 1.2 mm is 27'),
  bend('fails', '27 times for wire of 2 mm is 16', at('axes.z.line.kind', 'wire'), at('axes.z.line.diameter', '2 mm')),
  bend('fails', 'a drum of 6 mm', at('axes.z.drum.diameter', '6 mm')),

  slack('holds', '0.16 m/s · 20 ms + (0.16 m/s)²/(2 · 0.5 m/s²) = 29 mm of 40 mm + 2π · 4.8 mm'),
  slack('fails', '29 mm of 2π · 1 mm', at('axes.z.slack-room', '0 mm'), at('axes.z.drum.flange', '2.2 mm')),

  loose(
    'holds',
    'it may land 20 mm before the end: 2π · 4.8 mm = 30 mm',
    noSlackSwitch,
    at('axes.z.lands-after', '680..700 mm'),
  ),
  loose('fails', 'it may land 300 mm before the end', noSlackSwitch, at('axes.z.lands-after', '400..700 mm')),

  square('holds', 'two sides, two switches'),
  square('fails', 'two sides, one switch', at('axes.y.switches.min', 'S3')),

  relax('holds', 'an electrical turn is 0.8 mm, 2 mm do no harm'),
  relax('fails', '0.8 mm where 0.5 mm do no harm', at('axes.y.skew', '0.5 mm')),
  relax('fails', 'squared at switching on only', at('axes.y.squares', 'switching on')),

  rack('holds', '0.278 N·m/A · 1.2 A on 6.37 mm is 52 N of 150 N'),
  rack('fails', '52 N of 40 N', at('axes.y.racking-force', '40 N')),
  rack('open', '52 N of 40 or 150 N', at('axes.y.racking-force', '40..150 N')),

  screwUp('holds', '0.0081 N·m against a detent of 0.05 N·m'),
  screwUp('fails', '0.0081 N·m against a detent of 0.005 N·m', at('parts.stepper-23.detent-torque', '5 mN·m')),
  screwUp('open', '0.005 or 0.05 N·m', at('parts.stepper-23.detent-torque', '5..50 mN·m')),
  screwUp(
    'holds',
    'a thread of 2 mm lead is flatter than its friction: nothing turns back',
    at('axes.lift.screw.lead', '2 mm'),
    at('axes.lift.screw.friction', '0.2'),
    at('parts.stepper-23.detent-torque', '5 mN·m'),
  ),

  whip('holds', '450 rpm of 10 700 rpm'),
  whip('fails', 'five times as long whips 25 times earlier: 430 rpm', at('axes.lift.screw.length', '1600 mm')),

  buckle('holds', '15 N of 2.9 kN'),
  buckle('fails', '15 N of 13 N: a core of 1.6 mm', at('axes.lift.screw.root-diameter', '1.6 mm')),
  buckle(
    'open',
    '8 or 33 N of 20 N',
    at('axes.lift.screw.root-diameter', '1.8 mm'),
    at('axes.lift.moving-mass', '0.5..3 kg'),
  ),

  stop('holds', '0.22 m/s · 10 ms + (0.22 m/s)²/(2 · 0.7 m/s²) = 37 mm of 50 mm'),
  stop('fails', '37 mm of 30 mm', at('axes.x.overtravel', '30 mm')),
  stop('holds', 'at 100 mm/s 8 mm of 30 mm', at('axes.x.overtravel', '30 mm'), at('axes.x.approach-speed', '100 mm/s')),
  stop(
    'holds',
    'at 2 m/s² 14 mm of 30 mm',
    at('axes.x.overtravel', '30 mm'),
    at('axes.x.stopping.acceleration', '2 m/s²'),
  ),
];
