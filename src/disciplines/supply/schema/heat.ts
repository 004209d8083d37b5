/** Keys about warmth: motors, drivers, the cabinet, and what standing by may take. */
import * as z from 'zod';
import { nameOf, oneOf, quantity, yesNo, type Shape } from '../../../contract/index.ts';
import type { Measurement } from '../../../kernel/index.ts';

const byTwoTemperatures: Measurement = {
  what: 'thermal resistances of a motor',
  instrument: 'bench supply, multimeter, contact thermometer',
  procedure:
    'Hold both phases at a known current until an hour brings no change. The winding from its ohms, warm over cold; the case by the thermometer. Differences over watts. The motor gets hot: use a stand.',
  error: '±8 %',
  minutes: 100,
};
const byCurve: Measurement = {
  what: 'heat capacities of a motor',
  instrument: 'bench supply, multimeter, clock',
  procedure:
    'From cold at a known current, note the ohms after 1, 5, 15 and 30 minutes; watts over the first rise for each second.',
  error: '±15 %',
  minutes: 45,
};
const byThermometer: Measurement = {
  what: 'warmth of the air in the cabinet',
  instrument: 'two thermometers',
  procedure:
    'One inside at the height of the drivers, one in the room out of the sun; read both after three hours of play.',
  error: '±1 K',
  minutes: 180,
};
const byPointing: Measurement = {
  what: 'thermal resistance of a driver',
  instrument: 'contact thermometer and multimeter',
  procedure: 'Hold a motor at a known current for half an hour; rise of the hottest chip over its watts.',
  error: '±15 %',
  minutes: 40,
};

/** Keys of a motor as it is mounted. */
export const mountedKeys = {
  touchable: yesNo({ means: 'whether a hand can reach its case' }),
  mount: oneOf(['metal', 'wood', 'PLA', 'PETG', 'ABS'], { means: 'what it is bolted to' }),
} satisfies Shape;

/** Keys of a kind of motor. */
export const motorHeatKeys = {
  'insulation-class': oneOf(['A', 'E', 'B', 'F', 'H'], { means: 'class of its insulation' }),
  'winding-to-case': quantity('thermal-resistance', {
    range: 'doubt',
    from: 0,
    means: 'thermal resistance from winding to case',
    example: '0.7..1.6 K/W',
    measure: byTwoTemperatures,
  }),
  'case-to-air': quantity('thermal-resistance', {
    range: 'doubt',
    means: 'thermal resistance from case to air, as mounted',
    example: '2.5..5 K/W',
    measure: byTwoTemperatures,
  }),
  'winding-heat-capacity': quantity('heat-capacity', {
    range: 'doubt',
    means: 'heat capacity of the winding',
    example: '25..55 J/K',
    measure: byCurve,
  }),
  'case-heat-capacity': quantity('heat-capacity', {
    range: 'doubt',
    means: 'heat capacity of iron and case',
    example: '220..330 J/K',
    measure: byCurve,
  }),
} satisfies Shape;

/** What a driver is; stated at it, or at the part that it is. */
export const driverHeatKeys = {
  'own-power': quantity('power', {
    range: 'doubt',
    from: 0,
    means: 'what it takes for itself, switching included',
    example: '0.2..0.6 W',
  }),
  'thermal-resistance': quantity('thermal-resistance', {
    range: 'doubt',
    means: 'thermal resistance from its hottest part to the air',
    example: '8..20 K/W',
    measure: byPointing,
  }),
  'most-temperature': quantity('temperature', {
    range: 'exact',
    from: 273.15,
    means: 'hottest that it may get',
    example: '100 degC',
  }),
  capacitance: quantity('capacitance', {
    range: 'doubt',
    from: 0,
    means: 'capacitors at its input',
    example: '100..470 µF',
  }),
  'ripple-current': quantity('current', {
    range: 'exact',
    means: 'ripple current that its capacitor bears, RMS',
    example: '0.8 A',
  }),
} satisfies Shape;

export const driverEntryKeys = {
  fuse: nameOf('fuses', { means: 'fuse that feeds it', example: 'F1' }),
  ...driverHeatKeys,
} satisfies Shape;

/** The cabinet as far as its warmth goes. */
export const enclosure = z.strictObject({
  surface: quantity('area', {
    range: 'exact',
    means: 'outside of the cabinet that air can reach',
    example: '5.2 m²',
  }).optional(),
  transfer: quantity('heat-transfer', {
    range: 'doubt',
    means: 'heat transfer through its walls',
    example: '2.5..4 W/(m²·K)',
    measure: byThermometer,
  }).optional(),
  windows: quantity('area', {
    range: 'exact',
    from: 0,
    means: 'windows that the sun meets',
    example: '0.8 m²',
  }).optional(),
  transmittance: quantity('ratio', {
    range: 'doubt',
    from: 0,
    to: 1,
    because: 'a pane adds no light',
    means: 'share of the sun that passes the windows',
    example: '0.75..0.85',
  }).optional(),
  sun: quantity('irradiance', {
    range: 'spread',
    from: 0,
    to: 1367,
    because: 'above the air the sun brings 1367 W/m²',
    means: 'sun on the windows',
    example: '0..300 W/m²',
  }).optional(),
  rise: quantity('temperature-difference', {
    range: 'exact',
    from: 0,
    means: 'how much warmer than the room the air in the cabinet is reckoned to be',
    example: '10 K',
    measure: byThermometer,
  }).optional(),
});

/** What the owner allows. */
export const energy = z.strictObject({
  'standing-by': quantity('power', {
    range: 'exact',
    means: 'most that standing by may take from the socket',
    example: '6 W',
  }).optional(),
  week: quantity('money', { range: 'exact', means: 'most that a week of power may cost', example: '2 EUR' }).optional(),
});
