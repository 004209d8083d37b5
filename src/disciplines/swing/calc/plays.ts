/** Simulated plays: a hand drives, the claw is lowered on the heap, lifts off out of plumb, is hoisted and docks or misses. */
import type { Player } from '../data/player.ts';
import { hangingLoad, type HangingLoad } from './hanging.ts';
import { Track, type Profile } from './track.ts';

/** An axis that is driven by hand. */
export interface DrivenAxis {
  readonly travel: number;
  readonly profile: Profile;
  /** From the ends of the travel to the walls, less half of the load; Infinity where there is none [m]. */
  readonly room: number;
}

/** Everything that a play depends on, as plain numbers in SI. */
export interface PlayPlan {
  readonly gravity: number;
  readonly fadingTime: number;
  readonly tolerance: number;
  /** Whether the claw rides in its dock while it is driven; then no swing starts there. */
  readonly docked: boolean;
  readonly x: DrivenAxis;
  readonly y: DrivenAxis;
  readonly hoist: Profile;
  /** From the pivot to the hook: docked, and let down to the floor [m]. */
  readonly up: number;
  readonly down: number;
  /** From the hook to the centre of mass [m]. */
  readonly belowHook: number;
  /** Wait after the drives, before it is lowered; none where it is not said [s]. */
  readonly dwell?: number;
  /** How far above the floor the claw comes down on the heap, least and most [m]. */
  readonly heap: readonly [number, number];
  /** Standard deviation of the lift-off offset along each axis [m]. */
  readonly scatter: number;
  /** How far out of plumb the dock still catches the hook [m], and how far it may lean [rad]; Infinity where it does not matter. */
  readonly reach: number;
  readonly lean: number;
  readonly player: Player;
}

/** What happened in one play. */
export interface Played {
  readonly missed: boolean;
  /** Of the hook when it arrived at the dock [m], and the lean then [rad]; Infinity when the line went slack or it was flung. */
  readonly offset: number;
  readonly lean: number;
  /** Largest angle while it was driven [rad]; 0 when it was docked. */
  readonly driven: number;
  /** How far from plumb the claw came down [m]. */
  readonly landed: number;
  readonly touched: boolean;
  /** The line went slack, or the load was flung up to the horizontal. */
  readonly slack: boolean;
  /** Time that was simulated [s]. */
  readonly time: number;
}

/** Two independent normal numbers. */
const normals = (random: () => number): readonly [number, number] => {
  const far = Math.sqrt(-2 * Math.log(1 - random()));
  const turn = 2 * Math.PI * random();
  return [far * Math.cos(turn), far * Math.sin(turn)];
};

const between = ([low, high]: readonly [number, number], random: () => number): number => low + (high - low) * random();

/** Writes a hand’s drives, from the middle of the field; a drive that would pass an end goes the other way, or not at all. */
export const drives = (
  { x, y, player }: Pick<PlayPlan, 'x' | 'y' | 'player'>,
  way: Track,
  random: () => number,
): Track => {
  const count = Math.floor(between([player.drives[0], player.drives[1] + 1], random));
  let alongX = random() < 0.5;
  for (let i = 0; i < count; i++) {
    const axis = alongX ? x : y;
    const at = alongX ? way.x : way.y;
    const hold = between(player.hold, random);
    const wish = random() < 0.5 ? -1 : 1;
    const far = axis.profile.speed * hold;
    const turned = Math.abs(at + wish * far) > axis.travel / 2 ? -wish : wish;
    if (Math.abs(at + turned * far) <= axis.travel / 2) way.jog(alongX ? 'x' : 'y', turned, hold, axis.profile);
    way.wait(between(player.pause, random));
    alongX = !alongX;
  }
  return way;
};

/** Plays as often as it is asked, in room that it takes once. */
export const playsOf = (plan: PlayPlan): ((random: () => number) => Played) => {
  const { gravity, fadingTime, tolerance, x, y, up, down, belowHook } = plan;
  const whole = down + belowHook;
  const short = up + belowHook;
  const common = { gravity, fadingTime, tolerance, belowHook };
  const driving: HangingLoad = hangingLoad({
    ...common,
    walls: {
      xLow: -x.travel / 2 - x.room,
      xHigh: x.travel / 2 + x.room,
      yLow: -y.travel / 2 - y.room,
      yHigh: y.travel / 2 + y.room,
    },
  });
  const rising: HangingLoad = hangingLoad({ ...common, dockDepth: up });
  const way = new Track(short);
  const hoist = new Track(whole);

  return (random) => {
    const landing = whole - between(plan.heap, random);
    let [driven, landed, touched, slack, time] = [0, 0, false, false, 0];
    const [offX, offY] = normals(random);
    let [fromX, fromY] = [plan.scatter * offX, plan.scatter * offY];
    if (!plan.docked) {
      drives(plan, way.clear(short), random)
        .wait(plan.dwell ?? 0)
        .travel('line', landing - short, plan.hoist);
      driving.hang(way);
      const ended = driving.run(way);
      slack = ended === 'slack' || ended === 'over';
      driven = driving.seen.angle;
      touched = !Number.isNaN(driving.seen.touchedAt);
      landed = driving.sideways();
      time += driving.time();
      // It leaves the heap where it came down, and the pivot has not moved.
      fromX += landing * driving.state[0]!;
      fromY += landing * driving.state[1]!;
    }
    // Farther out than the line is long the claw would have been dragged along before it hung.
    const most = 0.5 * landing;
    const shrink = Math.min(1, most / Math.hypot(fromX, fromY));
    hoist.clear(landing).travel('line', short - landing, plan.hoist);
    rising.hang(hoist, shrink * fromX, shrink * fromY);
    const ending = rising.run(hoist);
    slack ||= ending === 'slack' || ending === 'over';
    time += rising.time();
    // Nothing of this holds for a line that has been slack: it is counted as lost, not guessed at.
    const lean = slack ? Infinity : rising.angle();
    const offset = slack ? Infinity : (rising.line() - belowHook) * Math.sin(lean);
    const missed = slack || !(offset <= plan.reach) || !(lean <= plan.lean);
    return { missed, offset, lean, driven, landed, touched, slack, time };
  };
};

/** Counts of many plays, and what was measured in each. */
export interface Tally {
  readonly plays: number;
  readonly misses: number;
  readonly touches: number;
  readonly slacks: number;
  /** Offset of the hook at the dock, play by play [m]. */
  readonly offsets: readonly number[];
  readonly leans: readonly number[];
  /** Largest angle while driven, over all plays [rad]. */
  readonly driven: number;
}

/** Plays `count` times. */
export const tallyOf = (plan: PlayPlan, count: number, random: () => number): Tally => {
  const play = playsOf(plan);
  const offsets: number[] = [];
  const leans: number[] = [];
  let [misses, touches, slacks, driven] = [0, 0, 0, 0];
  for (let i = 0; i < count; i++) {
    const played = play(random);
    offsets.push(played.offset);
    leans.push(played.lean);
    if (played.missed) misses++;
    if (played.touched) touches++;
    if (played.slack) slacks++;
    if (played.driven > driven) driven = played.driven;
  }
  return { plays: count, misses, touches, slacks, offsets, leans, driven };
};

/** Several tallies as one, in their order. */
export const gathered = (tallies: readonly Tally[]): Tally => ({
  plays: tallies.reduce((sum, { plays }) => sum + plays, 0),
  misses: tallies.reduce((sum, { misses }) => sum + misses, 0),
  touches: tallies.reduce((sum, { touches }) => sum + touches, 0),
  slacks: tallies.reduce((sum, { slacks }) => sum + slacks, 0),
  offsets: tallies.flatMap(({ offsets }) => offsets),
  leans: tallies.flatMap(({ leans }) => leans),
  driven: Math.max(0, ...tallies.map(({ driven }) => driven)),
});
