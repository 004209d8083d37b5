/** Limits of belts against the texts from which they are taken. */
import { expect, it } from 'vitest';
import { checkBook, find } from '../../../../app/testing.ts';
import { base } from '../base.ts';

const machine = checkBook(base);

// Published-secondary, teeth-in-mesh-text: at least six teeth.
it('secondary: six teeth in mesh', () => {
  expect(find(machine, 'MOTION-120/x').limit!.number).toBe(6);
});

// Published, small-pitch-service-factor: 1.5 to 2.0.
it('published: a service factor within 1.5 to 2.0', () => {
  const factor = 1 / find(machine, 'MOTION-110/x').use!.advised;
  expect(factor).toBeGreaterThanOrEqual(1.5 - 1e-12);
  expect(factor).toBeLessThanOrEqual(2);
});
