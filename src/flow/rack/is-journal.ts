import { readHeader } from './dialect.ts';
import { neededColumns } from './journal-columns.ts';

/** Every journal of ours has them; a table of something else may have the needed ones by chance. */
const telling = [...neededColumns, 'entry', 'booking'] as const;

/**
 * Whether a text begins as a rack's journal does.
 * @param start the file's first line at least
 * @example isJournal('entry,booking,action,piece,length,width\n') // true
 */
export function isJournal(start: string): boolean {
  const line = start.replace(/^\uFEFF/, '').split(/[\r\n]/)[0] ?? '';
  const { columns } = readHeader(line);
  return telling.every((column) => columns.includes(column));
}
