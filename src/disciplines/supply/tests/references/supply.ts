/** Values for the supply formulas: where each was read, or which other method gave it. */

/** Independent: copper heat of 2.8 A in 0.9 Ω, in full steps and with 2.8 A as the peak of microsteps. Printed to 0.01 W. */
export const copperHeat = { current: 2.8, cold: 0.9, full: 14.11, micro: 7.06 };

/** Independent: 0.7 A at 10 % and 0.2 A at 90 % of the time. Printed to 0.00001 A. */
export const playOfServo = { duties: [0.1, 0.9], currents: [0.7, 0.2], rms: 0.29155 };

/** Published-secondary efficiencies (efficiency-labels), powers from them worked apart. Printed to 0.01 W. */
export const efficiencyExamples = [
  { output: 60, efficiency: 0.87, input: 68.97 },
  { output: 60, efficiency: 0.82, input: 73.17 },
];

/** Independent: a year of 8760 hours. Printed to 0.1 kWh, 0.01 and 0.001 of the currency. */
export const yearOfStandby = {
  power: 5,
  price: 0.3,
  kilowattHours: 43.8,
  cost: 13.14,
  half: { power: 0.5, cost: 1.314 },
};

/** Independent: resistance of out and back. Printed to 0.0001 and 0.00001 Ω, drops to 0.0001 V. */
export const feeds = [
  { gauge: 24, length: 5, parallel: 1, celsius: 20, ohms: 0.8421, digits: 4, amperes: 1, volts: 0.8421 },
  { gauge: 24, length: 5, parallel: 1, celsius: 60, ohms: 0.9745, digits: 4, amperes: 1, volts: 0.9745 },
  { gauge: 24, length: 5, parallel: 2, celsius: 20, ohms: 0.4211, digits: 4, amperes: 2, volts: 0.8421 },
  { gauge: 18, length: 3, parallel: 1, celsius: 20, ohms: 0.12569, digits: 5, amperes: 5, volts: 0.6284 },
];

/** Area of a gauge by the defining formula, d = 0.127 mm · 92^((36 − n)/39). */
export const gaugeArea = (n: number): number => (Math.PI / 4) * (0.127e-3 * 92 ** ((36 - n) / 39)) ** 2;

/** Published-secondary (cable-k-factors): k in A·√s/mm², whole numbers. */
export const heatingConstants = [
  { from: 70, to: 160, k: 115 },
  { from: 90, to: 160, k: 100 },
  { from: 90, to: 250, k: 143 },
  { from: 60, to: 200, k: 141 },
];

/** Independent: rate at which AWG 24 warms at 5 A without loss, by ρ, 385 J/(kg·K) and 8960 kg/m³. Printed to 0.01 K/s. */
export const adiabaticRate = { gauge: 24, amperes: 5, kelvinPerSecond: 2.98 };

/** Independent product of table and factors. Printed to 0.01 A. */
export const derated = { table: 13.1, grouping: 0.65, ambient: 0.82, amperes: 6.98 };

/** Published-secondary example (cabinet-k-values): 500 W, 15 K, 5.5 W/(m²·K), 6.06 m²; printed to 0.01 m². */
export const cabinetExample = { power: 500, transfer: 5.5, surface: 6.06, rise: 15 };

/** Published (fuse-5x20-time-lag), 3.15 A: limits of time at multiples of the rating. */
export const timeLag = {
  rating: 3.15,
  sure: 2.1,
  gates: [
    { multiple: 4, time: 5 },
    { multiple: 10, time: 0.1 },
  ],
};

/** Published (atx-design-guide, table 4): least load of the 5 V rail of a 300 W unit. Printed to 0.1 A. */
export const leastLoad = { volts: 5, amperes: 0.3 };

/** Published-secondary (iec-60228-resistance), class 5, in mm² and Ω/km at 20 °C. Printed to 0.1 Ω/km. */
export const fineStranded = [
  { area: 0.5, ohms: 39 },
  { area: 0.75, ohms: 26 },
  { area: 1, ohms: 19.5 },
  { area: 1.5, ohms: 13.3 },
];

/** Independent (by the formula of gauges and 1.7241e-8 Ω·m): AWG 24. Printed to 0.01 Ω/km. */
export const gauge24 = { ohmsPerKilometre: 84.21 };
