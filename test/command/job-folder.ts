import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { scratchFolder } from './test-world.ts';

/** Texts of a job's files by name. */
export type JobTexts = Readonly<Record<string, string>>;

/** Two clear boards and three parts that fit them well: the plain case that each hostile one bends. */
export const plainJob: JobTexts = {
  'shop.csv': 'setting,value\nunits,in\nrip kerf,1/8\ncrosscut kerf,1/8\n',
  'parts.csv': 'part,quantity,length,width,thickness\nfront,1,40,5 1/2,3/4\nside,2,12 1/2,5 1/2,3/4\n',
  'boards.csv':
    'board,quantity,length,width,thickness,surface,price\nB1,1,72,7 1/4,4/4,rough,30\nB2,1,48,6 1/2,4/4,rough,20\n',
  'defects.csv': 'board,kind,face,from,to,low,high\nB1,sound knot,A,50,51 1/2,2,3\n',
};

/** Writes the files of a job into a fresh folder; null takes one of the plain job's away. Returns the folder. */
export function jobFolder(changes: Readonly<Record<string, string | Buffer | null>> = {}): string {
  const folder = join(scratchFolder(), 'job');
  mkdirSync(folder);
  for (const [name, text] of Object.entries({ ...plainJob, ...changes }))
    if (text !== null) writeFileSync(join(folder, name), text);
  return folder;
}

/** Every name below a folder, hidden ones too: to see that no half-written file is left. */
export function namesBelow(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort();
}
