import { resolve } from 'node:path';
import { type Layout, describeShapeProblem, parseLayout } from '../../index.ts';
import { readTextFile } from '../read/text-file.ts';
import { exitCodes, exitWith, orEnd } from './end.ts';
import { jsonOf } from './json-of.ts';
import { shownPath } from './shown-path.ts';
import type { World } from './world.ts';

/** A layout file, read, and how it is called in messages. */
export interface ReadLayout {
  readonly shown: string;
  readonly layout: Layout;
}

/**
 * Reads a layout file, or ends the command with what is wrong with it.
 * @param missing what to do where there is no such file
 */
export async function readLayout(file: string, missing: string, world: World): Promise<ReadLayout> {
  const path = resolve(world.cwd, file);
  const shown = shownPath(path, world);
  const refuse = (lines: readonly string[]): never => {
    world.stderr.write(lines.map((line) => `${shown}: ${line}\n`).join(''));
    return exitWith(exitCodes.badInput);
  };
  const text = orEnd(await readTextFile(path, shown), world);
  if (text === null) return refuse([`no such file\n  mend: ${missing}`]);
  const json = jsonOf(text);
  if (json === undefined) return refuse(['this is not JSON']);
  const layout = parseLayout(json);
  return layout.ok ? { shown, layout: layout.value } : refuse(layout.problems.map(describeShapeProblem));
}
