import { type Provenance, speciesTable } from './species-table.ts';

/** What the handbook knows of one species. */
export interface Species {
  /** As the handbook files it: `Oak, white`. */
  readonly name: string;
  /** Shrinkage from green to ovendry, % of the green size. */
  readonly radial: number;
  readonly tangential: number;
  readonly volumetric: number;
  readonly shrinkageFrom: Provenance;
  /** Change in size per 1 % moisture content, from 6 to 14 %: C_R and C_T of equation 13-2. */
  readonly radialChange: number;
  readonly tangentialChange: number;
  readonly changeFrom: Provenance;
  /** Specific gravity at 12 % moisture content; null where none is at hand. */
  readonly gravity: number | null;
  readonly gravityFrom: Provenance | null;
}

/** All species of the table, in its order. Source: see `species-table.ts`. */
export const allSpecies: readonly Species[] = speciesTable.map(
  ([
    name,
    radial,
    tangential,
    volumetric,
    shrinkageFrom,
    radialChange,
    tangentialChange,
    changeFrom,
    gravity,
    from,
  ]) => ({
    name,
    radial,
    tangential,
    volumetric,
    shrinkageFrom,
    radialChange,
    tangentialChange,
    changeFrom,
    gravity,
    gravityFrom: from,
  }),
);

/** Yard names that the handbook's names do not contain. Common practice, no source. */
const yardNames: ReadonlyMap<string, readonly string[]> = new Map([
  ['hard maple', ['Maple, sugar']],
  ['rock maple', ['Maple, sugar']],
  ['soft maple', ['Maple, red', 'Maple, silver', 'Maple, bigleaf']],
  ['tulip poplar', ['Yellow-poplar']],
  ['tulipwood', ['Yellow-poplar']],
  ['cypress', ['Baldcypress']],
  ['basswood', ['Basswood, American']],
  ['white pine', ['Pine, eastern white']],
  ['yellow pine', ['Pine, loblolly', 'Pine, longleaf']],
  ['southern yellow pine', ['Pine, loblolly', 'Pine, longleaf']],
  ['douglas fir', ['Douglas-fir, coast']],
]);

/**
 * The species that a maker's word can mean: those whose name holds every word of it. `oak` gives all oaks, `cherry`
 * one species, an unknown word none; a name in full gives that species alone.
 * @returns in the table's order
 * @example speciesCalled('white oak').map(({ name }) => name) // ['Oak, white']
 */
export function speciesCalled(text: string): readonly Species[] {
  const asked = words(text);
  if (asked.length === 0) return [];
  const yard = yardNames.get(asked.join(' '));
  if (yard !== undefined) return allSpecies.filter(({ name }) => yard.includes(name));
  const holding = allSpecies.filter((_, at) => asked.every((word) => handbookWords[at]!.includes(word)));
  const exact = holding.filter(({ name }) => words(name).length === asked.length);
  return exact.length > 0 ? exact : holding;
}

/**
 * One text for all names of a species: the handbook's names for what a word can mean, else the word itself, its case and
 * spaces aside; empty for none.
 * @example speciesKey('cherry') === speciesKey('Black Cherry') // true
 */
export function speciesKey(text: string): string {
  const known = speciesCalled(text);
  return known.length > 0 ? known.map(({ name }) => name).join('; ') : folded(text);
}

/**
 * Whether wood called one thing is what another word asks for: by the handbook's names, all that the first can mean is
 * among what the second can (red oak is oak, oak need not be red oak); names that it does not know must be the same.
 */
export function isWoodOf(called: string, asked: string): boolean {
  const [own, wanted] = [speciesCalled(called), speciesCalled(asked)];
  if (own.length === 0 || wanted.length === 0) return folded(called) === folded(asked);
  return own.every((species) => wanted.includes(species));
}

function folded(text: string): string {
  return text.trim().toLowerCase().replace(/\s+/g, ' ');
}

/** The words of each name of the table. */
const handbookWords: readonly (readonly string[])[] = allSpecies.map(({ name }) => words(name));

function words(text: string): string[] {
  return text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');
}
