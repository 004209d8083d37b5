declare const __GANTRYBOOK_VERSION__: string;

/** Version of the program, put in when it is built. */
export const version: string = __GANTRYBOOK_VERSION__;
