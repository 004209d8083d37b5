/** The choice of pins on whole boards: kept wires, given pins, order of the book, speed. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isPossible } from '../../calc/assign.ts';
import { choosePins } from '../../calc/pins.ts';
import { byName, canServe, wishesOf, type Wanted } from '../../calc/wishes.ts';
import type { Board, Pin } from '../../data/board.ts';
import { boards, pinNamed } from '../../data/boards.ts';
import type { Assignment, SignalFacts } from '../../facts.ts';
import { randomFrom } from '../brute.ts';

const kinds = [
  ['out', ['output']],
  ['in', ['input']],
  ['in', ['input', 'pull-up']],
  ['out', ['output', 'pwm']],
  ['in', ['analog']],
  ['in', ['input', 'interrupt']],
  ['in', ['input', 'pin-change']],
  ['out', ['output', 'servo']],
] as const;

const signal = (name: string, kind: number): SignalFacts => {
  const [way, wants] = kinds[kind % kinds.length]!;
  return { name, way, wants, from: { kind: 'signals', name }, about: name };
};

const wantedOn = (board: Board, signals: readonly SignalFacts[], more: Partial<Wanted> = {}): Wanted => ({
  board,
  signals,
  buses: {},
  given: new Map(),
  landed: new Map(),
  unusable: new Set(),
  drivers: 1,
  log: true,
  ...more,
});

type Placed = Extract<Assignment, { ok: true }>;
const pinsOf = (board: Board, { pins }: Placed): Map<string, Pin> =>
  new Map(pins.map(({ name, pin }) => [name, pinNamed(board, pin)!]));

const machines = fc.record({
  board: fc.constantFrom(...boards),
  kinds: fc.array(fc.nat({ max: kinds.length - 1 }), { minLength: 1, maxLength: 12 }),
  later: fc.array(fc.nat({ max: kinds.length - 1 }), { minLength: 1, maxLength: 5 }),
});

describe('the choice of pins', () => {
  it('gives each signal a pin of its own that can do what it needs', () => {
    fc.assert(
      fc.property(machines, ({ board, kinds: list }) => {
        const signals = list.map((kind, k) => signal(`s${k}`, kind));
        const found = choosePins(wantedOn(board, signals));
        if (!found.ok) return;
        expect(new Set(found.pins.map(({ pin }) => pin)).size).toBe(signals.length);
        for (const one of found.pins) {
          const pin = pinNamed(board, one.pin)!;
          expect(canServe(pin, one)).toBe(true);
          expect(board.logPins).not.toContain(pin.name);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('moves no wire that has landed for a new signal, unless they cannot all be had', () => {
    let moved = 0;
    fc.assert(
      fc.property(machines, fc.nat(), ({ board, kinds: list, later }, rotation) => {
        const signals = list.map((kind, k) => signal(`s${k}`, kind));
        const first = choosePins(wantedOn(board, signals));
        if (!first.ok) return;
        // Wires land anywhere that serves, not only where they would be chosen.
        const landed = new Map<string, Pin>();
        const taken = new Set(board.logPins);
        signals.forEach((one, k) => {
          const able = board.pins.filter((pin) => !taken.has(pin.name) && canServe(pin, one));
          const pin = able[(rotation + 7 * k) % Math.max(1, able.length)];
          if (pin === undefined) return;
          landed.set(one.name, pin);
          taken.add(pin.name);
        });
        const more = [...signals, ...later.map((kind, k) => signal(`t${k}`, kind))];
        const wanted = wantedOn(board, more, { landed });
        const found = choosePins(wanted);
        if (!found.ok) return;
        const staying = wishesOf(wanted).map((wish) => ({
          ...wish,
          options: wish.options.filter((option) => option.moved === 0),
        }));
        const movedNow = found.pins.filter(({ movedFrom }) => movedFrom !== undefined);
        expect(movedNow.length === 0).toBe(isPossible(staying));
        if (movedNow.length > 0) {
          moved++;
          const named = staying.filter(({ name }) => found.because.includes(name));
          expect(named).toHaveLength(found.because.length);
          expect(isPossible(named)).toBe(false);
        } else expect(found.because).toEqual([]);
      }),
      { numRuns: 150, seed: 4 },
    );
    expect(moved, 'some wires had to move').toBeGreaterThan(3);
  });

  it('chooses the same again where its own choice has landed', () => {
    for (const board of boards) {
      const signals = [0, 1, 2, 3, 5, 6, 0, 1].map((kind, k) => signal(`s${k}`, kind));
      const first = choosePins(wantedOn(board, signals)) as Placed;
      const again = choosePins(wantedOn(board, signals, { landed: pinsOf(board, first) })) as Placed;
      expect(again.pins.map(({ pin }) => pin)).toEqual(first.pins.map(({ pin }) => pin));
      expect(again.pins.every(({ why }) => why === 'landed')).toBe(true);
    }
  });

  it('does not depend on the order in which the book names its signals', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...boards),
        fc.shuffledSubarray([0, 1, 2, 3, 4, 5, 6, 7, 8, 9], { minLength: 10 }),
        (board, order) => {
          const signals = order.map((k) => signal(`s${k}`, k));
          const pins = (list: readonly SignalFacts[]): unknown => {
            const found = choosePins(wantedOn(board, list));
            return found.ok
              ? found.pins.map(({ name, pin }) => `${name} ${pin}`).toSorted(byName)
              : found.clash.toSorted(byName);
          };
          expect(pins(signals)).toEqual(pins(signals.toSorted((a, b) => byName(a.name, b.name))));
        },
      ),
      { numRuns: 40 },
    );
  });

  it('keeps the pins that the author has given, also one that it would leave free', () => {
    const board = boards[0]!;
    const given = new Map([
      ['s0', pinNamed(board, '13')!],
      ['s1', pinNamed(board, '0')!],
    ]);
    const found = choosePins(
      wantedOn(board, [signal('s0', 0), signal('s1', 1), signal('s2', 0)], { given, log: false }),
    ) as Placed;
    expect(found.pins.map(({ pin, why }) => [pin, why])).toEqual([
      ['13', 'given'],
      ['0', 'given'],
      ['24', 'chosen'],
    ]);
  });

  it('keeps a signal off the pins of the log, also one that is given one of them', () => {
    const board = boards[0]!;
    const given = new Map([['s0', pinNamed(board, '0')!]]);
    expect(choosePins(wantedOn(board, [signal('s0', 0), signal('s1', 0)], { given }))).toEqual({
      ok: false,
      clash: ['the log over USB', 's0'],
    });
  });

  it('says which few cannot be had together, and leaves the rest out of it', () => {
    const board = boards[0]!;
    const lamps = Array.from({ length: 9 }, (_, k) => signal(`P${k}`, 3));
    const given = new Map([['P8', pinNamed(board, '46')!]]);
    const found = choosePins(wantedOn(board, [...lamps, signal('claw', 7)], { given }));
    expect(found).toEqual({ ok: false, clash: ['the servo pulses', 'P8'] });
  });

  it('puts thirteen servos and their pulses on two timers, and lamps where none is taken', () => {
    const board = boards[0]!;
    const servos = Array.from({ length: 13 }, (_, k) => signal(`Q${k}`, 7));
    const found = choosePins(wantedOn(board, [...servos, signal('P1', 3)])) as Placed;
    expect(found.resources['timer 5']).toEqual(['the servo pulses']);
    expect(found.resources['timer 1']).toEqual(['the servo pulses']);
    expect(['timer 3', 'timer 4']).toContain(
      Object.entries(found.resources).find(([, users]) => users.includes('the stepping interrupt'))![0],
    );
    const lamp = pinNamed(board, found.pins.find(({ name }) => name === 'P1')!.pin)!;
    expect(found.resources[lamp.pwm!.timer]).not.toContain('the servo pulses');
    expect(found.resources[lamp.pwm!.timer]).not.toContain('the stepping interrupt');
  });

  it('takes well under two seconds for fifty signals of every kind on the largest board', () => {
    const board = boards[0]!;
    const signals = Array.from({ length: 50 }, (_, k) => signal(`s${k}`, [0, 1, 2, 0, 1, 2, 0, 3, 4, 6][k % 10]!));
    const began = performance.now();
    const found = choosePins(wantedOn(board, signals, { buses: {}, drivers: 4 }));
    expect(found.ok).toBe(true);
    expect(performance.now() - began).toBeLessThan(2000);
  });
});

it('takes less than two seconds also where wires have landed anywhere and pins are given badly', () => {
  const board = boards[0]!;
  for (let seed = 1; seed <= 12; seed++) {
    const random = randomFrom(seed);
    const signals = Array.from({ length: 50 }, (_, k) => signal(`s${k}`, Math.floor(random() ** 2 * kinds.length)));
    const taken = new Set(board.logPins);
    const landed = new Map<string, Pin>();
    const given = new Map<string, Pin>();
    for (const one of signals) {
      const able = board.pins.filter((pin) => !taken.has(pin.name) && canServe(pin, one));
      const pin = able[Math.floor(random() * able.length)];
      if (pin !== undefined && random() < 0.5) {
        landed.set(one.name, pin);
        taken.add(pin.name);
      } else if (random() < 0.05) given.set(one.name, board.pins[Math.floor(random() * board.pins.length)]!);
    }
    const began = performance.now();
    choosePins(wantedOn(board, signals, { landed, given, drivers: 4 }));
    expect(performance.now() - began, `seed ${seed}`).toBeLessThan(2000);
  }
});

it('D2 comes before D10, and letters before longer ones', () => {
  expect(['D10-step', 'D2-step', 'S1', 'D2', 'A9'].toSorted(byName)).toEqual(['A9', 'D2', 'D2-step', 'D10-step', 'S1']);
});

it('takes less than a tenth of a second for a machine of ordinary size', () => {
  const board = boards[0]!;
  const signals = Array.from({ length: 31 }, (_, k) => signal(`s${k}`, k < 8 ? 0 : k < 29 ? 2 : k === 29 ? 3 : 7));
  const landed = new Map([['s9', pinNamed(board, '37')!]]);
  const times = [1, 2, 3].map(() => {
    const began = performance.now();
    expect(choosePins(wantedOn(board, signals, { landed, drivers: 4 })).ok).toBe(true);
    return performance.now() - began;
  });
  expect(Math.min(...times)).toBeLessThan(100);
});
