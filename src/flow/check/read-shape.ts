import type { ProblemBase } from '../../base/result/result.ts';

/** Something in a JSON text that is not what the format says. */
export interface ShapeProblem extends ProblemBase {
  readonly kind: 'not in the format';
  /** Where, as `boards[0].cuts[3].at`; empty for the whole. */
  readonly path: string;
  readonly expected: string;
}

/** What a reader gives where the value is not in the format; the problem is noted by then. */
export const unreadable: unique symbol = Symbol('unreadable');

/** Reads one value; notes every problem. Never trusts a prototype, never throws. */
export type Reader<T> = (value: unknown, path: string, problems: ShapeProblem[]) => T | typeof unreadable;

/** Fields of a record; `optional` ones may be missing. */
export interface Field<T> {
  readonly read: Reader<T>;
  readonly isOptional?: boolean;
}

/** Names of fields that are not ours are cut off here: they may be anything. */
const longestName = 40;

/** A reader that accepts the values a test accepts. */
export function where<T>(expected: string, accepts: (value: unknown) => value is T): Reader<T> {
  return (value, path, problems) => {
    if (accepts(value)) return value;
    problems.push({ kind: 'not in the format', path, expected });
    return unreadable;
  };
}

/** A list of values. */
export function listOf<T>(read: Reader<T>): Reader<readonly T[]> {
  return (value, path, problems) => {
    if (!Array.isArray(value)) {
      problems.push({ kind: 'not in the format', path, expected: 'a list' });
      return unreadable;
    }
    const items: T[] = [];
    for (let index = 0; index < value.length; index += 1) {
      const item = read(value[index], `${path}[${index}]`, problems);
      if (item !== unreadable) items.push(item);
    }
    return items.length === value.length ? items : unreadable;
  };
}

/** A value that may be null instead. */
export function orNull<T>(read: Reader<T>): Reader<T | null> {
  return (value, path, problems) => (value === null ? null : read(value, path, problems));
}

/** An object with exactly these fields; `T` says which of them may be missing. */
export function record<T extends object>(fields: {
  readonly [Key in keyof T]-?: Field<Exclude<T[Key], undefined>>;
}): Reader<T> {
  const names = Object.keys(fields) as (keyof T & string)[];
  return (value, path, problems) => {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) {
      problems.push({ kind: 'not in the format', path, expected: 'an object' });
      return unreadable;
    }
    const before = problems.length;
    const step = (name: string): string => `${path === '' ? '' : `${path}.`}${name.slice(0, longestName)}`;
    for (const name of Object.keys(value)) {
      if (Object.hasOwn(fields, name)) continue;
      problems.push({ kind: 'not in the format', path: step(name), expected: 'no such field' });
    }
    const found: [string, unknown][] = [];
    for (const name of names) {
      const { read, isOptional } = fields[name];
      if (!Object.hasOwn(value, name)) {
        if (isOptional !== true) {
          problems.push({ kind: 'not in the format', path: step(name), expected: 'a value, it is missing' });
        }
        continue;
      }
      found.push([name, read((value as Record<string, unknown>)[name], step(name), problems)]);
    }
    return problems.length > before ? unreadable : (Object.fromEntries(found) as T);
  };
}
