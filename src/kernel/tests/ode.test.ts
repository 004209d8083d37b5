import { describe, expect, it } from 'vitest';
import { NotConverged } from '../errors.ts';
import { Integrator, type OdeEvents, type OdeSystem } from '../ode.ts';

const oscillator: OdeSystem = {
  size: 2,
  derive: (_t, y, slope) => {
    slope[0] = y[1]!;
    slope[1] = -y[0]!;
  },
};

const started = (system: OdeSystem, y: readonly number[], tolerance: number, most?: number): Integrator => {
  const integrator = new Integrator(system, tolerance, most);
  integrator.y.set(y);
  integrator.begin(0);
  return integrator;
};

/** One step of size h over y' = λy gives the method's own polynomial in z = hλ. */
const polynomial = (z: number): number => 1 + z + z ** 2 / 2 + z ** 3 / 6 + z ** 4 / 24 + z ** 5 / 120 + z ** 6 / 600;

describe('the method', () => {
  it('law: one step of y′ = λy is the Taylor series to order 5, and 1/600 in order 6', () => {
    // The sixth coefficient is the method's own; an order condition off by one digit shows in the others.
    for (const z of [-0.5, 0.1, 0.7]) {
      const integrator = new Integrator({ size: 1, derive: (_t, y, slope) => void (slope[0] = z * y[0]!) }, 1e9);
      integrator.y[0] = 1;
      integrator.begin(0, 1);
      integrator.run(1);
      expect(integrator.steps).toBe(1);
      expect(integrator.y[0]).toBeCloseTo(polynomial(z), 14);
    }
  });

  it('law: integrates t⁴ exactly in one step, t⁵ not', () => {
    const over = (power: number): number => {
      const integrator = new Integrator({ size: 1, derive: (t, _y, slope) => void (slope[0] = t ** power) }, 1e9);
      integrator.begin(0, 2);
      integrator.run(2);
      return integrator.y[0]! / (2 ** (power + 1) / (power + 1));
    };
    for (const power of [0, 1, 2, 3, 4]) expect(over(power)).toBeCloseTo(1, 14);
    expect(Math.abs(over(5) - 1)).toBeGreaterThan(1e-4);
  });

  it('law: the error falls with the fifth power of the step', () => {
    const off = (steps: number): number => {
      const integrator = new Integrator(oscillator, 1e9);
      integrator.y.set([1, 0]);
      for (let i = 0; i < steps; i++) {
        integrator.begin((2 * i) / steps, 2 / steps);
        integrator.run((2 * (i + 1)) / steps);
      }
      return Math.hypot(integrator.y[0]! - Math.cos(2), integrator.y[1]! + Math.sin(2));
    };
    const order = Math.log2(off(16) / off(32));
    expect(order).toBeGreaterThan(4.9);
    expect(order).toBeLessThan(5.3);
  });

  it('keeps to its tolerance over twenty turns, ten times tighter at a time', () => {
    let before = 1;
    for (const tolerance of [1e-5, 1e-7, 1e-9]) {
      const integrator = started(oscillator, [1, 0], tolerance);
      integrator.run(40 * Math.PI);
      const off = Math.hypot(integrator.y[0]! - 1, integrator.y[1]!);
      // 126 seconds of steps that may each be off by the tolerance.
      expect(off).toBeLessThan(200 * tolerance);
      expect(off).toBeLessThan(before / 10);
      before = off;
    }
  });

  it('law: keeps as well to a small motion, where it is told how small: the same steps at a millionth of the size', () => {
    const [whole, small] = [1, 1e-6].map((size) => {
      const integrator = new Integrator(oscillator, 1e-9, 100_000, size);
      integrator.y.set([size, 0]);
      integrator.begin(0);
      integrator.run(20);
      return { steps: integrator.steps, off: Math.abs(integrator.y[0]! / size - Math.cos(20)) };
    });
    expect(small!.steps).toBe(whole!.steps);
    expect(small!.off).toBeLessThan(1e-7);
    const untold = started(oscillator, [1e-6, 0], 1e-9);
    untold.run(20);
    expect(untold.steps).toBeLessThan(0.2 * whole!.steps);
  });

  it.each([NaN, Infinity])('does not go to t = %f', (end) => {
    expect(() => started(oscillator, [1, 0], 1e-6).run(end)).toThrow(NotConverged);
  });

  it('arrives exactly, and the same whether it goes at once or in pieces', () => {
    const whole = started(oscillator, [1, 0], 1e-10);
    whole.run(5);
    const pieces = started(oscillator, [1, 0], 1e-10);
    for (const end of [0.3, 0.31, 2, 5]) expect(pieces.run(end)).toBe(-1);
    expect(pieces.t).toBe(5);
    expect(pieces.y[0]).toBeCloseTo(whole.y[0]!, 8);
    expect(pieces.run(5)).toBe(-1);
  });
});

describe('the continuous extension', () => {
  it('lies on the solution inside every step', () => {
    const into = new Float64Array(2);
    let [worst, seen] = [0, 0];
    const integrator: Integrator = started(
      {
        ...oscillator,
        passed: (from, to) => {
          for (const share of [0, 0.2, 0.5, 0.8, 1]) {
            const t = from + share * (to - from);
            integrator.at(t, into);
            worst = Math.max(worst, Math.abs(into[0]! - Math.cos(t)), Math.abs(into[1]! + Math.sin(t)));
            seen++;
          }
        },
      },
      [1, 0],
      1e-8,
    );
    integrator.run(10);
    expect(seen).toBe(5 * integrator.steps);
    expect(worst).toBeLessThan(5e-7);
  });
});

describe('events', () => {
  const passing = (ways: OdeEvents['ways'], stops = false): { events: OdeEvents; moments: number[][] } => {
    const moments: number[][] = ways.map(() => []);
    const events: OdeEvents = {
      ways,
      measure: (_t, y, into) => void into.fill(y[0]!),
      happens: (which, t) => {
        moments[which]!.push(Number((t / Math.PI).toFixed(8)));
        return stops;
      },
    };
    return { events, moments };
  };

  it('are found where they happen, in the way that was asked for', () => {
    const { events, moments } = passing(['either', 'rising', 'falling']);
    started({ ...oscillator, events }, [1, 0], 1e-11).run(4 * Math.PI);
    expect(moments).toEqual([
      [0.5, 1.5, 2.5, 3.5],
      [1.5, 3.5],
      [0.5, 2.5],
    ]);
  });

  it('are told in their order when several lie in one step', () => {
    const told: string[] = [];
    const ways = ['rising', 'rising', 'rising'] as const;
    const measure: OdeEvents['measure'] = (t, _y, into) => into.set([t - 0.7, t - 0.2, t - 0.5]);
    const happens: OdeEvents['happens'] = (_which, t) => {
      told.push(t.toFixed(9));
      return false;
    };
    const integrator = new Integrator(
      { size: 1, derive: (_t, _y, slope) => void (slope[0] = 1), events: { ways, measure, happens } },
      1e-6,
    );
    integrator.begin(0, 1);
    integrator.run(1);
    expect(told).toEqual(['0.200000000', '0.500000000', '0.700000000']);
  });

  it('end a run, and the next one goes on without finding the same again', () => {
    const { events, moments } = passing(['either'], true);
    const integrator = started({ ...oscillator, events }, [1, 0], 1e-11);
    expect(integrator.run(9)).toBe(0);
    expect(integrator.t).toBeCloseTo(Math.PI / 2, 9);
    expect(integrator.y[1]).toBeCloseTo(-1, 9);
    expect(integrator.run(9)).toBe(0);
    expect(integrator.t).toBeCloseTo(1.5 * Math.PI, 9);
    expect(integrator.run(7)).toBe(-1);
    expect(moments).toEqual([[0.5, 1.5]]);
  });

  it('that a jump between two runs steps over happen there', () => {
    let push = 1;
    const moments: number[] = [];
    const system: OdeSystem = {
      size: 1,
      derive: (_t, _y, slope) => void (slope[0] = push),
      events: {
        ways: ['falling'],
        measure: (_t, _y, into) => void (into[0] = push),
        happens: (_which, t) => moments.push(t) > 0,
      },
    };
    const integrator = started(system, [0], 1e-6);
    expect(integrator.run(1)).toBe(-1);
    push = -1;
    expect(integrator.run(2)).toBe(0);
    expect(moments).toEqual([1]);
    expect(integrator.run(2)).toBe(-1);
    integrator.begin(2);
    expect(integrator.run(3)).toBe(-1);
    expect(moments).toEqual([1]);
  });
});

describe('no answer', () => {
  it('is given for a solution that runs away', () => {
    // y′ = y² from 1 is infinite at t = 1.
    const integrator = started({ size: 1, derive: (_t, y, slope) => void (slope[0] = y[0]! ** 2) }, [1], 1e-8);
    expect(() => integrator.run(2)).toThrow(NotConverged);
  });

  it('is given for slopes that are no number', () => {
    const integrator = started({ size: 1, derive: (t, _y, slope) => void (slope[0] = Math.sqrt(0.5 - t)) }, [0], 1e-8);
    expect(() => integrator.run(1)).toThrow(NotConverged);
  });

  it('is given when there are too many steps', () => {
    expect(() => started(oscillator, [1, 0], 1e-10, 20).run(100)).toThrow(NotConverged);
  });
});
