/** What the checks come to, reckoned once more from the book's own numbers, line by line. */
import { describe, expect, it } from 'vitest';
import { checkBook, find } from '../../../../app/testing.ts';
import type { Edit, Finding } from '../../../../kernel/index.ts';
import { base } from '../base.ts';

const machine = checkBook(base);
const at = (path: string, text: string | null): Edit => ({ path, text });
const finding = (key: string, ...edits: readonly Edit[]): Finding => {
  const changed =
    edits.length === 0 ? machine : checkBook(machine.editedTexts(edits).get(machine.book.main) ?? 'no such file');
  return find(changed, key);
};
const demand = (key: string, ...edits: readonly Edit[]): number => finding(key, ...edits).demand!.number;
const limit = (key: string, ...edits: readonly Edit[]): number => finding(key, ...edits).limit!.number;

const g = 9.80665;
const radius = 0.04 / (2 * Math.PI);
const warm = 1 + 0.00393 * 40;
/** Copper and cable of a motor at the set current; standing at half of it. */
const losses = 1.44 * (warm + 0.7);
const held = losses / 4 + 0.3;
const driven = (speed: number): number => {
  const shaft = speed / radius;
  const torque = ((2.5 * 0.7 + 6) * radius) / 0.95 + (300e-7 * 0.7) / radius;
  return losses + 0.0005 * shaft ** 2 + torque * shaft + 0.3;
};
/** Wire of F1 to F3 by its length, cold and warm. */
const wire = (length: number, celsius: number): number => 2 * length * 0.026 * (1 + 0.00393 * (celsius - 20));

describe('a rail', () => {
  it('gives what hangs on it, and at the peak what stalls', () => {
    expect(demand('SUPPLY-010/24V@aiming')).toBeCloseTo((driven(0.22) + held + 0.1) / 24, 9);
    expect(demand('SUPPLY-015/claw@fetching')).toBe(1.8);
    expect(demand('SUPPLY-015/24V@aiming')).toBe(demand('SUPPLY-010/24V@aiming'));
    expect(limit('SUPPLY-010/24V@aiming')).toBe(4.2);
    expect(limit('SUPPLY-015/24V@aiming')).toBe(5);
  });

  it('gives a load that is stated in watts its power over the volts', () => {
    const edits = [at('loads.sound.current', null), at('loads.sound.power', '4 W')];
    expect(demand('SUPPLY-010/5V@aiming', ...edits)).toBeCloseTo(0.2 + 4 / 5, 12);
    expect(demand('SUPPLY-015/5V@aiming', ...edits)).toBeCloseTo(0.2 + 4 / 5, 12);
    // 4 W from a rail of 5 V behind 0.2 Ω and 0.0557 Ω, with 0.2 A beside it: v² − (5 − R·0.2)·v + R·4 = 0.
    const feed = 0.2 + wire(1, 38);
    const left = 5 - feed * 0.2;
    const volts = (left + Math.sqrt(left ** 2 - 4 * feed * 4)) / 2;
    expect(demand('SUPPLY-100/F3', ...edits)).toBeCloseTo(5 - volts, 6);
    expect(demand('SUPPLY-120/F3', ...edits)).toBeCloseTo(0.2 + 4 / volts, 6);
  });

  it('hands on to the rail before it what its converter loses', () => {
    const two = at('supplies.G3.rails.lamps', '{ volts: 3 V, limit: 1 A }');
    const lamp = at('loads.lamp', '{ rail: lamps, current: 0.6 A }');
    expect(demand('SUPPLY-020/G3@fetching', two, lamp)).toBeCloseTo(5.5 * 0.3 + 3 * 0.6, 12);
    const input = (5.5 * 0.3 + 3 * 0.6) / 0.9 + 0.1;
    expect(demand('SUPPLY-120/F2', two, lamp)).toBeCloseTo(input / (24 - demand('SUPPLY-100/F2', two, lamp)), 9);
    expect(demand('SUPPLY-010/24V@standing-by', two, lamp)).toBeCloseTo(((3 * 0.6) / 0.9 + 0.1) / 24, 12);
  });

  it('feeds a drive behind its converter as it moves', () => {
    const behind = at('drivers.D1.rail', 'claw');
    expect(demand('SUPPLY-010/24V@aiming', behind)).toBeCloseTo((driven(0.22) / 0.9 + 0.1 + held) / 24, 9);
  });

  it('with a least load is asked for it, wherever that is stated', () => {
    expect([demand('SUPPLY-030/5V@standing-by'), limit('SUPPLY-030/5V@standing-by')]).toEqual([0.2, 0.1]);
    const moved = [at('parts.boxed-15W.minimum', null), at('supplies.G2.minimum', '{ 5V: 0.15 A }')];
    expect(limit('SUPPLY-030/5V@standing-by', ...moved)).toBe(0.15);
    expect(limit('SUPPLY-030/5V@standing-by', moved[1]!), 'its own before that of its part').toBe(0.15);
  });

  it('comes up as soon as its capacitors are full, with what is on standing by', () => {
    // Two drivers and a converter at 24 V; the converter takes 0.1 W for itself.
    expect(demand('SUPPLY-040/24V')).toBeCloseTo((540e-6 * 24) / (5 - 0.1 / 24), 12);
    expect(demand('SUPPLY-040/5V')).toBeCloseTo((470e-6 * 5) / (3.5 - 0.2), 12);
    expect(demand('SUPPLY-040/5V', at('loads.sound.modes', null)), 'sound is on as well').toBeCloseTo(
      (470e-6 * 5) / (3.5 - 0.5),
      12,
    );
    // Its servo stalls behind the converter as that starts.
    const early = at('loads.servo.modes', 'standing-by');
    expect(demand('SUPPLY-040/24V', early)).toBeCloseTo((540e-6 * 24) / (5 - ((5.5 * 1.8) / 0.9 + 0.1) / 24), 12);
  });
});

describe('what comes back', () => {
  const hard = [
    at('axes.x.speed', '1000 mm/s'),
    at('axes.x.acceleration', '5000 mm/s²'),
    at('axes.x.moving-mass', '20 kg'),
  ];
  const shaft = 1 / radius;
  const swung = ((20 * radius ** 2 + 300e-7) * shaft ** 2) / 2;
  const back = swung - losses * 0.2;
  const capacitors = 1000e-6 + 2 * 220e-6 + 100e-6;
  const free = at('supplies.G1.clamp', null);

  it('lifts a rail by the energy of what stops, less what the copper takes in the ramp', () => {
    expect(demand('SUPPLY-050/24V', ...hard, free)).toBeCloseTo(Math.sqrt(576 + (2 * back) / capacitors), 6);
    expect(limit('SUPPLY-050/24V', ...hard, free)).toBe(40);
    expect(demand('SUPPLY-050/24V', ...hard), 'no farther than the clamp').toBe(36);
    expect(demand('SUPPLY-050/24V'), 'the copper takes it all').toBe(24);
  });

  it('counts the axes together that move in one mode, and the worst of the modes', () => {
    const full = at('parts.stepper-23.phase-resistance', '1 mohm');
    const light = [at('drivers.D1.current', '0.2 A'), at('drivers.D2.current', '0.2 A')];
    const together = at('modes.aiming.moving', '[x, z]');
    const one = demand('SUPPLY-050/24V', ...hard, ...light, full, free);
    const both = demand('SUPPLY-050/24V', ...hard, ...light, full, free, together);
    // What z brings: its load and rotor at full speed, and its weight over the ramp, less the copper.
    const [r, v] = [0.0166, 0.16];
    const few = (0.2 / 1.2) ** 2 * (losses - 1.44 * (0.999 * warm));
    const lowered = ((0.76 * r ** 2 + 300e-7) * (v / r) ** 2) / 2 + (0.76 * g * v * 0.32) / 2 - few * 0.32;
    expect(lowered).toBeGreaterThan(0.05);
    expect(((both ** 2 - one ** 2) * capacitors) / 2).toBeCloseTo(lowered, 4);
  });

  it('is burnt by the clamp, once for each travel', () => {
    // 0.56 m at 1 m/s with ramps of 0.2 s: 0.76 s.
    const stored = (capacitors * (36 ** 2 - 24 ** 2)) / 2;
    expect(demand('SUPPLY-055/24V', ...hard)).toBeCloseTo((back - stored) / 0.76, 6);
    expect(limit('SUPPLY-055/24V')).toBe(5);
  });

  it('holds wherever the clamp is stated', () => {
    const moved = [at('supplies.G1.clamp', null), at('parts.boxed-100W.clamp', '{ volts: 33 V, power: 4 W }')];
    expect(demand('SUPPLY-050/24V', ...hard, ...moved)).toBe(33);
    expect(limit('SUPPLY-055/24V', ...moved)).toBe(4);
  });

  it('of a load that is lowered is its weight times the way, less the copper', () => {
    const heavy = [at('axes.z.moving-mass', '10 kg'), at('axes.z.load', '0 g'), at('axes.z.speed', '500 mm/s'), free];
    // 0.7 m at 0.5 m/s with ramps of 1 s: 2.4 s.
    const power = 10 * g * 0.5 - losses;
    expect(demand('SUPPLY-052/z', ...heavy)).toBeCloseTo(Math.sqrt(576 + (2 * power * 2.4) / capacitors), 4);
    expect(demand('SUPPLY-052/z')).toBe(24);
  });
});

describe('warmth', () => {
  it('of a driver is that of its hottest mode, and of itself', () => {
    expect(demand('SUPPLY-080/D1')).toBeCloseTo(311.15 + 12 * (1.44 * 0.4 + 0.3), 9);
    const full = at('drivers.D1.microsteps', '1');
    expect(demand('SUPPLY-080/D1', full)).toBeCloseTo(311.15 + 12 * (2 * 1.44 * 0.4 + 0.3), 9);
  });

  it('of a servo is that of a play that stalls now and then, while players queue', () => {
    const on = (5.5 * (0.05 * 1.8 ** 2 + 0.95 * 0.3 ** 2)) / 1.8;
    expect(demand('SUPPLY-085/servo')).toBeCloseTo(311.15 + (20 * on) / 3, 9);
    expect(demand('SUPPLY-085/servo', at('loads.servo.modes', null)), 'on for nights').toBeCloseTo(311.15 + 20 * on, 9);
  });

  it('runs away by what the hottest of what goes on for long brings, whatever the air', () => {
    // α·R is the same at every temperature: 0.00393 of the cold copper for each kelvin.
    const share = (...edits: readonly Edit[]) =>
      finding('SUPPLY-060/M1', ...edits).beside!['share of running away']!.number;
    expect(share(), 'a queue that aims for two thirds of the time').toBeCloseTo(0.00393 * (1.44 + 3 * 0.96), 9);
    const kept = [at('drivers.D1.standing-by', 'powered'), at('drivers.D1.standstill-current', '100 %')];
    expect(share(...kept), 'one phase for nights').toBeCloseTo(0.00393 * (2 * 1.44 + 3 * 1.44), 9);
    expect(share(...kept, at('modes.fetching.unpowered', '[]')), 'a queue that is never off').toBeCloseTo(
      0.00393 * (2 * 1.44 + 3 * 1.44),
      9,
    );
  });

  it('of a driver whose motors differ is that of the one that takes more', () => {
    const shared = [at('motors.M2.driver', 'D1'), at('modes.aiming.unpowered', '[x]'), at('modes.aiming.moving', '[]')];
    // M1 is never on in full then, M2 is, as it hoists.
    expect(demand('SUPPLY-080/D1', ...shared)).toBeCloseTo(311.15 + 12 * (1.44 * 0.4 + 0.3), 9);
  });
});

describe('a branch', () => {
  // By hand: 0.75 mm² in trunking with others, a little below 40 °C.
  const bears = 8.5 * 0.8 * Math.sqrt(32 / 30);

  it('loses on fuse and wire, as its kind is stated, as it was measured, or as its copper says', () => {
    expect(demand('SUPPLY-100/F3')).toBeCloseTo(0.5 * (0.2 + wire(1, 38)), 12);
    expect(demand('SUPPLY-100/F3', at('cables.W3.loop-resistance', '300 mohm'))).toBeCloseTo(0.5 * (0.2 + 0.3), 12);
    const copper = (2 * 1 * 1.7241e-8 * (1 + 0.00393 * 18)) / 0.75e-6;
    const plain = at('parts.hook-up.resistance-per-length', null);
    expect(demand('SUPPLY-100/F3', plain)).toBeCloseTo(0.5 * (0.2 + copper), 6);
    expect(demand('SUPPLY-100/F3', at('cables.W3.parallel', '2'))).toBeCloseTo(0.5 * (0.2 + wire(1, 38) / 2), 12);
    expect(demand('SUPPLY-105/board')).toBeCloseTo(5 - 0.5 * (0.2 + wire(1, 38)), 12);
  });

  it('loses more when everything on it stalls at once', () => {
    const loop = 0.2 + wire(1, 38);
    const stalling = at('loads.sound.peak', '0.6 A');
    expect(demand('SUPPLY-105/board', stalling)).toBeCloseTo(5 - 0.8 * loop, 12);
    expect(demand('SUPPLY-100/F3', stalling), 'not for good').toBeCloseTo(0.5 * loop, 12);
    // A converter takes the same power whatever arrives: v² − 24·v + R·P = 0.
    const behind = 0.24 + wire(1, 38);
    const taken = (5.5 * 0.3) / 0.9 + 0.1;
    expect(demand('SUPPLY-100/F2')).toBeCloseTo((24 - Math.sqrt(576 - 4 * behind * taken)) / 2, 6);
  });

  it('without a wire carries what its load takes at the rail', () => {
    const bare = at('fuses.F1.cable', null);
    expect(demand('SUPPLY-120/F1', bare)).toBeCloseTo((driven(0.22) + held) / 24, 9);
    expect(limit('SUPPLY-120/F1')).toBeCloseTo(2 * (1 - 0.004 * 15), 12);
  });

  it('bears its fuse for good, and as an overload', () => {
    expect(limit('SUPPLY-130/F1')).toBeCloseTo(bears, 9);
    expect([demand('SUPPLY-140/F1'), limit('SUPPLY-140/F1')]).toEqual([4.2, expect.closeTo(1.45 * bears, 9)]);
  });

  // Published-secondary (cable-k-factors): k of 115 and 143 for these, whole numbers.
  it.each([
    ['PVC 70', 115],
    ['PVC 90', 100],
    ['XLPE 90', 143],
  ])('with %s bears in a short circuit what a k of %i says', (insulation, k) => {
    const borne = limit('SUPPLY-150/F1', at('parts.hook-up.insulation', insulation));
    expect(Math.abs(Math.sqrt(borne / 0.75 ** 2) - k)).toBeLessThan(0.7);
  });

  it('lets through what its supply gives until the gate of the fuse', () => {
    expect(demand('SUPPLY-150/F1'), '5 A is less than four times 2 A').toBeCloseTo(25 * 5, 9);
    expect(demand('SUPPLY-150/F2'), 'four times 1 A').toBeCloseTo(16 * 5, 9);
    expect(demand('SUPPLY-150/F3'), '1 A of a hiccup').toBeCloseTo(0.3, 12);
    // A supply that gives more than the wire: 24 V through 0.08 Ω and the cold wire, up to ten times 2 A for 0.1 s.
    const strong = at('parts.boxed-100W.short-circuit-current', '500 A');
    expect(demand('SUPPLY-150/F1', strong)).toBeCloseTo(Math.max(8 ** 2 * 5, 20 ** 2 * 0.1), 9);
  });

  it('is sent the charge of its capacitors through fuse, wire and contact', () => {
    const through = (capacitance: number, volts: number, loop: number) => (capacitance * volts ** 2) / (2 * loop);
    expect(demand('SUPPLY-160/F1')).toBeCloseTo(through(440e-6, 24, 0.04 + 0.08 + wire(1.2, 18)), 9);
    expect(demand('SUPPLY-160/F2')).toBeCloseTo(through(100e-6, 24, 0.04 + 0.24 + wire(1, 18)), 9);
    expect(demand('SUPPLY-160/F3')).toBeCloseTo(through(470e-6, 5, 0.04 + 0.2 + wire(1, 18)), 9);
    expect(demand('SUPPLY-160/F1', at('fuses.F1.cable', null)), 'no wire is stated').toBeCloseTo(
      through(440e-6, 24, 0.04 + 0.08),
      9,
    );
  });

  it('bears what neither fuse nor supply ends', () => {
    expect(demand('SUPPLY-170/F1'), 'the supply goes on with 5 A').toBeCloseTo(5 / bears, 9);
    expect(demand('SUPPLY-170/F2'), 'four times 1 A').toBeCloseTo(4 / bears, 9);
    expect(demand('SUPPLY-170/F3'), 'a hiccup of 3.5 A').toBeCloseTo(3.5 / bears, 9);
  });

  it('on two rails is refused', () => {
    const mixed = finding('SUPPLY-125/F3', at('loads.sound.rail', 'claw'));
    expect([mixed.verdict, mixed.sentence]).toEqual([
      'fails',
      'F3 feeds things on rails 5V and claw: a fuse stands in one rail.',
    ]);
    expect(finding('SUPPLY-125/F2').sentence).toBe('Everything behind F2 is on rail 24V.');
  });
});

describe('from the socket', () => {
  const idle = 0.1 / 0.86 + 0.5 + 1 / 0.8 + 0.3;

  it('standing by takes what the supplies lose, in whichever mode is idle', () => {
    expect(demand('SUPPLY-180')).toBeCloseTo(idle, 9);
    const other = [at('modes.standing-by.idle', 'false'), at('modes.aiming.idle', 'true')];
    const aiming = (2.5 + 0) / 0.8 + 0.3 + 0.1 / 0.86 + 0.5;
    expect(demand('SUPPLY-180', ...other, at('modes.standing-by.moving', '[]'))).toBeCloseTo(aiming, 9);
  });

  it('a week costs its energy', () => {
    const week = machine.facts().find(({ name }) => name === 'supply.week-energy(site)');
    expect(demand('SUPPLY-185')).toBeCloseTo(((week as { high: number }).high / 3.6e6) * 0.3, 9);
    const dear = at('site.energy-price', '0.60 EUR/kWh');
    expect(demand('SUPPLY-185', dear)).toBeCloseTo(2 * demand('SUPPLY-185'), 12);
  });
});

it('a chopper ripples by its current and by the mean that it takes', () => {
  const ripple = (peak: number, mean: number): number => {
    const m = mean / peak;
    return peak * Math.sqrt(2 * ((4 * m) / (3 * Math.PI) - (3 * m ** 2) / 8));
  };
  expect(demand('SUPPLY-190/D1')).toBeCloseTo(ripple(1.2, driven(0.22) / 24), 9);
});
