import { readFile, readdir } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Command } from 'commander';
import { blankFiles } from './blank-files.ts';
import { exitCodes, exitWith, orEnd } from './end.ts';
import { shownPath } from './shown-path.ts';
import type { World } from './world.ts';
import { type TextFile, writeTogether } from './write-together.ts';

/** The example that ships with the program: from here, the same path in the sources and in the built files. */
const exampleFolder = fileURLToPath(new URL('../../../fixtures/jobs/hearth/', import.meta.url));

/** `mantelwright new FOLDER`: a job to start from. Nothing that exists is ever overwritten. */
export function register(program: Command, world: World): void {
  program
    .command('new')
    .description('make a job folder to start from: a complete example with a README.txt, or blank files')
    .argument('<folder>', 'the folder to make, or one that holds no job yet')
    .option('--blank', 'only the column headings, and every setting with its default; and README.txt')
    .action(async (folder: string, options: { blank?: true }) => {
      const place = resolve(world.cwd, folder);
      const files = options.blank === true ? [await blankReadme(), ...blankFiles()] : await exampleFiles();
      const there = new Set(await namesIn(place));
      const taken = files.filter(({ name }) => there.has(name)).map(({ name }) => name);
      if (taken.length > 0) {
        world.stderr.write(
          `mantelwright: ${shownPath(place, world)} already holds ${taken.join(', ')}; nothing was written\n` +
            '  mend: name another folder\n',
        );
        exitWith(exitCodes.badInput);
      }
      orEnd(await writeTogether(place, files, world), world);
      const shown = shownPath(place, world);
      world.stdout.write(`${shown}: ${files.map(({ name }) => name).join(', ')}\n`);
      world.stdout.write(nextSteps(shown));
    });
}

async function exampleFiles(): Promise<TextFile[]> {
  const names = (await readdir(exampleFolder)).filter((name) => /\.(?:csv|txt)$/.test(name)).sort();
  return Promise.all(
    names.map(async (name) => ({ name, text: await readFile(join(exampleFolder, name), 'utf8') })),
  );
}

/** The example's README.txt without what is true of the example alone. */
async function blankReadme(): Promise<TextFile> {
  const name = 'README.txt';
  const paragraphs = (await readFile(join(exampleFolder, name), 'utf8')).split('\n\n');
  return { name, text: paragraphs.filter((text) => !text.startsWith('The scene:')).join('\n\n') };
}

/** The job in its order, as commands to type. */
function nextSteps(shown: string): string {
  const job = /\s/.test(shown) ? `"${shown}"` : shown;
  return `Next, in this order (${join(shown, 'README.txt')} explains each file):
  1. Measure   write your wall into legs.csv, and what the mantel is to be into mantel.csv
  2. Plan      mantelwright plan ${job}
  3. Look      at the report and the drawings: is this the mantel you mean?
  4. Boards    mantelwright buy ${job}, then list your boards in boards.csv and their flaws in defects.csv
  5. Layout    mantelwright layout ${job}
  6. Book      mantelwright rack put ${job}, once it is cut
`;
}

/** Names in a folder; none when the folder is not there yet. */
async function namesIn(folder: string): Promise<string[]> {
  try {
    return await readdir(folder);
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return [];
    throw error;
  }
}
