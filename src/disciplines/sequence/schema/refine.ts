/** What a chart must be besides well-formed: targets that are there, states that can be reached, names that are known. */
import { triggers, verbs, type ActionEntry, type CycleEntry, type StateEntry, type TransitionEntry } from './keys.ts';
import { wouldDo } from './nearest.ts';

/** One objection: the way to the value, what is wrong, what would do, and the stretch of its text. */
export interface Objection {
  readonly path: readonly (string | number)[];
  readonly what: string;
  readonly allowed: string;
  readonly at?: readonly [number, number];
}

type States = Readonly<Record<string, StateEntry>>;

const takesTo: ReadonlySet<string> = new Set(['move', 'drive', 'lamp']);
const setsInMotion: ReadonlySet<string> = new Set(['home', 'move', 'jog', 'drive', 'hoist', 'lower', 'wait']);
const placesFor: Readonly<Record<string, readonly string[]>> = {
  move: ['min', 'between', 'max'],
  drive: ['min', 'max'],
  lamp: ['on', 'off'],
};

const actionFaults = (
  action: ActionEntry,
  path: Objection['path'],
  where: 'onentry' | 'other',
  counters: readonly string[],
): readonly Objection[] => {
  const said = verbs.filter((verb) => action[verb] !== undefined);
  const [verb] = said;
  if (verb === undefined || said.length > 1)
    return [
      {
        path,
        what: verb === undefined ? 'Nothing is done here.' : `Two things are done in one step: ${said.join(' and ')}.`,
        allowed: verb === undefined ? `One of ${verbs.join(', ')}.` : 'Each in a line of its own.',
      },
    ];
  const found: Objection[] = [];
  const tell = (key: string, what: string, allowed: string): void => {
    found.push({ path: [...path, key], what, allowed });
  };
  if (where === 'other' && setsInMotion.has(verb))
    tell(verb, `"${verb}" stands outside of onentry.`, 'What lasts belongs to a state: put it into its onentry.');
  if (takesTo.has(verb)) {
    const places = placesFor[verb]!;
    if (action.to === undefined) tell(verb, `"${verb}" does not say to where.`, `to: ${places.join(', ')}.`);
    else if (!places.includes(action.to))
      tell('to', `"${verb}" cannot go to ${action.to}.`, `${places.join(', ')} would do.`);
  } else if (action.to !== undefined) tell('to', `"to" says nothing of ${verb}.`, 'Leave it out.');
  if (action.until !== undefined && verb !== 'lower')
    tell('until', `"until" says nothing of ${verb}.`, 'Leave it out.');
  for (const key of ['count', 'clear'] as const) {
    const name = action[key];
    if (name !== undefined && !counters.includes(name))
      tell(
        key,
        `There is no counter "${name}".`,
        counters.length > 0 ? wouldDo(name, counters) : `counters: { ${name}: 2 } beside the states.`,
      );
  }
  return found;
};

const conditionFaults = (
  { cond }: TransitionEntry,
  path: Objection['path'],
  states: readonly string[],
  counters: readonly string[],
): readonly Objection[] => {
  if (cond === undefined) return [];
  const at = [...path, 'cond'];
  const unknown = (['below', 'reached'] as const).flatMap((key) =>
    Object.keys(cond[key] ?? {})
      .filter((name) => !counters.includes(name))
      .map((name) => ({
        path: [...at, key, name],
        what: `There is no counter "${name}".`,
        allowed: wouldDo(name, counters),
      })),
  );
  return cond.in !== undefined && !states.includes(cond.in)
    ? [...unknown, { path: [...at, 'in'], what: `There is no state "${cond.in}".`, allowed: wouldDo(cond.in, states) }]
    : unknown;
};

const transitionFaults = (
  transition: TransitionEntry,
  path: Objection['path'],
  states: readonly string[],
  counters: readonly string[],
): readonly Objection[] => {
  const found: Objection[] = [];
  const waits = triggers.filter((key) => transition[key] !== undefined);
  if (waits.length > 1)
    found.push({
      path: [...path, waits[1]!],
      what: `A transition waits for one thing, not for ${waits.join(' and ')}.`,
      allowed: 'Two transitions, one below the other; or cond for what must be so at the time.',
    });
  if (waits.length === 0 && transition.cond === undefined)
    found.push({
      path,
      what: 'This transition would be taken at once, always.',
      allowed: `${triggers.join(', ')} or cond.`,
    });
  if (transition.target !== undefined && !states.includes(transition.target))
    found.push({
      path: [...path, 'target'],
      what: `There is no state "${transition.target}".`,
      allowed: wouldDo(transition.target, states),
    });
  if (transition.target === undefined && (transition.actions ?? []).length === 0)
    found.push({ path, what: 'This transition does nothing.', allowed: 'target, actions or both.' });
  return [
    ...found,
    ...conditionFaults(transition, path, states, counters),
    ...(transition.actions ?? []).flatMap((action, i) =>
      actionFaults(action, [...path, 'actions', i], 'other', counters),
    ),
  ];
};

/** What is around a state, nearest first; ends where it would go round. */
const around = (states: States, id: string): readonly string[] => {
  const line: string[] = [];
  for (let at = states[id]?.in; at !== undefined && !line.includes(at) && at !== id; at = states[at]?.in) line.push(at);
  return line;
};

const structureFaults = (states: States): readonly Objection[] => {
  const ids = Object.keys(states);
  const found: Objection[] = [];
  for (const [id, state] of Object.entries(states)) {
    const at = ['states', id];
    if (/[\s.*]/.test(id))
      found.push({
        path: at,
        what: `"${id}" cannot be the name of a state.`,
        allowed: 'One word; hyphens are welcome.',
      });
    if (state.in !== undefined && !ids.includes(state.in))
      found.push({ path: [...at, 'in'], what: `There is no state "${state.in}".`, allowed: wouldDo(state.in, ids) });
    if (state.in === id || around(states, id).some((one) => states[one]?.in === id))
      found.push({ path: [...at, 'in'], what: `"${id}" stands inside itself.`, allowed: 'Another state, or none.' });
    const inside = ids.filter((one) => states[one]?.in === id);
    if (state.initial !== undefined && !ids.some((one) => one === state.initial && around(states, one).includes(id)))
      found.push({
        path: [...at, 'initial'],
        what: `"${state.initial}" is no state inside ${id}.`,
        allowed: wouldDo(state.initial, inside),
      });
    if (inside.length > 0 && state.initial === undefined)
      found.push({
        path: at,
        what: `"${id}" does not say which of its states comes first.`,
        allowed: `initial: ${inside[0]}`,
      });
    if (state.final === true && (state.transitions ?? []).length > 0)
      found.push({
        path: [...at, 'transitions'],
        what: 'A final state has no transitions.',
        allowed: `Put them at ${state.in ?? 'another state'}.`,
      });
  }
  return found;
};

/** Everything that is wrong with a chart as it is written. */
export const objectionsTo = (cycle: CycleEntry): readonly Objection[] => {
  const states: States = cycle.states ?? {};
  const ids = Object.keys(states);
  const counters = Object.keys(cycle.counters ?? {});
  const found: Objection[] = [...structureFaults(states)];
  if (cycle.initial !== undefined && !ids.includes(cycle.initial))
    found.push({
      path: ['initial'],
      what: `The initial state "${cycle.initial}" is not there.`,
      allowed: wouldDo(cycle.initial, ids),
    });
  for (const [id, state] of Object.entries(states)) {
    const at = ['states', id];
    for (const key of ['onentry', 'onexit'] as const)
      (state[key] ?? []).forEach((action, i) =>
        found.push(...actionFaults(action, [...at, key, i], key === 'onentry' ? 'onentry' : 'other', counters)),
      );
    (state.transitions ?? []).forEach((transition, i) =>
      found.push(...transitionFaults(transition, [...at, 'transitions', i], ids, counters)),
    );
  }
  return found;
};
