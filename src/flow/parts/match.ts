import { isWoodOf, speciesKey } from '../../trade/species.ts';
import type { Part } from './part.ts';

/** What of a board must match another's: its species and its tone, as its row gives them. */
export interface Wood {
  readonly species: string;
  readonly tone: string;
}

/** Boards that match each other: of these names of species, which mean one wood or what a part asks for; of one tone. */
export interface Match {
  /** As the boards are written; null: any. */
  readonly species: readonly string[] | null;
  /** Null: any. */
  readonly tone: string | null;
}

/**
 * Whether the part may come from this wood: within its match where it is bound to one, else of the species it names. Wood
 * without a species is taken for what is asked for.
 */
export function suits({ species, match }: Pick<Part, 'species' | 'match'>, wood: Wood): boolean {
  if (match !== undefined && match.tone !== null && match.tone !== wood.tone) return false;
  if (match !== undefined && match.species !== null) return match.species.includes(wood.species);
  return isAskedFor(wood.species, species);
}

/** Whether wood written so may be taken where a part names this species; wood without a species may, and so may any where none is named. */
export function isAskedFor(written: string, asked: string): boolean {
  return written === asked || asked === '' || written === '' || isWoodOf(written, asked);
}

/**
 * The species and tones of some wood, each pair once, in order of appearance. Names that mean one species come together;
 * wood without a species, or without a tone, matches its like only.
 */
export function matchesOf(woods: readonly Wood[]): Match[] {
  const keys = new Map<string, string>();
  const names = new Map<string, string[]>();
  const seen = new Map<string, { readonly key: string; readonly tone: string }>();
  for (const { species, tone } of woods) {
    const key = keys.get(species) ?? speciesKey(species);
    if (!keys.has(species)) names.set(key, [...(names.get(key) ?? []), species]);
    keys.set(species, key);
    seen.set(JSON.stringify([key, tone]), { key, tone });
  }
  return [...seen.values()].map(({ key, tone }) => ({ species: names.get(key)!, tone }));
}
