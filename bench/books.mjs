// Books to be timed.

/** A book of so many belt axes, each with a motor and a driver of its own; half of the facts are ranges. */
export const axes = (count) => {
  const each = (line) => Array.from({ length: count }, (_, i) => line(i + 1)).join('\n');
  return `# YAML 1.2
book: 1
title: Many axes
revision: A
axes:
${each(
  (n) =>
    `  a${n}: { drive: belt, motors: [M${n}], travel: 560 mm, belt: 2GT-6, pulley-teeth: 20, moving-mass: 2.4..2.6 kg, running-force: 5..8 N, speed: 220 mm/s, acceleration: 700 mm/s² }`,
)}
motors:
${each((n) => `  M${n}: { part: common-23, winding: series, driver: D${n} }`)}
drivers:
${each((n) => `  D${n}: { microsteps: 8, current: 1.2 A, marked: peak, rail: 24V, cable: W${n} }`)}
cables:
${each((n) => `  W${n}: { part: chain-rated-4x0.5, length: 3.4 m }`)}
parts:
  common-23:
    kind: stepper
    frame: 23
    leads: 6
    measured-as: half
    holding-torque: 0.9..1.1 N·m
    rated-current: 1.4 A
    phase-resistance: 2.0..2.2 ohm
    phase-inductance: 3.6..4.4 mH
    rotor-inertia: 280 g·cm²
    detent-torque: 40 mN·m
supplies:
  G1: { rails: { 24V: { volts: 24 V ±2%, limit: 10 A } } }
`;
};

/** The text with the first number of that key changed a little, differently each time. */
export const edited = (text, key, time) =>
  text.replace(
    new RegExp(`(\\b${key}: )(\\d+(?:\\.\\d+)?)`),
    // Never the same number twice: what was worked out before would only be looked up.
    (_, before, number) => `${before}${(Number(number) + 0.25 + time * 0.37).toFixed(2)}`,
  );
