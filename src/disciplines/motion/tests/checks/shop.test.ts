/** What a builder trips over: loads that hang on nothing, stops that are harder than starts, settings that mislead. */
import { describe, expect, it } from 'vitest';
import { checkBook, find } from '../../../../app/testing.ts';
import type { Edit } from '../../../../kernel/index.ts';
import { lowestCurrent } from '../../studies/lowest-current.ts';
import { substitutes } from '../../studies/substitutes.ts';
import { base } from '../base.ts';

const machine = checkBook(base);
const at = (path: string, text: string | null): Edit => ({ path, text });
const changed = (...edits: readonly Edit[]) => checkBook(machine.editedTexts(edits).get(machine.book.main) ?? base);
const asked = (key: string, ...edits: readonly Edit[]) => find(changed(...edits), key);
const keysOf = (...edits: readonly Edit[]) => changed(...edits).findings.map(({ key }) => key);
const radius = 0.04 / (2 * Math.PI);

describe('what has to be asked', () => {
  it('a drive without motors is a question and no silence', () => {
    for (const key of ['MOTION-010/x', 'MOTION-060/z', 'MOTION-225/z']) {
      const [, axis] = key.split('/') as [string, string];
      const found = asked(key, at(`axes.${axis}.motors`, null));
      expect(found.verdict, key).toBe('not-stated');
      expect(found.missing, key).toContain(`axes.${axis}.motors`);
    }
  });

  it('a stop that is harder than the start asks its torque, without help from friction', () => {
    // 2.5 kg at 20 m/s², and the rotor.
    const byHand = 2.5 * 20 * radius + (300e-7 * 20) / radius;
    const found = asked('MOTION-010/x+M1', at('axes.x.stopping.acceleration', '20 m/s²'));
    expect(found.verdict).toBe('fails');
    expect(found.beside['torque asked']!.number).toBeCloseTo(byHand, 9);
    expect(found.sentence).toContain('To stop');
  });

  it('a stop on a hoist is at its hardest on the way down', () => {
    const byHand = (0.76 * (9.80665 + 30) + 1.5) * 0.0166 + (300e-7 * 30) / 0.0166;
    const found = asked('MOTION-010/z+M4', at('axes.z.stopping.acceleration', '30 m/s²'));
    expect(found.beside['torque asked']!.number).toBeCloseTo(byHand, 9);
  });

  it('full steps at the speed of homing may stand on the resonance as well', () => {
    const slow = [at('drivers.D1.microsteps', '1'), at('parts.stepper-23.ringing', '0.02')];
    expect(asked('MOTION-030/x+M1', ...slow).verdict).toBe('tight');
    expect(asked('MOTION-030/x+M1', ...slow, at('axes.x.approach-speed', '12 mm/s')).verdict).toBe('fails');
  });
});

describe('a raised load while nobody plays', () => {
  const onItsDrive = at('axes.z.rests-on', 'its drive');

  it('shorted windings let it sink: only what bears it keeps it there', () => {
    const found = asked('MOTION-215/z+M4', onItsDrive);
    expect(found.verdict).toBe('fails');
    expect(found.sentence).toContain('sinks');
    expect(asked('MOTION-215/z+M4', at('axes.z.rests-on', null)).missing).toEqual(['axes.z.rests-on']);
    for (const edit of [at('axes.z.rests-on', 'a catch'), at('drivers.D4.standing-by', 'powered')])
      expect(keysOf(edit, ...(edit.path.startsWith('drivers') ? [onItsDrive] : []))).not.toContain('MOTION-215/z+M4');
  });

  it('no remedy for heat lets go of it', () => {
    const hot = changed(onItsDrive, at('drivers.D4.standing-by', 'powered'), at('drivers.D4.current', '1.6 A'));
    expect(find(hot, 'MOTION-070/M4').verdict).toBe('fails');
    const remedies = hot.remedies('MOTION-070/M4');
    expect(remedies.length).toBeGreaterThan(0);
    for (const { edits } of remedies) {
      const paths = edits.map(({ path }) => path);
      expect(paths).not.toContain('drivers.D4.standstill-current');
      expect(paths.some((path) => path.startsWith('axes.z.'))).toBe(true);
    }
  });

  it('both phases on in full steps are twice the heat', () => {
    const on = [at('drivers.D1.standing-by', 'powered'), at('motors.M1.winding-temperature', '20 degC')];
    expect(asked('MOTION-070/M1', ...on).demand!.number).toBeCloseTo(1.2 ** 2, 9);
    expect(asked('MOTION-070/M1', ...on, at('drivers.D1.microsteps', '1')).demand!.number).toBeCloseTo(2 * 1.2 ** 2, 9);
  });
});

describe('geometry of what turns and falls', () => {
  it('a level axis drops nothing, a slope as far as it is high', () => {
    const free = at('axes.x.unpowered', 'free');
    expect(keysOf(at('axes.x.incline', '0°'), free)).not.toContain('MOTION-225/x+M1');
    const byHand = (2.5 ** 2 * 9.80665 * 0.28) / (2.5 + 300e-7 / radius ** 2);
    expect(asked('MOTION-225/x+M1', at('axes.x.incline', '30°'), free).demand!.number).toBeCloseTo(byHand, 9);
  });

  it('a load on a screw that turns back is asked how it lands, on one that does not it stays', () => {
    expect(asked('MOTION-225/lift+M5').verdict).toBe('holds');
    const flat = [at('axes.lift.screw.lead', '2 mm'), at('axes.lift.screw.friction', '0.2')];
    expect(keysOf(...flat)).not.toContain('MOTION-225/lift+M5');
  });

  it('a drum behind a reduction swings along with the square of it', () => {
    const drum = [at('axes.z.drum.inertia', '900 g·cm²'), at('axes.z.reduction', '3'), at('axes.z.unpowered', 'free')];
    const fallen = (turning: number): number => (0.76 ** 2 * 9.80665 * 0.7) / (0.76 + turning / (0.0166 / 3) ** 2);
    expect(asked('MOTION-225/z+M4', ...drum).demand!.number).toBeCloseTo(fallen(300e-7 + 900e-7 / 9), 9);
  });

  it('on a full drum the load falls at the longer arm', () => {
    const two = [at('axes.z.drum.width', '7.5 mm'), at('axes.z.drum.layers', '2'), at('axes.z.unpowered', 'free')];
    expect(asked('MOTION-225/z+M4', ...two).demand!.number).toBeCloseTo(
      (0.76 ** 2 * 9.80665 * 0.7) / (0.76 + 300e-7 / 0.0178 ** 2),
      9,
    );
  });

  it('a heavy rotor under two layers is at its hardest on the inner one', () => {
    const two = [at('axes.z.drum.width', '7.5 mm'), at('axes.z.drum.layers', '2')];
    const heavy = [at('axes.z.drum.inertia', '60000 g·cm²'), at('axes.z.load', '0 g')];
    const byHand = ((0.62 * (9.80665 + 0.5) + 1.5) * 0.0166) / 0.85 + ((300e-7 + 6e-3) * 0.5) / 0.0166;
    expect(asked('MOTION-010/z+M4', ...two, ...heavy).beside['torque asked']!.number).toBeCloseTo(byHand, 9);
  });

  it('one motor carries everything, and the larger share of two is no less than half', () => {
    const asks = (...edits: readonly Edit[]) => asked('MOTION-010/x+M1', ...edits).beside['torque asked']!.number;
    expect(asks(at('axes.x.share', '50 %'))).toBeCloseTo(asks(), 12);
    const pair = (text: string | null) =>
      asked('MOTION-010/y+M2', at('axes.y.share', text)).beside['torque asked']!.number;
    expect(pair('30 %')).toBeCloseTo(pair(null), 12);
  });
});

describe('sentences', () => {
  it('what is only possible is not told as a fact', () => {
    const doubtful = asked('MOTION-430/y+M2', at('axes.y.racking-force', '40..150 N'));
    expect(doubtful.verdict).toBe('open');
    expect(doubtful.sentence).toMatch(/^At worst: /);
    expect(asked('MOTION-430/y+M2', at('axes.y.racking-force', '40 N')).sentence).not.toMatch(/^At worst/);
  });

  it('a frame of which nothing is said is told to stand still', () => {
    expect(asked('MOTION-130/x', at('axes.x.frame-movement', null)).sentence).toContain('stand still');
    expect(find(machine, 'MOTION-130/x').sentence).not.toContain('stand still');
  });
});

describe('lowest current', () => {
  it('calls no current enough that leaves a question open, or that is as bad as the present one', () => {
    const open = changed(at('parts.stepper-23.phase-inductance', '3..200 mH'));
    expect(find(open, 'MOTION-010/x+M1').verdict).toBe('open');
    const found = open.study(lowestCurrent, { driver: 'D1' })!;
    expect(found.tried.length).toBeGreaterThan(0);
    expect(found.lowest).toBeUndefined();
    const failing = changed(at('axes.x.moving-mass', '70 kg'));
    expect(failing.study(lowestCurrent, { driver: 'D1' })!.lowest).toBeUndefined();
  });

  it('is no excuse to use up the margin', () => {
    const tight = changed(at('axes.x.running-force', '28 N'));
    expect(find(tight, 'MOTION-010/x+M1').verdict).toBe('tight');
    expect(tight.study(lowestCurrent, { driver: 'D1' })!.lowest).toBeUndefined();
  });
});

describe('substitutes', () => {
  it('a driver that cannot give the current is no way to drive a substitute', () => {
    const weak = changed(at('parts.chopper.most-current', '1.4 A'), at('parts.chopper.current-steps', null));
    const { parts } = weak.study(substitutes, { axis: 'x', motor: 'M1' })!;
    for (const { verdict, edits } of parts.filter((part) => part.verdict === 'holds' || part.verdict === 'tight')) {
      const there = checkBook(weak.editedTexts(edits).get('book.yaml') ?? base);
      expect(['holds', 'tight'], `${verdict} ${JSON.stringify(edits)}`).toContain(find(there, 'MOTION-050/D1').verdict);
    }
  });

  it('a part of the book keeps the connection that its leads need', () => {
    const other = `${base.replace(
      '  chopper:\n',
      `  other-23: { kind: stepper, frame: 23, body: 56 mm, leads: 6, measured-as: half, holding-torque: 1.1 N·m, rated-current: 2.8 A, phase-resistance: 1 ohm, phase-inductance: 3 mH, rotor-inertia: 300 g·cm², detent-torque: 50 mN·m, iron-drag: 0.0005 N·m·s/rad, ringing: 0.1 }\n  chopper:\n`,
    )}`.replace('M1: { part: stepper-23,', 'M1: { part: stepper-23, winding: coil,');
    const { parts } = checkBook(other).study(substitutes, { axis: 'x', motor: 'M1' })!;
    expect(parts.find(({ part }) => part === 'other-23')?.verdict).toBe('holds');
  });
});

describe('settings to be copied from the sheet', () => {
  const cells = (...edits: readonly Edit[]): readonly string[] => changed(...edits).sheet('motion').files[0]!.rows[1]!;

  it('a guess is not printed as a setting', () => {
    expect(cells(at('drivers.D1.standstill-current', null)).join('|')).not.toContain('75 %');
    expect(cells(at('drivers.D1.current', '1.2..1.6 A')).join('|')).not.toContain('1.4 A');
  });

  it('the marking of the part is the marking of the driver', () => {
    expect(cells(at('drivers.D1.marked', null)).join('|')).toContain('1.2 A peak');
    expect(cells(at('drivers.D1.marked', 'unknown')).join('|')).toContain('not known whether peak or RMS');
  });

  it('a trimmer is set by its reference voltage', () => {
    const trimmer = [
      at('parts.chopper.current-steps', null),
      at('parts.chopper.reference-gain', '8'),
      at('parts.chopper.sense-resistor', '0.1 ohm'),
    ];
    expect(cells(...trimmer)).toContain('0.96 V');
  });
});
