/** What the checks of motors and drivers share: subjects, ways to more torque. */
import { factToken, provide, type Check, type Context, type Subject } from '../../../contract/index.ts';
import type { Lever } from '../../../kernel/index.ts';
import { driverEntry, motorEntry, stepperOf } from '../calc/motor-facts.ts';
import { windingsOf } from '../data/windings.ts';
import type { MotionBook } from '../schema.ts';

export type MotorCheck = Check<MotionBook>;
export type MotionContext = Context<MotionBook>;

/** One subject for each motor. */
export const everyMotor: MotorCheck['subjects'] = (book) =>
  Object.keys(book.motors ?? {}).map((name): Subject => ({ designations: [name], at: `motors.${name}` }));

/** One subject for each driver. */
export const everyDriver: MotorCheck['subjects'] = (book) =>
  Object.keys(book.drivers ?? {}).map((name): Subject => ({ designations: [name], at: `drivers.${name}` }));

export const onlyName = ({ designations: [name] }: Subject): string => name!;

/** Other rails of the book. */
const railLevers = ({ book }: MotionContext, driver: string, now: string | undefined): Lever[] =>
  Object.values(book.supplies ?? {})
    .flatMap(({ rails }) => Object.keys(rails ?? {}))
    .filter((rail) => rail !== now)
    .map((rail) => ({
      set: [{ path: `drivers.${driver}.rail`, text: `"${rail}"` }],
      means: `feed ${driver} from rail ${rail}`,
    }));

/** Ways to connect the coils that the leads allow, besides the one that is used. */
const windingLevers = (context: MotionContext, name: string): Lever[] => {
  const { winding, part } = motorEntry(context, name);
  const { leads } = part === undefined ? {} : stepperOf(context, name);
  return (windingsOf(leads ?? 0) ?? [])
    .filter((way) => way !== winding && way !== 'coil')
    .map((way) => ({
      set: [{ path: `motors.${name}.winding`, text: way }],
      means: way === 'half' ? `use one half of each coil of ${name}` : `connect the halves of ${name} in ${way}`,
    }));
};

/** By motor: other rails and windings. A fact, so that no scenario gathers them again. */
const motorLevers = factToken<readonly Lever[]>('motion.motor-levers');

export const leverProvider = provide<MotionBook, readonly Lever[]>(motorLevers, (context, name) => {
  const { driver } = motorEntry(context, name);
  return [
    ...(driver === undefined ? [] : railLevers(context, driver, driverEntry(context, driver).rail)),
    ...windingLevers(context, name),
  ];
});

/** Ways to let a motor reach its speed: more voltage, another winding, less speed, another motor. */
export const speedLevers = (context: MotionContext, axis: string, name: string): readonly Lever[] => [
  ...context.get(motorLevers, name),
  { turn: `axes.${axis}.speed`, toward: 'lower', means: `move ${axis} more slowly` },
  { substitute: `motors.${name}.part`, kind: 'stepper', means: `another motor for ${name}` },
];
