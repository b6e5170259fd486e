import { printCaution } from '../print-problem.ts';
import type { Implausible } from '../read/problem.ts';
import type { World } from './world.ts';

/** Says on stderr what of the files may be meant as it stands, and is hardly; the command goes on. */
export function sayCautions(cautions: readonly Implausible[], world: World): void {
  for (const caution of cautions) world.stderr.write(`${printCaution(caution)}\n`);
}
