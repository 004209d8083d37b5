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
const together = of('SUPPLY-020/G1@aiming');
const least = of('SUPPLY-030/5V@standing-by');
const start = of('SUPPLY-040/24V');
const brake = of('SUPPLY-050/x');
const lower = of('SUPPLY-052/z');
const clamp = of('SUPPLY-055/G1+x');
const winding = of('SUPPLY-060/M1');
const touch = of('SUPPLY-070/M1');
const mount = of('SUPPLY-075/M1');
const driver = of('SUPPLY-080/D1');
const servo = of('SUPPLY-085/servo');
const air = of('SUPPLY-090/G1');
const cabinet = of('SUPPLY-095');
const drop = of('SUPPLY-100/F1');
const volts = of('SUPPLY-105/board');
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
const wideCurrent = at('drivers.D1.current', '1..4 A');
const thinAndStrong = [
  at('cables.W2.part', 'thin'),
  at('fuses.F2.rating', '3 A'),
  at('parts.boxed-100W.short-circuit-current', '20 A'),
];
const weak = [at('cables.W1.part', 'thin'), at('parts.boxed-100W.short-circuit-current', '3 A')];

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

  start('holds', '440 µF · 24 V / 5 A = 2.1 ms of 50 ms'),
  start('fails', '44 mF · 24 V / 5 A = 0.21 s of 50 ms', at('parts.chopper.capacitance', '22000 µF')),
  start('open', '2.1 ms lies between 1 and 50 ms', at('parts.boxed-100W.start-within', '1..50 ms')),
  of('SUPPLY-040/5V')(
    'fails',
    'loads of 0.5 A on a supply that limits at 0.4 A never come up',
    at('parts.boxed-15W.overload-current', '0.4 A'),
  ),

  brake('holds', 'the copper eats 0.8 J, the axis has 0.08 J'),
  brake('fails', '1.1 J into 1.44 mF lift 24 V to 46 V, above 40 V', ...heavy),
  brake(
    'open',
    'into 10.4 mF they lift it to 28 V',
    ...heavy,
    at('parts.boxed-100W.output-capacitance', '1000..10000 µF'),
  ),

  lower('holds', '1.2 W of gravity, 2.7 W of copper'),
  lower('fails', '20 kg give back 29 W for 4.7 s', at('axes.z.moving-mass', '20 kg')),
  lower('open', 'at 6 A the copper eats 67 W', at('axes.z.moving-mass', '20 kg'), at('drivers.D2.current', '1..6 A')),

  clamp('holds', 'nothing comes back'),
  clamp(
    'fails',
    '4.8 J less 0.5 J that the capacitors take, every 2.6 s: 1.7 W of 1 W',
    ...heavier,
    at('supplies.G1.clamp.power', '1 W'),
  ),
  clamp(
    'open',
    'a clamp at 100 V would leave all of it to the capacitors',
    ...heavier,
    at('supplies.G1.clamp.power', '1 W'),
    at('supplies.G1.clamp.volts', '30..100 V'),
  ),

  winding('holds', '1.6 W through 4 K/W and the iron: about 47 °C of 130 °C'),
  winding('fails', '27 W cold through 4 K/W, 107 K cold and 180 K warm', at('drivers.D1.current', '5 A')),
  winding('fails', 'at 12 A there is no rest below 250 °C', at('drivers.D1.current', '12 A')),
  winding(
    'open',
    '9.6 W cold: 32 K through 3 K/W, 130 K through 9 K/W',
    at('drivers.D1.current', '3 A'),
    at('parts.stepper-23.case-to-air', '2..8 K/W'),
  ),

  touch('holds', '2.2 W through 3 K/W in 38 °C: 45 °C of 55 °C'),
  touch('fails', 'about 11 W through 3 K/W in 38 °C', at('drivers.D1.current', '3 A')),
  touch('open', 'through 12 K/W it would be 64 °C', at('parts.stepper-23.case-to-air', '2..12 K/W')),

  mount('holds', '45 °C on PETG'),
  mount('fails', 'about 21 W through 3 K/W in 38 °C', at('drivers.D1.current', '4 A')),
  mount('open', 'through 20 K/W it would be above 80 °C', at('parts.stepper-23.case-to-air', '2..20 K/W')),

  driver('holds', '0.88 W through 12 K/W in 38 °C: 48 °C of 100 °C'),
  driver('fails', '0.88 W through 100 K/W', at('parts.chopper.thermal-resistance', '100 K/W')),
  driver('open', '0.88 W through 10 or 100 K/W', at('parts.chopper.thermal-resistance', '10..100 K/W')),

  servo('holds', '0.50 A RMS make 0.76 W, through 20 K/W 15 K'),
  servo('fails', 'stalled for 60 % it makes 6 W', at('loads.servo.stalled', '60 %')),
  servo('open', '0.76 W through 10 or 80 K/W', at('loads.servo.thermal-resistance', '10..80 K/W')),

  air('holds', '30 + 8 °C of 50 °C'),
  air('fails', '30 + 25 °C of 50 °C', at('enclosure.rise', '25 K')),

  cabinet('holds', '64 W of sun and about 12 W, over 20 W/K: 3.8 K of 8 K'),
  cabinet('fails', '240 W of sun and about 12 W, over 20 W/K', at('enclosure.windows', '3 m²')),
  cabinet('open', '76 W over 5 or 25 W/K', at('enclosure.transfer', '1..5 W/(m²·K)')),

  drop('holds', '0.27 A over 0.06 Ω'),
  drop('fails', '0.3 A over 9 Ω', at('cables.W1.part', 'thin'), at('cables.W1.length', '50 m')),
  drop(
    'fails',
    'through 37 Ω no more than 3.9 W arrive',
    at('cables.W1.part', 'thin'),
    at('cables.W1.length', '200 m'),
  ),
  drop('open', '0.3 A over 0.5 or 10 Ω', at('cables.W1.loop-resistance', '0.5..10 ohm')),

  volts('holds', '0.5 A over 0.05 Ω leave 4.98 V of 4.75 V'),
  volts('fails', '0.5 A over 1.8 Ω', at('cables.W3.part', 'thin'), at('cables.W3.length', '10 m')),
  volts('open', '0.5 A over 0.1 or 1 Ω', at('cables.W3.loop-resistance', '0.1..1 ohm')),

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

  overload('holds', '2.1 · 2 A; 1.45 · 7.0 A'),
  overload('fails', '2.1 · 5 A = 10.5 A; 1.45 · 7.0 A = 10.2 A', at('fuses.F1.rating', '5 A')),

  fault('holds', '(4 · 1 A)² · 5 s = 80 A²s; (115 · 0.75)² = 7439 A²s'),
  fault('fails', '(4 · 3 A)² · 5 s = 720 A²s; (115 · 0.2)² = 529 A²s', ...thinAndStrong),
  fault(
    'open',
    'below 12 A the gate is not reached',
    ...thinAndStrong,
    at('parts.boxed-100W.short-circuit-current', '3..20 A'),
  ),

  inrush('holds', '440 µF · (24 V)² / (2 · 0.16 Ω) = 0.8 A²s of 9.7 A²s'),
  inrush('fails', '20 mF: 36 A²s of 9.7 A²s', at('parts.chopper.capacitance', '10000 µF')),
  inrush(
    'open',
    '4 mF: 7 A²s of 1 to 20 A²s',
    at('parts.chopper.capacitance', '2000 µF'),
    at('fuses.F1.melting', '1..20 A²·s'),
  ),

  clears('holds', 'the supply limits at 5 A, and the wire bears 7.0 A for good'),
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
];
