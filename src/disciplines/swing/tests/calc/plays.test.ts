import { describe, expect, it } from 'vitest';
import { exactInterval } from '../../../../kernel/binomial.ts';
import { seeded } from '../../../../kernel/index.ts';
import { hoistedSideways, hoistTime, hookOffset } from '../../calc/hoisting.ts';
import { missShare } from '../../calc/misses.ts';
import { dampingFromHalving, fadingTime, swingRate } from '../../calc/period.ts';
import { gathered, playsOf, tallyOf, type PlayPlan } from '../../calc/plays.ts';
import { player } from '../../data/player.ts';

const hoist = { speed: 0.16, acceleration: 0.5 };
const drive = { speed: 0.22, acceleration: 0.7 };
const longest = 0.91;
const fadingFor = (swings: number): number =>
  fadingTime({ damping: dampingFromHalving({ swings }), longest: swingRate({ length: longest }) });

const plan: PlayPlan = {
  gravity: 9.80665,
  fadingTime: fadingFor(10),
  tolerance: 1e-6,
  docked: true,
  x: { travel: 0.56, profile: drive, room: 0.1 },
  y: { travel: 0.4, profile: drive, room: 0.1 },
  hoist,
  up: 0.14,
  down: 0.84,
  belowHook: 0.07,
  heap: [0, 0.3],
  scatter: 0.012,
  reach: 0.012,
  lean: Infinity,
  player,
};

/** Standard deviation of the hook's offset on arrival, from a middle height of the heap, by the closed form. */
const arriving = ({ scatter, fadingTime: fading, up, down, belowHook, heap }: PlayPlan): number => {
  const [short, long] = [up + belowHook, down + belowHook - (heap[0] + heap[1]) / 2];
  const time = hoistTime({ long, short, ...hoist });
  return hookOffset({
    sideways: hoistedSideways({ offset: scatter, long, short, ...hoist, time, fading }),
    length: short,
    below: belowHook,
  });
};

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

describe('misses counted and reckoned', () => {
  it.each([
    [0.008, 0.012, 6],
    [0.012, 0.012, 14],
    [0.022, 0.02, 10],
    [0.016, 0.012, 10],
  ])('independent: with a reach of %f m, a spread of %f m and halving in %i swings', (reach, scatter, swings) => {
    const given = { ...plan, reach, scatter, fadingTime: fadingFor(swings) };
    const { misses, plays } = tallyOf(given, 3000, seeded(9));
    // 99.9 % because four are asked at once; the closed form bounds what ramps add, 5 % of the spread, so it may be above.
    const { low } = exactInterval(misses, plays, 0.999);
    const reckoned = missShare({ reach, scatter: arriving(given) });
    expect(reckoned).toBeGreaterThan(low);
    const without = missShare({ reach, scatter: arriving(given) * 0.93 });
    expect(without).toBeLessThan(exactInterval(misses, plays, 0.999).high);
  });
});

describe('one miss in forty, as one machine was reported to do', () => {
  // From practice, without a source: undocked and uncupped, 0.06 % to 13 % at 95 %. The grid was fixed before the first run.
  const practice = exactInterval(1, 40);
  const rates = [0.01, 0.015, 0.022, 0.03, 0.045].flatMap((reach) =>
    [0.006, 0.012, 0.02].flatMap((scatter) =>
      [6, 10, 14].map((swings) => ({
        reach,
        scatter,
        swings,
        share: missShare({ reach, scatter: arriving({ ...plan, scatter, fadingTime: fadingFor(swings) }) }),
      })),
    ),
  );
  const agreeing = rates.filter(({ share }) => share >= practice.low && share <= practice.high);

  it('is what the model says for some reaches, spreads and dampings, and not for others', () => {
    console.info(
      `misses between 0.06 % and 13 % (reach/spread mm, halving swings): ${agreeing
        .map(
          ({ reach, scatter, swings, share }) =>
            `${reach * 1e3}/${scatter * 1e3}/${swings} ${(100 * share).toFixed(2)} %`,
        )
        .join(', ')}`,
    );
    expect(agreeing.length).toBeGreaterThan(0);
    expect(agreeing.length).toBeLessThan(rates.length / 2);
  });

  it('is also what simulated plays say of a claw that hangs free, for a reach between 30 mm and 60 mm', () => {
    // Here what is left of the last drives is carried down and up again, which matters more than the heap.
    const counted = [0.022, 0.03, 0.045, 0.06].map((reach) => {
      const { misses, plays } = tallyOf({ ...plan, docked: false, reach }, 600, seeded(40));
      return { reach, ...exactInterval(misses, plays) };
    });
    console.info(
      `free, spread 12 mm, halving in 10: ${counted.map(({ reach, low, high }) => `${reach * 1e3} mm ${(100 * low).toFixed(1)} to ${(100 * high).toFixed(1)} %`).join(', ')}`,
    );
    expect(counted[0]!.low).toBeGreaterThan(practice.high);
    expect(counted.filter(({ low, high }) => low < practice.high && high > practice.low).length).toBeGreaterThan(0);
  });

  it('a cup of 45 mm makes all of them rarer than that', () => {
    const cup = rates.filter(({ reach }) => reach === 0.045);
    expect(cup).toHaveLength(9);
    for (const { share } of cup) expect(share).toBeLessThan(practice.low);
  });
});
