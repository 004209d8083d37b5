/**
 * Every state that the cycle and its machine can come into: a tick is one step, and in one tick at most one surprise
 * comes, a fault or an act of a person; what the axes do is tried in full beside it.
 */
import { Codec, type Unpacked } from './codec.ts';
import { Controls, dueAt, POWER_LOST, RESET, type Arrival, type Known } from './control.ts';
import { atMost, MOST_AXES, MOST_FAULTS, MOST_INPUTS } from './limits.ts';
import { Moves } from './plant.ts';
import { Numbers, PairMap } from './space.ts';
import { MAX, popcount, type CycleSpec } from './spec.ts';
import { Templates } from './templates.ts';
import { surprisesOf, type Surprise, type Surprises } from './surprise.ts';

/** `left` is false for a step in which a fault sets in, comes or goes: it is no step of a machine left alone. */
export type Visit = (next: number, isNew: boolean, left: boolean, surprise: Surprise) => void;

const NOBODY: Visit = () => {};

export class Explorer {
  readonly controls: Controls;
  readonly codec: Codec;
  /** Whether somebody wants to know what each step brought. */
  follows = false;
  /** What the controller was brought in the step that is being told. */
  arrival: Arrival = { levels: 0, pulse: 0, counted: 0, early: 0, due: 0 };
  /** States one tick later, and for each whether nothing but the machine itself and persons had a hand in it. */
  found = new Int32Array(64);
  alone = new Uint8Array(64);
  readonly #surprises: Surprises;
  readonly #steps = new PairMap();
  readonly #next = new Numbers();
  readonly #anew = new Numbers();
  readonly #now: Unpacked;
  readonly #packed: Uint32Array;
  readonly #moves: Moves;
  readonly #templates: Templates;
  #recording = false;
  /** Inputs of persons, a bit each. */
  readonly #persons: number;
  /** By axis, the faults that stall it, a bit each; and all that stall, and all by which a switch lies. */
  readonly #stalls: Int32Array;
  readonly #stalling: number;
  readonly #lying: number;
  /** By fault, the input that is dead or stuck, a bit. */
  readonly #dead: Int32Array;
  readonly #stuck: Int32Array;
  /** By set of axes and word, the bits that stay when these axes are under way no more. */
  readonly #keeps: Uint32Array;
  /** Clocks after the tick, and the time-outs that they reach. */
  readonly #clocks: Int32Array;
  #due = 0;

  constructor(readonly spec: CycleSpec) {
    const { axes, inputs, faults } = spec;
    atMost('axes', axes.length, MOST_AXES);
    atMost('inputs', inputs.length, MOST_INPUTS);
    atMost('kinds of faults', faults.length, MOST_FAULTS);
    this.controls = new Controls(spec);
    this.codec = new Codec(spec, this.controls);
    this.#surprises = surprisesOf(spec, this.controls);
    const { words } = this.codec.space;
    this.#packed = new Uint32Array(words);
    this.#now = this.codec.blank();
    this.#moves = new Moves(spec, this.codec);
    this.#templates = new Templates(spec, this.codec);
    this.#persons = inputs.reduce((mask, { feels }, i) => (feels ? mask : mask | (1 << i)), 0);
    const faultsThat = (test: (f: number) => boolean): number =>
      faults.reduce((mask, _, f) => (test(f) ? mask | (1 << f) : mask), 0);
    this.#stalls = Int32Array.from(axes, (_, axis) =>
      faultsThat((f) => faults[f]!.kind === 'stalls' && (faults[f] as { axis: number }).axis === axis),
    );
    this.#stalling = this.#stalls.reduce((mask, one) => mask | one, 0);
    this.#dead = Int32Array.from(faults, (fault) => (fault.kind === 'dead' ? 1 << fault.input : 0));
    this.#stuck = Int32Array.from(faults, (fault) => (fault.kind === 'stuck' ? 1 << fault.input : 0));
    this.#lying = faultsThat((f) => (this.#dead[f]! | this.#stuck[f]!) !== 0);
    this.#keeps = new Uint32Array((1 << MOST_AXES) * words).fill(0xffffffff);
    this.codec.progress.forEach(({ word, shift, mask }, axis) => {
      for (let set = 0; set < 1 << MOST_AXES; set++)
        if (set & (1 << axis)) this.#keeps[set * words + word]! &= ~(mask << shift);
    });
    this.#clocks = new Int32Array(this.codec.clocks.length);
  }

  /** Power comes with every axis anywhere, nobody at the machine and nothing broken. */
  begin(visit: Visit): void {
    const places = this.#now.places.fill(0);
    const put = (axis: number): void => {
      if (axis < places.length) {
        for (let place = 0; place <= MAX; place++) {
          places[axis] = place;
          put(axis + 1);
        }
        return;
      }
      this.#moves.stay(places);
      const levels = this.#moves.truth[0]!;
      const start = this.controls.number({ ...this.controls.off(levels), dark: false });
      this.#add(this.#step(start, levels, RESET << 4, 0), 0, 0, 0, visit, true, this.#surprises.none);
    };
    put(0);
  }

  /**
   * Every state one tick later, hardly any twice: their numbers are in `found`, and beside them whether the machine was left alone.
   * States that differ only in how long something has lasted, and in which nothing comes to its end, have the same steps:
   * what was worked out for one is used for all.
   */
  step(state: number): number {
    const { codec } = this;
    const templates = this.#templates;
    const now = codec.unpack(state, this.#now);
    const known = this.controls.known[now.control]!;
    this.#look(known);
    const number = templates.find(state, now, this.#due, known, this.controls);
    if (number === templates.count) {
      this.#recording = true;
      this.expand(state, NOBODY);
      this.#recording = false;
      templates.end();
    }
    const { stride } = templates;
    const records = templates.records.items;
    const [from, to] = [templates.starts.items[number]!, templates.starts.items[number + 1]!];
    const count = (to - from) / stride;
    if (count > this.found.length) {
      this.found = new Int32Array(2 * count);
      this.alone = new Uint8Array(2 * count);
    }
    codec.space.addAll(records, from, to, templates.lasting(now, this.#clocks), this.found);
    for (let i = 0, at = from + stride - 1; i < count; i++, at += stride) this.alone[i] = records[at]!;
    return count;
  }

  /** Clocks after the tick, and what is due then. */
  #look(known: Known): void {
    const { clocks } = this.#now;
    this.#due = known.leaf >= 0 ? dueAt(known.level, clocks) : 0;
    for (let level = 0; level < known.level.length; level++)
      // A clock that nothing waits for any more stands still.
      this.#clocks[level] = Math.min(clocks[level]! + 1, known.level[level]!.at(-1) ?? 0);
    this.#clocks.fill(0, known.level.length);
  }

  /** Every state one tick later, with what surprised. */
  expand(state: number, visit: Visit): void {
    const now = this.codec.unpack(state, this.#now);
    const { spec, controls } = this;
    const surprises = this.#surprises;
    const known = controls.known[now.control]!;
    const { active, occurred } = now;
    this.#moves.forget();
    this.#look(known);
    this.#advance(known, surprises.none, active, occurred, true, visit);
    const unasked = known.leaf < 0 ? 0 : controls.unasked[known.leaf]!;
    for (const surprise of surprises.persons)
      if ((surprise.toggles & unasked) === 0) this.#advance(known, surprise, active, occurred, true, visit);
    if (known.dark) {
      this.#advance(known, surprises.powerBack, active, occurred, true, visit);
      return;
    }
    if (known.leaf >= 0)
      for (const pulse of controls.listens[known.leaf]!)
        this.#advance(known, surprises.pulses[pulse - 1]!, active, occurred, true, visit);
    const room = popcount(occurred) < spec.atMost;
    for (let f = 0; f < spec.faults.length; f++) {
      const bit = 1 << f;
      const { kind, intermittent } = spec.faults[f]!;
      const isMomentary = kind === 'reset' || kind === 'power-lost';
      if (occurred & bit) {
        if (kind === 'chatters') this.#advance(known, surprises.misreads[f]!, active, occurred, true, visit);
        else if (isMomentary) this.#advance(known, surprises.setsIn[f]!, active, occurred, false, visit);
        else if (intermittent) {
          const surprise = (active & bit ? surprises.goesAway : surprises.comesBack)[f]!;
          this.#advance(known, surprise, active ^ bit, occurred, false, visit);
        }
      } else if (room && this.#mayStall(known, f))
        this.#advance(known, surprises.setsIn[f]!, active | bit, occurred | bit, false, visit);
    }
  }

  /** An axis that does not move cannot be seen to stall; the other faults are judged where they are read. */
  #mayStall(known: Known, f: number): boolean {
    const fault = this.spec.faults[f]!;
    return fault.kind !== 'stalls' || (known.powered && known.told[fault.axis] !== 0);
  }

  /** One tick with one surprise, for everything that the axes can do in it. */
  #advance(known: Known, surprise: Surprise, active: number, occurred: number, left: boolean, visit: Visit): void {
    const { pulse, misreads, wants } = surprise;
    const moves = this.#moves;
    const { control } = this.#now;
    const isPowered = known.powered && pulse !== POWER_LOST && pulse !== RESET;
    moves.make(known, this.controls, this.#now, isPowered, active & this.#stalling, this.#stalls);
    const persons = (known.on & this.#persons) ^ surprise.toggles;
    const hoists = known.hoists === 0 ? 0 : known.hoists & ~this.#lost(occurred);
    for (let move = 0; move < moves.count; move++) {
      const truth = moves.truth[move]!;
      if (wants >= 0 && !this.#matters(wants, truth)) continue;
      const levels = this.#read(truth, active, persons) ^ misreads;
      const rest = moves.counted[move]! | (pulse << 4) | ((hoists & moves.low[move]!) << 9);
      this.#add(this.#step(control, levels, rest, this.#due), move, active, occurred, visit, left, surprise);
    }
  }

  /** Axes that have lost steps, so that their count is wrong, a bit each. */
  #lost(occurred: number): number {
    let lost = 0;
    for (let axis = 0; axis < this.#stalls.length; axis++) if (occurred & this.#stalls[axis]!) lost |= 1 << axis;
    return lost;
  }

  /** Inputs as they read, a bit each. */
  #read(truth: number, active: number, persons: number): number {
    let levels = persons | truth;
    for (let rest = active & this.#lying; rest; rest &= rest - 1) {
      const f = 31 - Math.clz32(rest & -rest);
      levels = (levels & ~this.#dead[f]!) | this.#stuck[f]!;
    }
    return levels;
  }

  /** A switch that is dead or stuck sets in where it first reads otherwise: before, nobody could tell. */
  #matters(f: number, truth: number): boolean {
    return (truth & this.#dead[f]!) !== 0 || (~truth & this.#stuck[f]!) !== 0;
  }

  #step(control: number, levels: number, rest: number, due: number): number {
    const a = control | (due << 20);
    const b = levels | (rest << 16);
    const before = this.#steps.get(a, b);
    if (this.follows || before < 0)
      this.arrival = { levels, counted: rest & 15, pulse: (rest >> 4) & 31, early: rest >> 9, due };
    if (before >= 0) return before;
    const { next, anew } = this.controls.step(this.controls.known[control]!, this.arrival);
    const step = this.#next.length;
    this.#next.push(this.controls.number(next));
    this.#anew.push(anew);
    this.#steps.set(a, b, step);
    return step;
  }

  #add(
    step: number,
    move: number,
    active: number,
    occurred: number,
    visit: Visit,
    left: boolean,
    surprise: Surprise,
  ): void {
    const { codec } = this;
    const packed = this.#packed;
    const { placed, underway } = this.#moves;
    const { words } = codec.space;
    const control = this.#next.items[step]!;
    const anew = this.#anew.items[step]!;
    const known = this.controls.known[control]!;
    // An axis that is told something else, or nothing, is not under way any more.
    const keeps = ((anew >> 4) | known.idle) * words;
    const base = move * words;
    for (let w = 0; w < words; w++) packed[w] = placed[base + w]! | (underway[base + w]! & this.#keeps[keeps + w]!);
    packed[codec.control.word]! |= control << codec.control.shift;
    packed[codec.active.word]! |= active << codec.active.shift;
    if (codec.occurred !== codec.active) packed[codec.occurred.word]! |= occurred << codec.occurred.shift;
    for (let level = 0; level < known.level.length; level++) {
      if (anew & (1 << level) || this.#clocks[level] === 0) continue;
      const clock = codec.clocks[level]!;
      packed[clock.word]! |= this.#clocks[level]! << clock.shift;
    }
    if (this.#recording) {
      this.#templates.record(packed, this.#now, anew, known.level.length, left);
      return;
    }
    const before = codec.space.count;
    const number = codec.space.add(packed);
    visit(number, number === before, left, surprise);
  }
}
