import fs from 'node:fs';
import { type NotRead, boundedBytesNow } from '../read/bounded-bytes.ts';

/**
 * The file operations that keep a journal safe, one system call each, so that a test can make any of them fail or
 * stop half way. `disk` is the real one.
 */
export interface Disk {
  /** All bytes of a file; null when there is none; or why what is there is not read. */
  read(path: string): Buffer | NotRead | null;
  openToAppend(path: string): number;
  /** May write less than it is given, as the system call may. */
  write(handle: number, bytes: Buffer): number;
  size(handle: number): number;
  truncate(handle: number, size: number): void;
  /** Until what was written is on the disk itself. */
  flush(handle: number): void;
  close(handle: number): void;
  /** Makes a new file's name in its folder last, where the system lets a folder be flushed. */
  flushFolder(path: string): void;
}

/** As 'a', and a pipe that nobody reads from is not waited for. */
const appending =
  fs.constants.O_APPEND | fs.constants.O_CREAT | fs.constants.O_WRONLY | (fs.constants.O_NONBLOCK ?? 0);

/** The disk of this machine. */
export const disk: Disk = {
  read: (path) => {
    try {
      const read = boundedBytesNow(path);
      return read.kind === 'bytes' ? read.bytes : read;
    } catch (error) {
      if (isCode(error, 'ENOENT')) return null;
      // The system names no file where the reading itself fails.
      throw error instanceof Error ? Object.assign(error, { path }) : error;
    }
  },
  openToAppend: (path) => fs.openSync(path, appending, 0o666),
  write: (handle, bytes) => fs.writeSync(handle, bytes),
  size: (handle) => fs.fstatSync(handle).size,
  truncate: (handle, size) => fs.ftruncateSync(handle, size),
  flush: (handle) => fs.fsyncSync(handle),
  close: (handle) => fs.closeSync(handle),
  flushFolder: (path) => {
    try {
      const handle = fs.openSync(path, 'r');
      try {
        fs.fsyncSync(handle);
      } finally {
        fs.closeSync(handle);
      }
    } catch {
      // Some systems do not open folders. The file itself has been flushed; only its name is at the system's pace.
    }
  },
};

/** Whether a failure has one of these short names of the system. */
export function isCode(error: unknown, ...codes: readonly string[]): boolean {
  return error instanceof Error && 'code' in error && codes.includes(String(error.code));
}
