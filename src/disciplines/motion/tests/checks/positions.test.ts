import { expect, it } from 'vitest';
import { checkBook, find } from '../../../../app/testing.ts';
import { base } from '../base.ts';

it('proposes a current that the switch of the driver has, and none between two positions', () => {
  // 4 A peak is over the 2.8 A·√2 = 3.96 A that the copper is rated for; the nearest position below that is 2.8 A.
  const machine = checkBook(base.replace('microsteps: 8, current: 1.2 A', 'microsteps: 8, current: 4 A'));
  expect(find(machine, 'MOTION-040/M1').verdict).toBe('fails');
  const turned = machine
    .remedies('MOTION-040/M1')
    .flatMap(({ edits }) => edits.filter(({ path }) => path === 'drivers.D1.current'));
  expect(turned.map(({ after }) => after)).toEqual(['2.8 A']);
});
