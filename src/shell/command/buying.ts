import { join } from 'node:path';
import type { DrawnGrade, Job } from '../../index.ts';
import type { Limit } from './drive.ts';
import { orEnd } from './end.ts';
import type { RackOption } from './open-stock.ts';
import { report } from './report.ts';
import { shownPath } from './shown-path.ts';
import type { PartsOptions } from './stale-parts.ts';
import { told } from './told.ts';
import type { World } from './world.ts';
import { type TextFile, writeTogether } from './write-together.ts';

/** Options of `buy` as they come from the argument reader. */
export interface BuyOptions extends RackOption, PartsOptions {
  readonly out?: string;
  readonly json?: true;
  readonly seed: number;
  readonly effort: number;
  readonly seconds?: number;
  readonly draws: number;
  readonly grades?: readonly DrawnGrade[];
  readonly prices?: ReadonlyMap<DrawnGrade, number>;
  readonly estimate?: true;
  readonly nothingOwned?: true;
  readonly runnerUps: number;
  readonly take?: true;
}

/** A job to be bought for: its boards are those owned and those of the rack. */
export interface Buying {
  readonly folder: string;
  readonly job: Job;
  readonly options: BuyOptions;
  readonly out: string;
  readonly limit: Limit;
}

/**
 * Writes the files of an answer, and prints it: as JSON alone, or in words with the page's place.
 * @param undone what is then not done, said where printing fails
 */
export async function answer(
  { options, out }: Buying,
  files: readonly TextFile[],
  words: { readonly text: string; readonly json: string },
  world: World,
  undone: string | null = null,
): Promise<void> {
  const print = (text: string): void => {
    if (undone === null) world.stdout.write(text);
    else report(text, undone, world);
  };
  const written = await writeTogether(out, files, world);
  if (options.json === true) {
    // The answer is on its way by stdout: files that nobody asked for by name may fail.
    if (options.out === undefined) told(written, world);
    else orEnd(written, world);
    print(words.json);
    return;
  }
  orEnd(written, world);
  print(`${words.text}\npage: ${shownPath(join(out, files[0]!.name), world)}\n`);
}
