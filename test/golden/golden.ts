import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';

const folder = fileURLToPath(new URL('../../fixtures/golden/', import.meta.url));

/**
 * Compares text with a golden file. A golden that is missing or differs fails the test; the new text is written
 * beside it as `NAME.changed.EXT`, to be looked at. Only ACCEPT_GOLDEN=1 makes the new text the golden.
 * @param name below fixtures/golden, with its extension
 */
export function expectGolden(name: string, text: string): void {
  const path = join(folder, name);
  const changed = changedPath(path);
  const golden = existsSync(path) ? readFileSync(path, 'utf8') : null;
  if (golden === text) {
    rmSync(changed, { force: true });
    return;
  }
  mkdirSync(dirname(path), { recursive: true });
  if (process.env['ACCEPT_GOLDEN'] === '1') {
    writeFileSync(path, text);
    rmSync(changed, { force: true });
    return;
  }
  writeFileSync(changed, text);
  const what = golden === null ? 'is missing' : `differs from line ${firstDifference(golden, text)} on`;
  expect.fail(
    `golden ${name} ${what}: look at ${changedPath(name)} beside it, then run npm run accept-golden`,
  );
}

/** `b.svg` as `b.changed.svg`. */
export function changedPath(path: string): string {
  const end = extname(path);
  return `${path.slice(0, path.length - end.length)}.changed${end}`;
}

/** The first line, from 1, in which two texts differ. */
export function firstDifference(a: string, b: string): number {
  const [linesA, linesB] = [a.split('\n'), b.split('\n')];
  const index = linesA.findIndex((line, at) => line !== linesB[at]);
  return index < 0 ? linesA.length + 1 : index + 1;
}
