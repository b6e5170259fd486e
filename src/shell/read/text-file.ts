import { stat } from 'node:fs/promises';
import { type Place, type Result, failure, success } from '../../index.ts';
import { boundedBytes, largestFile } from './bounded-bytes.ts';
import type { FileProblem } from './problem.ts';

/**
 * Reads one file of a job as UTF-8 text, byte-order mark included.
 * @param shown the name to give in problems
 * @returns null when there is no such file
 */
export async function readTextFile(path: string, shown: string): Promise<Result<string | null, FileProblem>> {
  try {
    const read = await boundedBytes(path);
    switch (read.kind) {
      case 'bytes':
        return decoded(read.bytes, shown);
      case 'folder':
        return failure([{ kind: 'file is a folder', file: shown }]);
      case 'not regular':
        return failure([{ kind: 'no regular file', file: shown, what: read.what }]);
      case 'too large':
        return failure([{ kind: 'file too large', file: shown, bytes: read.bytes, most: largestFile }]);
    }
  } catch (error) {
    const code = errorCode(error);
    if (code === 'ENOENT') return success(null);
    return failure([{ kind: 'file unreadable', file: shown, code }]);
  }
}

/** Whether a job folder is there; null when it is. */
export async function folderFault(folder: string): Promise<FileProblem | null> {
  try {
    return (await stat(folder)).isDirectory() ? null : { kind: 'folder is a file', folder };
  } catch (error) {
    const code = errorCode(error);
    return code === 'ENOENT'
      ? { kind: 'no folder', folder }
      : { kind: 'file unreadable', file: folder, code };
  }
}

/**
 * The system's short name for what went wrong, such as `EACCES`.
 * @throws the error itself when the system did not make it: then it is a bug of ours
 */
export function errorCode(error: unknown): string {
  if (error instanceof Error && 'code' in error && typeof error.code === 'string') return error.code;
  throw error;
}

/** The bytes as text, or the place of the first that is no UTF-8. */
export function decoded(bytes: Uint8Array, shown: string): Result<string, FileProblem> {
  try {
    return success(new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes));
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    const isUtf16 = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
    const at = firstBadPlace(bytes, shown);
    return failure([{ kind: 'not UTF-8', at, looksLike: isUtf16 ? 'UTF-16' : 'something else' }]);
  }
}

/** By halving: the longest start of the bytes that is UTF-8, if perhaps with a character cut short at its end. */
function firstBadPlace(bytes: Uint8Array, file: string): Place {
  let good = 0;
  let bad = bytes.length + 1;
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    if (startsWell(bytes.subarray(0, middle))) good = middle;
    else bad = middle;
  }
  const lines = new TextDecoder('utf-8').decode(bytes.subarray(0, good), { stream: true }).split(/\r\n?|\n/);
  const column = Array.from(lines.at(-1) ?? '').length + 1;
  return { file, line: lines.length, column };
}

function startsWell(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: true });
    return true;
  } catch {
    return false;
  }
}
