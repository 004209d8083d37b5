/** The tables of the Supply sheet. */
import { behind, stateOf } from '../calc/layout.ts';
import { type Block, type Cell, left, need, number, table } from '../../../contract/index.ts';
import { greatest, type Value } from '../../../kernel/index.ts';
import { limitOf, modesOf, motorsOn, railsOf, voltsOf } from '../calc/book.ts';
import { branchRail } from '../calc/branch-facts.ts';
import { phaseCurrent } from '../calc/drive-facts.ts';
import { energyPrice } from '../calc/energy.ts';
import { sharesTogether } from '../calc/loads.ts';
import { insulationLife } from '../calc/warming.ts';
import { classLimits } from '../data/insulation.ts';
import { driverTemperature, stepperOf } from '../calc/warm-facts.ts';
import {
  branchCurrent,
  branchDrop,
  caseTemperature,
  drivePower,
  inMode,
  mainsPower,
  railCurrent,
  railPeak,
  weekEnergy,
  windingTemperature,
  wireBears,
} from '../facts.ts';
import { found, held, NONE, ranged, said, useCell, type Sheet } from './words.ts';

const at = (name: string, mode: string): string => (mode === '' ? name : `${name}@${mode}`);
const modeHead = (mode: string): string => (mode === '' ? 'everything on' : mode);

/** What the rails are, as the book says it. */
export const supplyTable = (sheet: Sheet): readonly Block[] =>
  table(
    'rails',
    'The rails, as the book says it',
    [left('Supply'), left('Part'), left('Rail'), number('Volts'), number('Bears')],
    railsOf(sheet.book).map(([supply, rail]): Cell[] => [
      supply,
      said(sheet.book.supplies![supply]!, 'part'),
      rail,
      held(sheet, () => voltsOf(sheet.book, rail)),
      held(sheet, () => limitOf(sheet.book, rail)),
    ]),
  );

/** Current of every rail in every mode, with its use. */
export const railTable = (sheet: Sheet): readonly Block[] => {
  const modes = modesOf(sheet.book);
  const rows = railsOf(sheet.book).flatMap(([supply, rail]): Cell[][] => [
    [
      supply,
      rail,
      'on average',
      ...modes.flatMap((mode): Cell[] => [
        ranged(sheet, () => sheet.get(railCurrent, inMode(rail, mode))),
        useCell(sheet, at(`SUPPLY-010/${rail}`, mode)),
      ]),
    ],
    [
      '',
      '',
      'at most',
      ...modes.flatMap((mode): Cell[] => [
        ranged(sheet, () => sheet.get(railPeak, inMode(rail, mode))),
        useCell(sheet, at(`SUPPLY-015/${rail}`, mode)),
      ]),
    ],
  ]);
  return table(
    'rails-by-mode',
    'Every rail in every mode',
    [
      left('Supply'),
      left('Rail'),
      left('Current'),
      ...modes.flatMap((mode) => [number(modeHead(mode)), number('of limit')]),
    ],
    rows,
    'On average: drives at the hardest point of their travel, other loads as stated; of what the rail bears. At most: everything starts and stalls at once; of the current at which the supply limits.',
  );
};

/** What every drive takes and what its supply sees. */
export const driveTable = (sheet: Sheet): readonly Block[] => {
  const modes = modesOf(sheet.book);
  const rows = Object.keys(sheet.book.motors ?? {}).map((motor): Cell[] => [
    motor,
    ...modes.flatMap((mode): Cell[] => {
      const state = sheet.attempt(() => stateOf(sheet, motor, mode));
      return [
        state.ok ? state.value : NONE,
        ranged(sheet, () => phaseCurrent(sheet, motor, mode)),
        ranged(sheet, () => sheet.get(drivePower, inMode(motor, mode))),
      ];
    }),
  ]);
  return table(
    'drives-by-mode',
    'What every drive takes',
    [left('Motor'), ...modes.flatMap((mode) => [left(modeHead(mode)), number('phase, peak'), number('from the rail')])],
    rows,
    'A chopper takes power and not the phase current: the mean current from the rail is the power over its voltage.',
  );
};

const classOf = (sheet: Sheet, motor: string): Value =>
  classLimits[need(stepperOf(sheet, motor), 'insulation-class')['insulation-class']];

/** How warm motors and drivers get. */
export const warmthTable = (sheet: Sheet): readonly Block[] => {
  const motors = Object.keys(sheet.book.motors ?? {});
  const rows = motors.map((motor): Cell[] => {
    const entry = sheet.book.motors![motor]!;
    const { driver } = entry;
    return [
      motor,
      ranged(sheet, () => greatest(...modesOf(sheet.book).map((mode) => phaseCurrent(sheet, motor, mode)))),
      ranged(sheet, () => sheet.get(windingTemperature, motor)),
      held(sheet, () => need(entry, 'winding-temperature')['winding-temperature']),
      useCell(sheet, `SUPPLY-060/${motor}`),
      ranged(sheet, () =>
        insulationLife.work({ limit: classOf(sheet, motor), temperature: sheet.get(windingTemperature, motor) }),
      ),
      ranged(sheet, () => sheet.get(caseTemperature, motor)),
      useCell(sheet, `SUPPLY-070/${motor}`),
      useCell(sheet, `SUPPLY-075/${motor}`),
      said(entry, 'driver'),
      driver === undefined || motorsOn(sheet.book, driver).length === 0
        ? NONE
        : ranged(sheet, () => driverTemperature(sheet, driver).temperature),
      driver === undefined ? NONE : useCell(sheet, `SUPPLY-080/${driver}`),
    ];
  });
  return table(
    'warmth',
    'How warm motors and drivers get',
    [
      left('Motor'),
      number('Phase, peak'),
      number('Winding'),
      number('taken by Motion'),
      number('of its class'),
      number('life over that at the limit'),
      number('Case'),
      number('of touch'),
      number('of mount'),
      left('Driver'),
      number('Hottest part'),
      number('of limit'),
    ],
    rows,
    'Settled, with players queueing or standing by for nights, whichever is hotter: the case at the mean of the modes, the winding in its hottest mode, the driver as if its hottest mode lasted. Shares are of the rise above the room. A dash for the life: more than 60 K below the limit, where the rule of thumb says nothing.',
  );
};

const kindMark = (kind: string | undefined): string => (kind === 'fast' ? 'F ' : kind === 'time-lag' ? 'T ' : '');

/** Every branch by the full rule. */
export const branchTable = (sheet: Sheet): readonly Block[] => {
  const rows = Object.entries(sheet.book.fuses ?? {}).map(([fuse, entry]): Cell[] => {
    const { drivers, loads, converters } = behind(sheet, fuse);
    const rail = sheet.attempt(() => branchRail(sheet, fuse));
    return [
      fuse,
      said(entry, 'rating', { write: (rating) => `${kindMark(entry.kind)}${sheet.show(rating)}` }),
      rail.ok ? rail.value : NONE,
      [...drivers, ...loads, ...converters].join(', ') || NONE,
      ranged(sheet, () => sheet.get(branchCurrent, fuse)),
      useCell(sheet, `SUPPLY-120/${fuse}`),
      ranged(sheet, () => sheet.get(wireBears, fuse)),
      useCell(sheet, `SUPPLY-130/${fuse}`),
      useCell(sheet, `SUPPLY-140/${fuse}`),
      useCell(sheet, `SUPPLY-150/${fuse}`),
      useCell(sheet, `SUPPLY-160/${fuse}`),
      useCell(sheet, `SUPPLY-170/${fuse}`),
      ranged(sheet, () => sheet.get(branchDrop, fuse)),
      useCell(sheet, `SUPPLY-100/${fuse}`),
    ];
  });
  return table(
    'branches',
    'Fuses and what is behind them',
    [
      left('Fuse'),
      left('Rated'),
      left('Rail'),
      left('Feeds'),
      number('I_B'),
      number('of the fuse'),
      number('I_z'),
      number('I_n of I_z'),
      number('I_2 of 1.45 I_z'),
      number('short circuit'),
      number('inrush'),
      number('cleared'),
      number('Drop'),
      number('of 5 %'),
    ],
    rows,
    'I_B load, I_n rating, I_z what the wire bears for good as it is laid, I_2 where the fuse is sure to open. A fuse protects its wire and never a driver.',
  );
};

/** Power from the socket by mode, and a week of it. */
export const energyTable = (sheet: Sheet): readonly Block[] => {
  const { book } = sheet;
  const modes = Object.keys(book.modes ?? {});
  const rows = modes.map((mode): Cell[] => [
    mode,
    held(sheet, () => need(book.modes![mode]!, 'duty').duty),
    ranged(sheet, () => sheet.get(mainsPower, mode)),
  ]);
  const price = book.site?.['energy-price'];
  // What does not add up to the whole of the opening time is scaled to it, and shown.
  const all: Cell[][] =
    modes.length > 1 && modes.every((mode) => book.modes?.[mode]?.duty !== undefined)
      ? [
          [
            'all modes together',
            ranged(sheet, () => sharesTogether.work({ shares: modes.map((mode) => book.modes![mode]!.duty!) })),
            '',
          ],
        ]
      : [];
  const week: Cell[][] =
    found(sheet, 'SUPPLY-185') || (price && book.site?.open)
      ? [
          [
            'a week, day and night',
            ranged(sheet, () => sheet.get(weekEnergy, 'site')),
            price === undefined
              ? NONE
              : ranged(sheet, () => energyPrice.work({ energy: sheet.get(weekEnergy, 'site'), price })),
          ],
        ]
      : [];
  return table(
    'from-the-socket',
    'Power from the socket',
    [left('Mode'), number('Share of opening time'), number('Power')],
    [...rows, ...all, ...week],
    'The last line is energy and its price. While closed, the machine takes what its idle mode takes. Shares that do not add up to all of the time are scaled to it: look for a mode that is missing or counted twice.',
  );
};
