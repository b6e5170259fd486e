import type { NotRegular } from '../not-regular.ts';
import type { CsvProblem, LengthFault, LengthStyle, LengthUnit, Place, Tick } from '../../index.ts';

/** The files of a job folder that these readers know. */
export type JobFile = 'shop' | 'parts' | 'boards' | 'defects' | 'yard' | 'mantel' | 'legs';

/** What can be wrong with a folder or a file before a line of it is read. */
export type FileProblem =
  | { readonly kind: 'no folder'; readonly folder: string }
  | { readonly kind: 'folder is a file'; readonly folder: string }
  | { readonly kind: 'file missing'; readonly file: string; readonly role: JobFile }
  | { readonly kind: 'file is a folder'; readonly file: string }
  | { readonly kind: 'no regular file'; readonly file: string; readonly what: NotRegular }
  | { readonly kind: 'file unreadable'; readonly file: string; readonly code: string }
  | { readonly kind: 'file too large'; readonly file: string; readonly bytes: number; readonly most: number }
  | { readonly kind: 'not UTF-8'; readonly at: Place; readonly looksLike: 'UTF-16' | 'something else' };

/** Columns whose meaning has changed with their name, and that of others beside them. */
export type ChangedColumn = 'wall corner';

/** What can be wrong with the header line. */
export type HeaderProblem =
  | {
      readonly kind: 'unknown column';
      readonly at: Place;
      readonly name: string;
      /** The likeliest column meant: one that the file does not have yet. */
      readonly nearest: string;
      readonly known: readonly string[];
    }
  | { readonly kind: 'nameless column'; readonly at: Place }
  | { readonly kind: 'double column'; readonly at: Place; readonly name: string; readonly first: Place }
  | {
      readonly kind: 'changed column';
      readonly at: Place;
      /** The name it had; null: the file has neither. */
      readonly formerly: string | null;
      readonly now: ChangedColumn;
    }
  | {
      readonly kind: 'missing column';
      readonly at: Place;
      readonly name: string;
      readonly needed: readonly string[];
    };

/** The numbers that are allowed: inclusive ends, or exclusive ones (`above`, `below`). */
export interface Range {
  readonly above?: number;
  readonly least?: number;
  readonly most?: number;
  readonly below?: number;
}

/** What a cell should have held, for the mend. */
export type Wanted =
  | 'number'
  | 'whole number'
  | 'share'
  | 'price'
  | 'saving'
  | 'angle'
  | 'corner'
  | 'stages'
  | 'show'
  | 'section';

/** What can be wrong with one cell; `label` is its column, or its setting. */
export type CellProblem =
  | { readonly kind: 'empty cell'; readonly at: Place; readonly label: string }
  | {
      readonly kind: 'no length';
      readonly at: Place;
      readonly label: string;
      readonly text: string;
      readonly why: Exclude<LengthFault, 'empty'>;
      readonly unit: LengthUnit;
    }
  | {
      readonly kind: 'length out of range';
      readonly at: Place;
      readonly label: string;
      readonly text: string;
      readonly range: 'more than 0' | '0 or more';
    }
  | {
      readonly kind: 'thousands or decimals';
      readonly at: Place;
      readonly label: string;
      readonly text: string;
    }
  | { readonly kind: 'no thickness'; readonly at: Place; readonly text: string; readonly isDate: boolean }
  | {
      readonly kind: 'no number';
      readonly at: Place;
      readonly label: string;
      readonly text: string;
      readonly wanted: Wanted;
    }
  | {
      readonly kind: 'out of range';
      readonly at: Place;
      readonly label: string;
      readonly text: string;
      readonly wanted: Wanted;
      readonly range: Range;
    }
  | {
      readonly kind: 'negative corner';
      readonly at: Place;
      readonly label: string;
      readonly text: string;
    }
  | {
      readonly kind: 'unknown word';
      readonly at: Place;
      readonly label: string;
      readonly text: string;
      readonly known: readonly string[];
    }
  | { readonly kind: 'no path'; readonly at: Place; readonly label: string; readonly text: string };

/** Why an entry is questioned. */
export type Doubt =
  | { readonly why: 'run together'; readonly meant: string }
  | { readonly why: 'more than'; readonly most: Tick; readonly style: LengthStyle }
  | { readonly why: 'wider than long' }
  | { readonly why: 'all too small'; readonly unit: LengthUnit }
  | { readonly why: 'split' };

/** An entry that can be read, and is hardly meant so. */
export interface Implausible {
  readonly kind: 'implausible';
  readonly at: Place;
  readonly label: string;
  readonly text: string;
  readonly doubt: Doubt;
}

/** What can be wrong between the rows and files of a job. */
export type JobProblem =
  | {
      readonly kind: 'unknown setting';
      readonly at: Place;
      readonly name: string;
      readonly known: readonly string[];
    }
  | { readonly kind: 'double setting'; readonly at: Place; readonly name: string; readonly first: Place }
  | {
      readonly kind: 'missing setting';
      readonly file: string;
      readonly name: string;
      readonly example: string;
    }
  | {
      readonly kind: 'double name';
      readonly at: Place;
      readonly what: 'part' | 'board' | 'leg';
      readonly name: string;
      readonly first: Place;
    }
  | {
      readonly kind: 'unknown board';
      readonly at: Place;
      readonly name: string;
      readonly by: 'pin' | 'defect';
      readonly known: readonly string[];
    }
  | {
      readonly kind: 'defect outside';
      readonly at: Place;
      readonly defect: string;
      readonly end: 'from' | 'to' | 'low' | 'high';
      readonly value: Tick;
      readonly board: string;
      /** The board's length or width, whichever was passed. */
      readonly size: Tick;
      readonly style: LengthStyle;
    }
  | {
      readonly kind: 'defect without extent';
      readonly at: Place;
      readonly defect: string;
      readonly along: 'length' | 'width';
      readonly start: Tick;
      readonly end: Tick;
      readonly style: LengthStyle;
    }
  /** What a plan wrote of a row can no longer be read. */
  | { readonly kind: 'no record'; readonly at: Place }
  | { readonly kind: 'too much'; readonly at: Place; readonly what: 'parts' | 'boards' }
  | { readonly kind: 'no rows'; readonly at: Place; readonly what: 'leg' };

/** All that can be wrong with the files of a job. */
export type ReadProblem = CsvProblem | FileProblem | HeaderProblem | CellProblem | JobProblem | Implausible;

/** What was read, and all that was wrong with it; the value is of use only to find further problems if there are any. */
export interface Reading<T> {
  readonly value: T;
  readonly problems: readonly ReadProblem[];
  /** What may be meant as it stands, and is to be said; none when left out. */
  readonly cautions?: readonly Implausible[];
}

/** A file needed by the job that is not there. */
export function missing(file: string, role: JobFile): FileProblem {
  return { kind: 'file missing', file, role };
}
