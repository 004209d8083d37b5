/** A small machine with a belt, a hoist, two supplies and a converter, on which everything holds. Exact, so that each case moves one thing. */
export const base = `book: 1
title: Bench
revision: A
site:
  ambient: 10..30 degC
  mains: 230 V
  open: 9 h/day
  energy-price: 0.30 EUR/kWh
modes:
  standing-by: { duty: 70 % }
  aiming: { duty: 20 %, moving: [x] }
  fetching: { duty: 10 %, moving: [z], unpowered: [x] }
axes:
  x:
    drive: belt
    motors: [M1]
    travel: 560 mm
    speed: 220 mm/s
    acceleration: 700 mm/s²
    moving-mass: 2.5 kg
    running-force: 6 N
    efficiency: 95 %
    belt: B1
    pulley-teeth: 20
  z:
    drive: hoist
    motors: [M2]
    travel: 700 mm
    speed: 160 mm/s
    acceleration: 500 mm/s²
    moving-mass: 620 g
    load: 0..140 g
    efficiency: 85 %
    drum: { diameter: 32 mm, layers: 1 }
    line: { diameter: 1.2 mm }
motors:
  M1: { part: stepper-23, driver: D1, winding-temperature: 60 degC, touchable: true, mount: PETG }
  M2: { part: stepper-23, driver: D2, winding-temperature: 60 degC, touchable: false, mount: metal }
drivers:
  D1: { part: chopper, rail: 24V, fuse: F1, microsteps: 8, current: 1.2 A, marked: peak, standstill-current: 50 %, cable-resistance: 0.3 ohm, standing-by: unpowered }
  D2: { part: chopper, rail: 24V, fuse: F1, microsteps: 8, current: 1.2 A, marked: peak, standstill-current: 50 %, cable-resistance: 0.3 ohm, standing-by: unpowered }
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
    insulation-class: B
    winding-to-case: 1 K/W
    case-to-air: 3 K/W
    winding-heat-capacity: 40 J/K
    case-heat-capacity: 270 J/K
  chopper:
    kind: driver
    most-current: 4 A
    least-volts: 12 V
    most-volts: 40 V
    bridge-resistance: 0.4 ohm
    marked: peak
    own-power: 0.3 W
    thermal-resistance: 12 K/W
    most-temperature: 100 degC
    capacitance: 220 µF
    ripple-current: 0.8 A
  B1: { kind: belt, pitch: 2 mm, width: 6 mm }
  boxed-100W:
    kind: supply
    power: 100 W
    efficiency: 86 %
    no-load: 0.5 W
    overload: constant current
    overload-current: 5 A
    short-circuit-current: 5 A
    start-within: 50 ms
    output-capacitance: 1000 µF
    most-air: 50 degC
  boxed-15W:
    kind: supply
    power: 15 W
    efficiency: 80 %
    no-load: 0.3 W
    minimum: { 5V: 0.1 A }
    overload: hiccup
    overload-current: 3.5 A
    short-circuit-current: 1 A
    start-within: 50 ms
    output-capacitance: 1000 µF
    most-air: 50 degC
  buck:
    kind: supply
    power: 20 W
    efficiency: 90 %
    no-load: 0.1 W
    overload: constant current
    overload-current: 4 A
    short-circuit-current: 4 A
    start-within: 50 ms
    output-capacitance: 470 µF
    input-capacitance: 100 µF
    most-air: 60 degC
  hook-up: { kind: cable, core: 0.75 mm², cores: 2, resistance-per-length: 26 ohm/km }
  thin: { kind: cable, core: 0.2 mm², cores: 2, resistance-per-length: 90 ohm/km }
supplies:
  G1: { part: boxed-100W, rails: { 24V: { volts: 24 V, limit: 4.2 A } }, clamp: { volts: 36 V, power: 5 W } }
  G2: { part: boxed-15W, rails: { 5V: { volts: 5 V, limit: 3 A } } }
  G3: { part: buck, from: 24V, fuse: F2, rails: { claw: { volts: 5.5 V, limit: 3 A } } }
loads:
  board: { rail: 5V, fuse: F3, current: 0.2 A, least-volts: 4.75 V, capacitance: 470 µF }
  sound: { rail: 5V, fuse: F3, modes: [aiming, fetching], current: 0.3 A }
  servo: { rail: claw, modes: fetching, current: 0.3 A, peak: 1.8 A, stalled: 5 %, thermal-resistance: 20 K/W, most-temperature: 80 degC }
fuses:
  F1: { rating: 2 A, kind: time-lag, cable: W1, derating: 0.4 %/K, melting: 9.7 A²·s, resistance: 80 mohm, contact-resistance: 40 mohm }
  F2: { rating: 1 A, kind: time-lag, cable: W2, derating: 0.4 %/K, melting: 1.7 A²·s, resistance: 240 mohm, contact-resistance: 40 mohm }
  F3: { rating: 1 A, kind: fast, cable: W3, derating: 0.4 %/K, melting: 1 A²·s, resistance: 200 mohm, contact-resistance: 40 mohm }
cables:
  W1: { part: hook-up, length: 1.2 m, laid: in trunking, grouping: 0.8 }
  W2: { part: hook-up, length: 1 m, laid: in trunking, grouping: 0.8 }
  W3: { part: hook-up, length: 1 m, laid: in trunking, grouping: 0.8 }
enclosure: { rise: 8 K, surface: 5 m², transfer: 4 W/(m²·K), windows: 0.8 m², transmittance: 0.8, sun: 0..100 W/m² }
energy: { standing-by: 4 W, week: 1 EUR }
`;
