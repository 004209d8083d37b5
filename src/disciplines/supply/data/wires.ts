/** Current that PVC-insulated copper bears for good in air of 40 °C, one circuit. */
export interface WireRow {
  /** Copper [m²]. */
  readonly area: number;
  /** [A] */
  readonly trunking: number;
  /** [A] */
  readonly freeAir: number;
  readonly source: string;
}

const row = (area: number, trunking: number, freeAir: number, source = 'iec-60204-currents'): WireRow => ({
  area: area * 1e-6,
  trunking,
  freeAir,
  source,
});

export const wireRows: readonly WireRow[] = [
  row(0.2, 4.3, 4.4, 'iec-60204-electronics'),
  row(0.5, 7.5, 7.8, 'iec-60204-electronics'),
  row(0.75, 8.5, 10.4),
  row(1, 10.1, 12.4),
  row(1.5, 13.1, 16.1),
  row(2.5, 17.4, 22),
  row(4, 23, 30),
  row(6, 30, 37),
];

/** The row of the largest area that is not above the given one, if there is one. */
export const wireRow = (area: number): WireRow | undefined => wireRows.findLast((one) => one.area <= area * (1 + 1e-9));

/** What insulations bear: for good, and for seconds [°C]. */
export const insulations = {
  'PVC 70': { forGood: 70, forSeconds: 160 },
  'PVC 90': { forGood: 90, forSeconds: 160 },
  'XLPE 90': { forGood: 90, forSeconds: 250 },
  'silicone 180': { forGood: 180, forSeconds: 350 },
} as const;
