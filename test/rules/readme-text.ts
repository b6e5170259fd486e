import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './source-files.ts';

/** Commands that the README shows: the lines of its `sh` blocks, in order, and inline ones that name the program. */
export function shownCommands(readme: string): string[] {
  const blocks = [...readme.matchAll(/^```sh\n([\s\S]*?)^```$/gm)].flatMap(([, block = '']) =>
    block.split('\n').filter((line) => line.trim() !== ''),
  );
  const inline = [...readme.replace(/^```[\s\S]*?^```$/gm, '').matchAll(/`((?:node|npm|npx) [^`]+)`/g)];
  return [...blocks, ...inline.map(([, command = '']) => command)];
}

/** The rows of the first table under a heading, cells trimmed, heading row left out. */
export function tableUnder(readme: string, heading: string): string[][] {
  const after = readme.split(`\n${heading}\n`)[1] ?? '';
  const lines = after.split('\n');
  const first = lines.findIndex((line) => line.startsWith('|'));
  const rows: string[][] = [];
  for (const line of lines.slice(first)) {
    if (!line.startsWith('|')) break;
    rows.push(
      line
        .slice(1, line.lastIndexOf('|'))
        .split(/(?<!\\)\|/)
        .map((cell) => cell.trim()),
    );
  }
  return rows.slice(2);
}

/** The README as it stands. */
export function readReadme(): string {
  return readFileSync(join(root, 'README.md'), 'utf8');
}
