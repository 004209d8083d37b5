/** A W3C SCXML document as a chart: the part without parallel, history, script, invoke and data of its own. */
import type { Action, Chart, ChartState, Condition, Transition } from '../facts.ts';
import { readCondition } from './guard-text.ts';
import { SCXML, TRADE } from './scxml-write.ts';
import { readXml, XmlFault, type Element } from './xml.ts';

export interface ScxmlProblem {
  readonly line: number;
  readonly column: number;
  readonly what: string;
  readonly allowed: string;
}

export type ReadScxml =
  { readonly ok: true; readonly chart: Chart } | { readonly ok: false; readonly problems: readonly ScxmlProblem[] };

const STATES: ReadonlySet<string> = new Set(['state', 'final']);
const COUNTED = /^Math\.min\((\S+) \+ 1, (\d+)\)$/;
const ALLOWED =
  'state, final, initial, onentry, onexit, transition, raise, assign to a counter, and the actions of this trade.';

/** A delay of CSS kind in seconds. */
const delayOf = (text: string): number | null => {
  const found = /^(\d*\.?\d+)(ms|s)$/.exec(text);
  return found ? Number(found[1]) * (found[2] === 'ms' ? 0.001 : 1) : null;
};

class Reader {
  readonly problems: ScxmlProblem[] = [];
  readonly states: ChartState[] = [];
  readonly counters: Record<string, number> = {};
  readonly #prefix: string;
  readonly #ids = new Set<string>();

  constructor(
    readonly root: Element,
    readonly tick: number,
  ) {
    const declared = Object.entries(root.attributes).find(
      ([name, value]) => name.startsWith('xmlns:') && value === TRADE,
    );
    this.#prefix = declared ? `${declared[0].slice('xmlns:'.length)}:` : 'g:';
    const collect = (element: Element): void => {
      if (STATES.has(element.name) && element.attributes['id'] !== undefined) {
        if (this.#ids.has(element.attributes['id']))
          this.tell(element, `"${element.attributes['id']}" stands twice.`, 'Names of their own.');
        this.#ids.add(element.attributes['id']);
      }
      element.children.forEach(collect);
    };
    collect(root);
  }

  tell({ line, column }: Element, what: string, allowed: string): void {
    this.problems.push({ line, column, what, allowed });
  }

  target(element: Element, name: string | undefined): string | null {
    if (name === undefined) return null;
    if (/\s/.test(name)) this.tell(element, 'More than one target wants parallel states.', 'One state.');
    else if (!this.#ids.has(name)) this.tell(element, `There is no state "${name}".`, 'A state of this document.');
    return name;
  }

  actions(elements: readonly Element[], timers: Map<string, number> | null): readonly Action[] {
    return elements.flatMap((element) => this.#action(element, timers) ?? []);
  }

  #action(element: Element, timers: Map<string, number> | null): Action | null {
    const { name, attributes } = element;
    const need = (key: string): string => {
      if (attributes[key] === undefined) this.tell(element, `<${name}> has no ${key}.`, `${key}="…"`);
      return attributes[key] ?? '';
    };
    if (name === 'raise') return { do: 'raise', event: need('event') };
    if (name === 'log') return null;
    if (name === 'assign') {
      const [location, expr] = [need('location'), need('expr')];
      const most = COUNTED.exec(expr);
      if (expr === '0') {
        this.counters[location] ??= 0;
        return { do: 'clear', counter: location };
      }
      if (most?.[1] === location) {
        this.counters[location] = Math.max(this.counters[location] ?? 0, Number(most[2]));
        return { do: 'count', counter: location };
      }
      this.tell(element, `"${expr}" is not read here.`, `0, or Math.min(${location} + 1, greatest).`);
      return null;
    }
    if (name === 'send' && timers && attributes['delay'] !== undefined) {
      const delay = delayOf(attributes['delay']);
      if (delay === null) this.tell(element, `"${attributes['delay']}" is no delay.`, '2s or 500ms.');
      else timers.set(need('event'), Math.max(1, Math.ceil(delay / this.tick - 1e-6)));
      return null;
    }
    if (name === 'cancel') return null;
    if (!name.startsWith(this.#prefix)) {
      this.tell(element, `<${name}> is not read here.`, ALLOWED);
      return null;
    }
    return this.#trade(element, name.slice(this.#prefix.length), need);
  }

  #trade(element: Element, verb: string, need: (key: string) => string): Action | null {
    const { attributes } = element;
    const oneOf = <const W extends string>(key: string, words: readonly W[]): W => {
      const given = need(key);
      const found = words.find((word) => word === given);
      if (found === undefined)
        this.tell(element, `"${given}" is no ${key} of ${verb}.`, `${words.join(', ')} would do.`);
      return found ?? words[0]!;
    };
    switch (verb) {
      case 'drives':
        return { do: 'drives', on: oneOf('to', ['on', 'off']) === 'on' };
      case 'home':
      case 'jog':
      case 'hoist':
      case 'stop':
        return { do: verb, axis: need('axis') };
      case 'move':
        return { do: 'move', axis: need('axis'), to: oneOf('to', ['min', 'between', 'max']) };
      case 'drive':
        return { do: 'drive', axis: need('axis'), to: oneOf('to', ['min', 'max']) };
      case 'lower':
        return { do: 'lower', axis: need('axis'), until: attributes['until'] ?? null };
      case 'servo':
        return { do: 'servo', to: oneOf('to', ['grip', 'release', 'off']) };
      case 'lamp':
        return { do: 'lamp', signal: need('signal'), on: oneOf('to', ['on', 'off']) === 'on' };
      case 'sound':
        return { do: 'sound', signal: need('signal') };
      default:
        this.tell(element, `There is no action "${verb}".`, ALLOWED);
        return null;
    }
  }

  transition(element: Element, timers: ReadonlyMap<string, number>): Transition {
    const { event, cond, target, type } = element.attributes;
    let condition: Condition | null = null;
    if (cond !== undefined) {
      const read = readCondition(cond);
      if (read.ok) condition = read.condition;
      else this.tell(element, read.what, "Such as S6 && !S9, or retries < 2, or In('serving').");
    }
    const after = event === undefined ? null : (timers.get(event) ?? null);
    return {
      events: event === undefined || after !== null ? null : event.split(/\s+/).filter(Boolean),
      after,
      cond: condition,
      target: this.target(element, target),
      internal: type === 'internal',
      actions: this.actions(element.children, null),
    };
  }

  /** The first state inside: as it says, by its initial element, or the first in the document. */
  initial(element: Element): string | null {
    const inside = element.children.filter(({ name }) => STATES.has(name));
    if (inside.length === 0) return null;
    const said = element.children.find(({ name }) => name === 'initial')?.children[0];
    return this.target(
      element,
      element.attributes['initial'] ?? said?.attributes['target'] ?? inside[0]!.attributes['id'],
    );
  }

  state(element: Element, parent: string | null): void {
    const { name, attributes, children } = element;
    const id = attributes['id'];
    if (id === undefined) {
      this.tell(element, `This ${name} has no id.`, 'id="…"');
      return;
    }
    const timers = new Map<string, number>();
    const all = (called: string): readonly Element[] =>
      children.filter((child) => child.name === called).flatMap((child) => child.children);
    const onentry = this.actions(all('onentry'), timers);
    this.states.push({
      id,
      parent,
      initial: this.initial(element),
      final: name === 'final',
      onentry,
      onexit: this.actions(all('onexit'), null),
      transitions: children.filter((child) => child.name === 'transition').map((one) => this.transition(one, timers)),
    });
    for (const child of children)
      if (STATES.has(child.name)) this.state(child, id);
      else if (!['onentry', 'onexit', 'transition', 'initial'].includes(child.name))
        this.tell(child, `<${child.name}> is not read here.`, ALLOWED);
  }
}

/**
 * Reads an SCXML 1.0 document.
 *
 * @param tick length of a tick; delays become so many, rounded up [s]
 * @returns the chart, or everything that is wrong or not read here, with line and column
 */
export const readScxml = (text: string, tick: number): ReadScxml => {
  let root: Element;
  try {
    root = readXml(text);
  } catch (error) {
    if (!(error instanceof XmlFault)) throw error;
    const { line, column, message } = error;
    return { ok: false, problems: [{ line, column, what: message, allowed: 'A well-formed document.' }] };
  }
  const reader = new Reader(root, tick);
  if (root.name !== 'scxml' || root.attributes['xmlns'] !== SCXML)
    reader.tell(root, 'This is no SCXML document.', `<scxml xmlns="${SCXML}" version="1.0">`);
  for (const child of root.children)
    if (STATES.has(child.name)) reader.state(child, null);
    else if (child.name !== 'datamodel') reader.tell(child, `<${child.name}> is not read here.`, ALLOWED);
  const initial = reader.initial(root);
  if (initial === null) reader.tell(root, 'There is no state.', '<state id="…"/>');
  const { problems, states, counters } = reader;
  return problems.length > 0 || initial === null
    ? { ok: false, problems }
    : { ok: true, chart: { initial, states, counters } };
};
