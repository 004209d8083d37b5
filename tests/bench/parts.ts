/** True parts on a simulated bench: what instruments would show of a part whose numbers are known. */
import type { BenchReading, BenchTest } from '../../src/contract/index.ts';

export type Random = () => number;

export const between = (random: Random, low: number, high: number): number => low + random() * (high - low);

/** An error up to its limit: part of it the same all along, part new each time, and often as large as it may be. */
export interface Meter {
  readonly show: (name: string, truth: number) => string;
}

const signed = (random: Random): number => (random() < 0.3 ? (random() < 0.5 ? -1 : 1) : between(random, -1, 1));

export const meterFor = (test: BenchTest, random: Random): Meter => {
  const steady = new Map(Object.keys(test.readings).map((name) => [name, [signed(random), signed(random)] as const]));
  // All of the limit but the last digit that a text is cut to.
  const both = (a: number): number => 0.9999 * (0.5 * a + 0.5 * signed(random));
  return {
    show: (name, truth) => {
      const { of, share, rest, whole } = test.readings[name] as BenchReading;
      const [gain, zero] = steady.get(name)!;
      if (whole) return String(Math.round(truth) + Math.round(rest * signed(random)));
      const seen = truth * (1 + share * both(gain)) + rest * both(zero);
      return `${Math.max(0, seen).toPrecision(9)} ${units[of] ?? ''}`.trim();
    },
  };
};

const units: Readonly<Record<string, string>> = {
  voltage: 'V',
  current: 'A',
  temperature: 'K',
  inductance: 'H',
  force: 'N',
  length: 'm',
  mass: 'kg',
  speed: 'm/s',
  time: 's',
};

/** A part with its true number, and what its instruments show, time after time. */
export interface TruePart {
  readonly truth: number;
  readonly shown: () => Readonly<Record<string, string>>;
}

type Simulated = (random: Random, test: BenchTest, meter: Meter) => TruePart;

const KELVIN = 273.15;
const copper = (temperature: number): number => 1 + 0.00393 * (temperature - KELVIN - 20);
const G = 9.80665;

/** Where an increasing function is nothing, by halving. */
const crossing = (f: (x: number) => number, low: number, high: number): number => {
  let [a, b] = [low, high];
  for (let i = 0; i < 200; i++) {
    const middle = (a + b) / 2;
    if (f(middle) < 0) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
};

/** Period of a stiff pendulum at any swing: the complete integral over its arc, by the midpoint rule, which is exact for a period. */
const periodOf = (evenLength: number, angle: number): number => {
  const k = Math.sin(angle / 2);
  const n = 64;
  let sum = 0;
  for (let i = 0; i < n; i++) sum += 1 / Math.sqrt(1 - (k * Math.sin(((i + 0.5) * Math.PI) / (2 * n))) ** 2);
  return 4 * Math.sqrt(evenLength / G) * ((sum * Math.PI) / (2 * n));
};

/** A mass on a scale, alone and with what holds it. */
const weighed =
  (least: number, most: number): Simulated =>
  (random, _, meter) => {
    const truth = between(random, least, most);
    const holder = between(random, 0, 0.3);
    return { truth, shown: () => ({ gross: meter.show('gross', truth + holder), tare: meter.show('tare', holder) }) };
  };

export const simulated: Readonly<Record<string, Simulated>> = {
  'winding-resistance': (random, _, meter) => {
    const truth = between(random, 0.5, 8);
    return {
      truth,
      shown: () => {
        const current = between(random, 0.4, 1);
        const temperature = KELVIN + between(random, 12, 32);
        return {
          volts: meter.show('volts', truth * copper(temperature) * current),
          current: meter.show('current', current),
          temperature: meter.show('temperature', temperature),
        };
      },
    };
  },

  'winding-inductance': (random, _, meter) => {
    const middle = between(random, 1e-3, 9e-3);
    const swing = between(random, 0, 0.2) * middle;
    // The rotor may stand anywhere while it works.
    const truth = middle + swing * Math.cos(between(random, 0, 2 * Math.PI));
    return {
      truth,
      shown: () => ({ least: meter.show('least', middle - swing), most: meter.show('most', middle + swing) }),
    };
  },

  'holding-torque': (random, _, meter) => {
    // Torque over current bends as iron saturates; the book knows the rated current within a tenth.
    const rated = between(random, 2.6, 2.9);
    const bend = between(random, 0.05, 0.7);
    const truth = between(random, 0.3, 2);
    return {
      truth,
      shown: () => {
        const current = rated * between(random, 0.75, 1);
        const torque = (truth * Math.tanh((bend * current) / rated)) / Math.tanh(bend);
        const diameter = between(random, 0.03, 0.08);
        const line = between(random, 0.0005, 0.002);
        return {
          pull: meter.show('pull', torque / ((diameter + line) / 2)),
          diameter: meter.show('diameter', diameter),
          line: meter.show('line', line),
          current: meter.show('current', current),
        };
      },
    };
  },

  'rated-current': (random, _, meter) => {
    // Winding, case, air: copper heats more as it warms, and the air takes more than in proportion.
    const air = KELVIN + between(random, 15, 28);
    const ohms = between(random, 0.5, 5);
    const draught = between(random, 0, 0.25);
    const conductance = between(random, 0.12, 0.2);
    const toCase = between(random, 0.5, 2);
    const rise = (current: number): number =>
      crossing(
        (x) => {
          const heat = conductance * x ** (1 + draught);
          return heat - 2 * current ** 2 * ohms * copper(air + x + heat * toCase);
        },
        0,
        300,
      );
    const truth = crossing((current) => rise(current) - 50, 0.1, 5);
    return {
      truth,
      shown: () => {
        const current = truth * between(random, 0.87, 1.1);
        const stillToCome = between(random, 0, 2.5);
        return {
          current: meter.show('current', current),
          warm: meter.show('warm', air + rise(current) - stillToCome),
          air: meter.show('air', air),
        };
      },
    };
  },

  'motor-mass': weighed(0.1, 3),
  'moving-mass': weighed(0.4, 8),

  'running-force': (random, _, meter) => {
    const truth = between(random, 3, 20);
    // The axis is not quite level.
    const slope = between(random, -0.3, 0.3) * truth;
    return {
      truth,
      shown: () => ({ there: meter.show('there', truth + slope), back: meter.show('back', truth - slope) }),
    };
  },

  'free-speed': (random, _, meter) => {
    const truth = between(random, 0.1, 0.9);
    return {
      truth,
      shown: () => {
        let kept = truth * between(random, 0.5, 0.9);
        while (kept * 1.05 < truth) kept *= 1.05;
        return { kept: meter.show('kept', kept), lost: meter.show('lost', kept * 1.05) };
      },
    };
  },

  'swing-period': (random, _, meter) => {
    const truth = between(random, 0.1, 0.3);
    // What the book says of the claw lies around it.
    const below = between(random, 0.06, 0.08);
    const size = between(random, 0, 0.06);
    return {
      truth,
      shown: () => {
        const down = between(random, 0.4, 0.7);
        const length = truth + down + below;
        const swings = 20;
        const period = periodOf((size ** 2 + length ** 2) / length, between(random, 0.02, 0.16));
        return {
          time: meter.show('time', swings * period),
          swings: String(swings),
          down: meter.show('down', down),
        };
      },
    };
  },

  'swing-fading': (random, _, meter) => {
    const truth = between(random, 4, 25);
    return {
      truth,
      shown: () => {
        const first = between(random, 0.18, 0.3);
        const swings = Math.round(truth * between(random, 0.8, 1.6));
        return {
          swings: meter.show('swings', swings),
          first: meter.show('first', first),
          last: meter.show('last', first * 2 ** (-swings / truth)),
        };
      },
    };
  },

  'dock-trials': (random) => {
    const truth = between(random, 0.5, 1);
    return {
      truth,
      shown: () => {
        const releases = 5 + Math.floor(random() * 60);
        let docked = 0;
        for (let i = 0; i < releases; i++) if (random() < truth) docked++;
        return { releases: String(releases), docked: String(docked) };
      },
    };
  },

  'rail-sag': (random, test, meter) => {
    const truth = between(random, 0.01, 0.3);
    const open = between(random, 11, 25);
    // What goes with the reading is the same both times: half a per cent of volts, one of ampere.
    const [volts, amperes] = [1 + 0.005 * signed(random), 1 + 0.01 * signed(random)];
    if (test.gives.by !== 'formula') throw new TypeError('a sag follows by a formula');
    return {
      truth,
      shown: () => {
        const [light, heavy] = [between(random, 0.2, 0.6), between(random, 3, 5)];
        return {
          lightVolts: meter.show('lightVolts', (open - truth * light) * volts),
          light: meter.show('light', light * amperes),
          heavyVolts: meter.show('heavyVolts', (open - truth * heavy) * volts),
          heavy: meter.show('heavy', heavy * amperes),
        };
      },
    };
  },
};
