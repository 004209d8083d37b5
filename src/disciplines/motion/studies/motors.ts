/** What the studies of motors share. */
import type { Asker } from '../../../contract/index.ts';
import type { Edit, Finding, Verdict } from '../../../kernel/index.ts';

export interface OfMotor {
  readonly axis: string;
  readonly motor: string;
}

/** Codes to which more current is never a harm. */
const PULL = ['MOTION-010', 'MOTION-060'];
/** Codes that say whether a motor does its work; the others follow from the setting itself. */
const WORK = [...PULL, 'MOTION-020', 'MOTION-030'];
/** Codes that say whether winding and driver bear a current. */
const BEAR = ['MOTION-040', 'MOTION-045'];

/** Pairs of axis and motor that a driver moves. */
export const movedBy = (asker: Asker, driver: string): readonly OfMotor[] =>
  asker.findings
    .filter(({ code }) => code === 'MOTION-010')
    .map(({ designations: [axis, motor] }): OfMotor => ({ axis: axis!, motor: motor! }))
    .filter(({ motor }) => asker.textAt(`motors.${motor}.driver`) === driver);

const keysWith = (asker: Asker, codes: readonly string[], of: readonly OfMotor[]): readonly string[] =>
  asker.findings
    .filter(({ code, designations }) => codes.includes(code) && of.some(({ motor }) => designations.at(-1) === motor))
    .map(({ key }) => key);

/** Keys of the findings that say whether these motors do their work. */
export const workKeys = (asker: Asker, of: readonly OfMotor[]): readonly string[] => keysWith(asker, WORK, of);
/** Those of them to which more current is never a harm. */
export const pullKeys = (asker: Asker, of: readonly OfMotor[]): readonly string[] => keysWith(asker, PULL, of);
/** Keys of the findings that say whether motor and driver bear the current; quick to ask. */
export const bearKeys = (asker: Asker, of: OfMotor): readonly string[] => {
  const driver = asker.textAt(`motors.${of.motor}.driver`);
  const gives = asker.findings.find(({ code, designations: [name] }) => code === 'MOTION-050' && name === driver);
  return [...keysWith(asker, BEAR, [of]), ...(gives ? [gives.key] : [])];
};
/** Everything that says whether a motor suits its place. */
export const suitKeys = (asker: Asker, of: OfMotor): readonly string[] => [
  ...workKeys(asker, [of]),
  ...bearKeys(asker, of),
];

const order: readonly Verdict[] = ['holds', 'tight', 'open', 'not-stated', 'fails'];

/** The worst verdict; holds when there is none. */
export const worstVerdict = (findings: readonly Finding[]): Verdict =>
  findings.reduce<Verdict>(
    (worst, { verdict }) => (order.indexOf(verdict) > order.indexOf(worst) ? verdict : worst),
    'holds',
  );

/** Without what cannot be told before the change either: it says nothing for or against the change. */
export const told = (asker: Asker, after: readonly Finding[]): readonly Finding[] =>
  after.filter(
    ({ key, verdict }) =>
      verdict !== 'not-stated' || asker.findings.find((finding) => finding.key === key)?.verdict !== 'not-stated',
  );

/** Use of torque on an axis, as worst over all ranges. */
export const torqueUseOf = (findings: readonly Finding[], { axis, motor }: OfMotor): number | undefined =>
  findings.find(
    ({ code, designations }) => code === 'MOTION-010' && designations[0] === axis && designations[1] === motor,
  )?.use?.worst;

/** The first of a list from which on all are good, where more is never a harm; the length of the list when none is. */
export const firstGood = (length: number, isGood: (index: number) => boolean): number => {
  let [bad, good] = [-1, length];
  while (good - bad > 1) {
    const middle = Math.floor((bad + good) / 2);
    if (isGood(middle)) good = middle;
    else bad = middle;
  }
  return good;
};

/** Positions of the current switch of a driver, least first; nothing for a trimmer. */
export const currentSteps = (asker: Asker, driver: string): readonly number[] => {
  const part = asker.textAt(`drivers.${driver}.part`);
  const steps: number[] = [];
  if (part === null) return steps;
  for (let i = 0; ; i++) {
    const step = asker.rangeAt(`parts.${part}.current-steps.${i}`);
    if (step === null) return steps.sort((a, b) => a - b);
    steps.push(step.low);
  }
};

/** A driver set to a current, in ampere as it is marked. */
export const setTo = (asker: Asker, driver: string, ampere: number): Edit => ({
  path: `drivers.${driver}.current`,
  text: asker.write(`drivers.${driver}.current`, ampere, 3),
});
