/** Simulated plays as `swing-play.c` plays them: the same numbers in, and the same numbers out. */
import { playsOf, type PlayPlan } from '../src/disciplines/swing/calc/plays.ts';
import { seeded } from '../src/kernel/index.ts';

const drive = { speed: 0.22, acceleration: 0.7 };
const plan: PlayPlan = {
  gravity: 9.80665,
  fadingTime: 30,
  tolerance: 1e-6,
  docked: false,
  x: { travel: 0.56, profile: drive, room: 0.1 },
  y: { travel: 0.4, profile: drive, room: 0.1 },
  hoist: { speed: 0.16, acceleration: 0.5 },
  up: 0.14,
  down: 0.84,
  belowHook: 0.07,
  heap: [0, 0],
  scatter: 0.012,
  reach: 0.02,
  lean: Infinity,
  player: { drives: [6, 6], hold: [0.35, 0.6], pause: [0.35, 0.45] },
};

export interface Tallied {
  readonly plays: number;
  readonly simulated: number;
  readonly shortest: number;
  readonly misses: number;
  readonly touches: number;
  readonly offset: number;
}

/** Plays that often, from the beginning of the same random numbers. */
export const played = (plays: number): Tallied => {
  const random = seeded(1);
  const play = playsOf(plan);
  let [simulated, shortest, misses, touches, offset] = [0, Infinity, 0, 0, 0];
  for (let i = 0; i < plays; i++) {
    const one = play(random);
    simulated += one.time / plays;
    shortest = Math.min(shortest, one.time);
    offset += one.offset / plays;
    if (one.missed) misses++;
    if (one.touched) touches++;
  }
  return { plays, simulated, shortest, misses, touches, offset };
};
