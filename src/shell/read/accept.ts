import { type Accepted, defectKinds } from '../../index.ts';
import { lengthText, wordText } from './field.ts';
import type { Field, NamedTable } from './named-table.ts';

/**
 * The defects a maker welcomes: kinds separated by `;`, each with or without its largest size, as in
 * `sound knot <= 1/2; stain`. A size is rounded down, so that nothing larger is let in.
 */
export function acceptField(named: NamedTable, field: Field): readonly Accepted[] {
  if (field.text === '') return [];
  return field.text
    .split(';')
    .map((entry) => entry.trim())
    .filter((entry) => entry !== '')
    .map((entry) => {
      const [kind = '', limit] = entry.split(/<=|\u2264|=</u);
      return {
        kind: wordText(named, field, kind.trim(), defectKinds),
        atMost:
          limit === undefined
            ? null
            : lengthText(named, field, limit.trim(), { side: 'down', range: '0 or more' }),
      };
    });
}
