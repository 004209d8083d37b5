/**
 * A cycle as a Promela model, written after the README and not after the search: chart and machine become program text,
 * one atomic step a tick. `PROP` and `LIMIT` in the environment of the verifier choose what is asserted.
 */
import type { Condition } from '../../facts.ts';
import type { CycleSpec } from '../../calc/spec.ts';
import { choose, Model } from './promela-chart.ts';
import { assertions } from './promela-rules.ts';

const block = (lines: readonly string[], depth: number): string => lines.map((l) => ' '.repeat(depth) + l).join('\n');

/** What an axis can do in a tick. */
const moves = (model: Model, axis: CycleSpec['axes'][number], a: number): string => {
  const falls = axis.raising && axis.sinks ? (axis.catches ? `place_${a} == 1` : `place_${a} != 0`) : 'false';
  const stalled = model.spec.faults.flatMap((f, i) => (f.kind === 'stalls' && f.axis === a ? [`active_${i}`] : []));
  const stuck = stalled[0] ?? 'false';
  const stay = `next_${a} = place_${a}`;
  const unpowered = `if :: true -> ${stay} :: (${falls}) -> next_${a} = place_${a} - 1 fi; way_${a} = under_${a}`;
  const options = model.motions[a]!.map((motion, i): string => {
    const most = motion.do === 'home' ? axis.homeTicks : axis.moveTicks;
    const to = model.towardOf(a, motion);
    const guard = `told_${a} == ${i + 1}`;
    if (motion.do === 'move') {
      const gone = `if :: (!powered && (${falls})) -> if :: ${stay} :: next_${a} = place_${a} - 1 fi :: (!powered && !(${falls})) -> ${stay} :: else -> if :: (${stuck}) -> ${stay} :: else -> if`;
      const under = `${gone} :: (place_${a} == ${to}) -> ${stay} :: else -> next_${a} = 1 fi fi fi; way_${a} = under_${a} + 1`;
      const there = `${gone} :: true -> next_${a} = ${to} fi fi fi; way_${a} = 0; counted_${a} = 1`;
      return `:: (${guard}) -> if :: (under_${a} + 1 < ${most}) -> ${under} :: true -> ${there} fi`;
    }
    if (motion.do === 'jog')
      return `:: (${guard} && powered) -> way_${a} = 0; if :: ${stay} :: (!(${stuck}) && place_${a} == 1) -> next_${a} = 0 :: (!(${stuck}) && place_${a} == 1) -> next_${a} = 2 :: (!(${stuck}) && place_${a} != 1) -> next_${a} = 1 fi`;
    return `:: (${guard} && powered) -> if :: (place_${a} == ${to}) -> ${stay}; way_${a} = 0 :: (place_${a} != ${to} && ${stuck}) -> ${stay}; way_${a} = under_${a} + 1; if :: (way_${a} > ${most}) -> way_${a} = ${most} :: else -> skip fi :: (place_${a} != ${to} && !(${stuck}) && under_${a} + 1 < ${most}) -> next_${a} = 1; way_${a} = under_${a} + 1 :: (place_${a} != ${to} && !(${stuck}) && (place_${a} == 1 || under_${a} + 1 >= ${most})) -> next_${a} = ${to}; way_${a} = 0 fi`;
  });
  const moved = model.toldOf(a, (m) => m.do === 'move');
  return `if ${options.join(' ')} :: (told_${a} == 0 && powered) -> ${stay}; way_${a} = 0 :: (!powered && !(${moved})) -> ${unpowered} fi;`;
};

const variables = (model: Model, hasOccurred: boolean): { readonly state: string; readonly scratch: string } => {
  const { inputs, axes, faults, chart, tells } = model.spec;
  const levels = Array.from({ length: model.levels }, (_, l) => l);
  const state = [
    `byte leaf = ${model.none}; bit dark; bit drives; byte servo; bit playing; byte kind;`,
    ...Object.keys(chart.counters).map((_, i) => `byte count_${i};`),
    ...inputs.flatMap(({ pulse }, i) => (pulse ? [] : [`bit on_${i};`])),
    ...axes.map((_, a) => `byte told_${a}; byte place_${a}; byte under_${a};`),
    ...axes.flatMap(({ raising }, a) => (raising ? [`bit homed_${a};`] : [])),
    ...tells.map((_, i) => `bit lamp_${i};`),
    ...faults.map((_, f) => `bit active_${f};${hasOccurred ? ` bit occurred_${f};` : ''}`),
    ...levels.map((l) => `short clock_${l};`),
  ].join('\n');
  const scratch = [
    // What is chosen step by step must be undone step by step; only what one indivisible step makes and uses is hidden.
    'bit alone; bit quiet; bit powered; bit restart; bit cut; byte pulse;',
    'hidden byte trigger; hidden byte tr; hidden byte phase; hidden byte head; hidden byte tail; hidden byte queue[16]; hidden byte wasKind;',
    ...inputs.map((_, i) => `bit read_${i}; bit flip_${i};`),
    ...axes.map((_, a) => `byte next_${a}; byte way_${a}; bit counted_${a}; hidden byte anew_${a};`),
    ...levels.map((l) => `hidden byte fresh_${l};`),
  ].join('\n');
  return { state, scratch };
};

/** Nothing surprises before power has come. */
const begunOnly = (options: readonly string[]): readonly string[] =>
  options.map((one) => one.replace(':: (!quiet', ':: (begun == 1 && !quiet'));

const scratchReset = ({ spec, levels }: Model): string =>
  [
    'restart = 0; cut = 0; pulse = 0; quiet = 0; alone = 0; powered = 0',
    ...spec.inputs.map((_, i) => `flip_${i} = 0; read_${i} = 0`),
    ...spec.axes.map((_, a) => `counted_${a} = 0; anew_${a} = 0; next_${a} = 0; way_${a} = 0`),
    ...Array.from({ length: levels }, (_, l) => `fresh_${l} = 0`),
  ].join('; ');

/** The text of the model. */
export const promela = (spec: CycleSpec, marks = true): string => {
  const model = new Model(spec, marks);
  const { inputs, axes, faults } = spec;
  const counters = Object.keys(spec.chart.counters);
  const hasOccurred = faults.some(({ intermittent }) => intermittent);
  const occurred = (f: number): string => (hasOccurred ? `occurred_${f}` : `active_${f}`);
  const count = faults.map((_, f) => occurred(f)).join(' + ') || '0';
  const pulses = inputs.flatMap(({ pulse }, i) => (pulse ? [i] : []));
  const persons = inputs.flatMap(({ feels, pulse }, i) => (feels || pulse ? [] : [i]));
  const heardIn = (name: string): string => {
    const hears = (descriptor: string): boolean => {
      const wanted = descriptor.replace(/\.?\*$/, '');
      return wanted === '' || name === wanted || name.startsWith(`${wanted}.`);
    };
    const some = model
      .leaves()
      .filter(({ line }) =>
        line.some((n) => spec.chart.states[n]!.transitions.some(({ events }) => events?.some(hears))),
      );
    return some.map(({ number }) => `leaf == ${number}`).join(' || ') || 'false';
  };
  const looksAt = (cond: Condition, name: string): boolean =>
    cond.kind === 'on'
      ? cond.signal === name
      : cond.kind === 'not'
        ? looksAt(cond.of, name)
        : cond.kind === 'all' || cond.kind === 'any'
          ? cond.of.some((one) => looksAt(one, name))
          : false;
  /** Leaves in which a held button is looked at. */
  const askedIn = (i: number): string => {
    const { name } = inputs[i]!;
    const some = model
      .leaves()
      .filter(({ line }) =>
        line.some(
          (n) =>
            spec.marks[n]!.service ||
            spec.chart.states[n]!.transitions.some(({ cond }) => cond !== null && looksAt(cond, name)),
        ),
      );
    return `(${[heardIn(`${name}.on`), heardIn(`${name}.off`), ...some.map(({ number }) => `leaf == ${number}`)].join(' || ')})`;
  };
  const room = `(${count}) < ${spec.atMost}`;
  const live = 'dark == 0';
  const truth = (i: number): string => {
    const { feels } = inputs[i]!;
    return `next_${feels!.axis} == ${feels!.end}`;
  };
  const setsIn = (f: number): string => `active_${f} = 1; ${hasOccurred ? `occurred_${f} = 1; ` : ''}alone = 0`;
  const early = faults.flatMap((fault, f): string[] => {
    if (fault.kind === 'stalls')
      return [
        `:: (${live} && !${occurred(f)} && ${room} && powered && told_${fault.axis} != 0) -> ${setsIn(f)}; quiet = 1`,
        ...(fault.intermittent
          ? [`:: (${live} && ${occurred(f)}) -> active_${f} = 1 - active_${f}; alone = 0; quiet = 1`]
          : []),
      ];
    if (fault.kind === 'reset' || fault.kind === 'power-lost')
      return [
        `:: (${live} && (${occurred(f)} || ${room})) -> ${setsIn(f)}; quiet = 1; ${fault.kind === 'reset' ? 'restart' : 'cut'} = 1; powered = 0`,
      ];
    return [];
  });
  const late = faults.flatMap((fault, f): string[] => {
    if (fault.kind === 'dead' || fault.kind === 'stuck') {
      const is = truth(fault.input);
      return [
        `:: (!quiet && ${live} && !${occurred(f)} && ${room} && ${fault.kind === 'dead' ? is : `!(${is})`}) -> ${setsIn(f)}`,
        ...(fault.intermittent
          ? [`:: (!quiet && ${live} && ${occurred(f)}) -> active_${f} = 1 - active_${f}; alone = 0`]
          : []),
      ];
    }
    if (fault.kind === 'chatters')
      return [
        `:: (!quiet && ${live} && !${occurred(f)} && ${room}) -> ${setsIn(f)}; flip_${fault.input} = 1`,
        `:: (!quiet && ${live} && ${occurred(f)}) -> flip_${fault.input} = 1`,
      ];
    return [];
  });
  const acts = [
    ...persons.map((i) => {
      const asked = inputs[i]!.kind === 'button' ? ` && (leaf == ${model.none} || ${askedIn(i)})` : '';
      return `:: (!quiet${asked}) -> read_${i} = 1 - on_${i}`;
    }),
    ...pulses.flatMap((i) =>
      ['on', 'off'].map((edge) => {
        const name = `${inputs[i]!.name}.${edge}`;
        return `:: (!quiet && ${live} && (${heardIn(name)})) -> pulse = ${model.event(name)}`;
      }),
    ),
  ];
  const phases = [
    ...inputs.flatMap(({ pulse }, i) =>
      pulse
        ? []
        : [
            `read_${i} != on_${i} -> on_${i} = read_${i}; if :: on_${i} -> trigger = ${model.event(`${inputs[i]!.name}.on`)} :: else -> trigger = ${model.event(`${inputs[i]!.name}.off`)} fi`,
          ],
    ),
    'pulse != 0 -> trigger = pulse',
    ...axes.map(({ name, raising }, a) => {
      const ends = (end: number) =>
        model.toldOf(a, (m) => ['home', 'hoist', 'move'].includes(m.do) && model.towardOf(a, m) === end);
      const until = model.motions[a]!.flatMap((m, i) =>
        m.do === 'lower' && m.until !== null ? [`(told_${a} == ${i + 1} && on_${model.input(m.until)})`] : [],
      );
      const done = [
        `(${ends(0)} && ${model.believes(a, 0)})`,
        `(${ends(2)} && ${model.believes(a, 2)})`,
        `(${model.toldOf(a, (m) => m.do === 'move')} && counted_${a})`,
        ...until,
      ].join(' || ');
      const lost = faults.flatMap((f, i) => (f.kind === 'stalls' && f.axis === a ? [occurred(i)] : []));
      const isEarly = `${model.toldOf(a, (m) => m.do === 'hoist')} && next_${a} != 2${lost.map((l) => ` && !${l}`).join('')}`;
      const home = raising ? `${choose([[model.toldOf(a, (m) => m.do === 'home'), `homed_${a} = 1`]])}; ` : '';
      return `!anew_${a} && told_${a} != 0 && (${done}) -> ${home}${choose([[isEarly, `trigger = ${model.event(`${name}.early`)}`]], `trigger = ${model.event(`${name}.done`)}`)}; told_${a} = 0`;
    }),
    'true -> trigger = DUE',
  ];
  const clear = [
    'drives = 0; servo = 0; playing = 0',
    ...axes.flatMap(({ raising }, a) => [`told_${a} = 0; anew_${a} = 1`, ...(raising ? [`homed_${a} = 0`] : [])]),
    ...spec.tells.map((_, i) => `lamp_${i} = 0`),
    ...counters.map((_, i) => `count_${i} = 0`),
    ...inputs.flatMap(({ pulse }, i) => (pulse ? [] : [`on_${i} = read_${i}`])),
  ].join('; ');
  const { state, scratch } = variables(model, hasOccurred);
  const levels = Array.from({ length: model.levels }, (_, l) => l);
  return `#define NOTHING 254
#define DUE 253
${state}
byte prop; short limit; short age; byte last; bit begun;
${scratch}
active proctype machine() { do :: atomic {
if
:: begun == 0 -> c_code { now.prop = getenv("PROP") ? atoi(getenv("PROP")) : 0; now.limit = getenv("LIMIT") ? atoi(getenv("LIMIT")) : 0; };
${block(
  axes.map((_, a) => `if :: next_${a} = 0 :: next_${a} = 1 :: next_${a} = 2 fi;`),
  5,
)}
   restart = 1; alone = 1
:: begun == 1 ->
   alone = 1; quiet = 0; powered = drives${spec.cutBy.map((i) => ` && !on_${i}`).join('')};
   if :: true -> skip
   :: dark == 1 -> restart = 1; quiet = 1
${block(early, 5)}
   fi;
${block(
  axes.map((axis, a) => moves(model, axis, a)),
  5,
)}
fi;
d_step { ${inputs.flatMap(({ feels, pulse }, i) => (feels ? [`read_${i} = (${truth(i)})`] : pulse ? [] : [`read_${i} = on_${i}`])).join('; ') || 'skip'} };
if :: (begun == 0 || quiet || true) -> skip
${block(begunOnly([...acts, ...late]), 2)}
fi;
d_step {
  ${faults.flatMap((fault, f) => (fault.kind === 'dead' ? [choose([[`active_${f}`, `read_${fault.input} = 0`]])] : fault.kind === 'stuck' ? [choose([[`active_${f}`, `read_${fault.input} = 1`]])] : [])).join('; ') || 'skip'};
  ${inputs.flatMap(({ feels }, i) => (feels ? [choose([[`flip_${i}`, `read_${i} = 1 - read_${i}`]])] : [])).join('; ') || 'skip'};
  wasKind = kind; last = leaf;
  if
  :: (cut) -> ${clear}; leaf = ${model.none}; dark = 1
  :: (!cut && restart) -> ${clear}; dark = 0; ${model.enter(model.places.find(({ id }) => id === spec.chart.initial)!.number, -1).join('; ')}; trigger = NOTHING; phase = ${phases.length}
  :: (!cut && !restart && leaf == ${model.none}) -> ${inputs.flatMap(({ pulse }, i) => (pulse ? [] : [`on_${i} = read_${i}`])).join('; ') || 'skip'}; phase = 200
  :: else -> phase = 0; trigger = 0
  fi;
  if :: (cut) -> skip
  :: else -> do
    :: (phase > ${phases.length}) -> break
    :: else ->
      if :: (phase < ${phases.length}) -> trigger = 0; if ${phases.map((one, i) => `:: (phase == ${i}) -> if :: ${one.replace(/^(.*?) -> /, '($1) -> ')} :: else -> skip fi`).join(' ')} fi
      :: else -> skip fi;
      if :: (trigger != 0) -> ${model.macrostep()} :: else -> skip fi;
      phase++
    od
  fi;
  ${inputs.flatMap(({ kind, pulse }, i) => (kind === 'button' && !pulse ? [choose([[`leaf != ${model.none} && !${askedIn(i)}`, `on_${i} = 0`]])] : [])).join('; ') || 'skip'};
  ${axes.map((_, a) => `place_${a} = next_${a}; ${choose([[`anew_${a} || told_${a} == 0`, `under_${a} = 0`]], `under_${a} = way_${a}`)}`).join('; ') || 'skip'};
  ${levels
    .map((l) =>
      choose(
        model.leaves().map(
          ({ number, line }) =>
            [
              `leaf == ${number}`,
              model.endOf(l, line) === 0
                ? `clock_${l} = 0`
                : choose([
                    [`fresh_${l}`, `clock_${l} = 0`],
                    [`!fresh_${l} && clock_${l} < ${model.endOf(l, line)}`, `clock_${l}++`],
                  ]),
            ] as const,
        ),
        `clock_${l} = 0`,
      ),
    )
    .join('; ')};
  ${assertions(model)};
  ${scratchReset(model)}; begun = 1
}
} od }
`;
};
