const reasons: ReadonlyMap<string, string> = new Map([
  ['EACCES', 'permission denied'],
  ['EPERM', 'permission denied'],
  ['EROFS', 'the disk is read-only'],
  ['ENOSPC', 'the disk is full'],
  ['EDQUOT', 'the disk quota is used up'],
  ['ENOENT', 'no such file or folder'],
  ['ENOTDIR', 'a part of the path is a file, not a folder'],
  ['EISDIR', 'it is a folder, not a file'],
  ['EEXIST', 'something of that name is there already'],
  ['ENOTEMPTY', 'the folder is not empty'],
  ['EMFILE', 'too many files are open'],
  ['ENAMETOOLONG', 'the name is too long'],
  ['ELOOP', 'links lead in a circle'],
  ['EIO', 'the disk could not be read or written'],
]);

/**
 * What a failed file operation means to the person at the keyboard, or null when the error is none: `cannot write
 * out/sheet.html: permission denied`.
 * @param error whatever was thrown
 */
export function fileFault(error: unknown): string | null {
  if (!(error instanceof Error) || !('syscall' in error) || !('code' in error)) return null;
  const reason = reasons.get(String(error.code));
  if (reason === undefined) return null;
  const path = 'dest' in error ? String(error.dest) : 'path' in error ? String(error.path) : 'a file';
  const reading = ['scandir', 'read', 'stat', 'lstat', 'access'].includes(String(error.syscall));
  return `cannot ${reading ? 'read' : 'use'} ${path}: ${reason}`;
}
