/** What is not said is asked for where it belongs. */
import { describe, expect, it } from 'vitest';
import { checkBook } from '../../../../app/testing.ts';
import { base } from '../base.ts';

const machine = checkBook(base);
const without = (...paths: readonly string[]) => {
  const texts = machine.editedTexts(paths.map((path) => ({ path, text: null })));
  return checkBook(texts.get(machine.book.main)!).findings.filter(({ sheet }) => sheet === 'supply');
};

describe('law: what is taken out of a book on which everything holds is asked for, and nothing else', () => {
  it.each([
    ['site.ambient', 'SUPPLY-060/M1', 'SUPPLY-130/F1', 'SUPPLY-150/F1'],
    ['site.open', 'SUPPLY-185'],
    ['site.energy-price', 'SUPPLY-185'],
    ['modes.standing-by', 'SUPPLY-180', 'SUPPLY-185'],
    ['modes.standing-by.duty', 'SUPPLY-185'],
    ['modes.aiming.duty', 'SUPPLY-060/M1', 'SUPPLY-085/servo', 'SUPPLY-095', 'SUPPLY-185'],
    ['modes.aiming.moving', 'SUPPLY-010/24V@aiming', 'SUPPLY-050/24V', 'SUPPLY-190/D2'],
    ['axes.x.travel', 'SUPPLY-050/24V', 'SUPPLY-055/24V'],
    ['axes.z.travel', 'SUPPLY-052/z'],
    ['axes.z.moving-mass', 'SUPPLY-052/z', 'SUPPLY-010/24V@fetching'],
    ['motors.M1.part', 'SUPPLY-060/M1', 'SUPPLY-010/24V@aiming'],
    ['motors.M1.driver', 'SUPPLY-060/M1'],
    ['motors.M1.touchable', 'SUPPLY-070/M1'],
    ['motors.M1.mount', 'SUPPLY-075/M1'],
    ['drivers.D1.rail', 'SUPPLY-060/M1', 'SUPPLY-105/D1', 'SUPPLY-190/D1'],
    ['drivers.D1.standing-by', 'SUPPLY-010/24V@standing-by', 'SUPPLY-180'],
    ['drivers.D2.current', 'SUPPLY-080/D2', 'SUPPLY-052/z'],
    ['parts.chopper.most-volts', 'SUPPLY-050/24V', 'SUPPLY-052/z'],
    ['parts.chopper.ripple-current', 'SUPPLY-190/D1'],
    ['parts.boxed-100W.power', 'SUPPLY-020/G1@aiming'],
    ['parts.boxed-15W.power', 'SUPPLY-020/G2@aiming'],
    ['parts.buck.most-air', 'SUPPLY-090/G3'],
    ['supplies.G1.rails.24V.volts', 'SUPPLY-010/24V@aiming', 'SUPPLY-050/24V', 'SUPPLY-170/F1'],
    ['supplies.G1.rails.24V.limit', 'SUPPLY-010/24V@aiming'],
    ['supplies.G1.clamp.volts', 'SUPPLY-050/24V', 'SUPPLY-055/24V'],
    ['supplies.G1.clamp.power', 'SUPPLY-055/24V'],
    ['supplies.G3.rails.claw.volts', 'SUPPLY-010/24V@fetching', 'SUPPLY-085/servo', 'SUPPLY-110/claw'],
    ['loads.board.rail', 'SUPPLY-105/board'],
    ['loads.board.current', 'SUPPLY-010/5V@aiming', 'SUPPLY-040/5V', 'SUPPLY-120/F3'],
    ['loads.servo.current', 'SUPPLY-010/claw@fetching', 'SUPPLY-085/servo'],
    ['loads.servo.peak', 'SUPPLY-085/servo'],
    ['fuses.F1.rating', 'SUPPLY-120/F1', 'SUPPLY-130/F1', 'SUPPLY-140/F1', 'SUPPLY-150/F1', 'SUPPLY-170/F1'],
    ['fuses.F1.cable', 'SUPPLY-105/D1', 'SUPPLY-130/F1', 'SUPPLY-150/F1'],
  ])('%s', (path, ...keys) => {
    const asking = without(path).filter(({ verdict }) => verdict === 'not-stated');
    expect(asking.map(({ key }) => key)).toEqual(expect.arrayContaining(keys));
    expect(new Set(asking.flatMap(({ missing }) => missing ?? []))).toEqual(new Set([path]));
  });

  it.each([
    ['drivers.D1.part', 'SUPPLY-050/24V', 'drivers.D1.most-volts'],
    ['drivers.D1.part', 'SUPPLY-190/D1', 'drivers.D1.ripple-current'],
    ['supplies.G1.part', 'SUPPLY-020/G1@aiming', 'supplies.G1.power'],
    ['supplies.G1.part', 'SUPPLY-090/G1', 'supplies.G1.most-air'],
    ['parts.hook-up.core', 'SUPPLY-130/F2', 'cables.W2.continuous-current'],
    ['parts.hook-up.core', 'SUPPLY-150/F2', 'parts.hook-up.core'],
    ['parts.stepper-23.leads', 'SUPPLY-060/M1', 'motors.M1.winding'],
    ['fuses.F1.kind', 'SUPPLY-140/F1', 'fuses.F1.sure-opening'],
    ['fuses.F1.kind', 'SUPPLY-150/F1', 'fuses.F1.kind'],
  ])('without %s %s is asked for %s, which would do as well', (path, key, missing) => {
    expect(without(path).find((one) => one.key === key)?.missing).toEqual([missing]);
  });
});

it('a motor of eight leads is asked how it is connected, and how its resistance was measured', () => {
  const eight = base.replace('    leads: 4\n', '    leads: 8\n');
  expect(eight).not.toBe(base);
  const asked = (book: string): readonly string[] =>
    checkBook(book).findings.find(({ key }) => key === 'SUPPLY-060/M2')?.missing ?? [];
  expect(asked(eight)).toEqual(['motors.M2.winding']);
  const wound = eight.replaceAll('{ part: stepper-23,', '{ part: stepper-23, winding: series,');
  expect(asked(wound)).toEqual(['parts.stepper-23.measured-as']);
  expect(asked(wound.replace('leads: 8\n', 'leads: 8\n    measured-as: series\n'))).toEqual([]);
});

it('a cabinet of which nothing is said is asked for its surface, and the room for its air', () => {
  const facts = (path: string) =>
    JSON.stringify(
      checkBook(machine.editedTexts([{ path, text: null }]).get(machine.book.main)!)
        .facts()
        .filter(({ name }) => /^supply\.(cabinet-rise|inside-air)/.test(name)),
    );
  expect(facts('enclosure')).toMatch(/enclosure\.surface/);
  expect(facts('site')).toMatch(/site\.ambient/);
  expect(facts('enclosure.transfer')).not.toMatch(/enclosure\.surface/);
});

it('what nobody has to say is not asked for', () => {
  for (const path of ['modes.fetching.unpowered', 'site.mains', 'axes.x.running-force', 'loads.board.capacitance'])
    expect(without(path).filter(({ verdict }) => verdict === 'not-stated')).toEqual([]);
});

it('a motor that no axis names is held, and takes no iron', () => {
  const text = base.replace('motors: [M1]', 'motors: []');
  const facts = checkBook(text).facts();
  const power = facts.find(({ name }) => name === 'supply.drive-power(M1@aiming)') as { readonly high: number };
  expect(power.high).toBeCloseTo(0.36 * (1 + 0.00393 * 40 + 0.7) + 0.3, 9);
});
