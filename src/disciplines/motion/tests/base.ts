/** A small machine with one axis of each kind, on which everything holds. Exact, so that each case moves one thing. */
export const base = `book: 1
title: Bench
revision: A
axes:
  x:
    drive: belt
    motors: [M1]
    switches: { min: S1, max: S2 }
    travel: 560 mm
    speed: 220 mm/s
    acceleration: 700 mm/s²
    moving-mass: 2.5 kg
    running-force: 6 N
    efficiency: 95 %
    belt: B1
    pulley-teeth: 20
    belt-span: 700 mm
    pretension: 15 N
    frame-movement: 0..0.02 %
    accuracy: 1 mm
    overtravel: 50 mm
    stopping: { reaction: 2..10 ms }
    pushed-at: 0.2..0.4 m/s
  y:
    drive: belt
    motors: [M2, M3]
    switches: { min: [S3, S4] }
    travel: 400 mm
    speed: 220 mm/s
    acceleration: 700 mm/s²
    moving-mass: 4.9 kg
    running-force: 12 N
    efficiency: 95 %
    belt: B1
    pulley-teeth: 20
    belt-span: 520 mm
    pretension: 15 N
    squares: every play
    skew: 2 mm
    racking-force: 150 N
    overtravel: 50 mm
    stopping: { reaction: 2..10 ms }
    pushed-at: 0.2..0.4 m/s
  z:
    drive: hoist
    motors: [M4]
    travel: 700 mm
    speed: 160 mm/s
    acceleration: 500 mm/s²
    moving-mass: 620 g
    load: 0..140 g
    cable-pull: 0..1.5 N
    efficiency: 85 %
    drum: { diameter: 32 mm, width: 24 mm, flange: 6 mm, dead-turns: 4, surface: grooved, keeper-gap: 0.5 mm }
    line: { diameter: 1.2 mm, kind: braid }
    fairlead: { distance: 220 mm }
    slack-switch: S7
    slack-room: 40 mm
    stopping: { reaction: 5..20 ms }
    unpowered: windings shorted
    rests-on: a catch
  lift:
    drive: screw
    motors: [M5]
    incline: 90°
    travel: 250 mm
    speed: 60 mm/s
    acceleration: 300 mm/s²
    moving-mass: 1.2 kg
    running-force: 3 N
    screw: { thread: trapezoidal, lead: 8 mm, diameter: 7 mm, root-diameter: 6.2 mm, length: 320 mm, ends: fixed-supported, friction: 0.15 }
    unpowered: free
motors:
  M1: { part: stepper-23, driver: D1 }
  M2: { part: stepper-23, driver: D2 }
  M3: { part: stepper-23, driver: D3 }
  M4: { part: stepper-23, driver: D4 }
  M5: { part: stepper-23, driver: D5 }
drivers:
  D1: { part: chopper, rail: 24V, cable: W1, microsteps: 8, current: 1.2 A, marked: peak, standstill-current: 100 %, standing-by: unpowered }
  D2: { part: chopper, rail: 24V, cable: W1, microsteps: 8, current: 1.2 A, marked: peak, standstill-current: 100 %, standing-by: unpowered }
  D3: { part: chopper, rail: 24V, cable: W1, microsteps: 8, current: 1.2 A, marked: peak, standstill-current: 100 %, standing-by: unpowered }
  D4: { part: chopper, rail: 24V, cable: W1, microsteps: 8, current: 1.2 A, marked: peak, standstill-current: 100 %, standing-by: unpowered }
  D5: { part: chopper, rail: 24V, cable: W1, microsteps: 8, current: 1.2 A, marked: peak, standstill-current: 100 %, standing-by: unpowered }
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
    ringing: 0.1
  chopper:
    kind: driver
    most-current: 4 A
    least-volts: 12 V
    most-volts: 40 V
    bridge-resistance: 0.4 ohm
    marked: peak
    microstepping: [1, 2, 4, 8, 16]
    current-steps: [0.6 A, 0.8 A, 1 A, 1.2 A, 1.6 A, 2 A, 2.8 A, 4 A]
  B1:
    kind: belt
    pitch: 2 mm
    width: 6 mm
    allowable-tension: 28 N
    axial-stiffness: 15 kN
    mass-per-length: 8.4 g/m
    play: 0.02 mm
  flex: { kind: cable, core: 0.5 mm², cores: 4, resistance-per-length: 39 ohm/km, stranding: fine }
supplies:
  G1: { rails: { 24V: { volts: 24 V ±2%, limit: 4.2 A } } }
cables:
  W1: { part: flex, length: 3.4 m }
signals:
  S1: { kind: switch, contact: normally-closed, about: x at its low end }
  S2: { kind: switch, contact: normally-closed, about: x at its high end }
  S3: { kind: switch, contact: normally-closed, about: y home on one side }
  S4: { kind: switch, contact: normally-closed, about: y home on the other side }
  S7: { kind: switch, contact: normally-closed, about: slack line }
`;
