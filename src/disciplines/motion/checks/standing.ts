import { atLeast, atMost, constant, type Advice, type Edit, type Lever } from '../../../kernel/index.ts';
import { need } from '../../../contract/index.ts';
import { isRaising } from '../calc/axis-book.ts';
import { driveOf, driverEntry, driverNameOf, loopOf, motorEntry, motorOf } from '../calc/motor-facts.ts';
import { copperHeat, keptCurrent, standstillCurrent, standstillTorque } from '../calc/standstill.ts';
import { staticTorque } from '../facts.ts';
import { axisName, motorName, motorsOfAxesThat } from './axes.ts';
import { everyMotor, onlyName, type MotionContext, type MotorCheck } from './motors.ts';

const half: Advice = {
  share: 0.7,
  because: 'a jolt adds to what hangs on it, and a motor that slipped does not know',
  source: { id: 'motor-experience' },
};
const unattended: Advice = {
  share: 0.5,
  because: 'warm motors age what they are bolted to',
  source: { id: 'motor-experience' },
};
/** Heat of a motor that nobody needs, day and night. */
const IDLE = constant(2, 'power', 'heat of a motor that stands by for weeks', { id: 'motor-experience' });
const NOTHING = constant(0, 'power', 'the drive is off');
const BOTH = constant(2, 'count', 'full and half steps leave both phases at the peak');

const shareAtRest = (context: MotionContext, name: string) =>
  need(driverEntry(context, driverNameOf(context, name)), 'standstill-current')['standstill-current'];

export const holding: MotorCheck = {
  code: 'MOTION-060',
  asks: 'Does the motor hold what hangs on it at standstill, at the current that is left?',
  subjects: motorsOfAxesThat(isRaising),
  run: (context, subject) => {
    const axis = axisName(subject);
    const name = motorName(subject);
    const { torqueConstant, detentTorque } = motorOf(context, name);
    const { peakCurrent: peak, railVoltage: volts } = driveOf(context, name);
    const driver = driverNameOf(context, name);
    const holds = standstillTorque.work({
      constant: torqueConstant,
      atRest: standstillCurrent.work({ peak, share: shareAtRest(context, name), volts, loop: loopOf(context, name) }),
      detent: detentTorque,
    });
    return atLeast(holds, context.get(staticTorque, axis), {
      says: ({ demand, limit }) => `At standstill ${name} holds ${demand}; ${axis} hangs on it with ${limit}.`,
      advice: half,
      levers: () => [
        {
          turn: `drivers.${driver}.standstill-current`,
          toward: 'higher',
          means: `keep more current at rest on ${driver}`,
          most: 1,
        },
        { turn: `drivers.${driver}.current`, toward: 'higher', means: `set ${driver} to more current` },
        { substitute: `motors.${name}.part`, kind: 'stepper', means: `another motor for ${name}` },
      ],
    });
  },
};

/** Ways to less heat that let go of nothing: what hangs on the motor is borne by something else first. */
const idleLevers = ({ book }: MotionContext, name: string, driver: string): readonly Lever[] => {
  const off: Edit = { path: `drivers.${driver}.standing-by`, text: 'unpowered' };
  const hangs = Object.entries(book.axes ?? {}).filter(
    ([, axis]) =>
      isRaising(axis) &&
      axis.drive !== 'screw' &&
      (axis.motors ?? []).includes(name) &&
      axis.unpowered !== 'brake' &&
      (axis['rests-on'] ?? 'its drive') === 'its drive',
  );
  if (hangs.length === 0)
    return [
      { set: [off], means: `switch ${driver} off while nobody plays` },
      {
        turn: `drivers.${driver}.standstill-current`,
        toward: 'lower',
        means: `keep less current at rest on ${driver}`,
      },
    ];
  return [
    {
      set: [...hangs.map(([axis]) => ({ path: `axes.${axis}.rests-on`, text: 'a catch' })), off],
      means: `a catch that bears the load while nobody plays, and ${driver} off`,
    },
    {
      set: [...hangs.map(([axis]) => ({ path: `axes.${axis}.unpowered`, text: 'brake' })), off],
      means: `a brake that holds without power, and ${driver} off`,
    },
  ];
};

export const standingBy: MotorCheck = {
  code: 'MOTION-070',
  asks: 'Does a motor burn power while nobody plays?',
  subjects: everyMotor,
  run: (context, subject) => {
    const name = onlyName(subject);
    const driver = need(motorEntry(context, name), 'driver').driver;
    const isOff = need(driverEntry(context, driver), 'standing-by')['standing-by'] === 'unpowered';
    const heat = isOff
      ? NOTHING
      : copperHeat.work({
          peak: keptCurrent.work({ peak: driveOf(context, name).peakCurrent, share: shareAtRest(context, name) }),
          winding: motorOf(context, name).phaseResistance,
          phases: driveOf(context, name).microsteps.number > 2 ? undefined : BOTH,
        });
    return atMost(heat, IDLE, {
      says: ({ demand, limit }) =>
        isOff
          ? `${driver} is off while nobody plays.`
          : `${name} turns up to ${demand} into heat day and night while nobody plays; ${limit} is plenty.`,
      advice: unattended,
      levers: () => (isOff ? [] : idleLevers(context, name, driver)),
    });
  },
};
