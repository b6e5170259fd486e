import { type Tick, ticks } from '../../index.ts';
import { lengthField } from './field.ts';
import type { Plausible } from './implausible.ts';
import { type Field, type NamedTable, fieldOf, folded } from './named-table.ts';
import type { ReadProblem } from './problem.ts';

/** Columns of every `setting,value` file; `note` is the maker's own. */
export const settingColumns = [
  { name: 'setting', needed: true },
  { name: 'value', needed: true },
  { name: 'note' },
] as const;

/** One setting of a file: its name, what it means in one line, and how its value is read into a part of `T`. */
export interface Setting<T> {
  readonly name: string;
  /** Other names that are taken for it. */
  readonly aliases?: readonly string[];
  readonly meaning: string;
  readonly read: (named: NamedTable, field: Field) => Partial<T>;
}

/**
 * The filled settings of a file by name. An empty value counts as not given; an unknown name and a name given twice
 * are problems.
 */
export function settingFields(
  named: NamedTable,
  settings: readonly Pick<Setting<unknown>, 'name' | 'aliases'>[],
): ReadonlyMap<string, Field> {
  const nameOf = new Map<string, string>();
  for (const { name, aliases = [] } of settings)
    for (const written of [name, ...aliases]) nameOf.set(folded(written), name);
  const known = settings.map(({ name }) => name);
  const seen = new Map<string, Field>();
  const fields = new Map<string, Field>();
  const report = (problem: ReadProblem): void => void named.problems.push(problem);
  for (const row of named.table.rows) {
    const label = fieldOf(named, row, 'setting');
    const name = nameOf.get(folded(label.text));
    const first = name === undefined ? undefined : seen.get(name);
    if (label.text === '') report({ kind: 'empty cell', at: label.at(), label: 'setting' });
    else if (name === undefined) report({ kind: 'unknown setting', at: label.at(), name: label.text, known });
    else if (first !== undefined) report({ kind: 'double setting', at: label.at(), name, first: first.at() });
    else {
      seen.set(name, label);
      const value = fieldOf(named, row, 'value', name);
      if (value.text !== '') fields.set(name, value);
    }
  }
  return fields;
}

/** The values of the settings that a file gives, read one by one in the order of the list. */
export function settingValues<T>(
  named: NamedTable,
  settings: readonly Setting<T>[],
  fields: ReadonlyMap<string, Field>,
): Partial<T> {
  return settings.reduce<Partial<T>>((values, setting) => {
    const field = fields.get(setting.name);
    return field === undefined ? values : { ...values, ...setting.read(named, field) };
  }, {});
}

/** A setting that is a length, never negative, rounded up: kerfs, trims and margins never shrink. */
export function lengthSetting(named: NamedTable, field: Field, plausible?: Plausible): Tick {
  const rule = { side: 'up', range: '0 or more', empty: ticks(0) } as const;
  return lengthField(named, field, plausible === undefined ? rule : { ...rule, plausible });
}
