/** The comparisons of the short tests over many more machines, and books with any number in them. */
import { assert, double, pre, property, record } from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkBook } from '../../../../app/testing.ts';
import { seeded } from '../../../../kernel/index.ts';
import { base as hanging } from '../../../swing/tests/base.ts';
import { chopperInput, phaseHeat } from '../../calc/chopper.ts';
import { caseRiseAt, windingRiseAt } from '../../calc/warming-in-time.ts';
import { caseRise, runaway, settledRise } from '../../calc/warming.ts';
import { base } from '../base.ts';
import { fromRail } from '../references/bridge.ts';
import { warmed } from '../references/solver.ts';

const number = (min: number, max: number) => double({ min, max, noNaN: true });
const motors = record({
  cold: number(0.5, 12),
  iron: number(0, 4),
  inside: number(0.4, 2.5),
  outside: number(1.5, 6),
  windingCapacity: number(20, 120),
  caseCapacity: number(150, 900),
  coefficient: number(0.0035, 0.0042),
});

describe('independent: a winding', () => {
  it('warms as a general solver says, at 3,000 motors and times', () => {
    assert(
      property(motors, number(5, 9000), (motor, time) => {
        pre(runaway({ ...motor, hot: motor.cold }) < 0.8);
        const [winding, shell] = warmed(motor, time);
        expect(Math.abs(windingRiseAt({ ...motor, time }) / winding! - 1)).toBeLessThan(1e-6);
        expect(Math.abs(caseRiseAt({ ...motor, time }) - shell!)).toBeLessThan(1e-6 * winding!);
      }),
      { numRuns: 3000 },
    );
  });

  it('settles where it comes to rest, at 300 motors', () => {
    assert(
      property(motors, (motor) => {
        pre(runaway({ ...motor, hot: motor.cold }) < 0.6);
        const [winding, shell] = warmed(motor, 60 * motor.caseCapacity * motor.outside);
        const settled = settledRise(motor);
        expect(Math.abs(settled - winding!)).toBeLessThan(1e-3);
        expect(Math.abs(caseRise({ ...motor, winding: settled }) - shell!)).toBeLessThan(1e-3);
      }),
      { numRuns: 300 },
    );
  });
});

it('independent: a chopper takes what a simulated bridge takes, at 60 points of work', () => {
  const random = seeded(61);
  const between = (a: number, b: number): number => a + (b - a) * random();
  let most = 0;
  for (let n = 0; n < 60; n++) {
    const [peak, resistance, frequency] = [between(0.8, 3), between(0.5, 3), between(25, 250)];
    const inductance = between(1.5e-3, 4e-3);
    const emf = between(0, 8);
    // A rail that pushes the current through winding, inductance and back-EMF with something to spare.
    const rail = 1.5 * Math.hypot(resistance * peak + emf, 2 * Math.PI * frequency * inductance * peak) + 6;
    const bridge = { rail, peak, resistance, inductance, frequency, emf };
    const copper = phaseHeat({ current: peak, resistance });
    const input = chopperInput({ copper, series: 0, mechanical: emf * peak });
    most = Math.max(most, Math.abs(fromRail(bridge, 4).power / input - 1));
  }
  console.info(`a simulated bridge takes up to ${(100 * most).toFixed(2)} % more or less`);
  // Steps of time and hysteresis of the simulation.
  expect(most).toBeLessThan(0.03);
});

describe.each([
  ['supply', base],
  ['swing', hanging],
] as const)('a book of %s with any numbers in it', (trade, book) => {
  /** Numbers with a unit, where they stand in the text. */
  const numbers = [...book.matchAll(/(?<=[ {[])\d+(?:\.\d+)?(?= [%A-Za-zµ°])/g)].map(({ 0: text, index }) => ({
    text,
    index,
  }));

  it('is refused in words, or checked with a verdict and numbers for every question', () => {
    const random = seeded(1967);
    let [checked, refused] = [0, 0];
    for (let n = 0; n < 1500; n++) {
      let changed = book;
      const picked = [1, 2, 3].map(() => numbers[Math.floor(random() * numbers.length)]!);
      // From the back, so that places before stay where they are.
      for (const { text, index } of [...new Set(picked)].sort((a, b) => b.index - a.index)) {
        const other = random() < 0.1 ? '0' : (Number(text) * 10 ** (4 * random() - 2)).toPrecision(4);
        changed = changed.slice(0, index) + String(Number(other)) + changed.slice(index + text.length);
      }
      let machine;
      try {
        machine = checkBook(changed);
      } catch (error) {
        expect(String(error)).toMatch(/cannot be read/);
        refused++;
        continue;
      }
      checked++;
      for (const finding of machine.findings.filter(({ sheet }) => sheet === trade)) {
        expect(['holds', 'tight', 'fails', 'open', 'not-stated'], changed).toContain(finding.verdict);
        expect(finding.sentence, changed).not.toMatch(/NaN|undefined|null/);
        if (finding.use) expect(finding.use.worst, `${finding.key}\n${changed}`).not.toBeNaN();
      }
    }
    console.info(`${trade}: ${checked} books checked, ${refused} refused`);
    expect(checked).toBeGreaterThan(500);
    expect(refused).toBeGreaterThan(10);
  });
});
