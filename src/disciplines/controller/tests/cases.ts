/** What makes each question about the board hold, fail and stay open. Reckoned by hand where it can be. */
import type { CheckCase } from '../../../contract/index.ts';
import type { Edit, Verdict } from '../../../kernel/index.ts';

export { base } from './base.ts';

const at = (path: string, text: string | null): Edit => ({ path, text });
const of =
  (finding: string) =>
  (verdict: Verdict, because: string, ...edits: readonly Edit[]): CheckCase => ({ finding, verdict, because, edits });
const board = (name: string): Edit => at('controller.board', name);
const given = (signal: string, pin: string | null): Edit => at(`controller.pins.${signal}`, pin);
const landed = (signal: string, pin: string): Edit => at(`controller.landed.${signal}`, pin);
const signal = (name: string, text: string): Edit => at(`signals.${name}`, text);

const all = of('CONTROLLER-010');
const clock = of('CONTROLLER-130');
const hang = of('CONTROLLER-150');
const log = of('CONTROLLER-160');
const cells = of('CONTROLLER-140');
const share = of('CONTROLLER-115');
const bounce = of('CONTROLLER-100/S1');
const room = of('CONTROLLER-105/x');
const clean = of('CONTROLLER-085/S1');
const broken = of('CONTROLLER-090/S1');
const held = of('CONTROLLER-080/S9');
const start = of('CONTROLLER-050/S2');
const total = of('CONTROLLER-074');
const group = of('CONTROLLER-072/B-H-G3-G4');
const steps = of('CONTROLLER-110/x');
const timer = of('CONTROLLER-030/timer-5');

/** Without what only the larger board has. */
const small: readonly Edit[] = [
  board('ESP32'),
  given('S12', null),
  given('P1', null),
  given('S9', null),
  landed('D1-step', 'GPIO13'),
  landed('S1', 'GPIO14'),
];

export const cases: readonly CheckCase[] = [
  of('CONTROLLER-005/P1')('holds', 'there is a signal P1 and a pin 9'),
  of('CONTROLLER-005/P1')('fails', 'pins end at 53 and A15', given('P1', '70')),
  of('CONTROLLER-005/P2')('fails', 'no signal P2', given('P2', '9')),
  of('CONTROLLER-006/S1')('holds', 'there is a signal S1 and a pin 30'),
  of('CONTROLLER-006/D9-step')('fails', 'no drive D9', landed('D9-step', '24')),

  all('holds', '16 signals and a serial port for 70 pins'),
  all('fails', 'two signals are given one pin', given('K1', '9')),
  all('fails', 'the servo takes timer 5, on which pin 44 hangs', given('P1', '44')),
  all(
    'fails',
    'timer 1 for the servo, timer 2 for tones, nothing for steps',
    board('ATmega328P'),
    given('S9', 'A0'),
    landed('S1', '7'),
    landed('D1-step', '8'),
    signal('H1', '{ kind: sound, needs: [tone] }'),
  ),
  of('CONTROLLER-015/S1')('holds', 'pin 30 is free'),
  of('CONTROLLER-015/S1')('fails', 'chart and wire disagree', given('S1', '31')),
  of('CONTROLLER-015/S1')('fails', 'K1 is given the pin on which S1 has landed', given('K1', '30')),

  of('CONTROLLER-020/P1')('holds', 'pin 9 is on timer 2'),
  of('CONTROLLER-020/P1')('fails', 'pin 22 is on no timer', given('P1', '22')),
  of('CONTROLLER-020/Q1')('fails', '65 does not fit into the six bits of the servo library', given('Q1', 'A11')),
  of('CONTROLLER-025/reader')('holds', 'three serial ports besides that of USB'),
  of('CONTROLLER-025/reader')('fails', 'no serial port sends on 22', given('reader-tx', '22')),
  of('CONTROLLER-025/reader')('fails', 'its one serial port is that of USB', board('ATmega328P')),

  timer('holds', 'only the servo uses it'),
  timer('fails', 'a lamp dims on a pin of it beside the servo', given('P1', '45')),
  of('CONTROLLER-030/timer-2')(
    'fails',
    'a lamp dims on pin 9 beside the tones',
    signal('H1', '{ kind: sound, needs: [tone] }'),
  ),
  of('CONTROLLER-040/S12')('holds', 'pin 2 is interrupt 0'),
  of('CONTROLLER-040/S12')('fails', 'pin 22 has no interrupt', given('S12', '22')),

  start(
    'holds',
    'an open contact leaves GPIO5 high',
    ...small,
    signal('S2', '{ kind: button, contact: normally-open, pull: internal }'),
    given('S2', 'GPIO5'),
  ),
  start('fails', 'a closed contact holds GPIO5 low', ...small, given('S2', 'GPIO5')),
  start('fails', 'the board prints on GPIO1', ...small, given('S2', 'GPIO1'), at('controller.log-port', 'none')),

  of('CONTROLLER-060/S12')('holds', '5 V of 5.5 V'),
  of('CONTROLLER-060/S12')('fails', '5 V of 3.3 V', board('RP2040')),
  of('CONTROLLER-065/P1')('holds', '4.2 V for 2.5 V'),
  of('CONTROLLER-065/P1')('fails', '4.2 V for 4.5 V', at('signals.P1.least-high', '4.5 V')),
  of('CONTROLLER-066/D1')('holds', '4.2 V for 3.5 V'),
  of('CONTROLLER-066/D1')('fails', '2.62 V for 3.5 V', board('RP2040')),

  of('CONTROLLER-070/K1')('holds', '5 mA of 40 mA'),
  of('CONTROLLER-070/K1')('tight', 'above 20 mA levels are not promised', at('signals.K1.current', '30 mA')),
  of('CONTROLLER-070/K1')('fails', '70 mA of 40 mA', at('signals.K1.current', '70 mA')),
  of('CONTROLLER-071/D1')('holds', '10 mA of 40 mA'),
  of('CONTROLLER-071/D1')('fails', '50 mA of 40 mA', at('parts.chopper.input-current', '50 mA')),
  group('holds', 'P1 with 5 mA among those of the ports'),
  group(
    'fails',
    'nine lamps with 30 mA each on pins 6 to 13 and 16, of 200 mA',
    ...[6, 7, 8, 10, 11, 12, 13, 16, 17]
      .map((pin) => [signal(`P${pin}`, '{ kind: lamp, current: 30 mA }'), given(`P${pin}`, String(pin))])
      .flat(),
  ),
  total('holds', '61 mA of 200 mA'),
  total(
    'fails',
    '250 mA of 200 mA',
    ...[1, 2, 3, 4, 5, 6, 7].map((k) => signal(`P2${k}`, '{ kind: lamp, current: 30 mA }')),
  ),

  held('holds', 'the chip has a pull-up at A8'),
  held('fails', 'nothing holds it', at('signals.S9.pull', 'none')),
  clean('holds', '5 V over 1 kΩ are 5 mA for 1 mA'),
  clean('fails', '5 V over 10 kΩ are 0.5 mA', at('signals.S1.pull-resistance', '10 kohm')),
  clean('open', '0.5 or 5 mA', at('signals.S1.pull-resistance', '1..10 kohm')),
  broken('holds', 'closed at rest and held'),
  broken('fails', 'open at rest', at('signals.S1.contact', 'normally-open')),
  broken('fails', 'held by nothing', at('signals.S1.pull', 'none')),

  bounce('holds', '5 ms for 3 ms'),
  bounce('fails', '5 ms for 8 ms', at('signals.S1.bounce', '8 ms')),
  bounce('open', '5 ms for 2 to 8 ms', at('signals.S1.bounce', '2..8 ms')),
  room('holds', '60 mm/s · 6 ms + 60²/3000 mm are 1.56 mm of 12 mm'),
  room(
    'fails',
    '300 mm/s · 41 ms + 30 mm are 42 mm of 12 mm',
    at('axes.x.approach-speed', '300 mm/s'),
    at('controller.debounce', '40 ms'),
  ),

  steps('holds', '220 mm/s by 40 mm a turn, 1600 steps: 8.8 kHz of 20 kHz'),
  steps('tight', '8.8 of 10 kHz', at('controller.stepping.ticks', '10 kHz')),
  steps('fails', '8.8 of 8 kHz', at('controller.stepping.ticks', '8 kHz')),
  share('holds', '200 of 800 cycles'),
  share('fails', '1020 of 800 cycles', at('controller.stepping.cycles', '920')),
  share('open', '200 or 1020 of 800 cycles', at('controller.stepping.cycles', '100..920')),

  of('CONTROLLER-120/D1')('holds', 'off by its own circuit'),
  of('CONTROLLER-120/D1')('fails', 'on with an open input', at('drivers.D1.at-reset', 'active')),
  of('CONTROLLER-120/D1')(
    'fails',
    'the transistor that gives it power floats',
    at('drivers.D1.enabled-by', 'K2'),
    signal('K2', '{ direction: out, at-reset: floating }'),
  ),
  of('CONTROLLER-125/K1')('holds', 'off by a resistor'),
  of('CONTROLLER-125/K1')('fails', 'nothing holds it', at('signals.K1.at-reset', 'floating')),

  clock('holds', '60 s of 49.7 days'),
  clock('fails', '90 days of 49.7', at('controller.times-compared', 'by end'), at('controller.runs-for', '30..90 day')),
  cells('holds', '100 · 1825 / 16 are 11,406 of 100,000'),
  cells('fails', '182,500 of 100,000', at('controller.keeps.cells', '1')),
  cells('open', '11,406 of 10,000 or 100,000', at('controller.keeps.bears', '10000..100000')),
  hang('holds', 'the watchdog is on, and the loader stops it'),
  hang('fails', 'off', at('controller.watchdog', 'false')),
  hang('fails', 'the loader is reset for ever', at('controller.loader', 'leaves the watchdog on')),
  log('holds', 'the auto-reset is cut'),
  log('fails', 'as it is built', at('controller.auto-reset', 'as built')),
  log(
    'holds',
    'a port of its own',
    at('controller.auto-reset', 'as built'),
    at('controller.log-port', 'second serial'),
  ),
];
