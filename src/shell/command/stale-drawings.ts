import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { parseLayout } from '../../index.ts';
import { readTextFile } from '../read/text-file.ts';
import { boardFileNames } from './file-names.ts';
import { jsonOf } from './json-of.ts';

/**
 * The board drawings that the last layout in a folder wrote, by its own `layout.json`. A drawing of a board that is no
 * longer cut would be cut all the same; any other file of the user's is not ours to touch.
 */
export async function lastDrawings(folder: string): Promise<string[]> {
  const text = await readTextFile(join(folder, 'layout.json'), 'layout.json');
  const layout = parseLayout(text.ok && text.value !== null ? jsonOf(text.value) : undefined);
  return layout.ok ? boardFileNames(layout.value.boards) : [];
}

/** Takes away those of them that the new layout did not write again. */
export async function removeStale(
  folder: string,
  last: readonly string[],
  written: readonly { readonly name: string }[],
): Promise<void> {
  const kept = new Set(written.map(({ name }) => name));
  for (const name of last) if (!kept.has(name)) await rm(join(folder, name), { force: true });
}
