import { describe, expect, it } from 'vitest';
import { checkBook, find } from '../../../../app/testing.ts';
import type { Edit } from '../../../../kernel/index.ts';
import { base } from '../base.ts';

const machine = checkBook(base);
const changed = (edits: readonly Edit[]): string => machine.editedTexts(edits).get(machine.book.main) ?? base;
const asked = (key: string, ...edits: readonly Edit[]) => find(edits.length ? checkBook(changed(edits)) : machine, key);
const at = (path: string, text: string | null): Edit => ({ path, text });

describe('demand at the shaft, reckoned by hand', () => {
  const torque = (key: string, ...edits: readonly Edit[]): number => asked(key, ...edits).demand!.number;
  const radius = 0.04 / (2 * Math.PI);

  const facts = machine.facts();
  const fact = (name: string): number => {
    const found = facts.find((one) => one.name === name);
    if (!found || !('low' in found)) throw new Error(`no number ${name}`);
    return found.high;
  };

  it('belt: force over efficiency, and the rotor', () => {
    const byHand = ((2.5 * 0.7 + 6) * radius) / 0.95 + (300e-7 * 0.7) / radius;
    expect(fact('motion.demand(x).points.0.torque')).toBeCloseTo(byHand, 12);
    expect(fact('motion.demand(x).points.0.motorSpeed')).toBeCloseTo(0.22 / radius, 9);
    expect(fact('motion.demand(x).points.1.torque'), 'running').toBeCloseTo((6 * radius) / 0.95, 12);
  });

  it('hoist: the heaviest load, the cord and the rotor, at the worst of the spread', () => {
    const byHand = ((0.76 * (9.80665 + 0.5) + 1.5) * 0.0166) / 0.85 + (300e-7 * 0.5) / 0.0166;
    expect(fact('motion.demand(z).points.0.torque')).toBeCloseTo(byHand, 12);
  });

  it('screw: the lead over 2π, and screw and rotor to be turned', () => {
    const lead = 0.008 / (2 * Math.PI);
    const turning = 300e-7 + (Math.PI * 7850 * 0.32 * 0.007 ** 4) / 32;
    // Efficiency of the thread: tan λ / tan(λ + φ) with its slope and its wedged friction.
    const slope = Math.atan(0.008 / (Math.PI * 0.007));
    const friction = Math.atan(0.15 / Math.cos(Math.PI / 12));
    const byHand =
      ((1.2 * (9.80665 + 0.3) + 3) * lead * Math.tan(slope + friction)) / Math.tan(slope) + (turning * 0.3) / lead;
    expect(fact('motion.demand(lift).points.0.torque')).toBeCloseTo(byHand, 12);
  });

  it('a pair: half for each belt, more where one side carries more', () => {
    expect(torque('MOTION-110/y')).toBeCloseTo((4.9 * 0.7 + 12) / 2, 12);
    expect(torque('MOTION-110/y', at('axes.y.share', '50..65 %'))).toBeCloseTo(0.65 * (4.9 * 0.7 + 12), 12);
    expect(torque('MOTION-110/y', at('axes.y.belts', '1'))).toBeCloseTo(4.9 * 0.7 + 12, 12);
  });

  it('a jerk-limited travel: full acceleration still asks the full force', () => {
    expect(torque('MOTION-110/x', at('axes.x.jerk', '10 m/s³'))).toBeCloseTo(2.5 * 0.7 + 6, 12);
  });

  it('a start that sticks asks more than running', () => {
    expect(torque('MOTION-110/x', at('axes.x.starting-force', '9 N'))).toBeCloseTo(2.5 * 0.7 + 9, 12);
    expect(torque('MOTION-110/x', at('axes.x.starting-force', '4 N')), 'never less than running').toBeCloseTo(
      2.5 * 0.7 + 6,
      12,
    );
  });

  it('what hangs on a hoist comes back less the losses of both ways', () => {
    const resting = (0.76 * 9.80665 + 1.5) * 0.0166;
    expect(torque('MOTION-220/z+M4')).toBeCloseTo(resting * (2 - 1 / 0.85), 9);
  });

  it('a second layer pulls at a longer arm', () => {
    const twoLayers = [at('axes.z.drum.width', '7.5 mm'), at('axes.z.drum.layers', '2')];
    expect(torque('MOTION-220/z+M4', ...twoLayers) / torque('MOTION-220/z+M4')).toBeCloseTo((16.6 + 1.2) / 16.6, 9);
  });
});

describe('what the book does not say', () => {
  it.each([
    ['MOTION-110/x', 'parts.B1.allowable-tension'],
    ['MOTION-130/x', 'axes.x.pretension'],
    ['MOTION-150/x', 'axes.x.belt-span'],
    ['MOTION-220/z+M4', 'axes.z.unpowered'],
    ['MOTION-250/z', 'axes.z.drum.surface'],
    ['MOTION-270/z', 'axes.z.stopping'],
    ['MOTION-420/y', 'axes.y.squares'],
    ['MOTION-525/lift', 'axes.lift.screw.ends'],
    ['MOTION-610/x', 'axes.x.overtravel'],
  ])('leaves %s not stated without %s', (key, path) => {
    const finding = asked(key, at(path, null));
    expect(finding.verdict).toBe('not-stated');
    expect(finding.missing).toContain(path);
  });

  it('is filled in from experience where a wide guess is better than nothing, and stays a doubt', () => {
    const finding = asked('MOTION-110/x', at('axes.x.running-force', null));
    const fill = finding.scenario.find(({ path }) => path === 'axes.x.running-force');
    expect(fill).toMatchObject({ range: 'doubt', end: 'high' });
    expect(fill!.number).toBeCloseTo(2.5, 12);
    expect(asked('MOTION-220/z+M4', at('axes.z.efficiency', null)).scenario.map(({ path }) => path)).toContain(
      'axes.z.efficiency',
    );
  });

  it('does not ask what does not arise', () => {
    const keys = machine.findings.map(({ key }) => key);
    expect(keys).not.toContain('MOTION-210/z+M4');
    expect(keys).not.toContain('MOTION-280/z');
    expect(keys).not.toContain('MOTION-410/x');
    const braked = checkBook(changed([at('axes.z.unpowered', 'brake')])).findings.map(({ key }) => key);
    for (const code of ['MOTION-210', 'MOTION-220', 'MOTION-225']) expect(braked).not.toContain(`${code}/z+M4`);
  });
});

describe('remedies are tried, not promised', () => {
  const remedies = (key: string, ...edits: readonly Edit[]) => {
    const broken = checkBook(changed(edits));
    expect(find(broken, key).verdict).toBe('fails');
    return broken
      .remedies(key)
      .map((remedy) => ({ remedy, text: broken.editedTexts(remedy.edits.map(({ path, after }) => at(path, after))) }));
  };

  it('a slack switch ends lowering by count', () => {
    const found = remedies('MOTION-280/z', at('axes.z.slack-switch', null), at('axes.z.lands-after', '400..700 mm'));
    const added = found.find(({ remedy }) => remedy.says.includes('slack'));
    expect(added, 'a remedy adds the switch').toBeDefined();
    const mended = checkBook(added!.text.get('book.yaml')!);
    expect(mended.findings.map(({ key }) => key)).not.toContain('MOTION-280/z');
    expect(find(mended, 'MOTION-270/z').verdict).toBe('holds');
  });

  it('a slack switch is added to a book that describes no signals yet', () => {
    const none = ['S1', 'S2', 'S3', 'S4', 'S7'].map((name) => at(`signals.${name}`, null));
    const found = remedies(
      'MOTION-280/z',
      ...none,
      at('signals', null),
      at('axes.z.slack-switch', null),
      at('axes.z.lands-after', '400..700 mm'),
    );
    const added = found.find(({ remedy }) => remedy.says.includes('slack'));
    expect(added?.remedy.edits).toEqual([{ path: 'axes.z.slack-switch', before: null, after: 'S5' }]);
  });

  it('a second home switch squares a pair', () => {
    const [first] = remedies('MOTION-410/y', at('axes.y.switches.min', 'S3'));
    expect(find(checkBook(first!.text.get('book.yaml')!), 'MOTION-410/y').verdict).toBe('holds');
  });

  it('a lower pretension takes load off an overtight belt without letting it go slack', () => {
    const [first] = remedies('MOTION-135/x', at('axes.x.pretension', '20 N'));
    const mended = checkBook(first!.text.get('book.yaml')!);
    expect(find(mended, 'MOTION-135/x').verdict).toBe('holds');
    expect(find(mended, 'MOTION-130/x').verdict).toBe('holds');
  });

  it('a gentler stop within the way that is there', () => {
    const [first] = remedies(
      'MOTION-610/x',
      at('axes.x.overtravel', '30 mm'),
      at('axes.x.stopping.acceleration', '700 mm/s²'),
    );
    expect(find(checkBook(first!.text.get('book.yaml')!), 'MOTION-610/x').verdict).toBe('holds');
  });
});

describe('sentences', () => {
  it('name the axis, the demand and the limit', () => {
    for (const finding of machine.findings.filter(({ code }) => /^MOTION-(1|2|4|5|6)/.test(code))) {
      expect(finding.sentence, finding.key).toContain(finding.designations[0]);
      if (finding.demand && finding.limit) {
        expect(finding.sentence, finding.key).toContain(finding.demand.text);
        expect(finding.sentence, finding.key).toContain(finding.limit.text);
      }
    }
  });
});
