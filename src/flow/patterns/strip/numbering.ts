/** Lists of whole numbers, each distinct one under a number of its own, in the order in which they turned up. */
export interface Numbering {
  /** Of list i the entries from[i] up to from[i + 1]. */
  readonly lists: number[];
  readonly from: number[];
  /** Numbers of the lists by a hash of them. */
  readonly byHash: Map<number, number | number[]>;
}

/** No lists yet. */
export function openNumbering(): Numbering {
  return { lists: [], from: [0], byHash: new Map() };
}

function isSame({ lists, from }: Numbering, number: number, list: readonly number[]): boolean {
  const begin = from[number]!;
  if (from[number + 1]! - begin !== list.length) return false;
  for (let i = 0; i < list.length; i += 1) if (lists[begin + i] !== list[i]) return false;
  return true;
}

/** The number of this list; a new one, and the list copied, when it is not known yet. */
export function numberFor(numbering: Numbering, list: readonly number[]): number {
  // FNV-1a over whole numbers instead of bytes (Fowler, Noll and Vo 1991).
  let hash = 0x811c9dc5 | 0;
  for (let i = 0; i < list.length; i += 1) hash = Math.imul(hash ^ list[i]!, 0x01000193);
  const { lists, from, byHash } = numbering;
  const known = byHash.get(hash);
  if (typeof known === 'number') {
    if (isSame(numbering, known, list)) return known;
  } else if (known !== undefined) {
    for (const number of known) if (isSame(numbering, number, list)) return number;
  }
  const number = from.length - 1;
  for (let i = 0; i < list.length; i += 1) lists.push(list[i]!);
  from.push(lists.length);
  if (known === undefined) byHash.set(hash, number);
  else byHash.set(hash, typeof known === 'number' ? [known, number] : [...known, number]);
  return number;
}
