/**
 * The controller's half of a tick: inputs sampled, events in a fixed order each run to stability, outputs set. What it
 * can be in is numbered as it is met, and what a tick makes of it is kept, so that the search only looks it up.
 */
import type { Action } from '../facts.ts';
import { NotConverged } from '../../../kernel/index.ts';
import { signalsIn } from './guard-text.ts';
import { atMost, MOST_LEVELS, MOST_PULSES, MOST_TIMES } from './limits.ts';
import { MAX, MIN, type CycleSpec } from './spec.ts';
import { begin, compile, isMotion, matches, react, type Compiled, type Node, type World } from './transition.ts';

/** What the controller is in, without clocks and without the world. */
export interface Control {
  readonly leaf: number;
  readonly dark: boolean;
  readonly counters: readonly number[];
  /** Believed inputs, a bit each. */
  readonly on: number;
  /** By axis: number of the motion that it is told, 0 for none. */
  readonly told: readonly number[];
  readonly drives: boolean;
  readonly servo: 'off' | 'grip' | 'release';
  /** Telling lamps, a bit each. */
  readonly lamps: number;
  /** Raising axes that have been homed since power came. */
  readonly homed: number;
  readonly playing: boolean;
}

export type Motion = Extract<Action, { readonly axis: string }>;

/** What the search asks of a control at every state; worked out once. */
export interface Known extends Control {
  readonly node: Node | null;
  readonly ready: boolean;
  readonly latched: boolean;
  readonly lost: boolean;
  readonly travelsLow: boolean;
  readonly service: boolean;
  readonly energised: boolean;
  /** Drives have power: commanded, and nothing cuts them. */
  readonly powered: boolean;
  /** By axis, where its motion leads: an end, anywhere (3) or nowhere (−1). */
  readonly toward: readonly number[];
  /** By level of the state: its time-outs. */
  readonly level: readonly (readonly number[])[];
  /** Axes that are told to hoist, a bit each. */
  readonly hoists: number;
  /** Axes that are told nothing, a bit each. */
  readonly idle: number;
}

export const NOWHERE = -1;
export const ANYWHERE = 3;

/** What a tick brings to the controller. */
export interface Arrival {
  /** Inputs as they are read, a bit each. */
  readonly levels: number;
  /** Number of the pulse, 0 for none. */
  readonly pulse: number;
  /** Axes whose counted steps are done, a bit each. */
  readonly counted: number;
  /** Hoists that by their counted steps cannot be up yet, a bit each. */
  readonly early: number;
  /** By level of the state: how many of its time-outs are reached, three bits each. */
  readonly due: number;
}

export const POWER_LOST = 30;
export const RESET = 31;
const DUE_BITS = 3;
/** As many as twenty bits tell apart. */
const MOST_CONTROLS = 1 << 20;

/** One thing that happened in a tick, for those who follow it. */
export type Told =
  | { readonly kind: 'event'; readonly name: string }
  | { readonly kind: 'entered'; readonly state: string }
  | { readonly kind: 'action'; readonly action: Action };

export class Controls {
  readonly machine: Compiled;
  readonly known: Known[] = [];
  readonly taken = new Set<number>();
  readonly entered = new Set<number>();
  readonly pulses: readonly { readonly name: string; readonly input: number }[];
  /** Motions by axis; the first is none. */
  readonly motions: readonly (readonly (Motion | null)[])[];
  readonly counterNames: readonly string[];
  /** By state: pulses that it or a state around it listens to. */
  readonly listens: readonly (readonly number[])[];
  /** By state: inputs of persons that mean nothing in it and read off there, a bit each. */
  readonly unasked: Int32Array;
  /** By state: time-outs, shortest first. */
  readonly thresholds: readonly (readonly number[])[];
  readonly #numbers = new Map<string, number>();
  readonly #axisNumber: ReadonlyMap<string, number>;
  readonly #doors: number;
  readonly #cuts: number;
  /** Switches that must be on for the end of an axis. */
  readonly #ends: readonly (readonly [number, number, number])[];

  constructor(readonly spec: CycleSpec) {
    this.machine = compile(spec.chart);
    this.counterNames = Object.keys(spec.chart.counters);
    this.#axisNumber = new Map(spec.axes.map(({ name }, i) => [name, i]));
    const pulses: { name: string; input: number }[] = [];
    spec.inputs.forEach(({ name, pulse }, input) => {
      if (pulse) pulses.push({ name: `${name}.on`, input }, { name: `${name}.off`, input });
    });
    const heard = (node: Node): readonly string[] =>
      node.line.flatMap(({ transitions }) => transitions.flatMap(({ events }) => events ?? []));
    const all = this.machine.nodes.flatMap(({ transitions }) => transitions.flatMap(({ events }) => events ?? []));
    this.pulses = pulses.filter(({ name }) => all.some((one) => matches(one, name)));
    atMost('pulses', this.pulses.length, MOST_PULSES);
    this.listens = this.machine.nodes.map((node) =>
      this.pulses.flatMap(({ name }, i) => (heard(node).some((one) => matches(one, name)) ? [i + 1] : [])),
    );
    const asks = (node: Node, name: string): boolean =>
      heard(node).some((one) => matches(one, `${name}.on`) || matches(one, `${name}.off`)) ||
      node.line.some(
        ({ index, transitions }) =>
          spec.marks[index]!.service || transitions.some(({ cond }) => cond !== null && signalsIn(cond).includes(name)),
      );
    this.unasked = Int32Array.from(this.machine.nodes, (node) =>
      spec.inputs.reduce(
        (mask, { name, kind, pulse }, i) => (kind === 'button' && !pulse && !asks(node, name) ? mask | (1 << i) : mask),
        0,
      ),
    );
    this.thresholds = this.machine.nodes.map(({ transitions }) =>
      [...new Set(transitions.flatMap(({ after }) => (after === null ? [] : [after])))].sort((a, b) => a - b),
    );
    atMost('states around each other', Math.max(...this.machine.nodes.map(({ line }) => line.length)), MOST_LEVELS);
    atMost('times of one state', Math.max(...this.thresholds.map((times) => times.length)), MOST_TIMES);
    this.motions = spec.axes.map(({ name }) => {
      const texts = new Map<string, Motion>();
      for (const { onentry } of this.machine.nodes)
        for (const action of onentry)
          if (isMotion(action) && action.axis === name) texts.set(JSON.stringify(action), action);
      return [null, ...texts.values()];
    });
    const bits = (test: (i: number) => boolean): number =>
      spec.inputs.reduce((mask, _, i) => (test(i) ? mask | (1 << i) : mask), 0);
    this.#doors = bits((i) => spec.inputs[i]!.kind === 'door');
    this.#cuts = bits((i) => spec.cutBy.includes(i));
    this.#ends = spec.axes.map((_, axis) => {
      const at = (end: number) =>
        bits((i) => spec.inputs[i]!.feels?.axis === axis && spec.inputs[i]!.feels.end === end);
      return [at(MIN), 0, at(MAX)];
    });
  }

  /** Whether the end of an axis is believed to be reached; never without a switch. */
  believes(on: number, axis: number, end: number): boolean {
    const wanted = this.#ends[axis]?.[end] ?? 0;
    return wanted !== 0 && (on & wanted) === wanted;
  }

  towardOf(axis: number, motion: Motion | null): number {
    switch (motion?.do) {
      case undefined:
        return NOWHERE;
      case 'home':
        return this.spec.axes[axis]!.homeEnd;
      case 'hoist':
        return MAX;
      case 'lower':
        return MIN;
      case 'move':
      case 'drive':
        return motion.to === 'min' ? MIN : motion.to === 'max' ? MAX : 1;
      default:
        return ANYWHERE;
    }
  }

  doorOpen(on: number): boolean {
    return (on & this.#doors) !== 0;
  }

  /** The number of a control. */
  number(control: Control): number {
    const { leaf, dark, counters, on, told, drives, servo, lamps, homed, playing } = control;
    const key = [leaf, dark, ...counters, on, ...told, drives, servo, lamps, homed, playing].join();
    const before = this.#numbers.get(key);
    if (before !== undefined) return before;
    const node = this.machine.nodes[leaf] ?? null;
    const marks = node?.line.map(({ index }) => this.spec.marks[index]!) ?? [];
    const level = node?.line.map(({ index }) => this.thresholds[index]!) ?? [];
    const number = this.known.length;
    if (number >= MOST_CONTROLS)
      throw new NotConverged('the search', `the controller alone has more than ${MOST_CONTROLS} states`);
    this.known.push({
      ...control,
      node,
      ready: marks.some(({ is }) => is === 'ready'),
      latched: marks.some(({ is }) => is === 'latched'),
      lost: marks.some(({ play }) => play === 'lost'),
      travelsLow: marks.some(({ travelsLow }) => travelsLow),
      service: marks.some((mark) => mark.service),
      energised: drives || servo !== 'off',
      powered: drives && (on & this.#cuts) === 0,
      toward: told.map((motion, axis) => this.towardOf(axis, this.motions[axis]![motion]!)),
      level,
      idle: told.reduce((mask, motion, axis) => (motion === 0 ? mask | (1 << axis) : mask), 0),
      hoists: told.reduce(
        (mask, motion, axis) => (this.motions[axis]![motion]?.do === 'hoist' ? mask | (1 << axis) : mask),
        0,
      ),
    });
    this.#numbers.set(key, number);
    return number;
  }

  /** Before power comes. */
  off(levels: number): Control {
    return {
      leaf: -1,
      dark: true,
      counters: this.counterNames.map(() => 0),
      on: levels,
      told: this.spec.axes.map(() => 0),
      drives: false,
      servo: 'off',
      lamps: 0,
      homed: 0,
      playing: false,
    };
  }

  /**
   * What a tick makes of a control.
   *
   * @param hear told of every event, entered state and action, in order
   * @returns the next control; levels entered anew in the low four bits, axes told anew in the next four
   */
  step(from: Control, arrival: Arrival, hear: (told: Told) => void = () => {}): { next: Control; anew: number } {
    if (arrival.pulse === POWER_LOST) return { next: this.off(arrival.levels), anew: 0xff };
    const restart = arrival.pulse === RESET;
    const before = restart ? { ...this.off(arrival.levels), dark: false } : from;
    if (before.dark || (before.leaf < 0 && !restart)) return { next: { ...before, on: arrival.levels }, anew: 0 };
    const state = { ...before, told: [...before.told] };
    let anew = restart ? 0xff : 0;
    const world: World = {
      leaf: this.machine.nodes[before.leaf] ?? null,
      counters: Object.fromEntries(this.counterNames.map((name, i) => [name, before.counters[i]!])),
      isOn: (signal) => {
        const i = this.spec.inputs.findIndex(({ name }) => name === signal);
        return i >= 0 && (state.on & (1 << i)) !== 0;
      },
      isDue: (level, after) => {
        if (anew & (1 << level)) return false;
        const at = this.thresholds[world.leaf!.line[level]!.index]!.indexOf(after);
        return at < ((arrival.due >> (DUE_BITS * level)) & 7);
      },
      actions: [],
      entered: (node) => {
        anew |= 1 << node.level;
        this.entered.add(node.index);
        hear({ kind: 'entered', state: node.id });
        const { play } = this.spec.marks[node.index]!;
        if (play) state.playing = play === 'begun';
      },
      took: (transition) => this.taken.add(transition),
    };
    const anewAxes = (axis: number): void => {
      anew |= 16 << axis;
    };
    const obey = (): void => {
      for (const action of world.actions.splice(0)) {
        hear({ kind: 'action', action });
        if (action.do === 'drives') {
          state.drives = action.on;
          if (!action.on) state.told.fill(0);
        } else if (action.do === 'servo') state.servo = action.to;
        else if (action.do === 'lamp') {
          const lamp = this.spec.tells.indexOf(action.signal);
          if (lamp >= 0) state.lamps = action.on ? state.lamps | (1 << lamp) : state.lamps & ~(1 << lamp);
        } else if (action.do === 'stop' || isMotion(action)) {
          const axis = this.#axisNumber.get(action.axis)!;
          state.told[axis] =
            action.do === 'stop'
              ? 0
              : this.motions[axis]!.findIndex((one) => one !== null && JSON.stringify(one) === JSON.stringify(action));
          anewAxes(axis);
        }
      }
    };
    const happen = (name: string): void => {
      hear({ kind: 'event', name });
      react(this.machine, world, { name });
      obey();
    };
    if (restart) {
      hear({ kind: 'event', name: 'reset' });
      begin(this.machine, world);
      obey();
    } else {
      this.spec.inputs.forEach(({ name }, i) => {
        const bit = 1 << i;
        if ((state.on & bit) === (arrival.levels & bit)) return;
        state.on ^= bit;
        happen(`${name}.${state.on & bit ? 'on' : 'off'}`);
      });
      if (arrival.pulse > 0) happen(this.pulses[arrival.pulse - 1]!.name);
      this.spec.axes.forEach(({ name, raising }, axis) => {
        // An axis that was told something else in this tick has not come anywhere.
        if (anew & (16 << axis) || state.told[axis] === 0) return;
        const motion = this.motions[axis]![state.told[axis]!]!;
        if (!this.#isDone(motion, axis, state.on, arrival.counted)) return;
        state.told[axis] = 0;
        if (motion.do === 'home' && raising) state.homed |= 1 << axis;
        happen(motion.do === 'hoist' && arrival.early & (1 << axis) ? `${name}.early` : `${name}.done`);
      });
      if (arrival.due !== 0) {
        react(this.machine, world, 'due');
        obey();
      }
    }
    const leaf = world.leaf?.index ?? -1;
    const counters = this.counterNames.map((name) => world.counters[name]!);
    const on = leaf < 0 ? state.on : state.on & ~this.unasked[leaf]!;
    return { next: { ...state, leaf, counters, on }, anew };
  }

  #isDone(motion: Motion, axis: number, on: number, counted: number): boolean {
    if (motion.do === 'move' && counted & (1 << axis)) return true;
    if (motion.do === 'move' || motion.do === 'home' || motion.do === 'hoist')
      return this.believes(on, axis, this.towardOf(axis, motion));
    if (motion.do !== 'lower' || motion.until === null) return false;
    const until = this.spec.inputs.findIndex(({ name }) => name === motion.until);
    return until >= 0 && (on & (1 << until)) !== 0;
  }
}

/** Time-outs reached when these clocks have gone on by a tick, three bits a level. */
export const dueAt = (level: Known['level'], clocks: Int32Array): number => {
  let due = 0;
  for (let l = 0; l < level.length; l++) {
    const thresholds = level[l]!;
    let reached = 0;
    while (reached < thresholds.length && clocks[l]! + 1 >= thresholds[reached]!) reached++;
    due |= reached << (DUE_BITS * l);
  }
  return due;
};
