/** Line without a load on it. */
import { formula } from '../../../kernel/index.ts';
import { layers, line } from './axis-takes.ts';

/**
 * Slack that finds room before a turn of line stands above the flange.
 *
 * h_free = max(0, h_flange - k·d)
 * s_room = s_lever + 2·π·h_free
 * @param lever s_lever, slack that a lever or spring takes up [m]
 * @param flange h_flange, height of the flange [m]
 * @param layers k, layers on the drum [-]
 * @param line d, diameter of the line [m]
 * @returns s_room [m]
 * @throws OutsideRange when an input lies outside its range
 */
export const slackRoom = formula({
  name: 'slack-room',
  gives: { symbol: 's_room', of: 'length', means: 'slack that finds room' },
  takes: {
    lever: {
      symbol: 's_lever',
      of: 'length',
      from: 0,
      means: 'slack that a lever or spring takes up',
      slope: 'up',
      typical: [0, 0.05],
    },
    flange: {
      symbol: 'h_flange',
      of: 'length',
      above: 0,
      means: 'height of the flange',
      because: 'a drum has flanges',
      slope: 'up',
      typical: [0.004, 0.01],
    },
    layers: { ...layers, slope: 'down', typical: [1, 2] },
    line: { ...line, slope: 'down', typical: [0.001, 0.0015] },
  },
  steps: ({ lever, flange, layers: k, line: d }, step) => {
    const free = step('h_free', 'max(0, h_flange - k*d)', Math.max(0, flange - k * d), 'length');
    return step('s_room', 's_lever + 2*pi*h_free', lever + 2 * Math.PI * free, 'length');
  },
  assumes: ['all of the slack lifts one turn off the drum, evenly round'],
  source: [{ id: 'own-derivation', at: 'a turn that is 2π·h longer stands h higher' }],
  checked: [{ kind: 'law', against: 'nothing but the lever when the drum is full' }],
  accuracy: 'lower bound: slack that spreads over several turns lifts each less',
});

/**
 * Line that runs out without a load when lowering is only counted.
 *
 * s = max(0, H - H_land)
 * @param travel H, way that is counted down [m]
 * @param lands H_land, way after which the load lands [m]
 * @returns s [m]
 * @throws OutsideRange when an input lies outside its range
 */
export const looseLine = formula({
  name: 'loose-line',
  gives: { symbol: 's', of: 'length', means: 'line that runs out after the load has landed' },
  takes: {
    travel: {
      symbol: 'H',
      of: 'length',
      above: 0,
      means: 'way that is counted down',
      because: 'a hoist lowers',
      slope: 'up',
      typical: [0.5, 1],
    },
    lands: {
      symbol: 'H_land',
      of: 'length',
      from: 0,
      means: 'way after which the load lands',
      slope: 'down',
      typical: [0.2, 0.45],
    },
  },
  steps: ({ travel: H, lands }, step) => step('s', 'max(0, H - H_land)', Math.max(0, H - lands), 'length'),
  assumes: ['the count goes on to the end'],
  source: [{ id: 'own-derivation', at: 'definition' }],
  checked: [{ kind: 'law', against: 'nothing when the load lands at the end' }],
  accuracy: 'exact',
});
