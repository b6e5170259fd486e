import fs from 'node:fs';
import { type FileHandle, open, stat } from 'node:fs/promises';
import { type NotRegular, notRegular } from '../not-regular.ts';

/** A larger file is no file of ours: a rack of 100,000 entries is some 20 MB. */
export const largestFile = 64 * 1024 * 1024;

/** Why a file is not read. */
export type NotRead =
  | { readonly kind: 'folder' }
  | { readonly kind: 'not regular'; readonly what: NotRegular }
  | { readonly kind: 'too large'; readonly bytes: number };

/** What came of reading a file. */
export type BoundedBytes = { readonly kind: 'bytes'; readonly bytes: Buffer } | NotRead;

/** Never waits for anything: what a made-up file of the system does not give at once, it fails to give. */
const atOnce = fs.constants.O_RDONLY | (fs.constants.O_NONBLOCK ?? 0);

const chunk = 1 << 16;

/**
 * All bytes of a regular file. A device or pipe is not even opened, and the reading ends at `largestFile`, even where
 * the system tells no size (as for the files that it makes up itself) or another program goes on writing.
 * @throws the system's error when the file cannot be read, or is not there
 */
export async function boundedBytes(path: string): Promise<BoundedBytes> {
  const about = await stat(path);
  const refusal = refusalOf(about);
  if (refusal !== null) return refusal;
  const handle = await open(path, atOnce);
  try {
    return await readAll(handle, about.size);
  } finally {
    await handle.close();
  }
}

/** The same, at once: for a reader who holds a lock. */
export function boundedBytesNow(path: string): BoundedBytes {
  const about = fs.statSync(path);
  const refusal = refusalOf(about);
  if (refusal !== null) return refusal;
  const handle = fs.openSync(path, atOnce);
  try {
    const chunks: Buffer[] = [];
    for (let total = 0; total <= largestFile;) {
      const room = roomFor(about.size, total);
      const took = fs.readSync(handle, room);
      if (took === 0) return { kind: 'bytes', bytes: Buffer.concat(chunks, total) };
      chunks.push(room.subarray(0, took));
      total += took;
    }
    return tooLarge;
  } finally {
    fs.closeSync(handle);
  }
}

async function readAll(handle: FileHandle, size: number): Promise<BoundedBytes> {
  const chunks: Buffer[] = [];
  for (let total = 0; total <= largestFile;) {
    const room = roomFor(size, total);
    const { bytesRead } = await handle.read(room, 0, room.length);
    if (bytesRead === 0) return { kind: 'bytes', bytes: Buffer.concat(chunks, total) };
    chunks.push(room.subarray(0, bytesRead));
    total += bytesRead;
  }
  return tooLarge;
}

/** One byte more than is left, so that most files take one read, and one more to see that they have ended. */
function roomFor(size: number, total: number): Buffer {
  return Buffer.allocUnsafe(Math.max(chunk, size + 1 - total));
}

const tooLarge: NotRead = { kind: 'too large', bytes: largestFile + 1 };

function refusalOf(about: fs.Stats): NotRead | null {
  const what = notRegular(about);
  if (what !== null) return { kind: 'not regular', what };
  if (about.isDirectory()) return { kind: 'folder' };
  return about.size > largestFile ? { kind: 'too large', bytes: about.size } : null;
}
