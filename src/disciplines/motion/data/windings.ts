/** Connections of the coils of one phase, against one half of a phase. */
interface Connection {
  /** Turns in series, halves. */
  readonly turns: number;
  /** Resistance, of one half. */
  readonly copper: number;
}

/** A lone coil is its own half. Two alike halves: in series twice the turns, in parallel the turns of one. */
const connections = {
  coil: { turns: 1, copper: 1 },
  half: { turns: 1, copper: 1 },
  series: { turns: 2, copper: 2 },
  parallel: { turns: 1, copper: 0.5 },
} as const satisfies Readonly<Record<string, Connection>>;

export type Winding = keyof typeof connections;

/** Connections that the leads of a motor allow on a bipolar bridge; five leads share a common that allows none. */
const allowed: Readonly<Record<number, readonly Winding[]>> = {
  4: ['coil'],
  5: [],
  6: ['half', 'series'],
  8: ['half', 'series', 'parallel'],
};

/** Connections that this number of leads allows; nothing is known of other numbers. */
export const windingsOf = (leads: number): readonly Winding[] | undefined => allowed[leads];

/** What changes from one connection to another: turns in series and resistance, as ratios. */
export const ratioBetween = (measured: Winding, used: Winding): Connection => ({
  turns: connections[used].turns / connections[measured].turns,
  copper: connections[used].copper / connections[measured].copper,
});
