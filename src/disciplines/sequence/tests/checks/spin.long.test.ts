/** Counts and verdicts of the search beside those of an independent model checker on a model written after the README. */
import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { explore, prove, type Proof } from '../../calc/prove.ts';
import { lastings, safeties } from '../../calc/rules.ts';
import type { CycleSpec } from '../../calc/spec.ts';
import { base } from '../base.ts';
import { counting, driving, hoisting, steering } from '../references/charts.ts';
import { asked } from '../references/promela-rules.ts';
import { judgeOf, missing, type Judge } from '../references/spin.ts';
import { specFrom } from '../references/specs.ts';

const SOME_TIME = 120_000;
/** Longer than any run that ends here. */
const LONG = 250;

const example = readFileSync(new URL('../../../../../examples/tidepool/book.yaml', import.meta.url), 'utf8');

const judges: Judge[] = [];
afterAll(() => {
  for (const judge of judges) judge.close();
});
const judged = (spec: CycleSpec, marks = true): Judge => {
  const judge = judgeOf(spec, marks);
  judges.push(judge);
  return judge;
};

/** A run of so many ticks and not one more, by the other's count. */
const lastsAsLong = (judge: Judge, property: number, ticks: number | null, what: string): void => {
  if (ticks === null) {
    expect(judge.ask(property, LONG).broken, `${what} lasts for ever`).toBe(true);
    return;
  }
  expect(judge.ask(property, ticks).broken, `${what} lasts longer than ${ticks}`).toBe(false);
  if (ticks > 0) expect(judge.ask(property, ticks - 1).broken, `${what} lasts ${ticks}`).toBe(true);
};

const agreesOnSafeties = (judge: Judge, proof: Proof): void => {
  for (const rule of safeties) expect(judge.ask(asked[rule]).broken, rule).toBe(proof.safety[rule] !== null);
};

const agreesOnRuns = (judge: Judge, spec: CycleSpec, proof: Proof): void => {
  for (const rule of lastings) {
    if (rule !== 'pushing' && rule !== 'pressing') {
      lastsAsLong(judge, asked[rule], proof.lasting[rule].ticks, rule);
      continue;
    }
    const { ticks, axis } = proof.lasting[rule];
    // Of the axis on which it lasts longest the run is as long, of the others no longer.
    const worst = spec.axes.findIndex(({ name }) => name === axis);
    if (worst >= 0) lastsAsLong(judge, asked[rule] + worst, ticks, `${rule} of ${axis}`);
    if (ticks !== null)
      spec.axes.forEach(({ name }, a) =>
        expect(judge.ask(asked[rule] + a, ticks).broken, `${rule} of ${name}`).toBe(false),
      );
  }
  const longest = proof.dwells.some(({ ticks }) => ticks === null)
    ? null
    : Math.max(0, ...proof.dwells.map(({ ticks }) => ticks!));
  lastsAsLong(judge, asked.dwell, longest, 'a wait');
};

const agreesOnReaching = (judge: Judge, spec: CycleSpec, proof: Proof): void => {
  const { states } = spec.chart;
  states.forEach(({ id }, number) =>
    expect(judge.ask(asked.state, number).broken, `${id} is entered`).toBe(!proof.deadStates.includes(id)),
  );
  const used = states.flatMap(({ transitions }) => transitions).map((_, i) => judge.ask(asked.transition, i).broken);
  expect(used.filter((isUsed) => !isUsed)).toHaveLength(proof.deadTransitions.length);
};

describe.skipIf(missing.length > 0)(
  `spin agrees${missing.length > 0 ? ` (${missing.join(', ')} missing)` : ''}`,
  () => {
    it.each([
      ['a crane with one travel', specFrom(base)],
      ['the same, two faults at once', { ...specFrom(base), atMost: 2 }],
      ['a chart without a machine', counting],
      ['a driven belt with switches that chatter', driving],
      ['a hoist that falls', hoisting],
      ['two belts behind a door', steering],
    ])(
      'on count, rules, runs and reach of %s',
      (_, spec) => {
        const proof = prove(spec);
        const judge = judged(spec);
        // Before power comes there is one state more.
        expect(judge.ask(0)).toEqual({ states: proof.states + 1, broken: false });
        agreesOnSafeties(judge, proof);
        agreesOnRuns(judge, spec, proof);
        agreesOnReaching(judge, spec, proof);
      },
      SOME_TIME,
    );

    it.skipIf(!example.includes('\nsequence:'))(
      'on the demonstration with one fault at a time',
      () => {
        const spec = { ...specFrom(example), atMost: 1 };
        const proof = prove(spec);
        const judge = judged(spec, false);
        expect(judge.ask(0)).toEqual({ states: proof.states + 1, broken: false });
        agreesOnSafeties(judge, proof);
      },
      SOME_TIME,
    );

    const edit = (path: string, text: string | null) => ({ path: `sequence.states.${path}`, text });
    it.each([
      ['a missing time-out', 'dwell', [edit('hoisting.transitions', '[{ done: z, target: carrying }]')]],
      ['a drive left on', 'idle-energised', [edit('ready.onentry', '[{ servo: off }]')]],
      ['a travel with the load down', 'travels-low', [edit('lowering.transitions.0.target', 'carrying')]],
      [
        'a limit driven into',
        'pushing',
        [
          edit('carrying.onentry', '[{ drive: x, to: min }]'),
          edit('carrying.transitions', '[{ after: 5 s, target: latched }]'),
        ],
      ],
      ['a state that is never entered', 'state', [edit('lowering.transitions.0.target', 'dropping')]],
      ['no way back', 'unsettled', [edit('hoisting.transitions.2.target', 'lowering')]],
    ] as const)(
      'that there is %s',
      (_, kind, edits) => {
        const spec = specFrom(base, edits);
        const proof = prove(spec);
        const judge = judged(spec);
        expect(judge.ask(0).states).toBe(proof.states + 1);
        const { states } = spec.chart;
        switch (kind) {
          case 'dwell':
            expect(proof.dwells.find(({ state }) => state === 'hoisting')?.ticks).toBeNull();
            expect(judge.ask(asked.dwell, LONG).broken).toBe(true);
            return;
          case 'pushing':
            // Ten ticks of 500 ms are the five seconds of its time-out.
            expect(proof.lasting.pushing).toMatchObject({ ticks: 10, axis: 'x' });
            lastsAsLong(judge, asked.pushing + spec.axes.findIndex(({ name }) => name === 'x'), 10, 'pushing');
            return;
          case 'state':
            expect(proof.deadStates).toEqual(['hoisting', 'carrying']);
            for (const dead of proof.deadStates)
              expect(
                judge.ask(
                  asked.state,
                  states.findIndex(({ id }) => id === dead),
                ).broken,
              ).toBe(false);
            return;
          case 'unsettled':
            expect(proof.lasting.unsettled.ticks).toBeNull();
            expect(proof.dwells.every(({ ticks }) => ticks !== null)).toBe(true);
            expect(judge.ask(asked.unsettled, LONG).broken).toBe(true);
            return;
          default:
            expect(proof.safety[kind]).not.toBeNull();
            expect(judge.ask(asked[kind]).broken).toBe(true);
        }
      },
      SOME_TIME,
    );
  },
);

it('a search is the same every time', () => {
  expect(prove(driving)).toEqual(prove(driving));
  expect(explore(hoisting).graph.count).toBe(prove(hoisting).states);
});
