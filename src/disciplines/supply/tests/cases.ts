/** What makes each question about rails, heat and fuses hold, fail and stay open. Reckoned by hand where it can be. */
import type { CheckCase } from '../../../contract/index.ts';
import type { Edit, Verdict } from '../../../kernel/index.ts';

export { base } from './base.ts';

const at = (path: string, text: string | null): Edit => ({ path, text });
const of =
  (finding: string) =>
  (verdict: Verdict, because: string, ...edits: readonly Edit[]): CheckCase => ({ finding, verdict, because, edits });

const rail = of('SUPPLY-010/24V@aiming');
const peak = of('SUPPLY-015/claw@fetching');
const sag = of('SUPPLY-017/24V');
const above = of('SUPPLY-910/24V+rail-sag');
const below = of('SUPPLY-911/24V+rail-sag');
const together = of('SUPPLY-020/G1@aiming');
const least = of('SUPPLY-030/5V@standing-by');
const start = of('SUPPLY-040/24V');
const brake = of('SUPPLY-050/24V');
const lower = of('SUPPLY-052/z');
const clamp = of('SUPPLY-055/24V');
const winding = of('SUPPLY-060/M1');
const touch = of('SUPPLY-070/M1');
const mount = of('SUPPLY-075/M1');
const driver = of('SUPPLY-080/D1');
const servo = of('SUPPLY-085/servo');
const air = of('SUPPLY-090/G1');
const cabinet = of('SUPPLY-095');
const drop = of('SUPPLY-100/F1');
const volts = of('SUPPLY-105/board');
const bare = of('SUPPLY-110/claw');
const carries = of('SUPPLY-120/F1');
const oneRail = of('SUPPLY-125/F1');
const wire = of('SUPPLY-130/F1');
const overload = of('SUPPLY-140/F1');
const fault = of('SUPPLY-150/F2');
const inrush = of('SUPPLY-160/F1');
const clears = of('SUPPLY-170/F1');
const idle = of('SUPPLY-180');
const week = of('SUPPLY-185');
const ripple = of('SUPPLY-190/D1');

const heavy = [at('axes.x.moving-mass', '50 kg'), at('axes.x.acceleration', '10 m/s²')];
const heavier = [at('axes.x.moving-mass', '200 kg'), at('axes.x.acceleration', '10 m/s²')];
const noClamp = at('supplies.G1.clamp', null);
const cladOrNot = at('parts.hook-up.resistance-per-length', '26..300 ohm/km');
const wideCurrent = at('drivers.D1.current', '1..4 A');
const thinAndStrong = [
  at('cables.W2.part', 'thin'),
  at('fuses.F2.rating', '3 A'),
  at('parts.boxed-100W.short-circuit-current', '20 A'),
];
const weak = [at('cables.W1.part', 'thin'), at('parts.boxed-100W.short-circuit-current', '3 A')];

const sagging = (text: string): Edit => at('supplies.G1.rails.24V.sag', text);
const left = (least: string, most: string): Edit =>
  at('bench.0', `{ by: rail-sag, of: 24V, least: ${least}, most: ${most} }`);

export const cases: readonly CheckCase[] = [
  of('SUPPLY-005/G1')('holds', 'it gives 24 V'),
  of('SUPPLY-005/G9')('fails', 'a supply of which only the part is said', at('supplies.G9.part', 'boxed-15W')),

  rail('holds', 'about 6.6 W at 24 V are 0.27 A of 4.2 A'),
  rail('tight', '0.27 A of 0.3 A', at('supplies.G1.rails.24V.limit', '0.3 A')),
  rail('fails', '0.27 A of 0.2 A', at('supplies.G1.rails.24V.limit', '0.2 A')),
  rail(
    'open',
    '4 A in 1.86 Ω are 30 W and more, 1.2 A and more of 0.5 A; 1 A is 0.2 A',
    at('supplies.G1.rails.24V.limit', '0.5 A'),
    wideCurrent,
  ),

  peak('holds', 'a stalled servo takes 1.8 A of 4 A'),
  peak('fails', '1.8 A of 1.5 A', at('parts.buck.overload-current', '1.5 A')),
  peak('open', '1.8 A lies between 1.5 and 2 A', at('parts.buck.overload-current', '1.5..2 A')),

  together('holds', '6.6 W of 100 W'),
  together('fails', '6.6 W of 5 W', at('parts.boxed-100W.power', '5 W')),
  together('open', '30 W at 4 A, 5 W at 1 A, of 10 W', at('parts.boxed-100W.power', '10 W'), wideCurrent),

  least('holds', '0.2 A of the board, 0.1 A needed'),
  least('fails', '0.2 A of the board, 0.3 A needed', at('parts.boxed-15W.minimum.5V', '0.3 A')),
  of('SUPPLY-030/24V@aiming')(
    'fails',
    'moving it takes 0.27 A, but 0.085 A while the drives stand: 0.97 W each and 0.1 W',
    at('parts.boxed-100W.minimum.24V', '0.15 A'),
  ),
  of('SUPPLY-030/24V@aiming')(
    'open',
    'drivers that take 0.1 or 3 W for themselves: 0.07 or 0.31 A',
    at('parts.boxed-100W.minimum.24V', '0.15 A'),
    at('parts.chopper.own-power', '0.1..3 W'),
  ),

  start('holds', '540 µF · 24 V / 5 A = 2.6 ms of 50 ms'),
  start('fails', '44 mF · 24 V / 5 A = 0.21 s of 50 ms', at('parts.chopper.capacitance', '22000 µF')),
  start(
    'fails',
    'a lamp of 130 W takes all of 5 A at 24 V',
    at('loads.lamp.rail', '24V'),
    at('loads.lamp.power', '130 W'),
  ),
  start('open', '2.6 ms lies between 1 and 50 ms', at('parts.boxed-100W.start-within', '1..50 ms')),
  of('SUPPLY-040/5V')(
    'fails',
    'a board of 0.2 A on a supply that limits at 0.2 A never comes up',
    at('parts.boxed-15W.overload-current', '0.2 A'),
  ),
  of('SUPPLY-040/5V')(
    'holds',
    'sound comes on later: 470 µF · 5 V / (0.4 A − 0.2 A) = 12 ms of 50 ms',
    at('parts.boxed-15W.overload-current', '0.4 A'),
  ),

  brake('holds', 'the copper eats 0.8 J, the axis has 0.08 J'),
  brake('fails', '1.1 J into 1.54 mF lift 24 V to 45 V, above 40 V', ...heavy, noClamp),
  brake('holds', 'the clamp keeps it at 36 V', ...heavy),
  brake('fails', 'a clamp that conducts at 20 V burns what the supply gives', at('supplies.G1.clamp.volts', '20 V')),
  brake(
    'open',
    'into 10.5 mF they lift it to 28 V',
    ...heavy,
    noClamp,
    at('parts.boxed-100W.output-capacitance', '1000..10000 µF'),
  ),

  lower('holds', '1.2 W of gravity, 2.7 W of copper'),
  lower('fails', '20 kg give back 29 W for 4.7 s', at('axes.z.moving-mass', '20 kg'), noClamp),
  lower('holds', 'the clamp keeps it at 36 V', at('axes.z.moving-mass', '20 kg')),
  lower(
    'open',
    'at 6 A the copper eats 67 W',
    at('axes.z.moving-mass', '20 kg'),
    at('drivers.D2.current', '1..6 A'),
    noClamp,
  ),

  clamp('holds', 'nothing comes back'),
  clamp(
    'fails',
    '4.8 J less 0.6 J that the capacitors take, every 2.6 s: 1.6 W of 1 W',
    ...heavier,
    at('supplies.G1.clamp.power', '1 W'),
  ),
  clamp('fails', '20 kg that are lowered give it 29 W', at('axes.z.moving-mass', '20 kg')),
  clamp(
    'open',
    'a clamp at 100 V would leave all of it to the capacitors',
    ...heavier,
    at('supplies.G1.clamp.power', '1 W'),
    at('supplies.G1.clamp.volts', '30..100 V'),
  ),

  winding('holds', '1.5 W in the winding and 1.0 W in the mean, and the iron: about 44 °C of 130 °C'),
  winding(
    'fails',
    '27 W through 1 K/W and 18 W through 3 K/W are 80 K cold and 116 K warm',
    at('drivers.D1.current', '5 A'),
  ),
  winding('fails', 'at 12 A there is no rest below 250 °C', at('drivers.D1.current', '12 A')),
  winding(
    'open',
    '9.6 W through 1 K/W and 6.4 W through 2 or 16 K/W: 24 K or 200 K warm',
    at('drivers.D1.current', '3 A'),
    at('parts.stepper-23.case-to-air', '2..16 K/W'),
  ),

  touch('holds', '1.5 W through 3 K/W in 38 °C: 43 °C of 55 °C'),
  touch('fails', 'about 7.7 W through 3 K/W in 38 °C', at('drivers.D1.current', '3 A')),
  touch('open', 'through 20 K/W it would be 69 °C', at('parts.stepper-23.case-to-air', '2..20 K/W')),
  touch('not-stated', 'nobody said whether a hand reaches it', at('motors.M1.touchable', null)),

  mount('holds', '43 °C on PETG'),
  mount('fails', 'about 15 W through 3 K/W in 38 °C', at('drivers.D1.current', '4 A')),
  mount('open', 'through 40 K/W it would be above 100 °C', at('parts.stepper-23.case-to-air', '2..40 K/W')),
  mount('not-stated', 'nobody said what it sits on', at('motors.M1.mount', null)),

  driver('holds', '0.88 W through 12 K/W in 38 °C: 48 °C of 100 °C'),
  driver('fails', '0.88 W through 100 K/W', at('parts.chopper.thermal-resistance', '100 K/W')),
  driver('open', '0.88 W through 10 or 100 K/W', at('parts.chopper.thermal-resistance', '10..100 K/W')),

  servo('holds', '0.50 A RMS make 0.76 W for a third of the play, through 20 K/W 5 K'),
  servo('fails', 'stalled for 90 % it makes 8.9 W, 3 W in the mean', at('loads.servo.stalled', '90 %')),
  servo(
    'fails',
    'on all day, stalled for 60 %, it makes 6 W',
    at('loads.servo.modes', null),
    at('loads.servo.stalled', '60 %'),
  ),
  servo('open', '0.25 W through 10 or 200 K/W', at('loads.servo.thermal-resistance', '10..200 K/W')),

  air('holds', '30 + 8 °C of 50 °C'),
  air('fails', '30 + 25 °C of 50 °C', at('enclosure.rise', '25 K')),

  cabinet('holds', '64 W of sun and about 11 W, over 20 W/K: 3.8 K of 8 K'),
  cabinet('fails', '240 W of sun and about 11 W, over 20 W/K', at('enclosure.windows', '3 m²')),
  cabinet('open', '75 W over 5 or 25 W/K', at('enclosure.transfer', '1..5 W/(m²·K)')),

  drop('holds', '0.27 A over 0.15 Ω of wire and fuse'),
  drop('fails', '0.3 A over 9 Ω', at('cables.W1.part', 'thin'), at('cables.W1.length', '50 m')),
  drop(
    'fails',
    'through 39 Ω no more than 3.7 W arrive',
    at('cables.W1.part', 'thin'),
    at('cables.W1.length', '200 m'),
  ),
  drop('open', '0.3 A over 0.5 or 10 Ω', at('cables.W1.loop-resistance', '0.5..10 ohm')),

  volts('holds', '0.5 A over 0.26 Ω of wire and fuse leave 4.87 V of 4.75 V'),
  volts('fails', '0.5 A over 1.8 Ω', at('cables.W3.part', 'thin'), at('cables.W3.length', '10 m')),
  volts('fails', 'a fuse of 0.6 Ω takes 0.3 V by itself', at('fuses.F3.resistance', '0.6 ohm')),
  volts('open', '0.5 A over 0.3 or 1.2 Ω', at('cables.W3.loop-resistance', '0.1..1 ohm')),
  of('SUPPLY-105/D1')('holds', '0.3 A over 0.15 Ω leave 23.96 V of 12 V'),
  of('SUPPLY-105/D1')('fails', 'one that needs 23.99 V', at('parts.chopper.least-volts', '23.99 V')),

  bare('holds', 'the converter limits at 4 A; 5 A are no fire at 5.5 V'),
  bare('fails', '6 A of 5 A', at('parts.buck.overload-current', '6 A')),
  bare('open', '5 A lies between 4 and 6 A', at('parts.buck.overload-current', '4..6 A')),
  of('SUPPLY-110/24V')('fails', '5 A of 100 VA at 24 V', at('drivers.D1.fuse', null)),

  carries('holds', '0.27 A on a fuse for 2 A'),
  carries('tight', '0.27 A of 0.28 A', at('fuses.F1.rating', '0.3 A')),
  carries('fails', '0.27 A on a fuse for 0.2 A', at('fuses.F1.rating', '0.2 A')),
  carries(
    'open',
    'in 38 °C a fuse for 0.3 A bears 0.26 to 0.3 A',
    at('fuses.F1.rating', '0.3 A'),
    at('fuses.F1.derating', '0..0.9 %/K'),
  ),

  oneRail('holds', 'both drivers are on 24 V'),
  oneRail('fails', 'the board is on 5 V', at('loads.board.fuse', 'F1')),

  wire('holds', '2 A; 8.5 A · 0.8 · 1.03 = 7.0 A'),
  wire('fails', '8 A; 7.0 A', at('fuses.F1.rating', '8 A')),
  wire('open', 'of 300 Ω/km, as clad aluminium or worse, it bears 2.1 A', at('fuses.F1.rating', '5 A'), cladOrNot),

  overload('holds', '2.1 · 2 A; 1.45 · 7.0 A'),
  overload('fails', '2.1 · 5 A = 10.5 A; 1.45 · 7.0 A = 10.2 A', at('fuses.F1.rating', '5 A')),
  overload('open', '8.4 A; 1.45 · 2.1 A of a wire of 300 Ω/km', at('fuses.F1.rating', '4 A'), cladOrNot),

  fault('holds', '(4 · 1 A)² · 5 s = 80 A²s; (115 · 0.75)² = 7439 A²s'),
  fault('fails', '(4 · 3 A)² · 5 s = 720 A²s; (115 · 0.2)² = 529 A²s', ...thinAndStrong),
  fault('open', '3 A for 5 s are 45 A²s', ...thinAndStrong, at('parts.boxed-100W.short-circuit-current', '3..20 A')),

  inrush('holds', '440 µF · (24 V)² / (2 · 0.19 Ω) = 0.7 A²s of 9.7 A²s'),
  of('SUPPLY-160/F2')('holds', '100 µF of the converter: 0.09 A²s of 1.7 A²s'),
  of('SUPPLY-160/F2')('fails', '10 mF of the converter: 9 A²s', at('parts.buck.input-capacitance', '10000 µF')),
  inrush('fails', '20 mF: 31 A²s of 9.7 A²s', at('parts.chopper.capacitance', '10000 µF')),
  inrush(
    'open',
    '4 mF: 6 A²s of 1 to 20 A²s',
    at('parts.chopper.capacitance', '2000 µF'),
    at('fuses.F1.melting', '1..20 A²·s'),
  ),

  clears('holds', 'the supply limits at 5 A, and the wire bears 7.0 A for good'),
  clears(
    'holds',
    'of a fuse for 0.8 A no more than 3.2 A are left to the thin wire, which bears 3.6 A',
    ...weak,
    at('fuses.F1.rating', '0.8 A'),
  ),
  clears('fails', '3 A do not open a fuse at 8 A, and 5 A are more than the 3.6 A of thin wire', ...weak),
  clears(
    'open',
    'a supply that limits at 3 A would protect the thin wire',
    ...weak,
    at('parts.boxed-100W.overload-current', '3..5 A'),
  ),

  idle('holds', '0.1 W and 1 W given, 2.2 W taken, 4 W allowed'),
  idle(
    'fails',
    'two held motors add 1.1 W each',
    at('drivers.D1.standing-by', 'powered'),
    at('drivers.D2.standing-by', 'powered'),
  ),
  idle('open', 'a supply that takes 0.3 or 5 W by itself', at('parts.boxed-100W.no-load', '0.3..5 W')),

  week('holds', 'about 3.3 W for 168 h at 0.30: 0.17 of 1'),
  week('fails', '0.17 of 0.10', at('energy.week', '0.10 EUR')),
  week(
    'open',
    'a supply that turns nine tenths into heat, or one tenth',
    at('energy.week', '0.30 EUR'),
    at('parts.boxed-15W.efficiency', '10..90 %'),
  ),

  ripple('holds', '1.2 A of phase at 0.23 A: about 0.45 A of 0.8 A'),
  ripple('fails', '0.45 A of 0.3 A', at('parts.chopper.ripple-current', '0.3 A')),
  ripple('open', 'at 3 A about 1.2 A', at('drivers.D1.current', '1..3 A')),

  sag('holds', 'an ampere or two at 40 mΩ of 1.2 V', sagging('40 mohm')),
  sag('fails', 'the same at 5 Ω', sagging('5 ohm')),
  sag('open', '40 mΩ or 5 Ω', sagging('0.04..5 ohm')),
  above('holds', '40 mΩ of 50 mΩ', sagging('40 mohm'), left('30 mohm', '50 mohm')),
  above('fails', '40 mΩ of 35 mΩ', sagging('40 mohm'), left('30 mohm', '35 mohm')),
  above('open', '30 or 50 mΩ of 40 mΩ', sagging('30..50 mohm'), left('20 mohm', '40 mohm')),
  below('holds', '40 mΩ, of which 30 mΩ are left', sagging('40 mohm'), left('30 mohm', '50 mohm')),
  below('fails', '40 mΩ where 45 mΩ are left', sagging('40 mohm'), left('45 mohm', '50 mohm')),
  below('open', '30 or 50 mΩ where 40 mΩ are left', sagging('30..50 mohm'), left('40 mohm', '60 mohm')),
];
