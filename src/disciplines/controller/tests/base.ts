import { catalogue } from '../../../app/catalogue.ts';
import { createHouse, type House } from '../../../engine/machine.ts';
import { motion } from '../../motion/index.ts';
import { controller } from '../index.ts';

/** The trades that the controller needs, so that its own tests ask nothing of the others. */
export const ownHouse: House = createHouse({ disciplines: [motion, controller], catalogue });

/** A small machine with two axes and a board, on which everything holds. Exact, so that each case moves one thing. */
export const base = `book: 1
title: Bench
revision: A
site: { plays: 100 /day }
axes:
  x:
    drive: belt
    motors: [M1]
    travel: 560 mm
    speed: 220 mm/s
    acceleration: 700 mm/s²
    approach-speed: 60 mm/s
    overtravel: 12 mm
    stopping: { reaction: 10 ms, acceleration: 1500 mm/s² }
    moving-mass: 2.5 kg
    running-force: 6 N
    belt: B1
    pulley-teeth: 20
    switches: { min: S1, max: S2 }
  z:
    drive: hoist
    motors: [M2]
    travel: 700 mm
    speed: 160 mm/s
    acceleration: 500 mm/s²
    moving-mass: 620 g
    load: 0..140 g
    drum: { diameter: 32 mm, layers: 1 }
    line: { diameter: 1.2 mm }
motors:
  M1: { part: stepper-23, driver: D1, winding-temperature: 60 degC }
  M2: { part: stepper-23, driver: D2, winding-temperature: 60 degC }
drivers:
  D1: { part: chopper, rail: 24V, microsteps: 8, current: 1.2 A, marked: peak, standstill-current: 50 %, at-reset: inactive }
  D2: { part: chopper, rail: 24V, microsteps: 8, current: 1.2 A, marked: peak, standstill-current: 50 %, enabled-by: K1 }
parts:
  stepper-23:
    kind: stepper
    frame: 23
    body: 56 mm
    leads: 4
    step-angle: 1.8°
    holding-torque: 1.1 N·m
    rated-current: 2.8 A
    phase-resistance: 1 ohm
    phase-inductance: 3 mH
    rotor-inertia: 300 g·cm²
    detent-torque: 50 mN·m
    iron-drag: 0.0005 N·m·s/rad
    mass: 700 g
  chopper:
    kind: driver
    most-current: 4 A
    least-volts: 12 V
    most-volts: 40 V
    bridge-resistance: 0.4 ohm
    marked: peak
    input-current: 10 mA
    least-high: 3.5 V
    enable-when: low
  B1: { kind: belt, pitch: 2 mm, width: 6 mm }
supplies:
  G1: { rails: { 24V: { volts: 24 V, limit: 4.2 A } } }
signals:
  S1: { kind: switch, contact: normally-closed, pull: external, pull-resistance: 1 kohm, least-current: 1 mA, bounce: 3 ms }
  S2: { kind: switch, contact: normally-closed, pull: external, bounce: 3 ms }
  S8: { kind: stop, contact: normally-closed, pull: external, bounce: 3 ms, debounce: 4 ms }
  S9: { kind: door, contact: normally-closed, pull: internal, bounce: 3 ms }
  S11: { kind: button, contact: normally-open, pull: internal, bounce: 3 ms }
  S12: { kind: sensor, needs: [interrupt], volts: 5 V }
  K1: { kind: relay, current: 5 mA, at-reset: inactive, on-when: high }
  P1: { kind: lamp, needs: [pwm], current: 5 mA, least-high: 2.5 V }
  Q1: { needs: [servo], current: 1 mA }
controller:
  board: ATmega2560
  pins: { S12: 2, P1: 9, S9: A8 }
  landed: { D1-step: 22, S1: 30 }
  buses: { reader: uart }
  log-port: usb
  auto-reset: cut
  watchdog: true
  loader: stops the watchdog
  times-compared: by difference
  longest-wait: 60 s
  scan: 1 ms
  debounce: 5 ms
  stepping: { ticks: 20 kHz, cycles: 100, cycles-each: 50 }
  keeps: { per-play: 1, cells: 16, for: 1825 day }
`;
