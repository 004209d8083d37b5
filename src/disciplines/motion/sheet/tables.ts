/** The tables of the Motion sheet. */
import type { Block, Cell, Column } from '../../../contract/index.ts';
import type { Value } from '../../../kernel/index.ts';
import { axisOf, beltOf, massOf, pretensionOf, softestDrive, stopOf } from '../calc/axis-book.ts';
import { greatestForce } from '../calc/axis-facts.ts';
import { inertiaRatio } from '../calc/axis-load.ts';
import { springFrequency } from '../calc/belt-stretch.ts';
import { spanTone } from '../calc/belt-tension.ts';
import { referenceVoltage } from '../calc/drive.ts';
import { driverEntry, driverPart, motorEntry, motorOf, peakOf, stepperOf } from '../calc/motor-facts.ts';
import { capacity, demand, reflectedInertia, travelProfile } from '../facts.ts';
import { ranged, useOf, type Sheet } from './words.ts';

const left = (head: string): Column => ({ head, align: 'left' });
const number = (head: string): Column => ({ head, align: 'number' });

const table = (
  name: string,
  caption: string,
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  note?: string,
): readonly Block[] =>
  rows.length === 0 ? [] : [{ kind: 'table', name, caption, columns, rows, ...(note ? { note } : {}) }];

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
      const { drive, travel, motors, speed } = axisOf(sheet, axis);
      const profile = () => sheet.get(travelProfile, axis);
      const first = motors?.[0];
      return [
        axis,
        drive,
        travel ? sheet.show(travel) : '—',
        ranged(sheet, () => profile().speed),
        ranged(sheet, () => profile().acceleration),
        ranged(sheet, () => profile().totalTime),
        speed === undefined
          ? '—'
          : ranged(sheet, () => stopOf(axisOf(sheet, axis), axisOf(sheet, axis)['approach-speed'] ?? speed)),
        first === undefined
          ? '—'
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
        axis().belt ?? '—',
        ranged(sheet, () => greatestForce(sheet, name)),
        ranged(sheet, () => pretensionOf(sheet, axis())),
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
      return [
        name,
        entry.part ?? '—',
        entry.winding ?? (stepperOf(sheet, name).leads === 4 ? 'coil' : '—'),
        ranged(sheet, () => facts.holdingTorque),
        ranged(sheet, () => facts.ratedCurrent),
        ranged(sheet, () => facts.phaseResistance),
        ranged(sheet, () => facts.phaseInductance),
        ranged(sheet, () => facts.torqueConstant),
        ranged(sheet, () => facts.detentTorque),
        ranged(sheet, () => facts.rotorInertia),
      ];
    }),
  );

const motorsOn = ({ book }: Sheet, driver: string): readonly string[] =>
  Object.entries(book.motors ?? {})
    .filter(([, motor]) => motor.driver === driver)
    .map(([name]) => name);

/** A setting of which only a range is known is none that could be copied to a switch. */
const settingText = (sheet: Sheet, driver: string, key: 'current' | 'standstill-current'): string => {
  const of = (): Value | undefined => driverEntry(sheet, driver)[key];
  const stated = of();
  if (stated === undefined) return NOT_STATED;
  const { low, high } = sheet.ends(() => of() ?? stated);
  return low === high ? sheet.show(stated) : NOT_STATED;
};
const NOT_STATED = 'not stated';

const markings = { peak: 'peak', RMS: 'RMS', unknown: '(not known whether peak or RMS)' } as const;

/** Volts to set on the trimmer of a driver that has one; a dash for switches. */
const referenceOf = (sheet: Sheet, name: string): string => {
  const part = driverPart(sheet, name);
  const { 'reference-gain': gain, 'sense-resistor': sense } = part ?? {};
  if (gain === undefined || sense === undefined || part?.['current-steps'] !== undefined) return '—';
  return ranged(sheet, () => referenceVoltage.work({ peak: peakOf(sheet, name), gain, sense }));
};

/** Switch settings of the drivers, as rows for sheet and file alike. */
export const settingsOf = (sheet: Sheet): readonly (readonly string[])[] =>
  Object.keys(sheet.book.drivers ?? {}).map((name) => {
    const driver = driverEntry(sheet, name);
    const marked = driver.marked ?? driverPart(sheet, name)?.marked ?? 'unknown';
    const current = settingText(sheet, name, 'current');
    return [
      name,
      motorsOn(sheet, name).join(', ') || '—',
      driver.part ?? '—',
      driver.microsteps === undefined ? NOT_STATED : `1/${driver.microsteps}`,
      current === NOT_STATED ? current : `${current} ${markings[marked]}`,
      ranged(sheet, () => peakOf(sheet, name)),
      referenceOf(sheet, name),
      settingText(sheet, name, 'standstill-current'),
      driver['standing-by'] ?? NOT_STATED,
    ];
  });

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
    settingsOf(sheet).map((row) => [...row, least.get(row[0]!) ?? '—']),
    'The least current, as marked, at which the motors still do their work with the margin that is advised: cooler, quieter, less pinch. It belongs to these microsteps and this standstill current. Set it, and try the machine before you leave it. A dash: no current up to the present one is sure to leave that margin. Reference: volts at the trimmer for the peak in this row, by the gain and the sense resistor of the part; read both on yours.',
  );
