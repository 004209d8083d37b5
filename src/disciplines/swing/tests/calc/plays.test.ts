import { describe, expect, it } from 'vitest';
import { exactInterval } from '../../../../kernel/binomial.ts';
import { seeded } from '../../../../kernel/index.ts';
import { drives, gathered, playsOf, tallyOf } from '../../calc/plays.ts';
import { FIELD, Track, WIDTH } from '../../calc/track.ts';
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
    // Walls stand beyond the ends of the travel, to either side: far ends, and a swing of less than the room beyond them.
    const wide = { travel: 2, profile: { speed: 0.3, acceleration: 1.5 }, room: 0.3 };
    expect(tallyOf({ ...plan, docked: false, x: wide, y: wide }, 60, seeded(6)).touches).toBe(0);
  });

  it('miss for a lean that the dock does not take', () => {
    const strict = tallyOf({ ...plan, reach: Infinity, lean: 0.02 }, 200, seeded(1));
    expect(strict.misses).toBe(strict.leans.filter((lean) => lean > 0.02).length);
    expect(strict.misses).toBeGreaterThan(20);
  });
});

describe('the drives of a hand', () => {
  const axes = { x: plan.x, y: plan.y };
  const written = (seed: number, player = plan.player): Track =>
    drives({ ...axes, player }, new Track(0.21), seeded(seed));

  /** Stretches during which one axis runs, in their order, and the rests between them. */
  const runs = (track: Track) => {
    const list: { axis: 'x' | 'y'; from: number; to: number; way: number }[] = [];
    for (let i = 0; i < track.count; i++) {
      const at = (field: number, piece = i): number => track.pieces[piece * WIDTH + field]!;
      const axis = at(FIELD.vx) !== 0 || at(FIELD.ax) !== 0 ? 'x' : at(FIELD.vy) !== 0 || at(FIELD.ay) !== 0 ? 'y' : '';
      if (axis === '') continue;
      const last = list.at(-1);
      const [place, a] = axis === 'x' ? [FIELD.x, FIELD.ax] : [FIELD.y, FIELD.ay];
      // A drive begins where its axis stood still.
      const begins = Math.abs(at(axis === 'x' ? FIELD.vx : FIELD.vy)) < 1e-12;
      if (last && !begins)
        Object.assign(last, { to: at(FIELD.t, i + 1), way: last.way + at(place, i + 1) - at(place) });
      else list.push({ axis, from: at(FIELD.t), to: at(FIELD.t, i + 1), way: at(place, i + 1) - at(place) });
      expect(Math.abs(at(a))).toBeLessThan(0.7 + 1e-12);
    }
    return list;
  };

  it('are as many as the player makes, along one axis after the other, held and left for as long as it does', () => {
    const many = { drives: [6, 9], hold: [0.25, 1.2], pause: [0.15, 0.9] } as const;
    const [counts, firsts, ways] = [new Set<number>(), new Set<string>(), new Set<number>()];
    const wide = { travel: 100, profile: plan.x.profile, room: 1 };
    for (let seed = 1; seed <= 60; seed++) {
      const track = drives({ x: wide, y: wide, player: many }, new Track(0.21), seeded(seed));
      const list = runs(track);
      counts.add(list.length);
      firsts.add(list[0]!.axis);
      list.forEach(({ axis, from, to, way }, i) => {
        ways.add(Math.sign(way));
        if (i > 0) expect(axis).not.toBe(list[i - 1]!.axis);
        // Held, then the ramp down; what it went is speed times the time held.
        const ramp = Math.min(0.22 / 0.7, (to - from) / 2);
        const hold = to - from - ramp;
        expect(hold).toBeGreaterThan(0.25 - 1e-9);
        expect(hold).toBeLessThan(1.2 + 1e-9);
        expect(Math.abs(way)).toBeCloseTo(Math.min(0.22, 0.7 * hold) * hold, 9);
        const rest = (list[i + 1]?.from ?? track.end) - to;
        expect(rest).toBeGreaterThan(0.15 - 1e-9);
        expect(rest).toBeLessThan(0.9 + 1e-9);
      });
    }
    expect([...counts].sort()).toEqual([6, 7, 8, 9]);
    expect([...firsts].sort()).toEqual(['x', 'y']);
    expect([...ways].sort()).toEqual([-1, 1]);
  });

  it('stay inside the travel, turn back at its ends, and leave out what fits to neither side', () => {
    let farthest = 0;
    for (let seed = 1; seed <= 200; seed++) {
      const track = written(seed);
      for (let i = 0; i <= track.count; i++) {
        const [x, y] = [track.pieces[i * WIDTH + FIELD.x]!, track.pieces[i * WIDTH + FIELD.y]!];
        expect(Math.abs(x)).toBeLessThan(0.28 + 1e-9);
        expect(Math.abs(y)).toBeLessThan(0.2 + 1e-9);
        farthest = Math.max(farthest, Math.abs(x));
      }
    }
    expect(farthest).toBeGreaterThan(0.24);
    // Held for a second, 0.22 m: too far to either side of a travel of 0.4 m, and no drive at all.
    const long = { drives: [6, 6], hold: [1, 1], pause: [0.5, 0.5] } as const;
    const stuck = drives({ ...axes, player: long }, new Track(0.21), seeded(3));
    expect(runs(stuck).every(({ axis }) => axis === 'x')).toBe(true);
    expect(runs(stuck)).toHaveLength(3);
    // Of 0.22 m each within ±0.28 m: out, back, and out or past the middle again.
    expect(stuck.y).toBe(0);
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
