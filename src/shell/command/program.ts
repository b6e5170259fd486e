import type { Command } from 'commander';
import { register as buy } from './buy.ts';
import { register as check } from './check.ts';
import { register as faces } from './faces.ts';
import { helpText } from './help-text.ts';
import { register as layout } from './layout.ts';
import { register as newJob } from './new.ts';
import { register as plan } from './plan.ts';
import { register as rack } from './rack.ts';
import { register as tally } from './tally.ts';
import { version } from './version.ts';
import type { World } from './world.ts';

/** Every command, in the order of `--help`: one file and one line here for each. */
const commands: readonly ((program: Command, world: World) => void)[] = [
  newJob,
  plan,
  layout,
  faces,
  check,
  tally,
  buy,
  rack,
];

/** Gives the argument reader its commands and their help. */
export function registerAll(program: Command, world: World): Command {
  program
    .description(
      'From wall measurements of a mantel, and a pile of measured boards, to checked rip and crosscut diagrams.',
    )
    .version(version(), '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print this')
    .showSuggestionAfterError(false)
    .addHelpText('after', helpText());
  for (const register of commands) register(program, world);
  return program;
}
