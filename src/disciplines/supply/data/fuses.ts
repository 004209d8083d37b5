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

/** Rating [A] and melting let-through [A²·s] of one make of time-lag fuse; others differ by up to a half. */
export const meltings: readonly (readonly [rating: number, melting: number])[] = [
  [1, 1.7],
  [1.25, 3],
  [1.6, 5.4],
  [2, 9.7],
  [2.5, 17.4],
  [3.15, 31],
  [4, 56],
  [5, 101],
  [6.3, 181],
  [8, 330],
  [10, 601],
];
