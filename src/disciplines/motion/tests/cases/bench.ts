/** What makes each question about trials and readings hold, fail and stay open. */
import type { CheckCase } from '../../../../contract/index.ts';
import type { Edit, Verdict } from '../../../../kernel/index.ts';

const at = (path: string, text: string): Edit => ({ path, text });
const of =
  (finding: string) =>
  (verdict: Verdict, because: string, ...edits: readonly Edit[]): CheckCase => ({ finding, verdict, because, edits });

const keeps = of('MOTION-620/x');
const above = of('MOTION-910/stepper-23+winding-resistance');
const below = of('MOTION-911/stepper-23+winding-resistance');

const lost = (text: string): Edit => at('axes.x.loses-place-at', text);
const ohms = (text: string): Edit => at('parts.stepper-23.phase-resistance', text);
const left = (least: string, most: string, index = 0): Edit =>
  at(`bench.${index}`, `{ by: winding-resistance, of: stepper-23, least: ${least}, most: ${most} }`);

export const benchCases: readonly CheckCase[] = [
  keeps('holds', '220 mm/s of 420 mm/s', lost('420..440 mm/s')),
  keeps('tight', '220 mm/s of 250 mm/s: less than a fifth is free', lost('250 mm/s')),
  keeps('fails', '220 mm/s of 200 mm/s', lost('200 mm/s')),
  keeps('open', '220 mm/s of 200 mm/s or of 300 mm/s', lost('200..300 mm/s')),

  above('holds', '1 Ω of 1.1 Ω', left('0.9 ohm', '1.1 ohm')),
  above('fails', '1 Ω of 0.95 Ω', left('0.9 ohm', '0.95 ohm')),
  above('open', '0.9 Ω or 1.1 Ω of 1 Ω', left('0.8 ohm', '1 ohm'), ohms('0.9..1.1 ohm')),
  above(
    'fails',
    'one says at least 1.2 Ω, another at most 0.95 Ω, whatever the book says',
    left('0.9 ohm', '0.95 ohm'),
    left('1.2 ohm', '1.3 ohm', 1),
    ohms('0.5..2 ohm'),
  ),

  below('holds', '1 Ω, of which 0.9 Ω are left', left('0.9 ohm', '1.1 ohm')),
  below('fails', '1 Ω where 1.05 Ω are left', left('1.05 ohm', '1.1 ohm')),
  below('open', '0.9 Ω or 1.1 Ω where 1 Ω is left', left('1 ohm', '1.2 ohm'), ohms('0.9..1.1 ohm')),
];
