import { atMost, type Advice } from '../../../kernel/index.ts';
import { need } from '../../../contract/index.ts';
import { axisOf } from '../calc/axis-book.ts';
import { shaftSpeed } from '../calc/axis-torque.ts';
import { backEmf } from '../calc/back-emf.ts';
import { driverNameOf, motorOf, statedDriverPart } from '../calc/motor-facts.ts';
import { effectiveRadius } from '../facts.ts';
import { axisName, isBelt, motorName, motorsOfAxesThat } from './axes.ts';
import type { MotorCheck } from './motors.ts';

const advice: Advice = {
  share: 0.8,
  because: 'somebody always pushes harder',
  source: { id: 'driver-experience' },
};

export const pushed: MotorCheck = {
  code: 'MOTION-310',
  asks: 'If somebody pushes the carriage by hand, does its driver bear the voltage that the motor makes?',
  subjects: motorsOfAxesThat(isBelt),
  run: (context, subject) => {
    const axis = axisName(subject);
    const name = motorName(subject);
    const seen = axisOf(context, axis);
    // Contacts that short the windings keep the voltage away from the driver.
    if (seen.unpowered === 'windings shorted') return null;
    const push = need(seen, 'pushed-at')['pushed-at'];
    const speed = shaftSpeed.work({ speed: push, radius: context.get(effectiveRadius, axis) });
    const driver = driverNameOf(context, name);
    const limit = need(statedDriverPart(context, driver), 'most-volts')['most-volts'];
    const volts = backEmf.work({ constant: motorOf(context, name).torqueConstant, speed });
    return atMost(volts, limit, {
      says: (shown) =>
        `Pushed by hand, ${name} of ${axis} makes ${shown.demand} in ${driver}, which bears ${shown.limit}.`,
      advice,
      beside: { 'speed of the motor': speed },
      levers: () => [
        {
          set: [{ path: `axes.${axis}.unpowered`, text: 'windings shorted' }],
          means: `short the windings of ${axis} by the normally-closed contacts of the drive relay`,
        },
        { substitute: `drivers.${driver}.part`, kind: 'driver', means: `another driver for ${driver}` },
      ],
    });
  },
};
