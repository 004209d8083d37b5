/** Classes of insulation and what else limits how warm a thing may be. */
import { constant, type Value } from '../../../kernel/index.ts';

const celsius = (degrees: number, means: string, id: string): Value =>
  constant(degrees + 273.15, 'temperature', means, { id });

/** Hottest spot of a winding by its class. */
export const classLimits: Readonly<Record<'A' | 'E' | 'B' | 'F' | 'H', Value>> = {
  A: celsius(105, 'limit of insulation class A', 'iec-60085'),
  E: celsius(120, 'limit of insulation class E', 'iec-60085'),
  B: celsius(130, 'limit of insulation class B', 'iec-60085'),
  F: celsius(155, 'limit of insulation class F', 'iec-60085'),
  H: celsius(180, 'limit of insulation class H', 'iec-60085'),
};

/** Metal that a hand touches for less than ten seconds. */
export const touchLimit = celsius(55, 'metal that is touched for less than ten seconds', 'ecma-287-touch');

/** What a motor may be bolted to and how hot that may get; metal bears any motor. */
export const mountLimits: Readonly<Record<string, Value>> = {
  wood: celsius(80, 'wood that stays dry and does not darken over the years', 'supply-experience'),
  PLA: celsius(58.8, 'heat deflection of PLA', 'filament-heat'),
  PETG: celsius(76.2, 'heat deflection of PETG', 'filament-heat'),
  ABS: celsius(100, 'glass transition of ABS, its lower end', 'filament-heat'),
};
