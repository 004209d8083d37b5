/** The tables of the Motion sheet. */
import { type Block, type Cell, left, need, number, table } from '../../../contract/index.ts';
import type { Value } from '../../../kernel/index.ts';
import { axisOf, beltOf, massOf, pretensionOf, softestDrive, stopOf } from '../calc/axis-book.ts';
import { greatestForce } from '../calc/axis-facts.ts';
import { inertiaRatio } from '../calc/axis-load.ts';
import { springFrequency } from '../calc/belt-stretch.ts';
import { spanTone } from '../calc/belt-tension.ts';
import { referenceVoltage } from '../calc/drive.ts';
import { driverEntry, driverPart, motorEntry, motorOf, peakOf, stepperOf } from '../calc/motor-facts.ts';
import { capacity, demand, reflectedInertia, travelProfile } from '../facts.ts';
import { held, NONE, ranged, said, textOf, useOf, type Sheet } from './words.ts';

export const axesOf = ({ book }: Sheet): readonly string[] => Object.keys(book.axes ?? {});
/** Axis and motor, one pair for each motor of each axis. */
export const pairsOf = (sheet: Sheet): readonly (readonly [axis: string, motor: string])[] =>
  Object.entries(sheet.book.axes ?? {}).flatMap(([axis, { motors }]) =>
    (motors ?? []).map((motor) => [axis, motor] as const),
  );

/** What each axis asks of each motor at the worst points of its travel. */
export const demandTable = (sheet: Sheet): readonly Block[] => {
  const rows = pairsOf(sheet).flatMap(([axis, motor]): Cell[][] => {
    const worked = sheet.attempt(() => sheet.get(demand, axis).points.filter((point) => point.motor === motor));
    if (!worked.ok) return [];
    return worked.value.map(({ phase, motorSpeed }, k): Cell[] => {
      const point = (): { torque: Value; motorSpeed: Value } =>
        sheet.get(demand, axis).points.filter((one) => one.motor === motor)[k]!;
      return [
        k === 0 ? axis : '',
        k === 0 ? motor : '',
        phase,
        sheet.show(motorSpeed),
        ranged(sheet, () => point().torque),
        ranged(sheet, () => sheet.get(capacity, motor).at(point().motorSpeed).lower),
        k === 0 ? useOf(sheet.findings, `MOTION-010/${axis}+${motor}`) : '',
      ];
    });
  });
  return table(
    'axis-demands',
    'What the axes ask of their motors',
    [
      left('Axis'),
      left('Motor'),
      left('While'),
      number('Motor speed'),
      number('Asked'),
      number('Given at least'),
      number('Of limit'),
    ],
    rows,
    'Torques at the shaft, over all ranges. The given torque is the lower edge of the band: sinusoidal phases, iron and detent taken off.',
  );
};

/** The speed of an axis: that of the book, unless its travel is too short to come up to it. */
const speedCell = (sheet: Sheet, axis: string): Cell => {
  const asked = () => need(axisOf(sheet, axis), 'speed').speed;
  const reached = () => sheet.get(travelProfile, axis).speed;
  const reaches = sheet.attempt(() => sheet.ends(reached).low >= sheet.ends(asked).high);
  return held(sheet, reaches.ok && reaches.value ? asked : reached);
};

/** How each axis travels and stops. */
export const travelTable = (sheet: Sheet): readonly Block[] =>
  table(
    'travels',
    'How the axes travel',
    [
      left('Axis'),
      left('Drive'),
      number('Travel'),
      number('Speed'),
      number('Acceleration'),
      number('One way'),
      number('Stops within'),
      number('Load over rotor'),
    ],
    axesOf(sheet).map((axis): Cell[] => {
      const { motors, speed } = axisOf(sheet, axis);
      const profile = () => sheet.get(travelProfile, axis);
      const first = motors?.[0];
      return [
        axis,
        said(axisOf(sheet, axis), 'drive'),
        held(sheet, () => need(axisOf(sheet, axis), 'travel').travel),
        speedCell(sheet, axis),
        held(sheet, () => profile().acceleration),
        ranged(sheet, () => profile().totalTime),
        speed === undefined
          ? NONE
          : ranged(sheet, () => stopOf(axisOf(sheet, axis), axisOf(sheet, axis)['approach-speed'] ?? speed)),
        first === undefined
          ? NONE
          : ranged(sheet, () =>
              inertiaRatio.work({ load: sheet.get(reflectedInertia, axis), rotor: motorOf(sheet, first).rotorInertia }),
            ),
      ];
    }),
  );

/** Tensions and tones of the belts. */
export const beltTable = (sheet: Sheet): readonly Block[] => {
  const belts = axesOf(sheet).filter((axis) => axisOf(sheet, axis).drive === 'belt');
  return table(
    'belts',
    'Belts',
    [
      left('Axis'),
      left('Belt'),
      number('Force on the axis'),
      number('At rest'),
      number('Tone of the longest span'),
      number('Stiffness at the far end'),
      number('Swings at'),
    ],
    belts.map((name): Cell[] => {
      const axis = () => axisOf(sheet, name);
      return [
        name,
        said(axis(), 'belt'),
        ranged(sheet, () => greatestForce(sheet, name)),
        held(sheet, () => pretensionOf(sheet, axis())),
        ranged(sheet, () =>
          spanTone.work({
            tension: pretensionOf(sheet, axis()),
            mass: beltOf(sheet, axis())['mass-per-length']!,
            span: axis()['belt-span']!,
          }),
        ),
        ranged(sheet, () => softestDrive(sheet, axis())),
        ranged(sheet, () => springFrequency.work({ stiffness: softestDrive(sheet, axis()), mass: massOf(axis()) })),
      ];
    }),
    'The tone is that of the whole span between motor pulley and idler, plucked in its middle with the carriage at one end.',
  );
};

/** Motors as they are wound and connected. */
export const motorTable = (sheet: Sheet): readonly Block[] =>
  table(
    'motors',
    'Motors, as they are wound and connected',
    [
      left('Motor'),
      left('Part'),
      left('Winding'),
      number('Holding, rated'),
      number('Rated current'),
      number('Resistance'),
      number('Inductance'),
      number('Torque constant'),
      number('Detent'),
      number('Rotor'),
    ],
    Object.keys(sheet.book.motors ?? {}).map((name): Cell[] => {
      const facts = motorOf(sheet, name);
      const entry = motorEntry(sheet, name);
      const leads = sheet.attempt(() => stepperOf(sheet, name).leads);
      return [
        name,
        said(entry, 'part'),
        said(entry, 'winding', { none: leads.ok && leads.value === 4 ? 'coil' : NONE }),
        held(sheet, () => facts.holdingTorque),
        held(sheet, () => facts.ratedCurrent),
        held(sheet, () => facts.phaseResistance),
        held(sheet, () => facts.phaseInductance),
        held(sheet, () => facts.torqueConstant),
        held(sheet, () => facts.detentTorque),
        held(sheet, () => facts.rotorInertia),
      ];
    }),
  );

const motorsOn = ({ book }: Sheet, driver: string): readonly string[] =>
  Object.entries(book.motors ?? {})
    .filter(([, motor]) => motor.driver === driver)
    .map(([name]) => name);

const NOT_STATED = 'not stated';

/** A setting of which only a range is known is none that could be copied to a switch. */
const settingOf = (sheet: Sheet, driver: string, key: 'current' | 'standstill-current', marking = ''): Cell => {
  const of = () => need(driverEntry(sheet, driver), key)[key];
  const exact = sheet.attempt(() => {
    const { low, high } = sheet.ends(of);
    return low === high;
  });
  if (!exact.ok || !exact.value) return NOT_STATED;
  return said(driverEntry(sheet, driver), key, { write: (stated) => `${sheet.show(stated)}${marking}` });
};

const markings = { peak: 'peak', RMS: 'RMS', unknown: '(not known whether peak or RMS)' } as const;

/** Volts to set on the trimmer of a driver that has one; a dash for switches. */
const referenceOf = (sheet: Sheet, name: string): string => {
  const part = driverPart(sheet, name);
  const { 'reference-gain': gain, 'sense-resistor': sense } = part ?? {};
  if (gain === undefined || sense === undefined || part?.['current-steps'] !== undefined) return NONE;
  return ranged(sheet, () => referenceVoltage.work({ peak: peakOf(sheet, name), gain, sense }));
};

/** Switch settings of the drivers, as rows for sheet and file alike. */
const settingRows = (sheet: Sheet): readonly (readonly Cell[])[] =>
  Object.keys(sheet.book.drivers ?? {}).map((name) => {
    const driver = driverEntry(sheet, name);
    const marked = driver.marked ?? driverPart(sheet, name)?.marked ?? 'unknown';
    return [
      name,
      motorsOn(sheet, name).join(', ') || NONE,
      said(driver, 'part'),
      said(driver, 'microsteps', { write: (microsteps) => `1/${microsteps}`, none: NOT_STATED }),
      settingOf(sheet, name, 'current', ` ${markings[marked]}`),
      ranged(sheet, () => peakOf(sheet, name)),
      referenceOf(sheet, name),
      settingOf(sheet, name, 'standstill-current'),
      said(driver, 'standing-by', { none: NOT_STATED }),
    ];
  });

export const settingsOf = (sheet: Sheet): readonly (readonly string[])[] =>
  settingRows(sheet).map((row) => row.map(textOf));

export const settingHeads = [
  'Driver',
  'Motor',
  'Part',
  'Microsteps',
  'Current as marked',
  'Peak',
  'Reference',
  'At standstill',
  'Standing by',
];

export const settingTable = (sheet: Sheet, least: ReadonlyMap<string, string>): readonly Block[] =>
  table(
    'driver-settings',
    'What to set on the drivers',
    [...settingHeads.map((head, k) => (k > 2 && k < 8 ? number(head) : left(head))), number('Least that still holds')],
    settingRows(sheet).map((row) => [...row, least.get(textOf(row[0]!)) ?? NONE]),
    'The least current, as marked, at which the motors still do their work with the margin that is advised: cooler, quieter, less pinch. It belongs to these microsteps and this standstill current. Set it, and try the machine before you leave it. A dash: no current up to the present one is sure to leave that margin. Reference: volts at the trimmer for the peak in this row, by the gain and the sense resistor of the part; read both on yours.',
  );
