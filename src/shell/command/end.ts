import { CommanderError } from 'commander';
import type { LengthStyle, Result } from '../../index.ts';
import { type Problem, printProblems } from '../print-problem.ts';
import type { World } from './world.ts';

/** Exit codes (README): 0 is success, 1 a layout with parts short, 2 bad input, 70 a fault of the program itself. */
export const exitCodes = { done: 0, short: 1, badInput: 2, ownFault: 70 } as const;

/**
 * Ends the running command with this exit code; what had to be said has been said.
 * @throws CommanderError always: the way out that the argument reader uses for its own endings
 */
export function exitWith(code: number): never {
  throw new CommanderError(code, 'mantelwright.exit', '');
}

/** Ends a command that was ended before there was anything to show, and says so. */
export function nothingYet(ended: 'done' | 'interrupted' | 'out of time', world: World): never {
  const why = ended === 'interrupted' ? 'by Ctrl-C' : 'at the time limit';
  world.stderr.write(`mantelwright: stopped ${why}, and nothing was found yet: nothing is written\n`);
  return exitWith(exitCodes.badInput);
}

/**
 * The value of a result; or the end of the command, all its problems told on stderr.
 * @param style how lengths are printed in problems that have no file
 */
export function orEnd<T>(result: Result<T, Problem>, world: World, style?: LengthStyle): T {
  if (result.ok) return result.value;
  world.stderr.write(`${printProblems(result.problems, style)}\n`);
  return exitWith(exitCodes.badInput);
}
