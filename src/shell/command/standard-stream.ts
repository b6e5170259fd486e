import fs from 'node:fs';
import type { Sink } from './world.ts';

/** Numbers of the standard streams, the same in every process. */
export const standardOutput = 1;
export const standardError = 2;

/**
 * Standard output: a text is down when `write` returns, or the failure is thrown as the system told it. Node's own
 * stream takes a short write on a full disk for a whole one, and fails, if at all, after the command has ended.
 * A reader who has gone (`| head`) is no fault: what is still to be written to it is dropped.
 */
export function waitingSink(handle: number): Sink {
  let gone = false;
  return {
    write: (text) => {
      if (gone) return;
      try {
        writeWhole(handle, Buffer.from(text));
      } catch (error) {
        if (!isCode(error, 'EPIPE')) throw Object.assign(error as Error, { path: 'standard output' });
        gone = true;
      }
    },
  };
}

/** Standard error: what cannot be said there cannot be said at all. */
export function mutedSink(handle: number): Sink {
  return {
    write: (text) => {
      try {
        writeWhole(handle, Buffer.from(text));
      } catch {
        // Nobody is left to tell.
      }
    },
  };
}

function writeWhole(handle: number, bytes: Buffer): void {
  for (let done = 0; done < bytes.length;) {
    const took = writeSome(handle, bytes.subarray(done));
    if (took === 0) pause();
    done += took;
  }
}

/** How many bytes were taken; 0 where a pipe set not to wait is full. */
function writeSome(handle: number, bytes: Buffer): number {
  try {
    return fs.writeSync(handle, bytes);
  } catch (error) {
    if (isCode(error, 'EAGAIN')) return 0;
    throw error;
  }
}

const millisecondsOfPause = 5;

function pause(): void {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, millisecondsOfPause);
}

function isCode(error: unknown, code: string): boolean {
  return error instanceof Error && 'code' in error && error.code === code;
}
