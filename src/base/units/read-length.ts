import { type Result, failure, success } from '../result/result.ts';
import { plainAscii } from './plain-ascii.ts';
import { type RoundingSide, roundedQuotient } from './rounded-quotient.ts';
import { type Tick, longestLength, ticks, ticksPerInch, ticksPerMillimetre } from './tick.ts';

export type LengthUnit = 'in' | 'mm';

/** How a text is taken: the unit of a bare number, whether a comma may be the decimal sign, and the safe side. */
export interface LengthReading {
  readonly unit: LengthUnit;
  readonly decimalComma: boolean;
  readonly round: RoundingSide;
}

/** Why a text is no length. `date`: a spreadsheet has turned a fraction into a day of the calendar. */
export type LengthFault = 'empty' | 'unreadable' | 'decimal comma' | 'date' | 'zero denominator' | 'too long';

/** A text that is no length. */
export interface LengthProblem {
  readonly kind: LengthFault;
}

interface Ratio {
  readonly over: bigint;
  readonly under: bigint;
}

const ticksPerUnit: ReadonlyMap<string, number> = new Map([
  ...['in', 'inch', 'inches', '"'].map((name) => [name, ticksPerInch] as const),
  ...['ft', 'foot', 'feet', "'"].map((name) => [name, 12 * ticksPerInch] as const),
  ...['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'].map(
    (name) => [name, ticksPerMillimetre] as const,
  ),
  ...['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'].map(
    (name) => [name, 10 * ticksPerMillimetre] as const,
  ),
  ...['m', 'metre', 'metres', 'meter', 'meters'].map((name) => [name, 1000 * ticksPerMillimetre] as const),
]);

const amount = String.raw`(?:\d+[ -])?\d+ ?\/ ?\d+|\d+\.?\d*|\.\d+`;
const feetAndInches = new RegExp(
  String.raw`^(${amount}) ?(?:'|ft\.?|foot|feet)(?: ?-? ?(${amount}) ?(?:"|in\.?|inch|inches)?)?$`,
);
const oneMeasure = new RegExp(String.raw`^(${amount}) ?(?:([a-z]+)\.?|("))?$`);
/** English and German short names: the ones seen in spreadsheets that also use the comma. */
const month = '(?:jan|feb|mar|mrz|apr|may|mai|jun|jul|aug|sep|oct|okt|nov|dec|dez)[a-z]*';
const calendarDay = new RegExp(
  String.raw`^(?:\d{1,4}\.?[-/. ]${month}(?:[-/., ]+\d{2,4})?|${month}[-/., ]+\d{1,4}(?:, ?\d{4})?|\d{1,4}([-/.])\d{1,2}\1\d{0,4})$`,
);
/** No sane length is longer than this; longer text is refused unread. */
const longestText = 60;

/**
 * Reads a length: `63 1/2`, `63-1/2`, `63½`, `63.5`, `5' 3 1/2"`, `3 in`, `1612.9 mm`, `161.29 cm`, `1.6 m`, with
 * primes or curly quotes too; `63,5` where a comma may be the decimal sign. A minus in front turns the whole.
 * Worked in whole numbers; what falls between two ticks goes to the stated side.
 * @returns a length of either sign; whether it may be zero or negative is the caller's question
 * @example readLength('63 1/2', { unit: 'in', decimalComma: false, round: 'nearest' }) // 516128 ticks
 */
export function readLength(text: string, reading: LengthReading): Result<Tick, LengthProblem> {
  if (text.trim() === '') return failure([{ kind: 'empty' }]);
  if (text.length > longestText) return failure([{ kind: 'unreadable' }]);
  const plain = plainAscii(text);
  if (calendarDay.test(plain)) return failure([{ kind: 'date' }]);
  if (!reading.decimalComma && /\d,\d/.test(plain)) return failure([{ kind: 'decimal comma' }]);
  const negative = plain.startsWith('-');
  const unsigned = negative ? plain.slice(1).trimStart() : plain;
  const size = measure(reading.decimalComma ? unsigned.replace(',', '.') : unsigned, reading.unit);
  if (size === null) return failure([{ kind: 'unreadable' }]);
  if (size.under === 0n) return failure([{ kind: 'zero denominator' }]);
  const whole = roundedQuotient(negative ? -size.over : size.over, size.under, reading.round);
  if (whole > BigInt(longestLength) || whole < -BigInt(longestLength)) return failure([{ kind: 'too long' }]);
  return success(ticks(Number(whole)));
}

/** The ticks of an unsigned length as a ratio; a denominator of 0 is passed on; null: not understood. */
function measure(plain: string, bareUnit: LengthUnit): Ratio | null {
  const feet = feetAndInches.exec(plain);
  if (feet !== null) {
    const [, footText = '', inchText = '0'] = feet;
    return sum(ratio(footText, 12 * ticksPerInch), ratio(inchText, ticksPerInch));
  }
  const one = oneMeasure.exec(plain);
  if (one === null) return null;
  const [, number = '', word, mark] = one;
  const perUnit = ticksPerUnit.get(word ?? mark ?? bareUnit);
  return perUnit === undefined ? null : ratio(number, perUnit);
}

/** `3 1/2`, `3-1/2`, `1/2`, `3.5` or `3`, times a whole number. */
function ratio(number: string, times: number): Ratio {
  const factor = BigInt(times);
  const slash = number.indexOf('/');
  if (slash < 0) {
    const [whole = '', decimals = ''] = number.split('.');
    return { over: BigInt(whole + decimals) * factor, under: 10n ** BigInt(decimals.length) };
  }
  const under = BigInt(number.slice(slash + 1).trim());
  const parts = number.slice(0, slash).trim().split(/[ -]/);
  const top = BigInt(parts.at(-1) ?? '0');
  const whole = parts.length > 1 ? BigInt(parts[0] ?? '0') : 0n;
  return { over: (whole * under + top) * factor, under };
}

function sum(a: Ratio, b: Ratio): Ratio {
  return { over: a.over * b.under + b.over * a.under, under: a.under * b.under };
}
