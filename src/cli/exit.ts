/** What a command ends with. */
export const GOOD = 0;
/** Something fails or could not be worked out, and nobody has accepted it. */
export const FAILS = 1;
/** The book cannot be read, or what was asked for cannot be done. */
export const UNREADABLE = 2;
/** A fault of the program. */
export const FAULT = 70;

export type ExitCode = typeof GOOD | typeof FAILS | typeof UNREADABLE | typeof FAULT;
