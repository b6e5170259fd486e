import { Command, CommanderError } from 'commander';
import { argumentMend } from './argument-mend.ts';
import { exitCodes } from './end.ts';
import { fileFault } from './file-fault.ts';
import { registerAll } from './program.ts';
import type { World } from './world.ts';

/**
 * Runs one command line.
 * @param args what stands after the command's name
 * @returns the exit code; never throws, and never prints a stack trace unless MANTELWRIGHT_TRACE is set
 */
export async function run(args: readonly string[], world: World): Promise<number> {
  const program = registerAll(plainCommand(world), world);
  try {
    await program.parseAsync([...args], { from: 'user' });
    return exitCodes.done;
  } catch (error) {
    if (error instanceof CommanderError) {
      const mend = argumentMend(error, program, args);
      if (mend !== null) world.stderr.write(`  mend: ${mend}\n`);
    }
    return endOf(error, world);
  }
}

/** An argument reader that prints through the world and throws where it would end the process. */
function plainCommand(world: World): Command {
  return new Command('mantelwright').exitOverride().configureOutput({
    writeOut: (text) => world.stdout.write(text),
    writeErr: (text) => world.stderr.write(text),
    outputError: (text, write) => write(text.replace(/^error: /, 'mantelwright: ')),
    getOutHasColors: () => false,
    getErrHasColors: () => false,
  });
}

function endOf(error: unknown, world: World): number {
  if (error instanceof CommanderError) {
    if (error.code === 'mantelwright.exit' || error.exitCode === 0) return error.exitCode;
    return exitCodes.badInput;
  }
  if (world.env['MANTELWRIGHT_TRACE'] === '1' && error instanceof Error)
    world.stderr.write(`${error.stack ?? error.message}\n`);
  const fault = fileFault(error);
  if (fault !== null) {
    world.stderr.write(`mantelwright: ${fault}\n`);
    return exitCodes.badInput;
  }
  const words = error instanceof Error ? error.message : String(error);
  world.stderr.write(
    `mantelwright: a fault of the program, not of your files: ${words.split('\n')[0] ?? ''}\n` +
      '  please report it with the job folder; MANTELWRIGHT_TRACE=1 shows where it arose\n',
  );
  return exitCodes.ownFault;
}
