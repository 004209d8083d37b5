/** Every declared formula of the supply. */
import type { Formula } from '../../../kernel/index.ts';
import * as bench from './bench.ts';
import * as chopper from './chopper.ts';
import * as cooling from './cooling.ts';
import * as drop from './drop.ts';
import * as energy from './energy.ts';
import * as fuse from './fuse.ts';
import * as loads from './loads.ts';
import * as start from './start.ts';
import * as stop from './stop.ts';
import * as inTime from './warming-in-time.ts';
import * as warming from './warming.ts';
import * as windingCold from './winding-cold.ts';
import * as wire from './wire.ts';

export const formulas = (
  [
    bench,
    chopper,
    cooling,
    drop,
    energy,
    fuse,
    loads,
    start,
    stop,
    inTime,
    warming,
    windingCold,
    wire,
  ] as readonly object[]
)
  .flatMap((room) => Object.values(room) as unknown[])
  .filter((one): one is Formula => typeof one === 'function' && 'declared' in one);
