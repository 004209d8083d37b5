/** A book with something of everything that can be put on the bench. */
import { checkBook } from '../../app/testing.ts';
import { registry } from '../../disciplines/registry.ts';
import { benchTargets } from '../bench.ts';

export const text = `# YAML 1.2
book: 1   # the format
title: Bench
revision: A
axes:
  x: { drive: belt, motors: [M1], running-force: { is: 5..8 N, from: guess } }   # pulled by hand so far
  z: { drive: hoist, dock: { kind: cup, catch: 45 mm, below-pivot: 120..160 mm } }
hanging: { centre-of-mass-below-hook: 70 mm }
motors: { M1: { part: scrap.23, driver: D1 } }
drivers: { D1: { current: 1 A } }
parts:
  scrap.23:
    kind: stepper
    rated-current: 2.8 A
    phase-resistance: 0.95..1.1 Ohm   # from the plate
supplies: { G1: { rails: { 24V: { volts: 24 V } } } }
`;
export const machine = checkBook(text);
export const targets = benchTargets(registry, machine.snapshot);
export const targetOf = (name: string, of?: string) =>
  targets.find(({ test, name: its }) => test.name === name && (of === undefined || its === of))!;
export const winding = targetOf('winding-resistance');
