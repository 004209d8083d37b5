/** The machine whose plays are counted, and what the closed form says of them. */
import { hoistedSideways, hoistTime, hookOffset } from '../../calc/hoisting.ts';
import { dampingFromHalving, fadingTime, swingRate } from '../../calc/period.ts';
import type { PlayPlan } from '../../calc/plays.ts';
import { player } from '../../data/player.ts';

const hoist = { speed: 0.16, acceleration: 0.5 };
const drive = { speed: 0.22, acceleration: 0.7 };
const longest = 0.91;
export const fadingFor = (swings: number): number =>
  fadingTime({ damping: dampingFromHalving({ swings }), longest: swingRate({ length: longest }) });

export const plan: PlayPlan = {
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
export const arriving = ({ scatter, fadingTime: fading, up, down, belowHook, heap }: PlayPlan): number => {
  const [short, long] = [up + belowHook, down + belowHook - (heap[0] + heap[1]) / 2];
  const time = hoistTime({ long, short, ...hoist });
  return hookOffset({
    sideways: hoistedSideways({ offset: scatter, long, short, ...hoist, time, fading }),
    length: short,
    below: belowHook,
  });
};
