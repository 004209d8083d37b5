import { describe, expect, it } from 'vitest';
import { exactInterval } from '../../../../kernel/binomial.ts';
import { seeded } from '../../../../kernel/index.ts';
import { gathered, playsOf, tallyOf } from '../../calc/plays.ts';
import { plan } from '../references/machine.ts';

describe('simulated plays', () => {
  it('are the same for the same seed, and in blocks the same as gathered', () => {
    const blocks = (): ReturnType<typeof tallyOf>[] => [1, 2, 3].map((seed) => tallyOf(plan, 50, seeded(seed)));
    expect(blocks()).toEqual(blocks());
    const all = gathered(blocks());
    expect(all.plays).toBe(150);
    expect(all.offsets).toEqual(blocks().flatMap(({ offsets }) => offsets));
    expect(all.misses).toBe(all.offsets.filter((offset) => offset > plan.reach).length);
  });

  it('of a docked claw swing only from lift-off', () => {
    const play = playsOf({ ...plan, scatter: 1e-9 });
    const random = seeded(4);
    for (let i = 0; i < 20; i++) {
      const { driven, landed, offset, touched, missed, time } = play(random);
      expect([driven, landed, touched, missed]).toEqual([0, 0, false, false]);
      // What the tolerance of the integration leaves.
      expect(offset).toBeLessThan(1e-6);
      expect(time).toBeGreaterThan(2);
    }
  });

  it('of a claw that hangs free while it is driven miss more, and come down beside where they aim', () => {
    const docked = tallyOf(plan, 400, seeded(2));
    const free = tallyOf({ ...plan, docked: false }, 400, seeded(2));
    expect(exactInterval(free.misses, 400).low).toBeGreaterThan(exactInterval(docked.misses, 400).high);
    expect(free.driven).toBeGreaterThan(0.1);
    expect(docked.driven).toBe(0);
  });

  it('touch a wall that is near, and none that is far', () => {
    const walls = (room: number): number => {
      const axis = { travel: 0.3, profile: { speed: 0.3, acceleration: 1.5 }, room };
      return tallyOf({ ...plan, docked: false, x: axis, y: axis }, 60, seeded(6)).touches;
    };
    expect(walls(0.005)).toBeGreaterThan(0);
    expect(walls(1)).toBe(0);
  });

  it('miss for a lean that the dock does not take', () => {
    const strict = tallyOf({ ...plan, reach: Infinity, lean: 0.02 }, 200, seeded(1));
    expect(strict.misses).toBe(strict.leans.filter((lean) => lean > 0.02).length);
    expect(strict.misses).toBeGreaterThan(20);
  });
});

describe('a line that goes slack', () => {
  it('counts as missed, however wide the dock is', () => {
    // A hoist that stops harder than a load falls throws it up.
    const thrown = { ...plan, hoist: { speed: 0.16, acceleration: 12 }, reach: Infinity };
    const { plays, misses, slacks, offsets } = tallyOf(thrown, 20, seeded(1));
    expect([plays, misses, slacks]).toEqual([20, 20, 20]);
    expect(offsets).toEqual(Array.from({ length: 20 }, () => Infinity));
  });

  it('does so as well where it goes slack on the way down', () => {
    const play = playsOf({ ...plan, docked: false, hoist: { speed: 0.16, acceleration: 12 }, reach: Infinity });
    expect(play(seeded(2))).toMatchObject({ slack: true, missed: true, offset: Infinity });
  });
});
