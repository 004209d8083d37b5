/** What signals, buses and the program want of a board, as items for the search. */
import { busLines, type Board, type Pin } from '../data/board.ts';
import type { SignalFacts } from '../facts.ts';
import type { Claim, Item, Option } from './assign.ts';
import { PULL_UP } from './signals.ts';

/** All that the choice of pins depends on. Nothing in it is a range. */
export interface Wanted {
  readonly board: Board;
  readonly signals: readonly SignalFacts[];
  readonly buses: Readonly<Record<string, 'uart' | 'i2c' | 'spi'>>;
  /** Pins that the author has given, and pins on which wires have landed, by signal; as pins of the board. */
  readonly given: ReadonlyMap<string, Pin | null>;
  readonly landed: ReadonlyMap<string, Pin>;
  readonly unusable: ReadonlySet<string>;
  readonly drivers: number;
  /** Whether the log comes out of the USB port, which has pins on some boards. */
  readonly log: boolean;
}

export interface Wish extends Item {
  /** Signals that it places, in the order of the pins that its options claim first. */
  readonly signals: readonly SignalFacts[];
  /** Pins of each option. */
  readonly pins: readonly (readonly Pin[])[];
}

/** How much a property of a pin is worth to somebody else. */
const worth: Readonly<Record<string, number>> = { pwm: 4, interrupt: 3, analog: 2, 'pin-change': 1 };

const pinClaim = ({ name }: Pin): Claim => ({ resource: `pin:${name}`, mode: '' });

/** Whether a pin can do all that a signal wants. */
export const canServe = (pin: Pin, { wants }: SignalFacts): boolean =>
  wants.every((want) =>
    want === PULL_UP ? pin.pulls.includes('up') : want === 'tone' || pin.can.some((ability) => ability === want),
  );

/** What a pin of a bus is worth to somebody who needs that. */
const OF_A_BUS = 2;

const wasted = (board: Board, pin: Pin, wants: readonly string[]): number =>
  (pin.spare?.cost ?? 0) +
  (board.buses.some(({ sets }) => sets.length === 1 && sets[0]!.includes(pin.name)) ? OF_A_BUS : 0) +
  pin.can.reduce((sum, ability) => sum + (wants.includes(ability) ? 0 : (worth[ability] ?? 0)), 0);

const placing = (wanted: Wanted, signal: SignalFacts, pin: Pin): Pick<Option, 'moved'> => {
  const landed = wanted.landed.get(signal.name);
  return { moved: landed !== undefined && landed !== pin ? 1 : 0 };
};

const isAllowed = ({ given, unusable }: Wanted, { name }: SignalFacts, pin: Pin): boolean =>
  given.has(name) ? given.get(name) === pin : !unusable.has(pin.name);

const single = (wanted: Wanted, signal: SignalFacts, rank: number, places: ReadonlyMap<string, number>): Wish => {
  const { board } = wanted;
  const pins = board.pins.filter((pin) => isAllowed(wanted, signal, pin) && canServe(pin, signal));
  return {
    name: signal.name,
    signals: [signal],
    pins: pins.map((pin) => [pin]),
    options: pins.map((pin) => ({
      claims: [
        pinClaim(pin),
        ...(signal.wants.includes('pwm') && pin.pwm
          ? [
              { resource: `channel:${pin.pwm.channel}`, mode: '' },
              { resource: `timer:${pin.pwm.timer}`, mode: 'pwm' },
            ]
          : []),
      ],
      ...placing(wanted, signal, pin),
      cost: wasted(board, pin, signal.wants),
      order: (places.get(pin.name)! - rank) ** 2,
    })),
  };
};

const together = (wanted: Wanted, bus: string): Wish => {
  const { board } = wanted;
  const kind = wanted.buses[bus]!;
  const signals = wanted.signals.filter(({ from }) => from.kind === 'buses' && from.name === bus);
  const byName = new Map(board.pins.map((pin) => [pin.name, pin]));
  const places = board.buses
    .filter((one) => one.kind === kind)
    .flatMap(({ name, sets }) => sets.map((set) => ({ name, set: set.map((pin) => byName.get(pin)!) })))
    .filter(({ set }) => set.length === busLines[kind].length)
    .filter(({ set }) => signals.every((signal, k) => isAllowed(wanted, signal, set[k]!)));
  return {
    name: bus,
    signals,
    pins: places.map(({ set }) => set),
    options: places.map(({ name, set }, k) => ({
      claims: [...set.map(pinClaim), { resource: `bus:${name}`, mode: '' }],
      moved: signals.reduce((sum, signal, line) => sum + placing(wanted, signal, set[line]!).moved, 0),
      cost: set.reduce((sum, pin) => sum + (pin.boot ? (pin.spare?.cost ?? 0) : 0), 0),
      order: k,
    })),
  };
};

const timer = (name: string, mode = ''): Claim => ({ resource: `timer:${name}`, mode });

/** What the program itself wants of timers, and the pins of its log. */
const program = ({ board, signals, drivers, log }: Wanted): readonly Wish[] => {
  const servos = signals.filter(({ wants }) => wants.includes('servo')).length;
  const tones = signals.some(({ wants }) => wants.includes('tone'));
  const { timers, each } = board.servo.is;
  const taken = timers.length === 0 || servos === 0 ? [] : timers.slice(0, Math.ceil(servos / each));
  const wish = (name: string, claims: readonly (readonly Claim[])[]): Wish => ({
    name,
    signals: [],
    pins: claims.map(() => []),
    options: claims.map((claim, order) => ({ claims: claim, moved: 0, cost: 0, order })),
  });
  return [
    ...(log && board.logPins.length > 0
      ? [wish('the log over USB', [board.logPins.map((name) => ({ resource: `pin:${name}`, mode: '' }))])]
      : []),
    ...(board.millis ? [wish('the clock', [[timer(board.millis.is, 'pwm')]])] : []),
    ...(drivers > 0
      ? [
          wish(
            'the stepping interrupt',
            board.stepping.is.map((one) => [timer(one)]),
          ),
        ]
      : []),
    ...(taken.length > 0
      ? [wish('the servo pulses', servos > timers.length * each ? [] : [taken.map((one) => timer(one))])]
      : []),
    ...(tones && board.tone ? [wish('the tones', [[timer(board.tone.is)]])] : []),
  ];
};

/** D2 before D10: runs of digits count as numbers. */
export const byName = (a: string, b: string): number => {
  const parts = (text: string): string[] => text.match(/\d+|\D+/g) ?? [];
  const [left, right] = [parts(a), parts(b)];
  for (let k = 0; k < Math.min(left.length, right.length); k++) {
    const [one, other] = [left[k]!, right[k]!];
    if (one === other) continue;
    const apart = Number(one) - Number(other);
    return Number.isNaN(apart) || apart === 0 ? (one < other ? -1 : 1) : apart;
  }
  return left.length - right.length;
};

/** Every wish, in an order that does not depend on that of the book. */
export const wishesOf = (wanted: Wanted): readonly Wish[] => {
  const alone = wanted.signals.filter(({ from }) => from.kind !== 'buses').toSorted((a, b) => byName(a.name, b.name));
  // Plain pins first: signals whose names follow each other then sit beside each other.
  const plain = wanted.board.pins.toSorted(
    (a, b) => wasted(wanted.board, a, []) - wasted(wanted.board, b, []) || a.number - b.number,
  );
  const places = new Map(plain.map(({ name }, place) => [name, place]));
  return [
    ...program(wanted),
    ...Object.keys(wanted.buses)
      .toSorted(byName)
      .map((bus) => together(wanted, bus)),
    ...alone.map((signal, rank) => single(wanted, signal, rank, places)),
  ];
};
