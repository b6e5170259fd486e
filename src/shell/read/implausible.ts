import { type LengthStyle, type Tick, inches, runTogether } from '../../index.ts';
import type { Field, NamedTable } from './named-table.ts';
import type { Doubt } from './problem.ts';

/** From where on a length is questioned, and from where on it cannot be meant. */
export interface Plausible {
  readonly caution: Tick;
  readonly error?: Tick;
}

/** What is usual in this trade: common practice, no source. */
export const plausible = {
  alongWall: { caution: inches(360), error: inches(1200) },
  projection: { caution: inches(24), error: inches(120) },
  faceHeight: { caution: inches(24), error: inches(96) },
  finishedThickness: { caution: inches(4), error: inches(24) },
  boardLength: { caution: inches(360), error: inches(720) },
  boardWidth: { caution: inches(24), error: inches(72) },
  kerf: { caution: inches(3 / 8), error: inches(1) },
} as const satisfies Readonly<Record<string, Plausible>>;

/** Puts a doubt where it belongs: among the problems where it cannot be meant, else among the cautions. */
export function question(named: NamedTable, field: Field, doubt: Doubt, isSure: boolean): void {
  (isSure ? named.problems : named.cautions).push({
    kind: 'implausible',
    at: field.at(),
    label: field.label,
    text: field.text,
    doubt,
  });
}

/** Questions a length that is longer than is usual. */
export function questionLength(named: NamedTable, field: Field, value: Tick, limits: Plausible): void {
  if (value <= limits.caution) return;
  const style: LengthStyle = { units: named.unit, printFraction: 32 };
  const isSure = limits.error !== undefined && value > limits.error;
  question(named, field, { why: 'more than', most: isSure ? limits.error : limits.caution, style }, isSure);
}

/** From three digits on nobody writes a numerator on purpose: 145 1/4 is plainer than 581/4. */
const surelyRunTogether = /^\d{3}/;

/** Questions a fraction whose whole number may have run into it. */
export function questionFraction(named: NamedTable, field: Field, text: string): void {
  const meant = runTogether(text);
  if (meant !== null)
    question(named, field, { why: 'run together', meant }, surelyRunTogether.test(text.trim()));
}
