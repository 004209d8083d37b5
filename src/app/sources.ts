/** Where formulas and tables were read. Every file of the folder stands here by name, so that a bundle holds it. */
import atmega2560Datasheet from '../../sources/atmega2560-datasheet.json' with { type: 'json' };
import atmega328pDatasheet from '../../sources/atmega328p-datasheet.json' with { type: 'json' };
import atxDesignGuide from '../../sources/atx-design-guide.json' with { type: 'json' };
import avrWatchdogNotes from '../../sources/avr-watchdog-notes.json' with { type: 'json' };
import axisExperience from '../../sources/axis-experience.json' with { type: 'json' };
import beltExperience from '../../sources/belt-experience.json' with { type: 'json' };
import beltLengthPage from '../../sources/belt-length-page.json' with { type: 'json' };
import boardMemory from '../../sources/board-memory.json' with { type: 'json' };
import boardPins2560 from '../../sources/board-pins-2560.json' with { type: 'json' };
import boardPins328p from '../../sources/board-pins-328p.json' with { type: 'json' };
import cabinetKValues from '../../sources/cabinet-k-values.json' with { type: 'json' };
import cableExperience from '../../sources/cable-experience.json' with { type: 'json' };
import cableKFactors from '../../sources/cable-k-factors.json' with { type: 'json' };
import controllerExperience from '../../sources/controller-experience.json' with { type: 'json' };
import dataCableResistance from '../../sources/data-cable-resistance.json' with { type: 'json' };
import detentShare from '../../sources/detent-share.json' with { type: 'json' };
import driverExperience from '../../sources/driver-experience.json' with { type: 'json' };
import drumCapacityExample from '../../sources/drum-capacity-example.json' with { type: 'json' };
import drumCapacityPage from '../../sources/drum-capacity-page.json' with { type: 'json' };
import drv8825Datasheet from '../../sources/drv8825-datasheet.json' with { type: 'json' };
import ecma287Touch from '../../sources/ecma-287-touch.json' with { type: 'json' };
import efficiencyLabels from '../../sources/efficiency-labels.json' with { type: 'json' };
import esp32BoardPins from '../../sources/esp32-board-pins.json' with { type: 'json' };
import esp32BootMode from '../../sources/esp32-boot-mode.json' with { type: 'json' };
import esp32GpioDocs from '../../sources/esp32-gpio-docs.json' with { type: 'json' };
import filamentHeat from '../../sources/filament-heat.json' with { type: 'json' };
import fleetAngleDistance from '../../sources/fleet-angle-distance.json' with { type: 'json' };
import fleetAngleGuide from '../../sources/fleet-angle-guide.json' with { type: 'json' };
import fleetAngleLimits from '../../sources/fleet-angle-limits.json' with { type: 'json' };
import fuse5x20Fast from '../../sources/fuse-5x20-fast.json' with { type: 'json' };
import fuse5x20TimeLag from '../../sources/fuse-5x20-time-lag.json' with { type: 'json' };
import fuseDerating from '../../sources/fuse-derating.json' with { type: 'json' };
import glazingSolar from '../../sources/glazing-solar.json' with { type: 'json' };
import hoistExperience from '../../sources/hoist-experience.json' with { type: 'json' };
import hoistedPendulum from '../../sources/hoisted-pendulum.json' with { type: 'json' };
import iec60028 from '../../sources/iec-60028.json' with { type: 'json' };
import iec60085 from '../../sources/iec-60085.json' with { type: 'json' };
import iec60204Currents from '../../sources/iec-60204-currents.json' with { type: 'json' };
import iec60204Electronics from '../../sources/iec-60204-electronics.json' with { type: 'json' };
import iec60228Resistance from '../../sources/iec-60228-resistance.json' with { type: 'json' };
import independentComputation from '../../sources/independent-computation.json' with { type: 'json' };
import inputShaping from '../../sources/input-shaping.json' with { type: 'json' };
import landingEnergyPractice from '../../sources/landing-energy-practice.json' with { type: 'json' };
import leadScrewFormulas from '../../sources/lead-screw-formulas.json' with { type: 'json' };
import limitedPowerSource from '../../sources/limited-power-source.json' with { type: 'json' };
import materialsHandlingDrum from '../../sources/materials-handling-drum.json' with { type: 'json' };
import midBandDerivation from '../../sources/mid-band-derivation.json' with { type: 'json' };
import motorExperience from '../../sources/motor-experience.json' with { type: 'json' };
import onePhaseTorque from '../../sources/one-phase-torque.json' with { type: 'json' };
import overcurrentRule from '../../sources/overcurrent-rule.json' with { type: 'json' };
import ownDerivation from '../../sources/own-derivation.json' with { type: 'json' };
import pendulumAnharmonic from '../../sources/pendulum-anharmonic.json' with { type: 'json' };
import pendulumPeriod from '../../sources/pendulum-period.json' with { type: 'json' };
import profileByThirds from '../../sources/profile-by-thirds.json' with { type: 'json' };
import pullOutDerivation from '../../sources/pull-out-derivation.json' with { type: 'json' };
import rackSizingExample from '../../sources/rack-sizing-example.json' with { type: 'json' };
import regenerationNotes from '../../sources/regeneration-notes.json' with { type: 'json' };
import resonanceExample from '../../sources/resonance-example.json' with { type: 'json' };
import resonanceTutorial from '../../sources/resonance-tutorial.json' with { type: 'json' };
import riggingHandbook from '../../sources/rigging-handbook.json' with { type: 'json' };
import ropeBendingTable from '../../sources/rope-bending-table.json' with { type: 'json' };
import rp2040CurrentPinout from '../../sources/rp2040-current-pinout.json' with { type: 'json' };
import rp2040LanguageDocs from '../../sources/rp2040-language-docs.json' with { type: 'json' };
import rp2040PwmSlices from '../../sources/rp2040-pwm-slices.json' with { type: 'json' };
import sCurveRampDistance from '../../sources/s-curve-ramp-distance.json' with { type: 'json' };
import screwBuckling from '../../sources/screw-buckling.json' with { type: 'json' };
import screwCriticalSpeed from '../../sources/screw-critical-speed.json' with { type: 'json' };
import screwStatics from '../../sources/screw-statics.json' with { type: 'json' };
import scxmlAlgorithm from '../../sources/scxml-algorithm.json' with { type: 'json' };
import servoTimersAvr from '../../sources/servo-timers-avr.json' with { type: 'json' };
import smallPitchServiceFactor from '../../sources/small-pitch-service-factor.json' with { type: 'json' };
import stepperDriveManuals from '../../sources/stepper-drive-manuals.json' with { type: 'json' };
import stepperRuleOfThumb from '../../sources/stepper-rule-of-thumb.json' with { type: 'json' };
import supplyExperience from '../../sources/supply-experience.json' with { type: 'json' };
import supplyOverloadKinds from '../../sources/supply-overload-kinds.json' with { type: 'json' };
import swingExperience from '../../sources/swing-experience.json' with { type: 'json' };
import teethInMeshText from '../../sources/teeth-in-mesh-text.json' with { type: 'json' };
import timingBeltTheory from '../../sources/timing-belt-theory.json' with { type: 'json' };
import toneTimerAvr from '../../sources/tone-timer-avr.json' with { type: 'json' };
import twoLumpMotor from '../../sources/two-lump-motor.json' with { type: 'json' };
import voltageDropLimits from '../../sources/voltage-drop-limits.json' with { type: 'json' };
import winchLineWraps from '../../sources/winch-line-wraps.json' with { type: 'json' };

/** One book, standard, paper or piece of experience. */
export interface SourceCard {
  readonly id: string;
  readonly title: string;
  readonly edition?: string;
  /** What was read. */
  readonly read: string;
  /** By which copy. */
  readonly copy?: string;
  /** `published`, `published-secondary`, `memory` or `own-derivation`. */
  readonly status: string;
}

const cards: readonly SourceCard[] = [
  atmega2560Datasheet,
  atmega328pDatasheet,
  atxDesignGuide,
  avrWatchdogNotes,
  axisExperience,
  beltExperience,
  beltLengthPage,
  boardMemory,
  boardPins2560,
  boardPins328p,
  cabinetKValues,
  cableExperience,
  cableKFactors,
  controllerExperience,
  dataCableResistance,
  detentShare,
  driverExperience,
  drumCapacityExample,
  drumCapacityPage,
  drv8825Datasheet,
  ecma287Touch,
  efficiencyLabels,
  esp32BoardPins,
  esp32BootMode,
  esp32GpioDocs,
  filamentHeat,
  fleetAngleDistance,
  fleetAngleGuide,
  fleetAngleLimits,
  fuse5x20Fast,
  fuse5x20TimeLag,
  fuseDerating,
  glazingSolar,
  hoistExperience,
  hoistedPendulum,
  iec60028,
  iec60085,
  iec60204Currents,
  iec60204Electronics,
  iec60228Resistance,
  independentComputation,
  inputShaping,
  landingEnergyPractice,
  leadScrewFormulas,
  limitedPowerSource,
  materialsHandlingDrum,
  midBandDerivation,
  motorExperience,
  onePhaseTorque,
  overcurrentRule,
  ownDerivation,
  pendulumAnharmonic,
  pendulumPeriod,
  profileByThirds,
  pullOutDerivation,
  rackSizingExample,
  regenerationNotes,
  resonanceExample,
  resonanceTutorial,
  riggingHandbook,
  ropeBendingTable,
  rp2040CurrentPinout,
  rp2040LanguageDocs,
  rp2040PwmSlices,
  sCurveRampDistance,
  screwBuckling,
  screwCriticalSpeed,
  screwStatics,
  scxmlAlgorithm,
  servoTimersAvr,
  smallPitchServiceFactor,
  stepperDriveManuals,
  stepperRuleOfThumb,
  supplyExperience,
  supplyOverloadKinds,
  swingExperience,
  teethInMeshText,
  timingBeltTheory,
  toneTimerAvr,
  twoLumpMotor,
  voltageDropLimits,
  winchLineWraps,
];

/** Sources by their id. */
export const sources: ReadonlyMap<string, SourceCard> = new Map(cards.map((card) => [card.id, card]));
