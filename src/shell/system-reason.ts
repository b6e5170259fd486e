const reasons: ReadonlyMap<string, string> = new Map([
  ['EACCES', 'permission denied'],
  ['EPERM', 'permission denied'],
  ['EROFS', 'the disk is read-only'],
  ['ENOSPC', 'the disk is full'],
  ['EDQUOT', 'the disk quota is used up'],
  ['EFBIG', 'the file would be too large for the disk'],
  ['EAGAIN', 'it would have to be waited for'],
  ['ENXIO', 'nothing is at its other end'],
  ['ENOENT', 'no such file or folder'],
  ['ENOTDIR', 'a part of the path is a file, not a folder'],
  ['EISDIR', 'a folder of that name is in the way'],
  ['ENAMETOOLONG', 'the name is too long'],
  ['ELOOP', 'links lead in a circle'],
  ['ERR_INVALID_ARG_VALUE', 'the name holds a sign that no file name can'],
]);

/** What the system's short name of a failure (`EACCES`) means to a person. */
export function systemReason(code: string): string {
  return reasons.get(code) ?? code;
}
