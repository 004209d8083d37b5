/** The chart of a cycle as Promela text, written after the README and not after the search. */
import type { Action, Condition, Transition } from '../../facts.ts';
import type { CycleSpec } from '../../calc/spec.ts';

/** A chart state with what the model needs of it. */
export interface Place {
  readonly id: string;
  readonly number: number;
  /** Numbers of itself and the states around it, outermost first. */
  readonly line: readonly number[];
}

/** Only one of these; Promela wants something to do in each branch. */
export const choose = (options: readonly (readonly [string, string])[], otherwise = 'skip'): string =>
  options.length === 0
    ? otherwise
    : `if ${options.map(([guard, then]) => `:: (${guard}) -> ${then}`).join(' ')} :: else -> ${otherwise} fi`;

export class Model {
  readonly places: readonly Place[];
  readonly none: number;
  readonly events: readonly string[];
  readonly motions: readonly (readonly Action[])[];
  readonly levels: number;
  readonly transitions: readonly { readonly from: number; readonly of: Transition }[];

  /** `marks` are assertions by which it can be asked what is reached; a long chart has no room for them in one step. */
  constructor(
    readonly spec: CycleSpec,
    readonly marks: boolean,
  ) {
    const { states } = spec.chart;
    const numberOf = (id: string): number => states.findIndex((state) => state.id === id);
    const lineOf = (id: string): number[] => {
      const { parent } = states[numberOf(id)]!;
      return [...(parent === null ? [] : lineOf(parent)), numberOf(id)];
    };
    this.places = states.map(({ id }, number) => ({ id, number, line: lineOf(id) }));
    this.none = states.length;
    this.levels = Math.max(...this.places.map(({ line }) => line.length));
    this.transitions = states.flatMap(({ transitions }, from) => transitions.map((of) => ({ from, of })));
    const raised = states.flatMap((state) =>
      [...state.onentry, ...state.onexit, ...state.transitions.flatMap(({ actions }) => actions)].flatMap((action) =>
        action.do === 'raise' ? [action.event] : [],
      ),
    );
    this.events = [
      ...new Set([
        ...spec.inputs.flatMap(({ name }) => [`${name}.on`, `${name}.off`]),
        ...spec.axes.flatMap(({ name }) => [`${name}.done`, `${name}.early`]),
        ...states.map(({ id }) => `done.state.${id}`),
        ...raised,
      ]),
    ];
    this.motions = spec.axes.map(({ name }) => {
      const texts = states.flatMap(({ onentry }) =>
        onentry.flatMap((action) =>
          'axis' in action && action.do !== 'stop' && action.axis === name ? [JSON.stringify(action)] : [],
        ),
      );
      return [...new Set(texts)].map((text) => JSON.parse(text) as Action);
    });
  }

  event(name: string): number {
    return this.events.indexOf(name) + 1;
  }
  input(name: string): number {
    return this.spec.inputs.findIndex((one) => one.name === name);
  }
  axis(name: string): number {
    return this.spec.axes.findIndex((one) => one.name === name);
  }
  inside(state: number): readonly Place[] {
    const { states } = this.spec.chart;
    return this.places.filter(({ line, number }) => line.includes(state) && states[number]!.initial === null);
  }
  isIn(state: number): string {
    return `(${this.inside(state)
      .map(({ number }) => `leaf == ${number}`)
      .join(' || ')})`;
  }
  endOf(level: number, line: readonly number[]): number {
    const at = line[level];
    return at === undefined
      ? 0
      : Math.max(0, ...this.spec.chart.states[at]!.transitions.map(({ after }) => after ?? 0));
  }
  /** All switches of an end are believed. */
  believes(axis: number, end: number): string {
    const on = this.spec.inputs.flatMap(({ feels }, i) =>
      feels?.axis === axis && feels.end === end ? [`on_${i}`] : [],
    );
    return on.length > 0 ? `(${on.join(' && ')})` : 'false';
  }
  towardOf(axis: number, motion: Action): number {
    if (motion.do === 'home') return this.spec.axes[axis]!.homeEnd;
    if (motion.do === 'hoist') return 2;
    if (motion.do === 'lower') return 0;
    if (motion.do === 'move' || motion.do === 'drive') return { min: 0, between: 1, max: 2 }[motion.to];
    return -1;
  }
  /** Told one of the motions that pass a test. */
  toldOf(axis: number, test: (motion: Action) => boolean): string {
    const some = this.motions[axis]!.flatMap((motion, i) => (test(motion) ? [`told_${axis} == ${i + 1}`] : []));
    return some.length > 0 ? `(${some.join(' || ')})` : 'false';
  }

  guard(cond: Condition): string {
    switch (cond.kind) {
      case 'on':
        return this.input(cond.signal) < 0 ? 'false' : `on_${this.input(cond.signal)}`;
      case 'in':
        return this.isIn(this.places.find(({ id }) => id === cond.state)!.number);
      case 'counter':
        return `(count_${Object.keys(this.spec.chart.counters).indexOf(cond.counter)} ${cond.is} ${cond.than})`;
      case 'not':
        return `!(${this.guard(cond.of)})`;
      default:
        return `(${cond.of.map((one) => this.guard(one)).join(cond.kind === 'all' ? ' && ' : ' || ')})`;
    }
  }

  act(action: Action): readonly string[] {
    const counters = Object.keys(this.spec.chart.counters);
    switch (action.do) {
      case 'drives':
        return [`drives = ${action.on ? 1 : 0}`, ...(action.on ? [] : this.spec.axes.map((_, a) => `told_${a} = 0`))];
      case 'servo':
        return [`servo = ${{ off: 0, grip: 1, release: 2 }[action.to]}`];
      case 'lamp': {
        const lamp = this.spec.tells.indexOf(action.signal);
        return lamp < 0 ? [] : [`lamp_${lamp} = ${action.on ? 1 : 0}`];
      }
      case 'sound':
        return [];
      case 'count': {
        const i = counters.indexOf(action.counter);
        return [choose([[`count_${i} < ${this.spec.chart.counters[action.counter]!}`, `count_${i}++`]])];
      }
      case 'clear':
        return [`count_${counters.indexOf(action.counter)} = 0`];
      case 'raise':
        return [`queue[tail] = ${this.event(action.event)}; tail++`];
      case 'stop':
        return [`told_${this.axis(action.axis)} = 0; anew_${this.axis(action.axis)} = 1`];
      default: {
        const a = this.axis(action.axis);
        const number = this.motions[a]!.findIndex((one) => JSON.stringify(one) === JSON.stringify(action)) + 1;
        return [`told_${a} = ${number}; anew_${a} = 1`];
      }
    }
  }

  enter(target: number, domain: number): readonly string[] {
    const { states } = this.spec.chart;
    const way = this.places[target]!.line.filter((_, level, line) => domain < 0 || level > line.indexOf(domain));
    for (let at = target; states[at]!.initial !== null;) {
      const first = states.findIndex(({ id }) => id === states[at]!.initial);
      const line = this.places[first]!.line;
      way.push(...line.slice(line.indexOf(at) + 1));
      at = first;
    }
    return way.flatMap((number) => {
      const state = states[number]!;
      const { play } = this.spec.marks[number]!;
      return [
        `${this.marks ? `assert(!(prop == 50 && limit == ${number})); ` : ''}leaf = ${number}; fresh_${this.places[number]!.line.length - 1} = 1`,
        ...(play === null ? [] : [`playing = ${play === 'begun' ? 1 : 0}`]),
        ...state.onentry.flatMap((action) => this.act(action)),
        ...(state.final && state.parent !== null
          ? [`queue[tail] = ${this.event(`done.state.${state.parent}`)}; tail++`]
          : []),
        ...(state.final && state.parent === null ? [`leaf = ${this.none}`] : []),
      ];
    });
  }

  leave(leaf: number, domain: number): readonly string[] {
    const { line } = this.places[leaf]!;
    return [...line]
      .toReversed()
      .filter((_, i) => line.length - 1 - i > (domain < 0 ? -1 : line.indexOf(domain)))
      .flatMap((number) => {
        const { onentry, onexit } = this.spec.chart.states[number]!;
        const moved = [...new Set(onentry.flatMap((a) => ('axis' in a && a.do !== 'stop' ? [this.axis(a.axis)] : [])))];
        return [...moved.map((a) => `told_${a} = 0; anew_${a} = 1`), ...onexit.flatMap((action) => this.act(action))];
      });
  }

  take(index: number): string {
    const { from, of } = this.transitions[index]!;
    const actions = of.actions.flatMap((action) => this.act(action));
    const mark = this.marks ? `assert(!(prop == 51 && limit == ${index}))` : 'skip';
    if (of.target === null) return [mark, ...actions].join('; ');
    const target = this.places.find(({ id }) => id === of.target)!;
    const common = this.places[from]!.line.slice(0, -1).filter(
      (one) => one !== target.number && target.line.includes(one),
    );
    const isInside = of.internal && target.number !== from && target.line.includes(from);
    const domain = isInside ? from : (common.at(-1) ?? -1);
    const leaving = this.inside(from).map(
      ({ number }) => [`leaf == ${number}`, this.leave(number, domain).join('; ') || 'skip'] as const,
    );
    return [mark, choose(leaving), ...actions, ...this.enter(target.number, domain)].join('; ');
  }

  /** What is enabled for `trigger`: innermost first, then in document order. */
  select(): string {
    const matched = (descriptor: string): readonly number[] =>
      this.events.flatMap((name, i) => {
        const wanted = descriptor.replace(/\.\*$/, '').replace(/\.$/, '');
        return descriptor === '*' || name === wanted || name.startsWith(`${wanted}.`) ? [i + 1] : [];
      });
    return choose(
      this.leaves().map(({ number, line }) => {
        const enabled = [...line].toReversed().flatMap((state) =>
          this.transitions.flatMap(({ from, of }, index) => {
            if (from !== state) return [];
            const level = line.indexOf(state);
            const when =
              of.after !== null
                ? `trigger == DUE && !fresh_${level} && clock_${level} + 1 >= ${of.after}`
                : of.events === null
                  ? 'trigger == NOTHING'
                  : `(${
                      of.events
                        .flatMap(matched)
                        .map((e) => `trigger == ${e}`)
                        .join(' || ') || 'false'
                    })`;
            return [[of.cond ? `${when} && ${this.guard(of.cond)}` : when, `tr = ${index + 1}`] as const];
          }),
        );
        const nested = enabled.reduceRight((rest, [guard, then]) => choose([[guard, then]], rest), 'skip');
        return [`leaf == ${number}`, nested] as const;
      }),
    );
  }

  leaves(): readonly Place[] {
    return this.places.filter(({ number }) => this.spec.chart.states[number]!.initial === null);
  }

  macrostep(): string {
    const taken = choose(this.transitions.map((_, i) => [`tr == ${i + 1}`, this.take(i)] as const));
    return `do :: (leaf != ${this.none}) -> tr = 0; ${this.select()};
      if :: (tr == 0 && trigger != NOTHING) -> trigger = NOTHING
         :: (tr == 0 && trigger == NOTHING && head < tail) -> trigger = queue[head]; head++
         :: (tr == 0 && trigger == NOTHING && head >= tail) -> break
         :: (tr != 0) -> ${taken}; trigger = NOTHING fi
      :: else -> break od; head = 0; tail = 0`;
  }
}
