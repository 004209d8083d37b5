/** What the figures of the Supply sheet are drawn from. */
import { need } from '../../../contract/index.ts';
import { constant, NotStated, type Value } from '../../../kernel/index.ts';
import { limitOf, modesOf, railsOf } from '../calc/book.ts';
import { energyOver, energyPrice } from '../calc/energy.ts';
import { currentShare } from '../calc/loads.ts';
import { openPower } from '../calc/rail-facts.ts';
import { hottestRegime, stepperOf, warmingOf } from '../calc/warm-facts.ts';
import { caseRiseAt, windingRiseAt } from '../calc/warming-in-time.ts';
import { coefficientAt, temperatureFrom } from '../calc/warming.ts';
import { classLimits, mountLimits, touchLimit } from '../data/insulation.ts';
import {
  caseTemperature,
  inMode,
  insideAir,
  railCurrent,
  standingByPower,
  weekEnergy,
  windingTemperature,
} from '../facts.ts';
import type { RailsDrawn } from '../figures/rails.ts';
import type { WarmingDrawn } from '../figures/warming.ts';
import type { WeekDrawn } from '../figures/week.ts';
import { scaleOf, type Sheet } from './words.ts';

const HOUR = constant(3600, 'time', 'an hour');
const PERCENT = 100;

export const railsDrawn = (sheet: Sheet): RailsDrawn => {
  const { book } = sheet;
  const modes = Object.entries(book.modes ?? {});
  if (modes.length === 0) throw new NotStated(['modes']);
  return {
    modes: modes.map(([name, mode]) => ({ name, share: need(mode, 'duty').duty.number * PERCENT })),
    rails: railsOf(book).map(([, rail]) => ({
      name: rail,
      uses: modesOf(book).map(
        (mode) =>
          currentShare.work({ demand: sheet.get(railCurrent, inMode(rail, mode)), limit: limitOf(book, rail) }).number *
          PERCENT,
      ),
    })),
  };
};

/** Shares of the time that is drawn, close together where it warms fast. */
const moments: readonly number[] = Array.from({ length: 41 }, (_, k) => (k / 40) ** 2);
/** After so many of its slower times a motor has settled to the width of a line. */
const SETTLED = 4;

export const warmingDrawn = (sheet: Sheet, motor: string): WarmingDrawn => {
  const part = need(
    stepperOf(sheet, motor),
    'winding-heat-capacity',
    'case-heat-capacity',
    'insulation-class',
    'case-to-air',
  );
  const { copper, iron, inside, outside } = warmingOf(sheet, motor, hottestRegime(sheet, motor));
  const air = sheet.get(insideAir, 'site');
  const lumps = {
    cold: copper(air),
    iron: iron(),
    inside,
    outside,
    windingCapacity: part['winding-heat-capacity'],
    caseCapacity: part['case-heat-capacity'],
    coefficient: coefficientAt.work({ ambient: air }),
  };
  const scale = scaleOf(sheet, sheet.get(windingTemperature, motor));
  const span = SETTLED * part['case-heat-capacity'].number * part['case-to-air'].number;
  const curve = (rise: typeof windingRiseAt | typeof caseRiseAt): readonly [number, number][] =>
    moments.map((share) => {
      const seconds = share * span;
      const temperature = temperatureFrom.work({
        ambient: air,
        rise: rise.work({ ...lumps, time: constant(seconds, 'time', 'a moment of the figure') }),
      });
      return [seconds / 60, scale.of(temperature.number)];
    });
  const settled = (run: () => Value): readonly [number, number] => {
    const { low, high } = sheet.ends(run);
    return [scale.of(low), scale.of(high)];
  };
  const { touchable, mount } = sheet.book.motors?.[motor] ?? {};
  const bears = mountLimits[mount ?? ''];
  return {
    motor,
    unit: scale.unit,
    winding: curve(windingRiseAt),
    shell: curve(caseRiseAt),
    settled: {
      winding: settled(() => sheet.get(windingTemperature, motor)),
      shell: settled(() => sheet.get(caseTemperature, motor)),
    },
    limits: [
      {
        label: `winding, class ${part['insulation-class']}`,
        at: scale.of(classLimits[part['insulation-class']].number),
      },
      ...(touchable === true ? [{ label: 'case that is touched', at: scale.of(touchLimit.number) }] : []),
      ...(bears === undefined ? [] : [{ label: `case on ${mount}`, at: scale.of(bears.number) }]),
    ],
  };
};

export const weekDrawn = (sheet: Sheet): WeekDrawn => {
  const { site } = sheet.book;
  if (site?.open === undefined) throw new NotStated(['site.open']);
  const energy = sheet.get(weekEnergy, 'site');
  const scale = scaleOf(sheet, energy);
  const { low, high } = sheet.ends(() => sheet.get(weekEnergy, 'site'));
  const hourOf = (power: Value): number => scale.of(energyOver.work({ power, time: HOUR }).number);
  const price = site['energy-price'];
  return {
    unit: scale.unit,
    open: site.open.number * 24,
    openHour: hourOf(openPower(sheet)),
    closedHour: hourOf(sheet.get(standingByPower, 'site')),
    ends: [scale.of(low), scale.of(high)],
    ...(price === undefined ? {} : { price: sheet.show(energyPrice.work({ energy, price })) }),
  };
};
