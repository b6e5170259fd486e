import { type RoundingSide, type Tick, readLength, ticks } from '../../index.ts';
import { type Plausible, questionFraction, questionLength } from './implausible.ts';
import { type Field, type NamedTable, folded } from './named-table.ts';
import type { Range, Wanted } from './problem.ts';

// Each reader of a cell reports what is wrong into the table's problems and then returns a stand-in, so that the rest
// of the row is still looked at; a table with problems is never used for more.

/** The text of a cell that must not be empty. */
export function neededText(named: NamedTable, field: Field): string {
  if (field.text === '') named.problems.push({ kind: 'empty cell', at: field.at(), label: field.label });
  return field.text;
}

/**
 * A name that must be there and that no row before may have.
 * @param seen the names met so far; the new one is added. Its place is worked out only when it is met again, since that
 * costs more than reading the row.
 */
export function uniqueName(
  named: NamedTable,
  field: Field,
  what: 'part' | 'board' | 'leg',
  seen: Map<string, Field>,
): string {
  const name = neededText(named, field);
  const first = seen.get(name);
  if (first !== undefined)
    named.problems.push({ kind: 'double name', at: field.at(), what, name, first: first.at() });
  else if (name !== '') seen.set(name, field);
  return name;
}

/** How a length is read: its safe side, the lengths allowed (any when not said), and what an empty cell means. */
export interface LengthRule {
  readonly side: RoundingSide;
  readonly range?: 'more than 0' | '0 or more';
  /** From where on it is questioned. */
  readonly plausible?: Plausible;
  /** What an empty cell means; without it the cell must be filled. */
  readonly empty?: Tick;
}

/** A length. An empty cell is the rule's `empty`, or a problem. */
export function lengthField(named: NamedTable, field: Field, rule: LengthRule): Tick {
  if (field.text === '' && rule.empty !== undefined) return rule.empty;
  return lengthText(named, field, field.text, rule);
}

/** A length that is part of a cell. */
export function lengthText(named: NamedTable, field: Field, text: string, rule: LengthRule): Tick {
  const { unit, table } = named;
  if (isThousandsOrDecimals(named, field, text)) return ticks(1);
  const read = readLength(text, { unit, decimalComma: table.decimalComma, round: rule.side });
  const { label } = field;
  if (!read.ok) {
    const why = read.problems[0]?.kind ?? 'unreadable';
    if (why === 'empty') named.problems.push({ kind: 'empty cell', at: field.at(), label });
    else named.problems.push({ kind: 'no length', at: field.at(), label, text, why, unit });
    return ticks(1);
  }
  questionFraction(named, field, text);
  if (rule.plausible !== undefined) questionLength(named, field, read.value, rule.plausible);
  const least = rule.range === 'more than 0' ? 1 : rule.range === '0 or more' ? 0 : -Infinity;
  if (rule.range !== undefined && read.value < least)
    named.problems.push({ kind: 'length out of range', at: field.at(), label, text, range: rule.range });
  return read.value;
}

/** A plain number within a range. An empty cell is `empty`, or a problem. */
export function numberField(
  named: NamedTable,
  field: Field,
  rule: { readonly wanted: Wanted; readonly range: Range; readonly empty?: number },
): number {
  if (field.text === '' && rule.empty !== undefined) return rule.empty;
  return numberText(named, field, field.text, rule);
}

/** A number that is part of a cell. */
export function numberText(
  named: NamedTable,
  field: Field,
  text: string,
  rule: { readonly wanted: Wanted; readonly range: Range },
): number {
  const { label } = field;
  if (neededText(named, field) === '') return 0;
  if (isThousandsOrDecimals(named, field, text)) return 0;
  // A spreadsheet shows a share as 30%.
  const asPercent = rule.wanted === 'share' && text.endsWith('%');
  const number = plainNumber(asPercent ? text.slice(0, -1) : text, named.table.decimalComma);
  const value = number !== null && asPercent ? number / 100 : number;
  if (value === null || (rule.wanted === 'whole number' && !Number.isInteger(value))) {
    named.problems.push({ kind: 'no number', at: field.at(), label, text: field.text, wanted: rule.wanted });
    return 0;
  }
  const { wanted, range } = rule;
  if (!isWithin(value, range))
    named.problems.push({ kind: 'out of range', at: field.at(), label, text: field.text, wanted, range });
  return value;
}

/** One of a list of words, capitals forgiven. An empty cell is `empty`, or a problem. */
export function wordField<W extends string>(
  named: NamedTable,
  field: Field,
  known: readonly [W, ...W[]],
  empty?: W,
): W {
  if (field.text === '' && empty !== undefined) return empty;
  if (neededText(named, field) === '') return known[0];
  return wordText(named, field, field.text, known);
}

/** A word that is part of a cell. */
export function wordText<W extends string>(
  named: NamedTable,
  field: Field,
  text: string,
  known: readonly [W, ...W[]],
): W {
  const word = known.find((candidate) => folded(candidate) === folded(text));
  if (word !== undefined) return word;
  named.problems.push({ kind: 'unknown word', at: field.at(), label: field.label, text, known });
  return known[0];
}

/** `1.234`, `12.345.678`: whole groups of three digits after points. */
const groups = /(?:^|[^\d.,])[1-9]\d{0,2}(?:\.\d{3})+(?![\d.,])/;

/**
 * Whether a number's points may part its thousands: so they do where a comma is the decimal sign, but whoever writes
 * there in another habit means decimals. Reported, since a thousand times the price is not for guessing.
 */
export function isThousandsOrDecimals(named: NamedTable, field: Field, text: string): boolean {
  if (!named.table.decimalComma || !groups.test(text)) return false;
  named.problems.push({ kind: 'thousands or decimals', at: field.at(), label: field.label, text });
  return true;
}

/** `-22.5`, `1e3`, with a comma where the file uses it; null: no finite number. */
export function plainNumber(text: string, decimalComma: boolean): number | null {
  const plain = text.trim().replace('\u2212', '-');
  const pointed = decimalComma ? plain.replace(',', '.') : plain;
  if (pointed.length > 40 || !/^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i.test(pointed)) return null;
  const value = Number(pointed);
  return Number.isFinite(value) ? value + 0 : null;
}

function isWithin(value: number, range: Range): boolean {
  return (
    value > (range.above ?? -Infinity) &&
    value >= (range.least ?? -Infinity) &&
    value <= (range.most ?? Infinity) &&
    value < (range.below ?? Infinity)
  );
}
