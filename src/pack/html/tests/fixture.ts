/** An invented sheet with everything that a sheet can hold. */
import type { SheetDocument } from '../../../contract/document.ts';
import { drawing, plot, rectangle, type Point } from '../../../figures/index.ts';
import { findings, questions } from './fixture-findings.ts';
import type { IndexInput, SheetInput } from '../model.ts';

const speeds = Array.from({ length: 41 }, (_, i) => i * 20);
const fall =
  (torque: number, corner: number) =>
  (n: number): number =>
    torque / Math.sqrt(1 + (n / corner) ** 4);

const band = plot({
  title: 'Demand of M1 on its torque over speed',
  alt: 'The torque M1 must give rises to 66 mN·m at 330 rpm and crosses the lower edge of what it has.',
  x: { label: 'speed', unit: 'rpm', from: 0, to: 800 },
  y: { label: 'torque', unit: 'mN·m', from: 0 },
  layers: [
    { kind: 'region', x: [110, 170], fill: 'tone', label: 'mid-band' },
    {
      kind: 'band',
      x: speeds,
      lower: speeds.map(fall(90, 330)),
      upper: speeds.map(fall(130, 410)),
      fill: 'hatched',
      label: 'has, by its doubt',
    },
    {
      kind: 'line',
      points: speeds.map((n): Point => [n, 0.7 * fall(90, 330)(n)]),
      stroke: 'dashed',
      weight: 'fine',
      label: 'advised',
    },
    {
      kind: 'line',
      points: [
        [0, 62],
        [330, 66],
        [330, 51],
        [0, 49],
      ],
      weight: 'heavy',
      tone: 'accent',
      label: 'one travel of X',
    },
    { kind: 'rule', axis: 'x', at: 330, label: '330 rpm' },
    { kind: 'point', at: [330, 65.6], y: [58, 70], label: '65.6 mN·m' },
  ],
});

const heat = plot({
  title: 'Case of M1 over the current',
  alt: 'The case reaches 65 °C at 1.45 A; 1.2 A is set.',
  x: { label: 'current', unit: 'A' },
  y: { label: 'case', unit: '°C', from: 20 },
  layers: [
    {
      kind: 'line',
      points: Array.from({ length: 21 }, (_, i): Point => [i / 10, 32 + 15.7 * (i / 10) ** 2]),
      label: 'warm room',
    },
    {
      kind: 'line',
      points: Array.from({ length: 21 }, (_, i): Point => [i / 10, 20 + 15.7 * (i / 10) ** 2]),
      stroke: 'dotted',
      label: 'cool room',
    },
    { kind: 'limit', axis: 'y', at: 65, forbidden: 'above', label: 'touch, 65 °C' },
    { kind: 'limit', axis: 'x', at: 0.8, forbidden: 'below', label: 'still holds' },
    {
      kind: 'line',
      points: [
        [0, 25],
        [0.5, 30],
        [1, 41],
        [1.5, 60],
      ],
      shape: 'step',
      stroke: 'chain',
      weight: 'fine',
      tone: 'soft',
      label: 'switch steps',
    },
  ],
});

const turns = Array.from({ length: 7 }, (_, i) => -9 + 3 * i);
const drum = drawing({
  title: 'Drum of the hoist',
  alt: 'A drum of 32 mm between two flanges of 46 mm, 24 mm apart, with seven turns of 1.2 mm braid.',
  x: [-16, 16],
  y: [-25, 25],
  width: 420,
  room: [80, 34, 120, 44],
  shapes: [
    { kind: 'hatch', points: rectangle([-12, -16], [12, 16]) },
    { kind: 'outline', points: rectangle([-12, -16], [12, 16]) },
    { kind: 'outline', points: rectangle([-14, -23], [-12, 23]) },
    { kind: 'outline', points: rectangle([12, -23], [14, 23]) },
    ...turns.flatMap((x): { kind: 'circle'; at: Point; radius: number; weight: 'fine' }[] => [
      { kind: 'circle', at: [x, 17.2], radius: 1.2, weight: 'fine' },
      { kind: 'circle', at: [x, -17.2], radius: 1.2, weight: 'fine' },
    ]),
    { kind: 'centre', from: [-19, 0], to: [19, 0] },
    { kind: 'dimension', from: [-12, -23], to: [12, -23], offset: -22, text: '24' },
    { kind: 'dimension', from: [-12, -16], to: [-12, 16], along: 'y', offset: 34, text: 'Ø32' },
    { kind: 'dimension', from: [-14, -23], to: [-14, 23], along: 'y', offset: 58, text: 'Ø46' },
    { kind: 'dimension', from: [12, 23], to: [14, 23], offset: 12, text: '2' },
    { kind: 'leader', at: [9, 18], elbow: [58, 10], text: 'braid 1.2, 7 turns' },
    { kind: 'arrow', from: [0, 0], to: [0, -12], text: 'T', tone: 'accent' },
  ],
});

export const document: SheetDocument = {
  blocks: [
    {
      kind: 'cautions',
      texts: [
        'A raised load falls when the drives lose power. Lower it before you open the machine.',
        'Motors and drivers stay hot for minutes.',
        'Never unplug a motor from a driver that is live.',
        'Keep hands out while drives are on.',
      ],
    },
    { kind: 'findings' },
    { kind: 'heading', text: 'Torque and heat' },
    {
      kind: 'paragraph',
      text: 'The band is what M1 still has at each speed, between the ends of what is known about it; the heavy line is one travel of X.',
    },
    { kind: 'figure', name: 'torque-over-speed', svg: band, caption: 'Torque of M1 over speed.', alt: 'See title.' },
    {
      kind: 'figure',
      name: 'heat',
      svg: heat,
      caption: 'Case temperature against the current set on the driver.',
      alt: 'See title.',
    },
    { kind: 'figure', name: 'drum', svg: drum, caption: 'Drum of the hoist, dimensions in mm.', alt: 'See title.' },
    { kind: 'heading', text: 'Driver settings' },
    {
      kind: 'table',
      name: 'settings',
      caption: 'Switches on the drivers',
      columns: [
        { head: 'Drive', align: 'left' },
        { head: 'Motor', align: 'left' },
        { head: 'Peak', align: 'number' },
        { head: 'SW1–SW3', align: 'left' },
        { head: 'Steps per turn', align: 'number' },
        { head: 'Torque', align: 'left' },
      ],
      rows: [
        [
          'D1',
          'M1',
          '1.2 A',
          'on on off',
          '1 600',
          {
            text: '',
            use: { worst: 1.04, best: 0.72, advised: 0.7, verdict: 'open' },
            finding: 'MOTION-010 M1 travel',
          },
        ],
        [
          'D2',
          'M2',
          '1.2 A',
          'on on off',
          '1 600',
          { text: '', use: { worst: 0.51, best: 0.51, advised: 0.7, verdict: 'holds' } },
        ],
        [
          'D3',
          'M3',
          '1.2 A',
          'on on off',
          '1 600',
          { text: 'inductance missing', verdict: 'not-stated', path: 'motors.M3.inductance' },
        ],
        [
          'D4',
          'M4',
          '1.8 A',
          'off on off',
          '1 600',
          { text: '', use: { worst: 0.78, best: 0.78, advised: 0.7, verdict: 'tight' }, verdict: 'tight' },
        ],
      ],
      note: 'Set with the power off. The marking on a driver is what its maker calls peak.',
    },
    { kind: 'working' },
  ],
};

export const sheet: SheetInput = {
  sheet: {
    name: 'motion',
    number: 1,
    of: 13,
    title: 'Motion',
    asks: 'Can these motors, on this supply and cable, move these masses this fast without losing steps?',
  },
  book: { title: 'Tidepool', revision: 'B', about: 'An invented prize crane.', file: 'book.yaml' },
  stamp: { revision: 'B', hash: '3f9a02c41be7', factsHash: '77d01c5e9a40' },
  document,
  findings,
  questions,
  sources: {
    'BELT-1': {
      title: 'Timing belts with 2 mm pitch',
      edition: '2nd edition',
      status: 'published',
      where: 'library copy',
    },
    'MECH-2': { title: 'Mechanics for machine builders', status: 'published', where: 'chapters 3 to 5' },
    'STEP-7': {
      title: 'Torque of stepping motors at speed',
      edition: '1998',
      status: 'secondary',
      where: 'quoted in MECH-2',
    },
  },
  revisions: [
    { revision: 'A', text: 'First draft.' },
    { revision: 'B', text: 'Half coil on M3; dock cup of 45 mm.' },
  ],
  siblings: [
    { name: 'index', title: 'Cover', href: 'index.html' },
    { name: 'motion', title: 'Motion', href: 'motion.html' },
    { name: 'swing', title: 'Swing', href: 'swing.html' },
    { name: 'supply', title: 'Supply', href: 'supply.html' },
  ],
};

export const cover: IndexInput = {
  book: sheet.book,
  stamp: sheet.stamp,
  siblings: sheet.siblings,
  questions,
  revisions: sheet.revisions ?? [],
  sheets: [
    { number: 1, title: 'Motion', asks: sheet.sheet.asks, href: 'motion.html', findings },
    {
      number: 2,
      title: 'Swing',
      asks: 'How far does the hanging load swing, and does it still find its dock?',
      href: 'swing.html',
      findings: findings.filter(({ verdict }) => verdict === 'holds' || verdict === 'tight'),
    },
    {
      number: 3,
      title: 'Supply',
      asks: 'Does every rail carry its loads in every mode?',
      href: 'supply.html',
      findings: [],
    },
  ],
  files: [{ name: 'findings.json', href: 'findings.json', means: 'Every finding and fact in SI, for programs.' }],
};
