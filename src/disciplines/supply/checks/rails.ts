/** Whether each rail and each supply bears what hangs on it. */
import { onRail, voltsAt } from '../calc/layout.ts';
import { atLeast, atMost, mustBe } from '../../../kernel/index.ts';
import { limitOf, minimumOf, ofSupply, supplyOf } from '../calc/book.ts';
import { capacitanceTogether, chargingTime } from '../calc/start.ts';
import { supplyOutput } from '../calc/rail-facts.ts';
import { capacitorsHangingOn, startingOn } from '../calc/regeneration-facts.ts';
import { need } from '../../../contract/index.ts';
import { cabinetWarmth, inMode, insideAir, railCurrent, railLeast, railPeak } from '../facts.ts';
import {
  anotherSupply,
  drivesLess,
  drivesOff,
  during,
  everySupply,
  experience,
  membersLess,
  modeIn,
  nameIn,
  railsInModes,
  suppliesInModes,
  type SupplyCheck,
} from './common.ts';

const cool = experience(0.8, 'a supply that runs near its limit in a warm cabinet ages fast');

export const hasRails: SupplyCheck = {
  code: 'SUPPLY-005',
  asks: 'Has each supply a rail?',
  subjects: everySupply,
  run: (context, subject) => {
    const supply = nameIn(subject);
    const rails = Object.keys(context.book.supplies?.[supply]?.rails ?? {});
    return mustBe(rails.length > 0, {
      says: () =>
        rails.length > 0
          ? `${supply} gives ${rails.join(', ')}.`
          : `${supply} has no rail, so that nothing can be fed from it: write rails: { 24V: { volts: 24 V, limit: 4 A } }.`,
    });
  },
};

export const railBears: SupplyCheck = {
  code: 'SUPPLY-010',
  asks: 'Does each rail bear its load in this mode?',
  subjects: railsInModes,
  run: (context, subject) => {
    const rail = nameIn(subject);
    const mode = modeIn(subject);
    return atMost(context.get(railCurrent, inMode(rail, mode)), limitOf(context.book, rail), {
      says: ({ demand, limit }) =>
        `Rail ${rail} gives up to ${demand}${during(mode)}, ripple apart; it may give ${limit} for good.`,
      advice: cool,
      levers: () => [
        ...drivesOff(context.book, onRail(context, rail).drivers),
        ...membersLess(onRail(context, rail)),
        anotherSupply(context.book, rail),
      ],
    });
  },
};

export const railBearsPeak: SupplyCheck = {
  code: 'SUPPLY-015',
  asks: 'Does each rail bear the moment in which everything starts and stalls at once?',
  subjects: railsInModes,
  run: (context, subject) => {
    const rail = nameIn(subject);
    const mode = modeIn(subject);
    const limit = ofSupply(context.book, supplyOf(context.book, rail), 'overload-current');
    return atMost(context.get(railPeak, inMode(rail, mode)), limit, {
      says: ({ demand, limit: most }) =>
        `When everything starts and stalls at once${during(mode)}, rail ${rail} is asked for ${demand}; its supply limits at ${most}. Asked for more it lets its voltage fall, and everything on the rail restarts.`,
      levers: () => [...membersLess(onRail(context, rail)), anotherSupply(context.book, rail)],
    });
  },
};

export const supplyPower: SupplyCheck = {
  code: 'SUPPLY-020',
  asks: 'Does each supply bear all of its rails together?',
  subjects: suppliesInModes,
  run: (context, subject) => {
    const supply = nameIn(subject);
    const mode = modeIn(subject);
    return atMost(supplyOutput(context, supply, mode), ofSupply(context.book, supply, 'power'), {
      says: ({ demand, limit }) =>
        `${supply} gives ${demand}${during(mode)}; all its rails together may give ${limit}.`,
      advice: cool,
      levers: () => [{ substitute: `supplies.${supply}.part`, kind: 'supply', means: `another supply for ${supply}` }],
    });
  },
};

export const leastLoad: SupplyCheck = {
  code: 'SUPPLY-030',
  asks: 'Is each rail loaded enough for its supply to regulate?',
  subjects: (book) => railsInModes(book).filter((subject) => minimumOf(book, nameIn(subject)) !== undefined),
  run: (context, subject) => {
    const rail = nameIn(subject);
    const mode = modeIn(subject);
    const minimum = minimumOf(context.book, rail);
    if (minimum === undefined) return null;
    return atLeast(context.get(railLeast, inMode(rail, mode)), minimum, {
      says: ({ demand, limit }) =>
        `Rail ${rail} may be loaded with no more than ${demand}${during(mode)}, every drive standing; its supply holds its voltages only from ${limit} on.`,
      levers: () => [
        {
          set: [
            { path: `loads.ballast-${rail}.rail`, text: `"${rail}"` },
            { path: `loads.ballast-${rail}.current`, text: '0.5 A' },
          ],
          means: `a resistor that takes 0.5 A from rail ${rail} for good; it gets hot`,
        },
        anotherSupply(context.book, rail),
      ],
    });
  },
};

export const startUp: SupplyCheck = {
  code: 'SUPPLY-040',
  asks: 'Does each rail come up against the capacitors and loads that hang on it?',
  subjects: (book) =>
    Object.entries(book.supplies ?? {}).flatMap(([supply, { rails }]) =>
      Object.keys(rails ?? {}).map((rail) => ({ designations: [rail], at: `supplies.${supply}.rails.${rail}` })),
    ),
  run: (context, subject) => {
    const rail = nameIn(subject);
    const supply = supplyOf(context.book, rail);
    const capacitors = capacitorsHangingOn(context, rail);
    if (capacitors.length === 0) return null;
    const time = chargingTime.work({
      capacitance: capacitanceTogether.work({ parts: capacitors }),
      rail: voltsAt(context, rail),
      limit: ofSupply(context.book, supply, 'overload-current'),
      load: startingOn(context, rail),
    });
    return atMost(time, ofSupply(context.book, supply, 'start-within'), {
      says: ({ demand, limit }) => `Rail ${rail} comes up in ${demand}; ${supply} gives up after ${limit}.`,
      advice: experience(0.5, 'capacitors have more than is printed on them, and loads start as they like'),
      levers: () => [anotherSupply(context.book, rail)],
    });
  },
};

export const airOfSupply: SupplyCheck = {
  code: 'SUPPLY-090',
  asks: 'Is the air in the cabinet, as warm as it is reckoned to be, cool enough for each supply to give its full power?',
  subjects: everySupply,
  run: (context, subject) => {
    const supply = nameIn(subject);
    const { site, enclosure } = context.book;
    return atMost(context.get(insideAir, 'site'), ofSupply(context.book, supply, 'most-air'), {
      says: ({ demand, limit }) =>
        `The air round ${supply} gets ${demand}; above ${limit} it gives less than its rating.`,
      ...(site?.ambient && enclosure?.rise ? { base: site.ambient, above: enclosure.rise } : {}),
      levers: () => [
        {
          turn: 'enclosure.rise',
          toward: 'lower',
          means: 'keep the cabinet cooler: slots at its foot and under its roof',
        },
        { substitute: `supplies.${supply}.part`, kind: 'supply', means: `another supply for ${supply}` },
      ],
    });
  },
};

export const cabinetWarms: SupplyCheck = {
  code: 'SUPPLY-095',
  asks: 'Does the cabinet, by what is in it and by the sun, stay as cool as it is reckoned to be?',
  subjects: (book) => (book.enclosure?.surface === undefined ? [] : [{ designations: [], at: 'enclosure' }]),
  run: (context) => {
    const { enclosure } = context.book;
    if (enclosure === undefined) return null;
    const drivers = Object.keys(context.book.drivers ?? {});
    return atMost(context.get(cabinetWarmth, 'site'), need(enclosure, 'rise').rise, {
      says: ({ demand, limit }) =>
        `The air in the cabinet gets ${demand} warmer than the room; everything else is reckoned with ${limit}.`,
      levers: () => [
        { turn: 'enclosure.rise', toward: 'higher', means: 'reckon with a warmer cabinet' },
        { turn: 'enclosure.windows', toward: 'lower', means: 'shade the windows' },
        ...drivesOff(context.book, drivers),
        ...drivesLess(drivers),
      ],
    });
  },
};
