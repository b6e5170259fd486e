import {
  type LengthStyle,
  type Place,
  type PlanProblem,
  formatLengthWithUnit,
  nearestName,
  planProblemWords,
  unreachable,
  withoutControls,
} from '../index.ts';
import { type Said, doubtWords, mendOfDoubt, sayNoLength } from './cell-words.ts';
import { printExcerpt } from './print-excerpt.ts';
import type { Implausible, ReadProblem } from './read/problem.ts';
import { systemReason } from './system-reason.ts';
import {
  closeTo,
  exampleOf,
  grouped,
  mendOfChanged,
  mendOfMissing,
  nearestOf,
  nounOf,
  quoted,
  rangeWords,
  short,
} from './wording.ts';
import type { WriteProblem } from './write/problem.ts';

/** All that a user can cause and this file has words for. */
export type Problem = ReadProblem | WriteProblem | PlanProblem;

/** A plan's problems have their words beside the plan. */
type Kind = Exclude<Problem, PlanProblem>['kind'];
type Sayings = {
  readonly [K in Kind]: (problem: Extract<Problem, { readonly kind: K }>, style: LengthStyle) => Said;
};

const inInches: LengthStyle = { units: 'in', printFraction: 32 };

/**
 * A problem for the terminal: `file:line:column: message`, the line with the cell underlined, and the mend. Nothing
 * that stands in a file can steer the terminal.
 * @param style how to print lengths of a problem that has no file (a plan's)
 * @param weight stands before the words
 */
export function printProblem(problem: Problem, style: LengthStyle = inInches, weight = ''): string {
  const { words, mend } = said(problem, style);
  const at = 'at' in problem ? problem.at : undefined;
  const excerpt = at === undefined ? null : printExcerpt(at);
  const head = `${whereOf(problem, at)}${weight}${words}`;
  return [head, ...(excerpt === null ? [] : [excerpt]), `  mend: ${mend}`].join('\n');
}

function said(problem: Problem, style: LengthStyle): Said {
  if (problem.kind in sayings) {
    // The table has one entry for each kind, so the entry found by the kind takes this very problem.
    const say = sayings[problem.kind as Kind] as (problem: Problem, style: LengthStyle) => Said;
    return say(problem, style);
  }
  const { says, mend } = planProblemWords(problem as PlanProblem, style);
  return { words: says, mend };
}

/** What may be meant, and is questioned all the same. */
export function printCaution(caution: Implausible): string {
  return printProblem(caution, inInches, 'caution: ');
}

/** Problems one under the other, a blank line between. */
export function printProblems(problems: readonly Problem[], style: LengthStyle = inInches): string {
  return problems.map((problem) => printProblem(problem, style)).join('\n\n');
}

function whereOf(problem: Problem, at: Place | undefined): string {
  if (at !== undefined) return `${withoutControls(at.file)}:${at.line}:${at.column}: `;
  if ('file' in problem) return `${withoutControls(problem.file)}: `;
  return 'folder' in problem ? `${withoutControls(problem.folder)}: ` : '';
}

const sayings: Sayings = {
  'empty file': () => ({ words: 'the file is empty', mend: 'begin it with the line of column names' }),
  'quote not closed': () => ({
    words: 'a quotation mark opens here and is never closed',
    mend: `close it, and double each quotation mark inside a quoted cell: "5' 3 1/2"""`,
  }),
  'row too long': ({ most }) => ({
    words: `the row is longer than ${grouped(most)} characters`,
    mend: 'look for a quotation mark that is never closed',
  }),
  'ragged row': ({ cells, columns }) => ({
    words: `the row has ${cells} ${cells === 1 ? 'cell' : 'cells'}, the header has ${columns}`,
    mend:
      cells < columns
        ? 'add the separators of the empty cells'
        : 'take out the extra separator, put quotation marks round a cell that holds one, or write 58.25 for 58,25',
  }),
  'no folder': () => ({
    words: 'no such folder',
    mend: 'give the folder of a job, or make one: mantelwright new FOLDER',
  }),
  'folder is a file': () => ({
    words: 'this is a file, not a job folder',
    mend: 'give the folder that holds it',
  }),
  'file missing': ({ role }) => ({ words: 'the job folder has no such file', mend: mendOfMissing[role] }),
  'file is a folder': () => ({ words: 'this is a folder, not a file', mend: 'move it away or rename it' }),
  'no regular file': ({ what }) => ({
    words: `this is ${what}, not a file`,
    mend: 'put what it gives into a file first, and name that',
  }),
  'file unreadable': ({ code }) => ({
    words: `cannot be read: ${systemReason(code)}`,
    mend: 'check its name and its permissions',
  }),
  'file too large': ({ bytes, most }) => ({
    words: `the file has ${grouped(bytes)} bytes, and the most is ${grouped(most)}`,
    mend: 'check that it is the right file',
  }),
  'not UTF-8': ({ looksLike }) => ({
    words:
      looksLike === 'UTF-16'
        ? 'the file is UTF-16 text, not UTF-8'
        : 'the file is not UTF-8 text from here on',
    mend: 'save it again as "CSV UTF-8"',
  }),

  'unknown column': ({ name, nearest, known }) => ({
    words: `unknown column ${quoted(name)}`,
    mend: nearestOf(nearest, known),
  }),
  'nameless column': () => ({ words: 'a column without a name', mend: 'name it, or take it out' }),
  'double column': ({ name, first }) => ({
    words: `the column ${quoted(name)} is there twice, first at column ${first.column}`,
    mend: 'keep one of the two',
  }),
  'missing column': ({ name, needed }) => ({
    words: `the column ${quoted(name)} is missing`,
    mend: `add it; needed are ${needed.join(', ')}`,
  }),
  'changed column': ({ formerly, now }) => ({
    words:
      formerly === null
        ? `the column ${quoted(now)} is missing`
        : `the column ${quoted(formerly)} has become ${quoted(now)}`,
    mend: mendOfChanged[now],
  }),

  'empty cell': ({ label }) => ({ words: `${label} is empty`, mend: 'fill it in' }),
  'no length': sayNoLength,
  'length out of range': ({ label, text, range }) => ({
    words: `${label}: ${quoted(text)} must be ${range}`,
    mend: 'correct the length',
  }),
  'thousands or decimals': ({ label, text }) => {
    const [bare, comma] = [text.replaceAll('.', ''), text.replace('.', ',').replaceAll('.', '')];
    return {
      words: `${label}: ${quoted(text)} may be ${short(bare)} or ${short(comma)}`,
      mend: 'write it without points; the decimal sign of this file is the comma',
    };
  },
  implausible: ({ label, text, doubt }) => ({
    words: `${label}: ${quoted(text)} ${doubtWords(doubt)}`,
    mend: mendOfDoubt(doubt),
  }),
  'no thickness': ({ text, isDate }) => ({
    words: `thickness: ${quoted(text)} is ${isDate ? 'a date, not a thickness' : 'no thickness'}`,
    mend: isDate
      ? 'a spreadsheet took a fraction for a date: make the column text, then write 4/4 or 13/16'
      : 'write quarters like 4/4, or a size like 13/16 or 20 mm',
  }),
  'no number': ({ label, text, wanted }) => ({
    words: `${label}: ${quoted(text)} is no ${nounOf[wanted]}`,
    mend: `write ${exampleOf[wanted]}`,
  }),
  'out of range': ({ label, text, wanted, range }) => ({
    words: `${label}: ${quoted(text)} must be ${rangeWords(range)}`,
    mend: wanted === 'stages' ? `write ${exampleOf[wanted]}` : 'correct the number',
  }),
  'negative corner': ({ label, text }) => ({
    words: `${label}: ${quoted(text)} is no angle that a bevel gauge reads`,
    mend: 'an inside corner is written with its word: inside 90',
  }),
  'unknown word': ({ label, text, known }) => ({
    words: `${label}: ${quoted(text)} is none of ${known.join(', ')}`,
    mend: `write ${closeTo(text, known) ?? 'one of these'}`,
  }),
  'no path': ({ label, text }) => ({
    words: `${label}: ${quoted(text)} holds a NUL character, which no path can`,
    mend: 'write the path again, like ../rack.csv',
  }),

  'unknown setting': ({ name, known }) => ({
    words: `unknown setting ${quoted(name)}`,
    mend: nearestOf(nearestName(name, known)?.name, known),
  }),
  'double setting': ({ name, first }) => ({
    words: `the setting ${quoted(name)} is given twice, first in line ${first.line}`,
    mend: 'keep one of the two',
  }),
  'missing setting': ({ name, example }) => ({
    words: `the setting ${quoted(name)} is missing`,
    mend: `add a line like ${name},${example}`,
  }),
  'double name': ({ what, name, first, at }) => ({
    words: `two ${what}s are named ${quoted(name)}, in lines ${first.line} and ${at.line}`,
    mend: what === 'leg' ? 'give each its own name' : 'give each its own name, or raise the quantity of one',
  }),
  'unknown board': ({ name, known }) => {
    const close = closeTo(name, known);
    return {
      words: `no board is named ${quoted(name)}`,
      mend: `${close === null ? '' : `write ${close}, or `}add it to boards.csv`,
    };
  },
  'defect outside': ({ defect, end, value, board, size, style }) => {
    const reach = formatLengthWithUnit(value, style);
    const past = `board ${short(board)} (${formatLengthWithUnit(size, style)})`;
    switch (end) {
      case 'from':
        return {
          words: `the ${defect} starts at ${reach}, before the butt end of the board`,
          mend: measureAlong,
        };
      case 'to':
        return { words: `the ${defect} ends at ${reach}, past the end of ${past}`, mend: measureAlong };
      case 'low':
        return {
          words: `the ${defect} starts at ${reach}, before the near edge of the board`,
          mend: measureAcross,
        };
      case 'high':
        return {
          words: `the ${defect} reaches ${reach} across, past the far edge of ${past}`,
          mend: measureAcross,
        };
      default:
        return unreachable(end);
    }
  },
  'defect without extent': ({ defect, along, start, end, style }) => {
    const [first, last] = [formatLengthWithUnit(start, style), formatLengthWithUnit(end, style)];
    const [from, to] = along === 'length' ? ['from', 'to'] : ['low', 'high'];
    return {
      words:
        start === end
          ? `the ${defect} has no ${along}: ${from} and ${to} are both ${first}`
          : `the ${defect} is turned about: ${from} is ${first}, ${to} is ${last}`,
      mend: start === end ? `give it the ${along} it takes up` : `write the smaller one as ${from}`,
    };
  },
  'too much': ({ what }) => ({
    words: `the ${what} up to here are together larger than can be reckoned exactly`,
    mend: 'check the unit and the quantities',
  }),
  'no record': () => ({
    words: 'planned: this is not what a plan writes there, so what you changed in the row cannot be told',
    mend: 'put it back, or empty it: then the row is your own, and no plan changes it',
  }),
  'no rows': ({ what }) => ({ words: `there is no ${what}`, mend: `add a line for each ${what}` }),

  'not written on': ({ what }) => ({
    words: `this is ${what}, and is not written over; nothing was written`,
    mend: 'name another folder, or move it away',
  }),
  'not written': ({ code }) => ({
    words: `cannot be written: ${systemReason(code)}`,
    mend: 'check the permissions and the room on the disk, or name another folder',
  }),
};

const measureAlong = "measure both from the same end, or correct the board's length";
const measureAcross = "measure both from the near edge as seen on face A, or correct the board's width";
