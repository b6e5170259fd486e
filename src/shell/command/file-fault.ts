import { systemReason } from '../system-reason.ts';

const verbs: ReadonlyMap<string, string> = new Map([
  ['open', 'open'],
  ['read', 'read'],
  ['scandir', 'read'],
  ['stat', 'read'],
  ['mkdir', 'make'],
  ['write', 'write'],
  ['rename', 'write'],
]);

/**
 * What a failed file operation means to the person at the keyboard, or null when the error is none: `cannot write
 * out/sheet.html: permission denied`.
 * @param error whatever was thrown
 */
export function fileFault(error: unknown): string | null {
  if (!(error instanceof Error) || !('syscall' in error) || !('code' in error)) return null;
  const code = String(error.code);
  const path = 'dest' in error ? String(error.dest) : 'path' in error ? String(error.path) : 'a file';
  const verb = verbs.get(String(error.syscall)) ?? 'use';
  return `cannot ${verb} ${path}: ${systemReason(code)}`;
}
