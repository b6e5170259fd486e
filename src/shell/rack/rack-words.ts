import { type BookingProblem, type JournalNotice, unreachable, withoutControls } from '../../index.ts';
import { grouped, quoted, short } from '../wording.ts';
import { type NotRead, largestFile } from '../read/bounded-bytes.ts';
import type { RackFileProblem } from './journal-file.ts';
import type { LockBusy } from './lock.ts';
import { isHere } from './lock-owner.ts';

/** What is wrong, and what would mend it. */
interface Said {
  readonly words: string;
  readonly mend: string;
}

/** A notice about a journal for the terminal: file and line, what is wrong, the line itself, and the mend. */
export function noticeText(shown: string, notice: JournalNotice): string {
  const { words, mend } = sayNotice(notice);
  const at = 'line' in notice ? `:${notice.line}` : '';
  const line = 'text' in notice ? [`  ${notice.line} | ${short(notice.text.split('\n')[0] ?? '')}`] : [];
  return [`${withoutControls(shown)}${at}: ${words}`, ...line, `  mend: ${mend}`].join('\n');
}

function sayNotice(notice: JournalNotice): Said {
  switch (notice.kind) {
    case 'torn tail':
      return {
        words: `the last booking was torn off while it was written (${notice.lines} ${notice.lines === 1 ? 'line' : 'lines'}); it does not count`,
        mend: 'make that booking again; the next booking keeps the torn lines in a file of their own, .torn',
      };
    case 'damaged line':
      return {
        words: `damaged: ${short(notice.why)}; all other lines count`,
        mend: 'mend the line, or delete it',
      };
    case 'unknown column':
      return {
        words: `the column ${quoted(notice.name)} is none of the rack's; it is carried along`,
        mend: 'rename it if it is meant to be one of the rack’s',
      };
    case 'booking with gaps':
      return {
        words: `booking ${notice.booking} had ${notice.of} lines and has ${notice.there}; those there count`,
        mend: 'put the deleted lines back; to reverse a booking use "rack undo"',
      };
    case 'entry out of place':
      return {
        words: `${quoted(notice.name)}: ${misfitWords[notice.why]}; this line was passed over, all others count`,
        mend: 'mend the line, or delete it',
      };
    default:
      return unreachable(notice);
  }
}

const misfitWords: Readonly<Record<Extract<JournalNotice, { kind: 'entry out of place' }>['why'], string>> = {
  'not on the rack': 'no such piece was on the rack',
  'already on the rack': 'a piece of that name is on the rack already',
  'taken before': 'the piece was taken before',
  'discarded before': 'the piece was discarded before',
  'no such booking': 'there was no booking of that number to undo',
  'undone before': 'that booking was undone before',
  'said twice': 'the same entry stands in the file twice',
};

/** Why a booking was not made. */
export function bookingProblemText(problem: BookingProblem): string {
  const { words, mend } = sayBooking(problem);
  return `${words}\n  mend: ${mend}`;
}

function sayBooking(problem: BookingProblem): Said {
  switch (problem.kind) {
    case 'booked before':
      return {
        words: `this layout is booked already: booking ${problem.booking}, ${withoutControls(problem.time)}`,
        mend: 'nothing to do; "rack undo" reverses the last booking',
      };
    case 'board used up':
      return {
        words: `board ${quoted(problem.board)} is used up: an earlier layout of this job took it`,
        mend: 'lay the job out again, then book that layout',
      };
    case 'board unknown':
      return {
        words: `board ${quoted(problem.board)} is neither in boards.csv nor on the rack`,
        mend: 'lay the job out again, then book that layout',
      };
    case 'piece not on the rack':
      return sayMissing(problem);
    case 'name too long':
      return {
        words: `an offcut's name is too long to be written on the wood: ${quoted(problem.name)}`,
        mend: 'lay the job out again, then book that layout',
      };
    case 'piece as it is':
      return {
        words: `${quoted(problem.name)} is like that already`,
        mend: 'say what is to change: --length, --width, --turn …',
      };
    case 'nothing to undo':
      return { words: 'no booking is left to undo', mend: 'nothing to do' };
    default:
      return unreachable(problem);
  }
}

function sayMissing({ name, where, near }: Extract<BookingProblem, { kind: 'piece not on the rack' }>): Said {
  const likely = near === null ? 'see "rack list" for what is there' : `did you mean ${near}?`;
  switch (where) {
    case 'taken':
      return { words: `${quoted(name)} was taken off the rack before`, mend: likely };
    case 'discarded':
      return { words: `${quoted(name)} was discarded before`, mend: likely };
    case 'unknown':
      return { words: `no piece ${quoted(name)} is on the rack`, mend: likely };
  }
}

/** Why a rack could not be read or booked on. */
export function rackProblemText(shown: string, problem: RackFileProblem | LockBusy): string {
  const { words, mend } = sayRackProblem(problem);
  return `${withoutControls(shown)}: ${words}\n  mend: ${mend}`;
}

function sayRackProblem(problem: RackFileProblem | LockBusy): Said {
  switch (problem.kind) {
    case 'no journal':
      return {
        words: `this is no rack: its first line lacks ${problem.missing.join(', ')}`,
        mend: 'put the line of column names back as the first line, or name another file',
      };
    case 'rack in UTF-16':
      return { words: 'the file is UTF-16 text, not UTF-8', mend: 'save it again as "CSV UTF-8"' };
    case 'rack not read':
      return sayNotRead(problem.why);
    case 'rack busy':
      return sayBusy(problem);
    default:
      return unreachable(problem);
  }
}

function sayNotRead(why: NotRead): Said {
  switch (why.kind) {
    case 'folder':
      return { words: 'this is a folder, not a file', mend: 'name another file for the rack' };
    case 'not regular':
      return { words: `this is ${why.what}, not a file`, mend: 'name another file for the rack' };
    case 'too large':
      return {
        words: `the file is larger than ${grouped(largestFile)} bytes`,
        mend: 'check that it is the rack; if so, keep it under another name and begin a new one',
      };
    default:
      return unreachable(why);
  }
}

function sayBusy({ lock, owner }: LockBusy): Said {
  const words = 'another command has been booking on this rack for too long';
  if (owner === null) return { words, mend: `if none is at work, delete ${withoutControls(lock)}` };
  if (isHere(owner)) return { words: `${words} (process ${owner.pid})`, mend: 'wait for it, or end it' };
  return {
    words: `${words}, on another machine (${short(owner.machine)})`,
    mend: `if none is at work there, delete ${withoutControls(lock)}`,
  };
}
