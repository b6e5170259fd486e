import type { Grade } from './rule.ts';

/** Ways in which yards write the grades, lower case, without blanks, dots and hyphens. Common practice, no source. */
const spellings: readonly (readonly [Grade, readonly string[]])[] = [
  ['FAS', ['fas', 'firstsandseconds', 'firsts&seconds', 'fas&better']],
  ['F1F', ['f1f', 'fas1f', 'fasoneface', 'fas1face', 'f1face']],
  ['Selects', ['selects', 'select', 'sel', 'sel&better', 'select&better', 'selects&better']],
  [
    '1C',
    ['1c', '1common', 'no1c', 'no1common', '#1common', '#1c', 'numberonecommon', '1com', '#1com', 'common'],
  ],
  [
    '2A',
    ['2a', '2ac', '2acommon', 'no2a', 'no2acommon', '#2acommon', '#2a', '2com', '2c', '2common', '#2common'],
  ],
  ['2B', ['2b', '2bc', '2bcommon', 'no2b', 'no2bcommon', '#2bcommon', '#2b']],
  ['3A', ['3a', '3ac', '3acommon', 'no3a', 'no3acommon', '#3acommon', '#3a']],
  ['3B', ['3b', '3bc', '3bcommon', 'no3b', 'no3bcommon', '#3bcommon', '#3b']],
];

const gradeOf = new Map(spellings.flatMap(([grade, words]) => words.map((word) => [word, grade] as const)));

/**
 * The grade a yard's word means.
 * @returns null for none and for words that are no standard grade (`rustic`, `character`)
 * @example readGrade('No. 1 Common') // '1C'
 */
export function readGrade(text: string): Grade | null {
  return gradeOf.get(text.toLowerCase().replace(/[\s.\-_/]+/g, '')) ?? null;
}
