/** A slice through all motors that would do: two properties vary, the rest stays as it stands. */
import type { Asker, Study } from '../../../contract/index.ts';
import type { Verdict } from '../../../kernel/index.ts';
import { suitKeys, told, torqueUseOf, worstVerdict, type OfMotor } from './motors.ts';

export interface SliceArguments extends OfMotor {
  /** Keys of the motor's part, across and up. */
  readonly across?: string;
  readonly up?: string;
  /** Points each way. */
  readonly points?: number;
}

export interface SlicePoint {
  readonly across: number;
  readonly up: number;
  readonly verdict: Verdict;
  readonly use?: number;
}

export interface Slice {
  readonly of: OfMotor;
  readonly part: string;
  readonly across: string;
  readonly up: string;
  /** Row by row, lowest first. */
  readonly points: readonly SlicePoint[];
  /** What stays as it stands, as key and text. */
  readonly rest: readonly (readonly [key: string, text: string])[];
  readonly isWhole: boolean;
}

/** The slice reaches from a third to three times of what stands. */
const REACH = 3;
const HELD = ['rated-current', 'phase-resistance', 'rotor-inertia', 'holding-torque', 'phase-inductance'];

const spread = (low: number, high: number, points: number): readonly number[] =>
  Array.from({ length: points }, (_, i) => (low / REACH) * ((high * REACH * REACH) / low) ** (i / (points - 1)));

function* run(asker: Asker, args: SliceArguments): Generator<Slice, Slice, void> {
  const { axis, motor, across = 'phase-inductance', up = 'holding-torque', points = 9 } = args;
  const of = { axis, motor };
  const part = asker.textAt(`motors.${motor}.part`) ?? '';
  const at = (key: string): string => `parts.${part}.${key}`;
  const [x, y] = [asker.rangeAt(at(across)), asker.rangeAt(at(up))];
  const rest = HELD.filter((key) => key !== across && key !== up).flatMap((key) => {
    const range = asker.rangeAt(at(key));
    return range ? [[key, range.text] as const] : [];
  });
  const found: SlicePoint[] = [];
  const result = (): Slice => ({
    of,
    part,
    across,
    up,
    points: [...found],
    rest,
    isWhole: found.length === points * points,
  });
  if (!x || !y) return result();
  const keys = suitKeys(asker, of);
  for (const b of spread(y.low, y.high, points))
    for (const a of spread(x.low, x.high, points)) {
      const findings = asker.ask(
        [
          // A part of the catalogue stands in the book only by its name.
          { path: at('kind'), text: 'stepper' },
          { path: at(across), text: asker.write(at(across), a, 4) },
          { path: at(up), text: asker.write(at(up), b, 4) },
        ],
        keys,
      );
      const use = torqueUseOf(findings, of);
      found.push({
        across: a,
        up: b,
        verdict: worstVerdict(told(asker, findings)),
        ...(use === undefined ? {} : { use }),
      });
      yield result();
    }
  return result();
}

export const slice: Study<SliceArguments, Slice> = { name: 'motion.substitute-slice', run };
