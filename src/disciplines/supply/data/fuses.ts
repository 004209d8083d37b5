/** Small fuses by kind: when they are sure to open, and the longest time at each gate that ends within seconds. */
export interface Gate {
  readonly multiple: number;
  /** Longest time [s]. */
  readonly time: number;
}

export interface FuseKind {
  readonly sure: number;
  readonly gates: readonly Gate[];
  readonly source: string;
}

export const fuseKinds: Readonly<Record<'time-lag' | 'fast', FuseKind>> = {
  'time-lag': {
    sure: 2.1,
    gates: [
      { multiple: 4, time: 5 },
      { multiple: 10, time: 0.1 },
    ],
    source: 'fuse-5x20-time-lag',
  },
  fast: {
    sure: 2.1,
    gates: [
      { multiple: 4, time: 0.3 },
      { multiple: 10, time: 0.02 },
    ],
    source: 'fuse-5x20-fast',
  },
};

/** One make of time-lag fuse by its rating [A]; others melt at up to a half more or less. */
export interface FuseRow {
  readonly rating: number;
  /** Let-through that melts it [A²·s]. */
  readonly melting: number;
  /** Resistance when it is cold [Ω]. */
  readonly cold: number;
  /** Most that it drops at its rating [V]. */
  readonly drop: number;
}

const row = (rating: number, melting: number, cold: number, drop: number): FuseRow => ({ rating, melting, cold, drop });

export const fuseRows: readonly FuseRow[] = [
  row(1, 1.7, 0.2, 0.25),
  row(1.25, 3, 0.14, 0.22),
  row(1.6, 5.4, 0.1, 0.19),
  row(2, 9.7, 0.07, 0.17),
  row(2.5, 17.4, 0.05, 0.15),
  row(3.15, 31, 0.037, 0.13),
  row(4, 56, 0.026, 0.1),
  row(5, 101, 0.019, 0.1),
  row(6.3, 181, 0.013, 0.1),
  row(8, 330, 0.009, 0.1),
  row(10, 601, 0.007, 0.1),
];
