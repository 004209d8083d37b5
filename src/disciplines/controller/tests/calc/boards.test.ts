/** The data of the boards against public tables (published), and against themselves. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { atmega2560 } from '../../data/atmega2560.ts';
import { atmega328p } from '../../data/atmega328p.ts';
import type { Ability, Board, Pin } from '../../data/board.ts';
import { boards, pinNamed } from '../../data/boards.ts';
import { esp32 } from '../../data/esp32.ts';
import { rp2040 } from '../../data/rp2040.ts';
import { boardNames } from '../../schema.ts';
import { esp32Reference, mega, rp2040Reference, standard } from '../references/boards.ts';

const numbersThat = ({ pins }: Board, fits: (pin: Pin) => boolean): readonly number[] =>
  pins
    .filter(fits)
    .map(({ number }) => number)
    .toSorted((a, b) => a - b);
const can = (board: Board, ability: Ability): readonly number[] =>
  numbersThat(board, (pin) => pin.can.includes(ability));
const keysOf = (table: Readonly<Record<number, unknown>>): readonly number[] => Object.keys(table).map(Number);
const numbered = (board: Board, number: number): Pin => board.pins.find((pin) => pin.number === number)!;
/** Pins of a chip that its usual board has. */
const broughtOut = (board: Board, numbers: readonly number[]): readonly number[] =>
  numbers.filter((n) => board.pins.some(({ number }) => number === n));
const groupsOf = (board: Board) =>
  board.groups.map(({ pins, most, way }) => ({
    way,
    most: most.is,
    pins: pins.map((name) => pinNamed(board, name)!.number).toSorted((a, b) => a - b),
  }));
const lostTo = (board: Board, timers: readonly string[]): readonly number[] =>
  numbersThat(board, ({ pwm }) => pwm !== undefined && timers.includes(pwm.timer));
const servoTimers = ({ servo: { is } }: Board, servos: number): readonly string[] =>
  is.timers.slice(0, Math.ceil(servos / is.each));

describe('the ATmega2560', () => {
  it('has the ports and bits of the public list', () => {
    expect(atmega2560.pins).toHaveLength(mega.pins);
    for (const [port, numbers] of Object.entries(mega.ports))
      expect(
        numbersThat(atmega2560, (pin) => pin.port!.startsWith(port)),
        port,
      ).toEqual(numbers);
    for (const [number, bit] of Object.entries(mega.bits)) expect(numbered(atmega2560, Number(number)).port).toBe(bit);
  });

  it('has its timers, interrupts, pin changes and analogue inputs', () => {
    expect(can(atmega2560, 'pwm')).toEqual(keysOf(mega.timers));
    for (const [number, channel] of Object.entries(mega.timers))
      expect(numbered(atmega2560, Number(number)).pwm).toEqual({ timer: `timer ${channel[0]}`, channel });
    expect(can(atmega2560, 'interrupt')).toEqual(keysOf(mega.interrupts));
    for (const [number, line] of Object.entries(mega.interrupts))
      expect(numbered(atmega2560, Number(number)).interrupt).toBe(String(line));
    expect(can(atmega2560, 'pin-change')).toEqual(mega.pinChange);
    expect(can(atmega2560, 'analog')).toEqual(numbersThat(atmega2560, ({ number }) => number >= mega.analogFrom));
  });

  it('bears the sums of the data sheet', () => {
    expect(groupsOf(atmega2560)).toEqual(mega.groups.map((group) => ({ way: 'either', ...group })));
  });

  it('loses to servos and tones what the public libraries take', () => {
    for (const [servos, pins] of Object.entries(mega.lostToServos))
      expect(lostTo(atmega2560, servoTimers(atmega2560, Number(servos))), `${servos} servos`).toEqual(pins);
    expect(lostTo(atmega2560, [atmega2560.tone!.is])).toEqual(mega.lostToTones);
    expect(Math.max(...can(atmega2560, 'servo'))).toBe(mega.noServoFrom - 1);
  });
});

describe('the ATmega328P', () => {
  it('has the pins of the public list', () => {
    expect(can(atmega328p, 'output')).toHaveLength(standard.pins);
    expect(can(atmega328p, 'pin-change')).toHaveLength(standard.pins);
    for (const [port, numbers] of Object.entries(standard.ports))
      expect(
        numbersThat(atmega328p, (pin) => pin.port?.startsWith(port) ?? false),
        port,
      ).toEqual(numbers);
    expect(can(atmega328p, 'pwm')).toEqual(keysOf(standard.timers));
    for (const [number, channel] of Object.entries(standard.timers))
      expect(numbered(atmega328p, Number(number)).pwm?.channel).toBe(channel);
    expect(can(atmega328p, 'interrupt')).toEqual(keysOf(standard.interrupts));
    expect(can(atmega328p, 'analog')[0]).toBe(standard.analogFrom);
  });

  it('has its buses where the list says, and no second serial port', () => {
    expect(atmega328p.buses.map(({ kind, sets }) => [kind, sets])).toEqual([
      ['i2c', [standard.i2c]],
      ['spi', [standard.spi]],
    ]);
  });

  it('loses timers and bears sums as was read', () => {
    expect(lostTo(atmega328p, servoTimers(atmega328p, 1))).toEqual(standard.lostToServos[1]);
    expect(lostTo(atmega328p, [atmega328p.tone!.is])).toEqual(standard.lostToTones);
    expect(groupsOf(atmega328p)).toEqual(standard.groups);
  });
});

describe('the RP2040', () => {
  it('shares a channel between pins sixteen apart', () => {
    for (const [one, other] of rp2040Reference.sharing)
      expect(numbered(rp2040, one).pwm).toEqual(numbered(rp2040, other).pwm);
    for (const [number, channel] of Object.entries(rp2040Reference.slices))
      expect(numbered(rp2040, Number(number)).pwm?.channel).toBe(channel);
    expect(new Set(rp2040.pins.map(({ pwm }) => pwm!.channel)).size).toBe(16);
  });

  it('reads analogue levels on three of the pins that are brought out', () => {
    expect(can(rp2040, 'analog')).toEqual(broughtOut(rp2040, rp2040Reference.analog));
  });

  it('has two of each bus, none of them on a pin of the other at the same time', () => {
    for (const kind of ['uart', 'i2c', 'spi'] as const) {
      const [first, second] = rp2040.buses.filter((bus) => bus.kind === kind);
      const tx = ({ sets }: Board['buses'][number]): readonly string[] => sets.map(([line]) => line!);
      expect(tx(first!).filter((pin) => tx(second!).includes(pin))).toEqual([]);
    }
  });
});

describe('the ESP32', () => {
  it('keeps flash to itself, and has inputs only where it was read', () => {
    expect(numbersThat(esp32, ({ number }) => esp32Reference.flash.includes(number))).toEqual([]);
    const inputs = broughtOut(esp32, esp32Reference.inputOnly);
    expect(inputs.length).toBeGreaterThan(3);
    expect(numbersThat(esp32, (pin) => !pin.can.includes('output'))).toEqual(inputs);
    for (const number of inputs) expect(numbered(esp32, number).pulls).toEqual([]);
  });

  it('needs its strapping pins as the loader says', () => {
    const roles = esp32.pins.filter(({ boot }) => boot !== undefined && boot.wants !== 'driven');
    expect(roles.map(({ number }) => number)).toEqual(esp32Reference.strapping);
    for (const [number, wants] of Object.entries(esp32Reference.atStart))
      expect(numbered(esp32, Number(number)).boot?.wants).toBe(wants);
    expect(esp32.logPins).toEqual(esp32Reference.log.map((n) => `GPIO${n}`));
  });

  it('has I²C and SPI where the public list has them', () => {
    const at = (kind: string): readonly number[] =>
      esp32.buses.find((bus) => bus.kind === kind)!.sets[0]!.map((name) => pinNamed(esp32, name)!.number);
    expect(at('i2c')).toEqual(esp32Reference.i2c);
    expect(at('spi')).toEqual(esp32Reference.spi);
  });
});

describe.each(boards.map((board) => [board.name, board] as const))('%s', (_, board) => {
  it('has pins of which no two are called alike', () => {
    const names = board.pins.flatMap(({ name, also }) => [name, ...also]).map((name) => name.toLowerCase());
    expect(new Set(names).size).toBe(names.length);
    for (const { name, also, number } of board.pins)
      for (const one of [name, ...also]) expect(pinNamed(board, one.toUpperCase())?.number).toBe(number);
  });

  it('names only pins and timers that it has', () => {
    const pins = new Set(board.pins.map(({ name }) => name));
    const timers = new Set([...board.pins.flatMap(({ pwm }) => (pwm ? [pwm.timer] : [])), ...board.stepping.is]);
    for (const name of [
      ...board.logPins,
      ...board.groups.flatMap((group) => group.pins),
      ...board.buses.flatMap(({ sets }) => sets.flat()),
    ])
      expect(pins).toContain(name);
    for (const timer of [
      ...board.servo.is.timers,
      ...(board.tone ? [board.tone.is] : []),
      ...(board.millis ? [board.millis.is] : []),
    ])
      expect(timers).toContain(timer);
  });

  it('says of each value where it was read, and what that is worth', () => {
    const folder = new URL('../../../../../sources/', import.meta.url);
    const known = new Set(readdirSync(folder));
    const look = (value: unknown, path: string): number => {
      if (value === null || typeof value !== 'object') return 0;
      const { source, status } = value as { readonly source?: { readonly id: string }; readonly status?: string };
      if (source !== undefined) {
        expect(known, path).toContain(`${source.id}.json`);
        const card = JSON.parse(readFileSync(new URL(`${source.id}.json`, folder), 'utf8')) as { status: string };
        expect(status, path).toBe(card.status);
        return 1;
      }
      return Object.entries(value).reduce((sum, [key, one]) => sum + look(one, `${path}.${key}`), 0);
    };
    expect(look(board, board.name)).toBeGreaterThan(15);
  });
});

it('the words of the book are the boards that there are data of', () => {
  expect(boards.map(({ name }) => name)).toEqual([...boardNames]);
  expect(pinNamed(atmega2560, 'D22')?.name).toBe('22');
  expect(pinNamed(atmega2560, '54')?.name).toBe('A0');
  expect(pinNamed(atmega2560, 'A16')).toBeUndefined();
});
