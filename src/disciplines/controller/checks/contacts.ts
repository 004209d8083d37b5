/** Contacts: what holds their lines, what a broken wire reads as, when they are believed, and how far an axis goes until then. */
import { need } from '../../../contract/index.ts';
import { atLeast, atMost, greatest, mustBe, NotStated } from '../../../kernel/index.ts';
import { boardOf, debounceOf, isContact, isStopping, signalEntry, switchesOf } from '../calc/book.ts';
import { contactCurrent } from '../calc/currents.ts';
import { wayAfterSwitch } from '../calc/timing.ts';
import { pinNamed } from '../data/boards.ts';
import { assignment, believedAfter, BOARD, pinOf } from '../facts.ts';
import { experience, listed, nameIn, signalsThat, toldValue, type ControllerCheck } from './common.ts';

const said = <T>(value: T | undefined, path: string): T => {
  if (value === undefined) throw new NotStated([path]);
  return value;
};

const heldFrom = (name: string) => ({
  set: [{ path: `signals.${name}.pull`, text: 'external' }],
  means: `fit a resistor from the line of ${name} to the supply of the board`,
});

export const lineIsHeld: ControllerCheck = {
  code: 'CONTROLLER-080',
  asks: 'Does something hold the line of each contact while it is open?',
  subjects: signalsThat(isContact),
  run: ({ book, get }, subject) => {
    const name = nameIn(subject);
    const pull = said(signalEntry(book, name).pull, `signals.${name}.pull`);
    const found = get(assignment, BOARD);
    const pin = found.ok ? pinNamed(boardOf(book), get(pinOf, name).pin) : undefined;
    const isInside = pull === 'internal' && (pin === undefined || pin.pulls.includes('up'));
    return mustBe(pull === 'external' || isInside, {
      says: () =>
        pull === 'external'
          ? `A resistor holds the line of ${name}.`
          : isInside
            ? `A resistor inside the chip holds the line of ${name}; it is weak, and a long line beside motor leads can still be pulled down.`
            : `Nothing holds the line of ${name} while its contact is open: it reads whatever it picks up.`,
      levers: [heldFrom(name)],
    });
  },
};

export const contactStaysClean: ControllerCheck = {
  code: 'CONTROLLER-085',
  asks: 'Does enough current flow through the contact to keep it clean?',
  subjects: signalsThat((book, name) => book.signals?.[name]?.['least-current'] !== undefined),
  run: ({ book }, subject) => {
    const name = nameIn(subject);
    const board = boardOf(book);
    const entry = need(signalEntry(book, name), 'pull-resistance', 'least-current');
    const current = contactCurrent.work({
      volts: toldValue(board.volts, 'voltage', `voltage of the ${board.name}`),
      pull: entry['pull-resistance'],
    });
    return atLeast(current, entry['least-current'], {
      says: ({ demand, limit }) =>
        `${demand} flow through ${name} while it is closed; it stays clean with ${limit} and more.`,
      levers: [
        {
          set: [
            { path: `signals.${name}.pull`, text: 'external' },
            { path: `signals.${name}.pull-resistance`, text: '1 kohm' },
          ],
          means: `fit 1 kΩ from the line of ${name} to the supply of the board`,
        },
      ],
    });
  },
};

export const brokenWireStops: ControllerCheck = {
  code: 'CONTROLLER-090',
  asks: 'Does a broken wire read as the end reached, as stop, or as an open door?',
  subjects: signalsThat(isStopping),
  run: ({ book }, subject) => {
    const name = nameIn(subject);
    const { contact, pull, kind } = signalEntry(book, name);
    const closed = said(contact, `signals.${name}.contact`) === 'normally-closed';
    const isHeld = said(pull, `signals.${name}.pull`) !== 'none';
    const reads = kind === 'stop' ? 'stop' : kind === 'door' ? 'an open door' : 'a switch that is reached';
    return mustBe(closed && isHeld, {
      says: () =>
        closed && isHeld
          ? `A broken wire of ${name} opens its line, which is held then, and reads as ${reads}.`
          : closed
            ? `${name} opens when it acts, but nothing holds its line: a broken wire reads as anything.`
            : `A broken wire of ${name} reads as if nothing were the matter: its contact is open at rest, so that nobody notices before it is needed.`,
      levers: [
        ...(closed
          ? []
          : [
              {
                set: [{ path: `signals.${name}.contact`, text: 'normally-closed' }],
                means: `use the contact of ${name} that is closed at rest`,
              },
            ]),
        ...(isHeld ? [] : [heldFrom(name)]),
        ...(closed || isHeld
          ? []
          : [
              {
                set: [
                  { path: `signals.${name}.contact`, text: 'normally-closed' },
                  { path: `signals.${name}.pull`, text: 'external' },
                ],
                means: `use the closed contact of ${name} and hold its line`,
              },
            ]),
      ],
    });
  },
};

export const debounceOutlasts: ControllerCheck = {
  code: 'CONTROLLER-100',
  asks: 'Must a contact stay for longer than it bounces before it is believed?',
  subjects: signalsThat(isContact),
  run: ({ book }, subject) => {
    const name = nameIn(subject);
    const { bounce, debounce } = signalEntry(book, name);
    return atLeast(debounceOf(book, name), said(bounce, `signals.${name}.bounce`), {
      says: ({ demand, limit }) =>
        `${name} is believed when it has stayed for ${demand}; it bounces for up to ${limit}.`,
      levers: [
        {
          turn: debounce === undefined ? 'controller.debounce' : `signals.${name}.debounce`,
          toward: 'higher',
          means: `wait longer before ${name} is believed`,
        },
      ],
    });
  },
};

export const stopsInItsRoom: ControllerCheck = {
  code: 'CONTROLLER-105',
  asks: 'Does the axis stand before its hard end, with the time that its switch takes to be believed?',
  subjects: (book) =>
    book.controller === undefined
      ? []
      : Object.keys(book.axes ?? {})
          .filter((axis) => switchesOf(book, axis).length > 0)
          .map((axis) => ({ designations: [axis], at: `axes.${axis}` })),
  run: ({ book, get }, subject) => {
    const name = nameIn(subject);
    const axis = book.axes![name]!;
    const switches = switchesOf(book, name);
    const believed = greatest(...switches.map((one) => get(believedAfter, one)));
    const speed = axis['approach-speed'] ?? need(axis, 'speed').speed;
    const acceleration = said(axis.stopping?.acceleration, `axes.${name}.stopping.acceleration`);
    const way = wayAfterSwitch.work({ speed, believed, acceleration });
    return atMost(way, need(axis, 'overtravel').overtravel, {
      says: ({ demand, limit }) =>
        `Until ${listed(switches)} ${switches.length > 1 ? 'are' : 'is'} believed and its ramp is down, ${name} goes on for ${demand}; the hard end is ${limit} away.`,
      advice: experience(0.8, 'steps are lost, and switches are bent'),
      beside: { believed, speed },
      levers: [
        ...(axis['approach-speed'] === undefined
          ? []
          : [
              { turn: `axes.${name}.approach-speed`, toward: 'lower' as const, means: 'meet the switches more slowly' },
            ]),
        { turn: `axes.${name}.stopping.acceleration`, toward: 'higher', means: 'stop harder at the switches' },
        { turn: 'controller.debounce', toward: 'lower', means: 'believe contacts sooner' },
        { turn: `axes.${name}.overtravel`, toward: 'higher', means: 'set the switch farther from the end' },
      ],
    });
  },
};
