/** Each branch by the full rule: load, fuse, wire, fault and supply must suit each other; and the voltage must arrive. */
import { behind, voltsAt } from '../calc/layout.ts';
import { need, type Subject } from '../../../contract/index.ts';
import { atLeast, atMost, constant, greatest, least, mustBe, NotStated, type Value } from '../../../kernel/index.ts';
import { modesOf, ofSupply, railsOf, supplyOf, type SupplyContext } from '../calc/book.ts';
import { branchRail, dropIn, fuseEntry, loopOf, railsBehind, wireLetsThrough } from '../calc/branch-facts.ts';
import { allowedDrop, mostPower, voltageLeft } from '../calc/drop.ts';
import { currentShare } from '../calc/loads.ts';
import {
  faultCurrent,
  fuseCapacity,
  fuselessCurrent,
  gateLetThrough,
  lingeringCurrent,
  sureOpening,
} from '../calc/fuse.ts';
import { bearableOverload } from '../calc/wire.ts';
import { capacitorsBehind, inrushLoop } from '../calc/inrush-facts.ts';
import { capacitanceTogether, inrushLetThrough, inrushPeak } from '../calc/start.ts';
import { fuseKinds } from '../data/fuses.ts';
import { branchCurrent, branchDrop, insideAir, wireBears } from '../facts.ts';
import {
  anotherSupply,
  each,
  experience,
  membersLess,
  nameIn,
  otherRatings,
  thickerWire,
  type SupplyCheck,
} from './common.ts';

const FIVE_PERCENT = constant(0.05, 'ratio', 'share of the voltage that may be lost on the way', {
  id: 'voltage-drop-limits',
});
const WHOLE = constant(1, 'ratio', 'all of the limit');

/** Fuses with something behind them. */
const fuses: SupplyCheck['subjects'] = (book) =>
  each('fuses')(book).filter((subject) => {
    const fuse = nameIn(subject);
    const names = [book.drivers, book.loads, book.supplies].flatMap((table) => Object.values(table ?? {}));
    return names.some((one) => one.fuse === fuse);
  });

const ratingOf = (context: SupplyContext, fuse: string): Value => need(fuseEntry(context, fuse), 'rating').rating;

const gatesOf = (context: SupplyContext, fuse: string) => fuseKinds[need(fuseEntry(context, fuse), 'kind').kind].gates;

/** Most current into a short circuit at the end of the wire. */
const faultOf = (context: SupplyContext, fuse: string): Value => {
  const rail = branchRail(context, fuse);
  return faultCurrent.work({
    supply: ofSupply(context.book, supplyOf(context.book, rail), 'short-circuit-current'),
    rail: voltsAt(context, rail),
    loop: loopOf(context, fuse),
  });
};

export const voltageArrives: SupplyCheck = {
  code: 'SUPPLY-100',
  asks: 'Does enough of the voltage arrive behind each fuse?',
  subjects: (book) => fuses(book).filter((subject) => book.fuses?.[nameIn(subject)]?.cable !== undefined),
  run: (context, subject) => {
    const fuse = nameIn(subject);
    const rail = voltsAt(context, branchRail(context, fuse));
    return atMost(context.get(branchDrop, fuse), allowedDrop.work({ rail, share: FIVE_PERCENT }), {
      says: ({ demand, limit }) => `${fuse} and the wire behind it lose ${demand}; 5 % of the rail is ${limit}.`,
      beside: () => ({ 'most power that the wire can bring': mostPower.work({ rail, feed: loopOf(context, fuse) }) }),
      levers: () => [...thickerWire(context.book, fuse), ...membersLess(behind(context, fuse))],
    });
  },
};

/** Rail, fuse and least voltage of a load or driver behind a fuse, as far as they are stated. */
const wantsVolts = (book: SupplyContext['book'], { at, designations: [name = ''] }: Subject) => {
  if (at.startsWith('loads.')) {
    const load = book.loads?.[name];
    return { fuse: load?.fuse, rail: load?.rail, least: load?.['least-volts'] };
  }
  const driver = book.drivers?.[name];
  const part = driver?.part === undefined ? undefined : book.parts?.[driver.part];
  return { fuse: driver?.fuse, rail: driver?.rail, least: part?.['least-volts'] };
};

export const loadHasVolts: SupplyCheck = {
  code: 'SUPPLY-105',
  asks: 'Does each load and driver keep its least voltage at the moment in which everything starts and stalls?',
  subjects: (book) =>
    [...each('loads')(book), ...each('drivers')(book)].filter((subject) => {
      const { fuse, least: volts } = wantsVolts(book, subject);
      return fuse !== undefined && volts !== undefined;
    }),
  run: (context, subject) => {
    const { fuse, rail, least: volts } = wantsVolts(context.book, subject);
    if (fuse === undefined || volts === undefined) return null;
    if (rail === undefined) throw new NotStated([`${subject.at}.rail`]);
    const drop = greatest(...modesOf(context.book).map((mode) => dropIn(context, fuse, mode, 'peak')));
    return atLeast(voltageLeft.work({ rail: voltsAt(context, rail), drop }), volts, {
      says: ({ demand, limit }) =>
        `${nameIn(subject)} is left with ${demand} behind ${fuse} when everything starts and stalls at once; it needs ${limit}.`,
      levers: () => [
        ...otherRatings(context.book, fuse, 'higher'),
        ...thickerWire(context.book, fuse),
        ...membersLess(behind(context, fuse)),
      ],
    });
  },
};

/** What hangs on a rail without a fuse of its own. */
const bare = (book: SupplyContext['book'], rail: string): readonly string[] => [
  ...Object.entries(book.drivers ?? {}).flatMap(([name, one]) => (one.rail === rail && !one.fuse ? [name] : [])),
  ...Object.entries(book.loads ?? {}).flatMap(([name, one]) => (one.rail === rail && !one.fuse ? [name] : [])),
  ...Object.entries(book.supplies ?? {}).flatMap(([name, one]) => (one.from === rail && !one.fuse ? [name] : [])),
];

export const needsFuse: SupplyCheck = {
  code: 'SUPPLY-110',
  asks: 'Is there a fuse before everything that hangs on a rail, or does its supply give too little to set a wire alight?',
  subjects: (book) =>
    railsOf(book)
      .filter(([, rail]) => bare(book, rail).length > 0)
      .map(([supply, rail]) => ({ designations: [rail], at: `supplies.${supply}.rails.${rail}` })),
  run: (context, subject) => {
    const rail = nameIn(subject);
    const { book } = context;
    const names = bare(book, rail).join(', ');
    const gives = ofSupply(book, supplyOf(book, rail), 'overload-current');
    const bears = fuselessCurrent.work({ rail: voltsAt(context, rail) });
    // A book that knows no fuse at all is young, and has not left any out.
    if (book.fuses === undefined && !(gives.number <= bears.number)) throw new NotStated(['fuses']);
    return atMost(gives, bears, {
      says: ({ demand, limit, verdict }) =>
        `Without a fuse on rail ${rail}: ${names}. Its supply gives up to ${demand} into a fault; up to ${limit} a wire is safe from fire without one.${verdict === 'holds' ? '' : ' Give each a fuse that suits its wire.'}`,
      levers: () => [anotherSupply(book, rail)],
    });
  },
};

export const fuseBears: SupplyCheck = {
  code: 'SUPPLY-120',
  asks: 'Does each fuse carry its load for good, as warm as it sits (I_B ≤ I_n)?',
  subjects: fuses,
  run: (context, subject) => {
    const fuse = nameIn(subject);
    const carries = fuseCapacity.work({
      rating: ratingOf(context, fuse),
      temperature: context.get(insideAir, 'site'),
      derating: need(fuseEntry(context, fuse), 'derating').derating,
    });
    return atMost(context.get(branchCurrent, fuse), carries, {
      says: ({ demand, limit }) => `${fuse} carries ${demand}; in the air of the cabinet it bears ${limit} for good.`,
      advice: {
        share: 0.75,
        because: 'a fuse that carries more grows old and opens without a fault',
        source: { id: 'fuse-derating' },
      },
      levers: () => [...otherRatings(context.book, fuse, 'higher'), ...membersLess(behind(context, fuse))],
    });
  },
};

export const oneRail: SupplyCheck = {
  code: 'SUPPLY-125',
  asks: 'Is everything behind a fuse on the same rail?',
  subjects: fuses,
  run: (context, subject) => {
    const fuse = nameIn(subject);
    const rails = railsBehind(context, fuse);
    return mustBe(rails.length <= 1, {
      says: () =>
        rails.length <= 1
          ? `Everything behind ${fuse} is on rail ${rails[0] ?? 'none'}.`
          : `${fuse} feeds things on rails ${rails.join(' and ')}: a fuse stands in one rail.`,
    });
  },
};

export const wireBearsFuse: SupplyCheck = {
  code: 'SUPPLY-130',
  asks: 'Does the wire bear for good what its fuse lets through for good (I_n ≤ I_z)?',
  subjects: fuses,
  run: (context, subject) => {
    const fuse = nameIn(subject);
    return atMost(ratingOf(context, fuse), context.get(wireBears, fuse), {
      says: ({ demand, limit }) => `${fuse} is ${demand}; the wire behind it bears ${limit} for good as it is laid.`,
      levers: () => [...otherRatings(context.book, fuse, 'lower'), ...thickerWire(context.book, fuse)],
    });
  },
};

export const overloadEnds: SupplyCheck = {
  code: 'SUPPLY-140',
  asks: 'Does the fuse end an overload before the wire suffers (I_2 ≤ 1.45·I_z)?',
  subjects: fuses,
  run: (context, subject) => {
    const fuse = nameIn(subject);
    const opens = sureOpening.work({
      rating: ratingOf(context, fuse),
      factor: need(fuseEntry(context, fuse), 'sure-opening')['sure-opening'],
    });
    return atMost(opens, bearableOverload.work({ capacity: context.get(wireBears, fuse) }), {
      says: ({ demand, limit }) =>
        `${fuse} is sure to open only from ${demand} on, and not at once; as an overload the wire behind it bears ${limit}.`,
      levers: () => [...otherRatings(context.book, fuse, 'lower'), ...thickerWire(context.book, fuse)],
    });
  },
};

export const wireBearsFault: SupplyCheck = {
  code: 'SUPPLY-150',
  asks: 'Does the wire bear what the fuse lets through in a short circuit?',
  subjects: fuses,
  run: (context, subject) => {
    const fuse = nameIn(subject);
    const fault = faultOf(context, fuse);
    const rating = ratingOf(context, fuse);
    const through = gatesOf(context, fuse).map(({ multiple, time }) =>
      gateLetThrough.work({ fault, rating, multiple, time }),
    );
    return atMost(greatest(...through), wireLetsThrough(context, fuse), {
      says: ({ demand, limit }) =>
        `In the first seconds of a short circuit ${demand} at most get through ${fuse}; the wire behind it bears ${limit}.`,
      levers: () => [...otherRatings(context.book, fuse, 'lower'), ...thickerWire(context.book, fuse)],
    });
  },
};

export const fuseBearsInrush: SupplyCheck = {
  code: 'SUPPLY-160',
  asks: 'Does the fuse bear the charging of the capacitors behind it, every time it is switched on?',
  subjects: fuses,
  run: (context, subject) => {
    const fuse = nameIn(subject);
    const capacitors = capacitorsBehind(context, fuse);
    if (capacitors.length === 0) return null;
    const rail = voltsAt(context, branchRail(context, fuse));
    const loop = inrushLoop(context, fuse);
    const charging = inrushLetThrough.work({
      capacitance: capacitanceTogether.work({ parts: capacitors }),
      rail,
      loop,
    });
    return atMost(charging, need(fuseEntry(context, fuse), 'melting').melting, {
      says: ({ demand, limit }) => `Each switching on sends ${demand} through ${fuse}; ${limit} melts it.`,
      beside: { 'current at the moment of switching': inrushPeak.work({ rail, loop }) },
      advice: experience(0.3, 'a fuse that is warmed near its melting thousands of times opens one day'),
      levers: () => [
        {
          turn: `fuses.${fuse}.contact-resistance`,
          toward: 'higher',
          most: 5,
          means: `a thermistor or a soft start before the capacitors behind ${fuse}`,
        },
        ...otherRatings(context.book, fuse, 'higher'),
      ],
    });
  },
};

export const supplyClears: SupplyCheck = {
  code: 'SUPPLY-170',
  asks: 'Does the supply give what opens the fuse in seconds, or does the wire bear for good whatever can flow on?',
  subjects: fuses,
  run: (context, subject) => {
    const fuse = nameIn(subject);
    const { book } = context;
    const slowest = gatesOf(context, fuse)[0];
    if (slowest === undefined) return null;
    const opens = sureOpening.work({
      rating: ratingOf(context, fuse),
      factor: constant(slowest.multiple, 'ratio', 'multiple of the rating that opens it in seconds'),
    });
    const supply = supplyOf(book, branchRail(context, fuse));
    const byFuse = currentShare.work({ demand: opens, limit: faultOf(context, fuse) });
    const byWire = currentShare.work({
      demand: lingeringCurrent.work({
        supply: ofSupply(book, supply, 'overload-current'),
        rating: ratingOf(context, fuse),
        multiple: constant(slowest.multiple, 'ratio', 'multiple of the rating that opens it in seconds'),
      }),
      limit: context.get(wireBears, fuse),
    });
    const fuseProtects = byFuse.number <= byWire.number;
    return atMost(least(byFuse, byWire), WHOLE, {
      says: ({ percent }) =>
        fuseProtects
          ? `In a short circuit ${supply} gives enough to open ${fuse} in seconds: ${percent} of it is needed.`
          : `${supply} may not give what opens ${fuse} in seconds; a fault that goes on brings the wire to ${percent} of what it bears for good.`,
      levers: () => [
        ...otherRatings(book, fuse, 'lower'),
        ...thickerWire(book, fuse),
        { substitute: `supplies.${supply}.part`, kind: 'supply', means: `another supply for ${supply}` },
      ],
    });
  },
};
