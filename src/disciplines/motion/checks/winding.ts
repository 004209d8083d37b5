import { atMost, mustBe, type Advice } from '../../../kernel/index.ts';
import { need } from '../../../contract/index.ts';
import { driveOf, driverNameOf, motorEntry, motorOf, stepperOf } from '../calc/motor-facts.ts';
import { peakLimit } from '../calc/standstill.ts';
import { windingsOf } from '../data/windings.ts';
import { everyMotor, onlyName, type MotorCheck } from './motors.ts';

const oneCoil: Advice = {
  share: Math.SQRT1_2,
  because: 'standing still may leave one phase at the full peak, √2 of what it is rated for',
  source: { id: 'pull-out-derivation', at: 'heat' },
};

export const windingCurrent: MotorCheck = {
  code: 'MOTION-040',
  asks: 'Is the current within what the winding is rated for?',
  subjects: everyMotor,
  run: (context, subject) => {
    const name = onlyName(subject);
    const driver = driverNameOf(context, name);
    const { microsteps } = driveOf(context, name);
    return atMost(
      driveOf(context, name).peakCurrent,
      peakLimit.work({ rated: motorOf(context, name).ratedCurrent, microsteps }),
      {
        says: ({ demand, limit }) =>
          `${driver} gives ${name} up to ${demand} peak; its copper is rated for ${limit} peak in these steps.`,
        advice: oneCoil,
        levers: () => [{ turn: `drivers.${driver}.current`, toward: 'lower', means: `set ${driver} to less current` }],
      },
    );
  },
};

export const windingConnection: MotorCheck = {
  code: 'MOTION-045',
  asks: 'Do the leads of the motor allow the connection that is asked of them?',
  subjects: everyMotor,
  run: (context, subject) => {
    const name = onlyName(subject);
    const { winding } = motorEntry(context, name);
    const { leads } = need(stepperOf(context, name), 'leads');
    const ways = windingsOf(leads);
    const wanted = winding ?? (leads === 4 ? 'coil' : need(motorEntry(context, name), 'winding').winding);
    const holds = ways !== undefined && ways.includes(wanted);
    const offered = ways?.length
      ? `${leads} leads allow ${ways.join(' or ')}`
      : `${leads} leads suit no bridge of two phases`;
    return mustBe(holds, {
      says: () =>
        holds ? `${name} can be connected as ${wanted}.` : `${name} cannot be connected as ${wanted}: ${offered}.`,
      levers: (ways ?? []).map((way) => ({
        set: [{ path: `motors.${name}.winding`, text: way }],
        means: `connect ${name} as ${way}`,
      })),
    });
  },
};
