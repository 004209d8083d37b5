/** The properties of a cycle as assertions of its Promela model, after the README. */
import type { Model } from './promela-chart.ts';

/** Numbers by which the verifier is asked: safeties break in one state, the others may last no longer than a limit. */
export const asked = {
  'idle-energised': 1,
  'travels-low': 2,
  untold: 3,
  unheld: 4,
  order: 5,
  door: 6,
  service: 7,
  unsettled: 11,
  play: 12,
  idle: 13,
  dwell: 14,
  /** And one more for each axis. */
  pushing: 20,
  pressing: 30,
  state: 50,
  transition: 51,
} as const;

const or = (parts: readonly string[]): string => (parts.length > 0 ? `(${parts.join(' || ')})` : 'false');

export const assertions = (model: Model): string => {
  const { spec, none } = model;
  const { axes, inputs, marks, tells } = spec;
  const marked = (test: (n: number) => boolean): string =>
    or(
      model
        .leaves()
        .filter(({ line }) => line.some(test))
        .map(({ number }) => `leaf == ${number}`),
    );
  const ready = marked((n) => marks[n]!.is === 'ready');
  const latched = marked((n) => marks[n]!.is === 'latched');
  const service = marked((n) => marks[n]!.service);
  const low = marked((n) => marks[n]!.travelsLow);
  const on = 'drives == 1';
  const power = `(${on}${spec.cutBy.map((i) => ` && !on_${i}`).join('')})`;
  const level = axes.flatMap(({ raising }, a) => (raising ? [] : [`told_${a} != 0`]));
  const hoists = axes.flatMap(({ raising }, a) => (raising ? [a] : []));
  const travels = `(${power} && ${or(level)})`;
  const moves = `(${power} && ${or(axes.map((_, a) => `told_${a} != 0`))})`;
  const energised = `(${on} || servo != 0)`;
  const dark = tells.length > 0 ? `!${or(tells.map((_, i) => `lamp_${i}`))}` : 'true';
  const falling = hoists.flatMap((a) => {
    const axis = axes[a]!;
    if (!axis.sinks || axis.harmless) return [];
    return [`(!${power} && ${axis.catches ? `place_${a} == 1` : `place_${a} != 0`})`];
  });
  const broken: readonly (readonly [number, string])[] = [
    [asked['idle-energised'], `${ready} && ${energised}`],
    [asked['travels-low'], `!${low} && ${travels} && ${or(hoists.map((a) => `place_${a} != 2`))}`],
    [asked.untold, `((${latched} || ${marked((n) => marks[n]!.play === 'lost')}) && ${dark}) || (${ready} && playing)`],
    [asked.unheld, or(falling)],
    [asked.order, `!${service} && ${travels} && ${or(hoists.map((a) => `!homed_${a}`))}`],
    [
      asked.door,
      `!${service} && ${moves} && ${or(inputs.flatMap(({ kind }, i) => (kind === 'door' ? [`on_${i}`] : [])))}`,
    ],
    [asked.service, `${service} && ${moves} && ${spec.hold === null ? 'true' : `!on_${spec.hold}`}`],
  ];
  const unsettled = `(leaf != ${none} && !${ready} && !${latched} && !${service})`;
  const kinds: (readonly [number, string, string])[] = [
    [asked.unsettled, unsettled, '1'],
    [asked.play, 'playing == 1', '1'],
    [asked.idle, `${energised} && !playing`, '1'],
    [asked.dwell, unsettled, 'leaf + 1'],
  ];
  axes.forEach((_, a) => {
    const toward = (end: number): string => model.toldOf(a, (m) => model.towardOf(a, m) === end);
    const pushing = [0, 2].map((end) => `(${toward(end)} && ${model.believes(a, end)})`);
    kinds.push([asked.pushing + a, `${power} && ${or(pushing)}`, `told_${a}`]);
    const pressing = [0, 2].flatMap((end) =>
      model.motions[a]!.flatMap((motion, i) => {
        const isThere = model.towardOf(a, motion) === end || motion.do === 'jog';
        if (!isThere) return [];
        const knows =
          motion.do === 'lower'
            ? motion.until === null
              ? 'false'
              : `on_${model.input(motion.until)}`
            : model.believes(a, end);
        return [`(told_${a} == ${i + 1} && place_${a} == ${end} && !${knows})`];
      }),
    );
    kinds.push([asked.pressing + a, `${power} && ${or(pressing)}`, `told_${a}`]);
  });
  return [
    ...broken.map(([prop, is]) => `assert(!(prop == ${prop} && (${is})))`),
    `if ${kinds.map(([prop, is, kind]) => `:: (prop == ${prop}) -> if :: (${is}) -> kind = ${kind} :: else -> kind = 0 fi`).join(' ')} :: else -> kind = 0 fi`,
    'if :: (kind == 0) -> age = 0 :: (kind != 0 && alone && kind == wasKind) -> age++ :: else -> age = 1 fi',
    `assert(!(prop >= 11 && prop < 50 && age > limit))`,
    'last = 0',
  ].join(';\n    ');
};
