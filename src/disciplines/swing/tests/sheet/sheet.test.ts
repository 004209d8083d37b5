import { describe, expect, it } from 'vitest';
import { houseOn } from '../../../../app/index.ts';
import { checkBook } from '../../../../app/testing.ts';
import type { Block } from '../../../../contract/index.ts';
import type { Tally } from '../../calc/plays.ts';
import { player } from '../../data/player.ts';
import { jobsOf, missesOf, misses, PLAYS } from '../../studies/misses.ts';
import { base } from '../base.ts';

const blocksOf = (book: string): readonly Block[] => checkBook(book).sheet('swing').document.blocks;
const kinds = (blocks: readonly Block[], kind: Block['kind']): readonly string[] =>
  blocks.filter((block) => block.kind === kind).map((block) => ('name' in block ? block.name : ''));
const textOf = (blocks: readonly Block[]): string => JSON.stringify(blocks);

describe('the sheet', () => {
  it('of a load that hangs free shows its travels, a play from above, its way up and its misses', () => {
    const blocks = blocksOf(base);
    expect(kinds(blocks, 'figure')).toEqual(['plan-z', 'arrival-z', 'growth-z', 'misses-z']);
    expect(kinds(blocks, 'table')).toEqual(['periods-z', 'travels-z']);
    expect(textOf(blocks)).toContain(`Of ${PLAYS} simulated plays`);
    expect(textOf(blocks)).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('of one that rides in a cup has nothing to show of travelling', () => {
    const blocks = blocksOf(base.replace('kind: rest', 'kind: cup'));
    expect(kinds(blocks, 'figure')).toEqual(['arrival-z', 'growth-z', 'misses-z']);
    expect(textOf(blocks)).toContain('rides in its cup');
  });

  it('lists cures, ranked, where something swings too far', () => {
    const blocks = blocksOf(base.replace('calm: 8°', 'calm: 1°').replace('catch: 45 mm', 'catch: 22 mm'));
    expect(kinds(blocks, 'table')).toEqual(['periods-z', 'travels-z', 'cures-z-x', 'cures-z']);
    const table = blocks.find((block) => block.kind === 'table' && block.name === 'cures-z');
    expect(table?.kind === 'table' && table.rows.map(([cure]) => cure)[0]).toBe('a wider dock');
    expect(textOf(blocks)).toContain('driven by hand the axis lags');
    // What the table proposes was tried with every check, and holds.
    expect(table?.kind === 'table' && table.rows[0]![4]).toMatch(/^(holds|tight)$/);
  });

  it('of a young book says what is missing instead', () => {
    const blocks = blocksOf(base.slice(0, base.indexOf('hanging:')));
    expect(kinds(blocks, 'figure')).toEqual([]);
    expect(textOf(blocks)).toContain('not stated yet');
  });

  it('of a machine without a hoist says that nothing hangs', () => {
    expect(textOf(blocksOf('book: 1\ntitle: Desk\nrevision: A\naxes:\n  x:\n    drive: belt\n'))).toContain(
      'Nothing hangs on a line',
    );
  });
});

describe('simulated plays', () => {
  const plan = {
    gravity: 9.80665,
    fadingTime: 27,
    tolerance: 1e-6,
    docked: true,
    x: { travel: 0.5, profile: { speed: 0.2, acceleration: 0.7 }, room: Infinity },
    y: { travel: 0.4, profile: { speed: 0.2, acceleration: 0.7 }, room: Infinity },
    hoist: { speed: 0.16, acceleration: 0.5 },
    up: 0.14,
    down: 0.84,
    belowHook: 0.07,
    heap: [0, 0.3] as const,
    scatter: 0.012,
    reach: 0.01,
    lean: Infinity,
    player,
  };

  it('come to the same as jobs, in whatever order they are run', async () => {
    const jobs = jobsOf(plan, 250);
    expect(jobs.map(({ args }) => args.count)).toEqual([100, 100, 50]);
    const { inline } = houseOn();
    const forwards = (await inline.run(jobs)) as readonly Tally[];
    const backwards = ((await inline.run(jobs.toReversed())) as readonly Tally[]).toReversed();
    expect(backwards).toEqual(forwards);
    const study = misses.run(undefined as never, { plan, plays: 250 });
    let step = study.next();
    const partial: number[] = [];
    while (!step.done) {
      partial.push(step.value.tally.plays);
      step = study.next();
    }
    expect(partial).toEqual([100, 200, 250]);
    expect(step.value).toEqual(missesOf(forwards, 250));
    expect(step.value.interval.low).toBeLessThan(step.value.share);
  });
});
