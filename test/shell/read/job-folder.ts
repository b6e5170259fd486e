import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';

/** A scratch folder for the tests of one file, removed after them. */
export function scratchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'mantelwright-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Writes a job folder below another: file name to content. */
export function jobFolder(
  below: string,
  name: string,
  files: Readonly<Record<string, string | Uint8Array>>,
): string {
  const folder = join(below, name);
  mkdirSync(folder, { recursive: true });
  for (const [file, content] of Object.entries(files)) writeFileSync(join(folder, file), content);
  return folder;
}
