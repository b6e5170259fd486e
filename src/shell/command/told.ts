import type { Result } from '../../index.ts';
import { printProblems } from '../print-problem.ts';
import type { WriteProblem } from '../write/problem.ts';
import type { World } from './world.ts';

/** Whether it was written; what hindered it is told on stderr, and the command goes on. */
export function told(written: Result<void, WriteProblem>, world: World): boolean {
  if (!written.ok) world.stderr.write(`${printProblems(written.problems)}\n`);
  return written.ok;
}
