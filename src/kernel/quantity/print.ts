/** Numbers and quantities as text for people. */
import { dimensionInfo, fits } from './dimensions.ts';
import type { Dimension } from './dimensions.ts';
import { readUnit } from './unit-text.ts';
import { awgArea, awgName, awgNumber } from './units.ts';
import type { Unit } from './units.ts';

export interface ShowOptions {
  /** Significant figures; whole digits are never rounded away. Default 3. */
  readonly figures?: number;
  /** For terminals that know ASCII only. */
  readonly ascii?: boolean;
  /** Whether the unit follows the number (default), or stands elsewhere, as in a table's head. */
  readonly plusUnit?: boolean;
}

const DEFAULT_FIGURES = 3;
/** Digits that a double holds for certain; what stands behind them is the noise of arithmetic. */
const SURE_DIGITS = 15;
const THIN_SPACE = '\u2009';
const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';

const grouped = (whole: string): string => (whole.length < 5 ? whole : whole.replace(/\B(?=(\d{3})+$)/g, THIN_SPACE));

/** A number rounded half up, as by hand, to so many significant figures, but never left of the decimal point. */
const plainNumber = (value: number, figures: number, ascii: boolean, decimals?: number): string => {
  if (value === 0) return '0';
  const [mantissa = '', tail = '0'] = Math.abs(value)
    .toExponential(SURE_DIGITS - 1)
    .split('e');
  const exponent = Number(tail);
  const digits = mantissa.replace('.', '');
  const far = exponent < -5 || exponent > 8;
  const wanted = decimals === undefined ? figures : exponent + 1 + decimals;
  const keep = Math.min(SURE_DIGITS, Math.max(wanted, far ? 1 : exponent + 1));
  const up = Number(digits[keep] ?? '0') >= 5 ? 1n : 0n;
  const rounded = String(BigInt(digits.slice(0, keep)) + up);
  // Rounding up 9.99 to two figures adds a digit.
  const place = exponent + rounded.length - keep;
  const sign = value < 0 ? (ascii ? '-' : '−') : '';
  const trim = (text: string): string => (decimals === undefined ? text.replace(/\.?0+$/, '') : text);
  if (far) {
    const body = trim(`${rounded[0]}.${rounded.slice(1)}0`);
    const power = String(place).replace('-', ascii ? '-' : '⁻');
    return (
      sign + (ascii ? `${body}e${power}` : `${body}×10${power.replace(/\d/g, (d) => SUPERSCRIPTS[Number(d)] ?? d)}`)
    );
  }
  const whole = place < 0 ? '0' : rounded.slice(0, place + 1).padEnd(place + 1, '0');
  const part = place < 0 ? '0'.repeat(-place - 1) + rounded : rounded.slice(place + 1);
  return sign + (ascii ? whole : grouped(whole)) + (part === '' ? '' : trim(`.${part}`));
};

/**
 * A number as text: a real minus sign, thin spaces from five digits on, trailing zeros dropped.
 * @param value any finite number
 * @throws RangeError when the value is not finite: there is nothing true to print
 */
export const showNumber = (value: number, options: Pick<ShowOptions, 'figures' | 'ascii'> = {}): string => {
  if (!Number.isFinite(value)) throw new RangeError(`${value} is no number to print.`);
  return plainNumber(value, options.figures ?? DEFAULT_FIGURES, options.ascii ?? false);
};

/** The unit, in text, in which values of a dimension are held. */
export const siUnit = (dimension: Dimension): string => dimensionInfo(dimension).si;

/**
 * An SI value as the number that stands before a unit: (value − offset)·den/num; for AWG the gauge number.
 * @returns the number in the author's unit
 */
export const toUnit = (value: number, unit: Unit): number =>
  unit.scale === 'awg' ? awgNumber(value) : ((value - unit.offset) * unit.den) / unit.num;

const tableUnit = (text: string, dimension: Dimension): Unit => {
  const read = readUnit(text, dimension);
  if (!read.ok) throw new RangeError(`"${text}" is no unit of ${dimensionInfo(dimension).words}.`);
  return read.value.unit;
};

const defaultUnit = (magnitude: number, dimension: Dimension): Unit => {
  const info = dimensionInfo(dimension);
  if (magnitude === 0 && info.likely[0] !== undefined && !info.si.startsWith('¤')) {
    return tableUnit(info.likely[0], dimension);
  }
  const step = info.ladder.findLast(([, from]) => magnitude >= from) ?? info.ladder[0];
  return tableUnit(step?.[0] ?? info.si, dimension);
};

const unitFor = (magnitude: number, dimension: Dimension, unit: Unit | string | undefined): Unit => {
  if (unit === undefined) return defaultUnit(magnitude, dimension);
  if (typeof unit === 'string') return tableUnit(unit, dimension);
  const info = dimensionInfo(dimension);
  if (!fits(unit.vector, info)) throw new RangeError(`${unit.print} is no unit of ${info.words}.`);
  // A degree Celsius of a difference starts at no zero point.
  return unit.offset === 0 || dimension === 'temperature' ? unit : { ...unit, offset: 0 };
};

/** Whether an area is a whole gauge, within what rounding can do. */
const gaugeOf = (area: number): number | undefined => {
  const n = Math.round(awgNumber(area));
  return Math.abs(area / awgArea(n) - 1) < 1e-9 ? n : undefined;
};

const isPlainMoney = (unit: Unit): boolean => unit.currency !== undefined && unit.print === unit.currency;

const numberIn = (value: number, unit: Unit, options: ShowOptions): string => {
  const inUnit = toUnit(value, unit);
  if (!Number.isFinite(inUnit)) throw new RangeError(`${value} is no number to print.`);
  const cents = isPlainMoney(unit) && options.figures === undefined && Math.abs(inUnit) >= 0.01;
  const whole = Math.abs(inUnit - Math.round(inUnit)) < 0.005;
  return plainNumber(
    inUnit,
    options.figures ?? DEFAULT_FIGURES,
    options.ascii ?? false,
    cents ? (whole ? 0 : 2) : undefined,
  );
};

const withUnit = (number: string, unit: Unit, { ascii = false, plusUnit = true }: ShowOptions): string => {
  const name = ascii ? unit.ascii : unit.print;
  if (!plusUnit || name === '') return number;
  return name === '°' ? `${number}°` : `${number} ${name}`;
};

/**
 * A quantity as text: `1.9 N·m`, `−3.2 mm`, `AWG 24`.
 * @param value [SI]
 * @param dimension what the value is
 * @param unit the author's unit, or its text; without it a unit is chosen that suits the size
 * @returns the number rounded to the figures asked for (three), never left of the decimal point, and the unit
 * @throws RangeError for a value that is not finite, or a unit of another dimension
 */
export const show = (value: number, dimension: Dimension, unit?: Unit | string, options: ShowOptions = {}): string => {
  if (!Number.isFinite(value)) throw new RangeError(`${value} is no number to print.`);
  const used = unitFor(Math.abs(value), dimension, unit);
  if (used.scale === 'awg') {
    const gauge = gaugeOf(value);
    if (gauge === undefined) return show(value, dimension, 'mm²', options);
    return options.plusUnit === false ? awgName(gauge) : `AWG ${awgName(gauge)}`;
  }
  return withUnit(numberIn(value, used, options), used, options);
};

const MOST_FIGURES = 8;

/**
 * A range as text: `0.9–1.3 N·m`; one value where both ends are the same.
 * @param lo lower end [SI]
 * @param hi upper end [SI]
 * @returns both ends in one unit, with more figures where three would make them look equal
 * @throws RangeError as `show` does
 */
export const showRange = (
  lo: number,
  hi: number,
  dimension: Dimension,
  unit?: Unit | string,
  options: ShowOptions = {},
): string => {
  if (lo === hi) return show(lo, dimension, unit, options);
  if (!Number.isFinite(lo) || !Number.isFinite(hi)) throw new RangeError(`${lo} to ${hi} is no range to print.`);
  const used = unitFor(Math.max(Math.abs(lo), Math.abs(hi)), dimension, unit);
  const between = options.ascii === true ? '..' : '–';
  if (used.scale === 'awg') {
    const [thin, thick] = [gaugeOf(lo), gaugeOf(hi)];
    if (thin === undefined || thick === undefined) return showRange(lo, hi, dimension, 'mm²', options);
    return `${options.plusUnit === false ? '' : 'AWG '}${awgName(thin)}${between}${awgName(thick)}`;
  }
  let figures = options.figures;
  let [low, high] = [numberIn(lo, used, options), numberIn(hi, used, options)];
  while (low === high && (figures ?? DEFAULT_FIGURES) < MOST_FIGURES) {
    figures = (figures ?? DEFAULT_FIGURES) + 1;
    [low, high] = [numberIn(lo, used, { ...options, figures }), numberIn(hi, used, { ...options, figures })];
  }
  if (low === high) return withUnit(low, used, options);
  const signed = toUnit(lo, used) < 0 || toUnit(hi, used) < 0;
  return withUnit(`${low}${signed ? ' to ' : between}${high}`, used, options);
};
