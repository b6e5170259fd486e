const longestStem = 40;

/**
 * File names for drawings of boards, in their order: any board name becomes a harmless one, and two that would meet
 * in one file (on a disk that minds no capitals, too) are told apart by a number.
 * @param boards name and copy of each board
 * @example boardFileNames([{ board: '../x', copy: 1 }]) // ['board-x.svg']
 */
export function boardFileNames(
  boards: readonly { readonly board: string; readonly copy: number }[],
): string[] {
  const taken = new Set<string>();
  return boards.map(({ board, copy }) => {
    const stem = `board-${harmless(board)}${copy > 1 ? `-copy-${copy}` : ''}`;
    for (let number = 1; ; number += 1) {
      const name = `${number === 1 ? stem : `${stem}-${number}`}.svg`;
      if (taken.has(name.toLowerCase())) continue;
      taken.add(name.toLowerCase());
      return name;
    }
  });
}

/** ASCII letters, digits and single hyphens: legal on every disk, quoted in no shell, hidden nowhere. */
function harmless(name: string): string {
  const plain = name
    .slice(0, 4 * longestStem)
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-+/, '')
    .slice(0, longestStem)
    .replace(/-+$/, '');
  return plain === '' ? 'unnamed' : plain;
}
