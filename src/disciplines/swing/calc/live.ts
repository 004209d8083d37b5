import type { HangingModel, HangingParameters, HangingState } from '../facts.ts';
import { hangingLoad } from './hanging.ts';
import { Track } from './track.ts';

/** Error allowed in a step; a tick is shorter than most steps. */
const TOLERANCE = 1e-6;

/**
 * A hanging load to be driven tick by tick.
 *
 * @param parameters what belongs to the load
 * @returns the load, hanging still; throws RangeError for a tick of no time and for a place that its line does not reach
 */
export const liveLoad = ({ gravity, fadingTime, belowHook, line }: HangingParameters): HangingModel => {
  const load = hangingLoad({ gravity, fadingTime, tolerance: TOLERANCE });
  const start = new Track(line + belowHook);
  let taut = true;
  const state = (): HangingState => {
    const toHook = load.line() - belowHook;
    return { x: toHook * load.state[0]!, y: toHook * load.state[1]!, lean: load.angle(), line: toHook, taut };
  };
  load.hang(start);
  return {
    hang: (line, x, y) => {
      if (!(line + belowHook > Math.hypot(x, y))) throw new RangeError(`no load hangs ${x}, ${y} m out on ${line} m`);
      taut = true;
      load.hang(start.clear(line + belowHook), x, y);
      return state();
    },
    step: (time, pivot, lineSpeed) => {
      if (!(time > 0 && Number.isFinite(time))) throw new RangeError(`a tick of ${time} s is none`);
      // A slack line tells nothing of where the load is, nor does one that was flung up to the horizontal.
      if (taut) taut = load.push(time, pivot.x, pivot.y, (lineSpeed - load.lineSpeed()) / time) === 'end';
      return state();
    },
  };
};
