import { describe, expect, it } from 'vitest';
import { checkBook, find } from '../../../../app/testing.ts';
import { catalogue } from '../../../../app/catalogue.ts';
import { house } from '../../../../app/index.ts';
import { readEntry } from '../../../../engine/read/leaves.ts';
import type { Edit } from '../../../../kernel/index.ts';
import { stepperRow } from '../../data/steppers.ts';

/** One axis on a belt, with a motor of which everything is exact. */
const small = `book: 1
title: Bench
revision: A
axes:
  x: { drive: belt, motors: M1, travel: 560 mm, speed: 220 mm/s, acceleration: 700 mm/s², moving-mass: 2.5 kg, running-force: 6 N, efficiency: 95 %, belt: B1, pulley-teeth: 20, pushed-at: 0.3 m/s }
motors: { M1: { part: motor, driver: D1, winding-temperature: 20 degC } }
drivers: { D1: { part: chopper, rail: 24V, cable: W1, microsteps: 8, current: 1.2 A, marked: peak, standstill-current: 50 %, hunting: 0.5, standing-by: unpowered } }
parts:
  motor: { kind: stepper, leads: 4, holding-torque: 1.1 N·m, rated-current: 2.8 A, phase-resistance: 1 ohm, phase-inductance: 3 mH, rotor-inertia: 300 g·cm², detent-torque: 50 mN·m, iron-drag: 0.0005 N·m·s/rad, ringing: 0.1 }
  chopper: { kind: driver, most-current: 4 A, least-volts: 12 V, most-volts: 40 V, bridge-resistance: 0.4 ohm, microstepping: [1, 2, 4, 8, 16], current-steps: [0.6 A, 0.8 A, 1 A, 1.2 A, 1.6 A] }
  B1: { kind: belt, pitch: 2 mm, width: 6 mm }
  flex: { kind: cable, core: 0.5 mm², cores: 4, resistance-per-length: 39 ohm/km, stranding: fine }
supplies: { G1: { rails: { 24V: { volts: 24 V, limit: 4.2 A }, 12V: { volts: 12 V } } } }
cables: { W1: { part: flex, length: 3.4 m } }
`;
const machine = checkBook(small);
const at = (path: string, text: string | null): Edit => ({ path, text });
const changed = (...edits: readonly Edit[]) => checkBook(machine.editedTexts(edits).get('book.yaml') ?? small);
const motor = (key: string, text: string | null): Edit => at(`parts.motor.${key}`, text);
const torque = 'MOTION-010/x+M1';

describe('what a motor has, reckoned by hand', () => {
  const fact = (name: string, of = machine): number => {
    const found = of.facts().find((one) => one.name === `motion.${name}(M1)`);
    return found && 'low' in found ? found.low : NaN;
  };

  it('torque for each ampere: holding torque over √2 of the rated current', () => {
    expect(fact('torque-constant')).toBeCloseTo(1.1 / (Math.sqrt(2) * 2.8), 8);
    expect(fact('flux-linkage')).toBeCloseTo(1.1 / (Math.sqrt(2) * 2.8) / 50, 10);
  });

  it('its loop: 2 · 3.4 m · 39 mΩ/m of cable and 0.4 Ω of bridge', () => {
    expect(fact('added-resistance')).toBeCloseTo(0.6652, 10);
    expect(fact('added-resistance', changed(at('cables.W1.parallel', '2')))).toBeCloseTo(0.5326, 10);
    expect(fact('added-resistance', changed(at('cables.W1.loop-resistance', '0.31 ohm')))).toBeCloseTo(0.71, 10);
  });

  it('a warm winding: 0.393 % more for each kelvin', () => {
    expect(fact('phase-resistance', changed(at('motors.M1.winding-temperature', '70 degC')))).toBeCloseTo(1.1965, 10);
  });

  it('six leads, measured on one half, used on the whole coil', () => {
    const series = [motor('leads', '6'), motor('measured-as', 'half'), at('motors.M1.winding', 'series')];
    const whole = changed(...series);
    expect(fact('phase-resistance', whole)).toBeCloseTo(2, 12);
    expect(fact('phase-inductance', whole)).toBeCloseTo(12e-3, 12);
    expect(fact('torque-constant', whole)).toBeCloseTo(2 * fact('torque-constant'), 12);
    expect(fact('rated-current', whole)).toBeCloseTo(2.8 / Math.SQRT2, 12);
  });

  it('a driver marked in RMS gives √2 of it as a peak', () => {
    expect(fact('peak-current', changed(at('drivers.D1.marked', 'RMS')))).toBeCloseTo(1.6971, 4);
  });

  it('half a degree less a step is twice the teeth', () => {
    expect(fact('rotor-teeth', changed(motor('step-angle', '0.9°')))).toBeCloseTo(100, 10);
  });
});

// No source: what people who build such machines find. Motor, load and bound were fixed before the first run.
describe('common practice, no source', () => {
  it('a frame-23 motor of 1.1 N·m at 2 A on 12 V moves 2.5 kg at 220 mm/s under 40 % of its limit', () => {
    const book = `book: 1
title: Practice
revision: A
axes: { x: { drive: belt, motors: M1, belt: 2GT-6, pulley-teeth: 20, moving-mass: 2.5 kg, speed: 220 mm/s, acceleration: 700 mm/s² } }
motors: { M1: { part: m, driver: D1 } }
drivers: { D1: { rail: 12V, current: 2 A, marked: peak } }
parts: { m: { kind: stepper, frame: 23, body: 56 mm, leads: 4, holding-torque: 1.1 N·m, rated-current: 2.8 A, phase-resistance: 1 ohm, phase-inductance: 3 mH } }
supplies: { G1: { rails: { 12V: { volts: 12 V } } } }
`;
    const { verdict, use } = find(checkBook(book), torque);
    expect(verdict).toBe('holds');
    expect(use!.worst).toBeLessThan(0.4);
  });
});

describe('ranges', () => {
  it('more holding torque is worse where the rail governs: neither end does, the middle would', () => {
    const alone = (text: string) =>
      find(
        changed(motor('holding-torque', text), at('drivers.D1.rail', '12V'), motor('phase-inductance', '8 mH')),
        torque,
      );
    expect(alone('0.2 N·m').verdict).toBe('fails');
    expect(alone('9 N·m').verdict).toBe('fails');
    expect(alone('1.5 N·m').use!.worst).toBeLessThan(1);
    const range = alone('0.2..9 N·m');
    // The two ends alone would say that it fails.
    expect(range.verdict).toBe('open');
    expect(range.searched).toBe(true);
    expect(range.use!.best).toBeLessThan(Math.min(1, alone('1.5 N·m').use!.worst * 1.001));
  });

  it('an unknown marking is a doubt of √2, and says how to end it', () => {
    const unknown = changed(at('drivers.D1.marked', 'unknown'), at('drivers.D1.current', '3 A'));
    const copper = find(unknown, 'MOTION-040/M1');
    expect(copper.verdict).toBe('open');
    expect(copper.use!.worst / copper.use!.best).toBeCloseTo(Math.SQRT2, 4);
    expect(unknown.questions().map(({ path }) => path)).toContain('drivers.D1.peak-per-marked');
  });

  it('says no declared slope wrong', () => {
    const wide = changed(
      motor('holding-torque', '0.9..1.3 N·m'),
      motor('phase-resistance', '0.8..1.4 ohm'),
      motor('phase-inductance', '2..5 mH'),
      motor('rotor-inertia', '200..400 g·cm²'),
      motor('ringing', '0.02..0.2'),
      at('axes.x.moving-mass', '2..3 kg'),
      at('motors.M1.winding-temperature', '10..100 degC'),
      at('drivers.D1.standing-by', 'powered'),
    );
    expect(wide.slopeFaults).toEqual([]);
  });
});

describe('little is needed', () => {
  const bare = (...keys: readonly string[]) =>
    changed(
      motor('frame', '23'),
      motor('body', '56 mm'),
      ...[
        'holding-torque',
        'rated-current',
        'phase-resistance',
        'phase-inductance',
        'rotor-inertia',
        'detent-torque',
        'iron-drag',
        'ringing',
      ]
        .filter((key) => !keys.includes(key))
        .map((key) => motor(key, null)),
    );

  it('frame and body give an answer, with the ohms as the question', () => {
    const found = find(bare(), torque);
    expect(found.verdict).toBe('open');
    expect(found.scenario.map(({ path }) => path)).toContain('parts.motor.phase-resistance');
  });

  it('one measured number narrows it', () => {
    const known = find(bare('phase-resistance'), torque);
    const unknown = find(bare(), torque);
    expect(known.use!.worst).toBeLessThan(unknown.use!.worst);
    expect(find(bare('rated-current'), torque).use!.worst).toBeLessThan(unknown.use!.worst);
  });

  it('an unlisted body is not guessed at', () => {
    const found = find(changed(motor('frame', '23'), motor('body', '140 mm'), motor('holding-torque', null)), torque);
    expect(found.verdict).toBe('not-stated');
    expect(found.missing).toContain('parts.motor.holding-torque');
    expect(stepperRow(23, 0.058)?.body).toBe(0.056);
    expect(stepperRow(23, 0.062)).toBeUndefined();
  });

  it('a rail that no supply has is not stated', () => {
    const found = find(changed(at('supplies.G1.rails.24V.volts', null)), torque);
    expect(found.missing).toContain('supplies.G1.rails.24V.volts');
  });
});

describe('questions that do not arise', () => {
  it.each([
    ['MOTION-054/D1', at('parts.chopper.current-steps', null)],
    ['MOTION-310/x+M1', at('axes.x.unpowered', 'windings shorted')],
  ])('%s', (key, edit) => {
    expect(machine.findings.map((one) => one.key)).toContain(key);
    expect(changed(edit).findings.map((one) => one.key)).not.toContain(key);
  });
});

describe('remedies', () => {
  it('another rail and less speed let a motor that is short of volts keep up', () => {
    const slow = changed(at('drivers.D1.rail', '12V'), motor('phase-inductance', '18 mH'));
    expect(find(slow, torque).verdict).toBe('fails');
    const said = slow.remedies(torque).map(({ says }) => says);
    expect(said).toEqual(expect.arrayContaining([expect.stringContaining('rail 24V')]));
    expect(said).toEqual(expect.arrayContaining([expect.stringContaining('more slowly')]));
  });

  it('a switch position that is there', () => {
    const between = changed(at('drivers.D1.current', '1.4 A'));
    expect(find(between, 'MOTION-054/D1').verdict).toBe('fails');
    const [first] = between.remedies('MOTION-054/D1');
    expect(first!.edits[0]!.after).toMatch(/^1\.(2|6) A$/);
  });
});

describe('the catalogue', () => {
  const rows = (kind: string) => catalogue.filter((row) => row.kind === kind);

  it.each([...rows('stepper'), ...rows('driver')].map((row) => [row.name, row] as const))(
    '%s can be read',
    (_, row) => {
      const entry = readEntry(house.schema.zod, 'parts', { kind: row.kind, ...row.keys }, { provenance: 'table' });
      expect(Object.keys(entry)).toEqual(['kind', ...Object.keys(row.keys)]);
    },
  );

  it('has of a motor and of a driver everything that is asked for', () => {
    const named = changed(at('motors.M1.part', 'frame-23-56'), at('drivers.D1.part', 'chopper-4A'));
    const missing = named.findings.filter(({ code }) => /^MOTION-[03]/.test(code)).flatMap((one) => one.missing ?? []);
    expect(missing).toEqual([]);
    for (const kind of ['stepper', 'driver']) {
      const [first, ...others] = rows(kind).map(({ keys }) => new Set(Object.keys(keys)));
      const always = [...first!].filter((key) => others.every((keys) => keys.has(key)));
      expect(always.length, kind).toBeGreaterThanOrEqual(7);
    }
  });

  it('says of steppers what the table of sizes says', () => {
    for (const { name, keys } of catalogue.filter(({ kind }) => kind === 'stepper')) {
      const row = stepperRow(Number(keys['frame']), parseFloat(String(keys['body'])) / 1000);
      const [low, high] = String(keys['holding-torque']).split('..').map(parseFloat);
      expect([low, high], name).toEqual(row!.holding);
    }
  });
});
