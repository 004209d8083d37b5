import { describe, expect, it } from 'vitest';
import { checkBook } from '../../../../app/testing.ts';
import type { Block } from '../../../../contract/index.ts';
import { firstFault } from '../../../../figures/tests/well-formed.ts';
import { layersOf } from '../../figures/states.ts';
import { base } from '../base.ts';
import { house } from '../house.ts';

const blocksOf = (book: string): readonly Block[] => checkBook(book, house).sheet('sequence').document.blocks;
const named = (blocks: readonly Block[], kind: Block['kind']): readonly string[] =>
  blocks.flatMap((block) => (block.kind === kind && 'name' in block ? [block.name] : []));

describe('the sheet', () => {
  it('of a cycle on which everything holds shows states, waits, faults and transitions', () => {
    const blocks = blocksOf(base);
    expect(named(blocks, 'figure')).toEqual(['states']);
    expect(named(blocks, 'table')).toEqual(['properties', 'waits', 'faults', 'transitions']);
    expect(JSON.stringify(blocks)).not.toMatch(/NaN|undefined|Infinity/);
    expect(JSON.stringify(blocks)).toContain('saw all that can come at a tick of 0.5 s');
  });

  it('shows the way on which something is broken, as a diagram and in words', () => {
    const blocks = blocksOf(base.replace('[{ drives: off }, { servo: off }]', '[{ drives: off }]'));
    expect(named(blocks, 'figure')).toContain('trace-sequence-020');
    const way = blocks.find((block) => block.kind === 'table' && block.name === 'way-sequence-020');
    const words = way?.kind === 'table' ? way.rows.map(([, what]) => what) : [];
    expect(words[0]).toContain('reset');
    expect(words.at(-1)).toContain('servo on');
    for (const block of blocks) if (block.kind === 'figure') expect(firstFault(block.svg)).toBeUndefined();
  });

  it('says so when the search was cut', () => {
    const blocks = blocksOf(base.replace('tick: 500 ms', 'tick: 500 ms\n  most-states: 1000'));
    expect(JSON.stringify(blocks)).toContain('the search was cut after 1000 states');
  });

  it('says what is missing in a young book', () => {
    expect(JSON.stringify(blocksOf('book: 1\ntitle: Young\nrevision: A\n'))).toContain('does not tell its cycle yet');
    const young = base.replace('    speed: 150 mm/s\n', '');
    expect(JSON.stringify(blocksOf(young))).toContain('axes.z.speed');
  });
});

it('layers put every state where it can be reached first', () => {
  const box = (id: string, ...to: readonly string[]) => ({ id, is: null, to });
  expect(
    layersOf({ initial: 'a', boxes: [box('c', 'a'), box('a', 'b', 'c'), box('b', 'c'), box('never', 'a')] }),
  ).toEqual([['a'], ['b', 'c'], ['never']]);
});
