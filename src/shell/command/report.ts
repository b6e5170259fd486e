import type { World } from './world.ts';

/**
 * Says on standard output what a deed has done. Where that fails, standard error says that the deed stands all the
 * same, so that nobody does it twice.
 * @param stands such as `rack.csv: booking 3 was made`
 * @throws the system's error: the command ends by it
 */
export function report(text: string, stands: string, world: World): void {
  try {
    world.stdout.write(text);
  } catch (error) {
    world.stderr.write(`${stands}\n`);
    throw error;
  }
}
