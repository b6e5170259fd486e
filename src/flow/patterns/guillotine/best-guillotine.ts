import type { Kind, Plate } from '../plate.ts';
import type { GuillotineAnswer, GuillotineOptions } from './prepare-guillotine.ts';
import { prepareGuillotine } from './prepare-guillotine.ts';

/**
 * The guillotine pattern of one plate that is worth most: cuts nested as deep as the plate's stages say, each kind
 * within its cap, kerf, clearances and the shortest rip kept to the tick.
 *
 * `proven` means that no better pattern exists; else `bound` says how much better one could be. The same input gives
 * the same answer on any machine: effort counts steps, not seconds.
 * @param worth of one piece by kind; kinds worth 0 or less are not cut
 * @example bestGuillotine(plate, kinds, [5, 3], { work: 1e8, seed: 1 }).pattern.value
 */
export function bestGuillotine(
  plate: Plate,
  kinds: readonly Kind[],
  worth: Float64Array | readonly number[],
  options: GuillotineOptions,
): GuillotineAnswer {
  return prepareGuillotine(plate, kinds).price(worth, undefined, options);
}
