import type { Command, CommanderError } from 'commander';
import { closeTo } from '../wording.ts';

/**
 * How to mend a command line that the argument reader refused: the command or option that was meant, by the same
 * measure as for names in files; or how the command is written. Null where its own words say enough.
 * @param args the command line as given
 */
export function argumentMend(
  { code, message }: CommanderError,
  program: Command,
  args: readonly string[],
): string | null {
  const command = commandOf(program, args);
  const called = [program.name(), ...pathOf(command)].join(' ');
  const help = `"${called} --help" tells`;
  const [, written = ''] = /'([^']*)'/.exec(message) ?? [];
  switch (code) {
    case 'commander.unknownCommand':
      return meant(
        written,
        command.commands.map((one) => one.name()),
        help,
      );
    case 'commander.unknownOption':
      return meant(written, optionsOf(command), help);
    case 'commander.missingArgument':
    case 'commander.excessArguments':
      return `write "${called} ${command.usage()}"; ${help}`;
    default:
      return null;
  }
}

function meant(written: string, known: readonly string[], help: string): string {
  const near = closeTo(bare(written), known.map(bare));
  const name = known.find((one) => near === `"${bare(one)}"`);
  return name === undefined ? help : `did you mean ${name}? ${help}`;
}

/** Without the dashes, which would count as letters that are right. */
function bare(name: string): string {
  return name.replace(/^-+/, '');
}

function optionsOf(command: Command): string[] {
  const own = command.options.flatMap(({ long }) => (long === undefined || long === null ? [] : [long]));
  return [...own, '--help'];
}

/** The command that the line names, as far as it names one. */
function commandOf(program: Command, args: readonly string[]): Command {
  let command = program;
  for (const arg of args) {
    const next = command.commands.find((one) => one.name() === arg);
    if (next === undefined) break;
    command = next;
  }
  return command;
}

function pathOf(command: Command): string[] {
  const path: string[] = [];
  for (let at = command; at.parent !== null; at = at.parent) path.unshift(at.name());
  return path;
}
