import { writeCsv } from '../../index.ts';

/** A CSV text of a header and one row for each item; the compiler asks for every column's text. */
export function tableText<C extends string, T>(
  columns: readonly { readonly name: C }[],
  items: readonly T[],
  text: Readonly<Record<C, (item: T) => string>>,
): string {
  const names = columns.map(({ name }) => name);
  return writeCsv([names, ...items.map((item) => names.map((name) => text[name](item)))]);
}
