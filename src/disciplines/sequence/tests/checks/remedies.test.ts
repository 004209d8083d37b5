import { describe, expect, it } from 'vitest';
import { checkBook, find } from '../../../../app/testing.ts';
import { chartModel, cycleChart, type ChartPoint } from '../../facts.ts';
import { base } from '../base.ts';
import { house } from '../house.ts';
import { specFrom } from '../references/specs.ts';

const without = (path: string): string =>
  checkBook(base, house)
    .editedTexts([{ path: `sequence.states.${path}`, text: null }])
    .get('book.yaml')!;

describe('a time-out that is missing', () => {
  it('is reckoned from the slowest healthy case, and cures the wait', () => {
    const machine = checkBook(without('hoisting.transitions.2'), house);
    const key = 'SEQUENCE-050/cycle';
    expect(find(machine, key).sentence).toContain('No way out of hoisting');
    // 300 mm at 150 mm/s and 1 m/s² take 2.15 s, five ticks of 500 ms; a quarter more are 3.125 s.
    const [remedy] = machine.remedies(key);
    expect(remedy?.edits).toEqual([
      {
        path: 'sequence.states.hoisting.transitions.2',
        before: null,
        after: '{ after: 3.2 s, target: latched }',
      },
    ]);
    const cured = checkBook(
      machine.editedTexts(remedy!.edits.map(({ path, after }) => ({ path, text: after }))).get('book.yaml')!,
      house,
    );
    expect(find(cured, key).verdict).toBe('holds');
    expect(find(cured, 'SEQUENCE-010/cycle').verdict).toBe('holds');
  });

  it('of a wait that only a person ends is about a minute', () => {
    const machine = checkBook(without('aiming.transitions.2'), house);
    const [remedy] = machine.remedies('SEQUENCE-050/cycle');
    expect(remedy?.edits[0]).toEqual({
      path: 'sequence.states.aiming.transitions.2',
      before: null,
      after: '{ after: 60 s, target: latched }',
    });
  });
});

describe('what other trades get', () => {
  it('is the chart of the book as a fact', () => {
    const listed = checkBook(base, house)
      .facts()
      .map((fact) => JSON.stringify(fact));
    expect(cycleChart.name).toBe('sequence.chart');
    expect(listed.some((text) => text.includes('sequence.tick'))).toBe(true);
  });

  it('is a model that plays it, one event after another', () => {
    const { chart } = specFrom(base);
    const { start, transition } = house.model(chartModel, chart);
    const play = (from: ChartPoint, name: string): ChartPoint => transition(from, { kind: 'event', name })[0];
    let [point] = transition(start, { kind: 'reset' });
    expect(point.state).toBe('waking');
    const [next, actions] = transition(point, { kind: 'time' });
    expect(next.state).toBe('homing-z');
    expect(actions).toEqual([
      { do: 'drives', on: true },
      { do: 'home', axis: 'z' },
    ]);
    point = ['z.done', 'S6.off', 'z.done', 'x.done'].reduce(play, next);
    expect(point.state).toBe('ready');
    // Without S6 no play begins; with it one does.
    expect(play(point, 'S11.on').state).toBe('ready');
    [point] = transition(point, { kind: 'input', signal: 'S6', on: true });
    expect(play(point, 'S11.on').state).toBe('aiming');
  });
});
