/** Made-up findings, as many and as long as a test needs. */
import type { Finding, Question, Remedy, Verdict } from '../../src/kernel/index.ts';

export const finding = (verdict: Verdict, number: number, more: Partial<Finding> = {}): Finding => ({
  key: `TRIAL-${String(number).padStart(3, '0')}/x+M${number}`,
  code: `TRIAL-${String(number).padStart(3, '0')}`,
  sheet: 'trial',
  designations: ['x', `M${number}`],
  asks: 'Is it strong enough?',
  verdict,
  sentence: `Motor M${number} must give 0.41 N·m at 300 mm/s, and what is left of it there is 0.22 N·m, on the long cable and a warm winding.`,
  sense: 'at-most',
  ...(verdict === 'not-stated' ? {} : { use: { worst: verdict === 'fails' ? 1.82 : 0.94, best: 0.61, advised: 0.7 } }),
  ...(verdict === 'open' ? { reason: { kind: 'doubt' as const, text: '61 % to 94 % of limit' } } : {}),
  scenario: [],
  searched: false,
  beside: {},
  place: { file: 'book.yaml', line: 40 + number, column: 5 },
  uses: [],
  working: [],
  levers: [],
  ...more,
});

export const many = (verdict: Verdict, count: number, more: Partial<Finding> = {}): readonly Finding[] =>
  Array.from({ length: count }, (_, i) => finding(verdict, i + 1, more));

export const remedy: Remedy = {
  edits: [{ path: 'drivers.D3.rail', before: '12V', after: '24V' }],
  says: 'feed it from the higher rail',
  verdict: 'holds',
  percent: 0.52,
  alsoCures: ['TRIAL-007/x+M7'],
  breaks: [],
};

export const question = (number: number): Question => ({
  path: `parts.scrap-${number}.holding-torque`,
  stands: '0.9..1.3 N·m',
  settles: [
    { key: `TRIAL-00${number}/x+M${number}`, share: 0.4 },
    { key: 'TRIAL-009/x+M9', share: 0.8 },
  ],
  narrows: [],
  measure: {
    what: 'holding torque',
    instrument: 'luggage scale and a pulley',
    procedure:
      'Wind a cord round the pulley, set the current, and pull with the scale until the shaft slips; three times each way.',
    error: '±5 %',
    minutes: 15,
  },
  place: { file: 'book.yaml', line: 88, column: 7 },
});
