/**
 * The columns of `rack.csv`, in the order we write them. A re-saved file may have them in any order; an unknown one is
 * carried along. `line` of `of` says which line of its booking a line is: the booking is whole once its last line is
 * there. `end` holds a full stop: a line that lacks it, last in the file and without a line end, was torn off.
 */
export const journalColumns = [
  'entry',
  'booking',
  'line',
  'of',
  'action',
  'time',
  'job',
  'piece',
  'from',
  'length',
  'width',
  'thickness',
  'stock',
  'count as',
  'species',
  'grade',
  'tone',
  'look A',
  'look B',
  'cost',
  'parent',
  'parent x',
  'parent y',
  'turn',
  'defects',
  'made',
  'undoes',
  'layout',
  'note',
  'end',
] as const;

export type JournalColumn = (typeof journalColumns)[number];

/** Without these a file is no journal. */
export const neededColumns = [
  'action',
  'piece',
  'length',
  'width',
] as const satisfies readonly JournalColumn[];

export const endMark = '.';

/** One line's cells by column; an empty cell, or one that the line lacks, is absent. Keys are our own names only. */
export type Cells = ReadonlyMap<JournalColumn, string>;
