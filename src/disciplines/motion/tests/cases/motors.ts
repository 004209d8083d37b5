/** What makes each question about motors and drivers hold, fail and stay open. */
import type { CheckCase } from '../../../../contract/index.ts';
import type { Edit, Verdict } from '../../../../kernel/index.ts';

const at = (path: string, text: string | null): Edit => ({ path, text });
const of =
  (finding: string) =>
  (verdict: Verdict, because: string, ...edits: readonly Edit[]): CheckCase => ({ finding, verdict, because, edits });

const torque = of('MOTION-010/x+M1');
const hunting = of('MOTION-020/x+M1');
const steps = of('MOTION-030/x+M1');
const copper = of('MOTION-040/M1');
const leads = of('MOTION-045/M1');
const ampere = of('MOTION-050/D1');
const most = of('MOTION-051/D1');
const least = of('MOTION-052/D1');
const fine = of('MOTION-053/D1');
const position = of('MOTION-054/D1');
const rest = of('MOTION-060/z+M4');
const idle = of('MOTION-070/M1');
const pushed = of('MOTION-310/x+M1');

const motor = (key: string, text: string): Edit => at(`parts.stepper-23.${key}`, text);
const driver = (key: string, text: string | null): Edit => at(`drivers.D1.${key}`, text);
const x = (key: string, text: string): Edit => at(`axes.x.${key}`, text);

/** A motor that reaches half of its speed on the rail and whose driver decays slowly. */
const fastAndSlow = [driver('current', '2.8 A'), at('supplies.G1.rails.24V.volts', '12 V'), driver('hunting', '1')];

export const motorCases: readonly CheckCase[] = [
  torque('holds', '0.055 N·m of about 0.27 N·m'),
  torque('fails', '70 kg at 0.7 m/s² ask 49 N, which is 0.33 N·m', x('moving-mass', '70 kg')),
  torque('fails', '200 mH are 350 ohm at this speed: 24 V drive 0.07 A', motor('phase-inductance', '200 mH')),
  torque('tight', 'friction of 28 N is 0.19 N·m more of 0.27 N·m', x('running-force', '28 N')),
  torque('open', '3 mH or 200 mH', motor('phase-inductance', '3..200 mH')),

  hunting('holds', 'the chopper regulates up to 440 rpm'),
  hunting('fails', 'it regulates up to 120 rpm, runs at 330, and nothing damps it', ...fastAndSlow),
  hunting(
    'holds',
    'a drag steeper than the fall of the EMF drag ends it',
    ...fastAndSlow,
    motor('iron-drag', '0.02 N·m·s/rad'),
  ),
  hunting('open', 'the decay may damp it or not', ...fastAndSlow.slice(0, 2), driver('hunting', '0..1')),

  steps('holds', 'an eighth of a step at a time, passed in a moment'),
  steps(
    'fails',
    '60 full steps a second at a resonance of 57 Hz, lightly damped: rings add up to eight steps',
    driver('microsteps', '1'),
    x('speed', '12 mm/s'),
    motor('ringing', '0.02'),
  ),
  steps(
    'open',
    'the same, damped so lightly or four times as well',
    driver('microsteps', '1'),
    x('speed', '12 mm/s'),
    motor('ringing', '0.02..0.2'),
  ),

  copper('holds', '1.2 A peak against √2 · 2.8 A'),
  copper('tight', '3.6 A peak against 3.96 A: one phase alone at 3.6 A is above 2.8 A', driver('current', '3.6 A')),
  copper('fails', '4.2 A peak against 3.96 A', driver('current', '4.2 A')),
  copper(
    'fails',
    'in half steps both phases stay at the peak: 3 A against 2.8 A',
    driver('microsteps', '2'),
    driver('current', '3 A'),
  ),
  copper('open', 'rated for 0.8 A or for 2.8 A', motor('rated-current', '0.8..2.8 A')),
  copper(
    'open',
    '3 A as marked is 3 A or 4.24 A peak, against 3.96 A',
    driver('current', '3 A'),
    driver('marked', 'unknown'),
  ),

  leads('holds', 'four leads, one coil a phase'),
  leads(
    'holds',
    'eight leads in parallel',
    motor('leads', '8'),
    motor('measured-as', 'half'),
    at('motors.M1.winding', 'parallel'),
  ),
  leads('fails', 'six leads have no way in parallel', motor('leads', '6'), at('motors.M1.winding', 'parallel')),
  leads('fails', 'five leads share one end', motor('leads', '5'), at('motors.M1.winding', 'half')),

  ampere('holds', '1.2 A of 4 A'),
  ampere('tight', '3.6 A of 4 A: above four fifths', driver('current', '3.6 A')),
  ampere('fails', '3 A RMS is 4.24 A peak, of 4 A', driver('current', '3 A'), driver('marked', 'RMS')),
  ampere('open', '3 A as marked is 3 A or 4.24 A peak', driver('current', '3 A'), driver('marked', 'unknown')),

  most('holds', '24.5 V of 40 V'),
  most('fails', '24.5 V of 24 V', at('parts.chopper.most-volts', '24 V')),
  least('holds', '23.5 V for 12 V'),
  least('fails', '23.5 V for 24 V', at('parts.chopper.least-volts', '24 V')),

  fine('holds', '8 is one of 1, 2, 4, 8, 16'),
  fine('fails', '32 is none of them', driver('microsteps', '32')),

  position('holds', 'the switch has 1.2 A'),
  position('fails', 'between 1.2 A and 1.6 A there is no position', driver('current', '1.4 A')),
  position('open', '1.2 A or 1.4 A', driver('current', '1.2..1.4 A')),

  rest('holds', '1.2 A · 0.278 N·m/A − 0.05 N·m = 0.283 N·m against 0.149 N·m'),
  rest('fails', 'a fifth of it: 0.067 − 0.05 N·m', at('drivers.D4.standstill-current', '20 %')),
  rest('open', 'half of it or all', at('drivers.D4.standstill-current', '50..100 %')),

  idle('holds', 'off'),
  idle(
    'fails',
    '1.2 A² · 1 Ω and a warm winding: 1.88 W at 100 °C, 2.94 W at 1.5 A',
    driver('standing-by', 'powered'),
    driver('current', '1.5 A'),
  ),
  idle(
    'open',
    'half of 2.5 A or all of it',
    driver('standing-by', 'powered'),
    driver('current', '2.5 A'),
    driver('standstill-current', '30..100 %'),
  ),

  pushed('holds', '0.4 m/s turns the motor at 62.8 rad/s: 17.5 V of 40 V'),
  pushed('fails', '1 m/s: 43.6 V of 40 V', x('pushed-at', '0.3..1 m/s')),
  pushed(
    'open',
    '1 m/s with 0.5 or with 1.1 N·m at 2.8 A: 20 V or 44 V',
    x('pushed-at', '1 m/s'),
    motor('holding-torque', '0.5..1.1 N·m'),
  ),
];
