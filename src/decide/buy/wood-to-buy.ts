import { type Wood, isAskedFor } from '../../flow/parts/match.ts';
import type { Part } from '../../flow/parts/part.ts';
import type { Board } from '../../flow/stock/board.ts';
import { speciesKey } from '../../trade/species.ts';

/** The entry with the most to its name; the first of equals, null where there is none. */
function most<T>(given: readonly T[], keyOf: (one: T) => string, sizeOf: (one: T) => number): T | null {
  const sums = new Map<string, { readonly first: T; readonly sum: number }>();
  for (const one of given) {
    const known = sums.get(keyOf(one)) ?? { first: one, sum: 0 };
    sums.set(keyOf(one), { ...known, sum: known.sum + sizeOf(one) });
  }
  let best: { readonly first: T; readonly sum: number } | null = null;
  for (const entry of sums.values()) if (entry.sum > (best?.sum ?? 0)) best = entry;
  return best?.first ?? null;
}

const areaOf = ({ quantity, length, width }: Part | Board): number => quantity * length * width;

/**
 * The species to buy for parts that name none: the one that most of the parts ask for, by area; else that of most of the
 * owned wood; empty where nothing says.
 */
export function usualSpecies(parts: readonly Part[], boards: readonly Board[]): string {
  const key = ({ species }: { readonly species: string }): string => speciesKey(species);
  const named = parts.filter(({ species }) => species !== '');
  return (most<Part | Board>(named, key, areaOf) ?? most<Part | Board>(boards, key, areaOf))?.species ?? '';
}

/**
 * What bought boards are taken to be: a buyer carries a piece of his own wood to the yard and matches it. That is the
 * species and tone of most of the owned wood that may be taken where `species` is asked for, by area; where none is owned,
 * the species asked for, in no tone.
 */
export function woodToMatch(boards: readonly Board[], species: string): Wood {
  const own = boards.filter((board) => isAskedFor(board.species, species));
  const key = (board: Board): string => JSON.stringify([speciesKey(board.species), board.tone]);
  const found = most(own, key, areaOf);
  return found === null ? { species, tone: '' } : { species: found.species, tone: found.tone };
}
