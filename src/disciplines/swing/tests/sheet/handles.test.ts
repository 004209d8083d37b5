import { describe, expect, it } from 'vitest';
import { checkBook } from '../../../../app/testing.ts';
import { heldOn, misleading } from '../../../motion/tests/sheet/handles.ts';
import { base } from '../base.ts';

const held = (book: string) => heldOn(checkBook(book), 'swing');
const paths = (book: string): readonly string[] => held(book).map(({ path }) => path);

const ranges = base
  .replace('halves-after: 10 swings', 'halves-after: 6..14 swings')
  .replace('below-hook: 70 mm', 'below-hook: 60..80 mm')
  .replace('below-pivot: 140 mm', 'below-pivot: 130..150 mm');

describe('what can be taken hold of', () => {
  it.each([
    ['exact facts', base],
    ['ranges', ranges],
  ])('is a fact of the book and shows what it says: %s', (_name, book) => {
    const all = held(book);
    expect(all.length).toBeGreaterThan(10);
    expect(misleading(all)).toEqual([]);
  });

  it('is everything that the book says of the load, its dock and the walls', () => {
    expect(paths(ranges)).toEqual([
      'hanging.halves-after',
      'hanging.centre-of-mass-below-hook',
      'hanging.lift-off-offset',
      'hanging.lift-off-scatter',
      'hanging.half-width',
      'hanging.head',
      'hanging.calm',
      'hanging.dwell',
      'axes.z.dock.kind',
      'axes.z.dock.catch',
      'axes.z.dock.lean',
      'axes.z.dock.below-pivot',
      'axes.z.dock.misses',
      'axes.x.wall',
    ]);
  });

  it('is nothing that the book does not say, and nothing of a machine without a hoist', () => {
    expect(paths(base.slice(0, base.indexOf('hanging:')))).not.toContain('hanging.calm');
    expect(paths('book: 1\ntitle: Desk\nrevision: A\naxes:\n  x: { drive: belt, wall: 200 mm }\n')).toEqual([]);
  });
});
