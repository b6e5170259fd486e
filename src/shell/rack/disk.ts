import fs from 'node:fs';

/**
 * The file operations that keep a journal safe, one system call each, so that a test can make any of them fail or
 * stop half way. `disk` is the real one.
 */
export interface Disk {
  /** All bytes of a file; null when there is none. */
  read(path: string): Buffer | null;
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

/** The disk of this machine. */
export const disk: Disk = {
  read: (path) => {
    try {
      return fs.readFileSync(path);
    } catch (error) {
      if (isCode(error, 'ENOENT')) return null;
      // The system names no file where the reading itself fails (a folder of that name).
      throw error instanceof Error ? Object.assign(error, { path }) : error;
    }
  },
  openToAppend: (path) => fs.openSync(path, 'a'),
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
