import { sanitiseFileName } from '../write/file-name.ts';

/**
 * File names for drawings of boards, in their order. Any board name becomes a harmless one, and no two meet in one file.
 * @param boards name and copy of each board
 * @example boardFileNames([{ board: '../x', copy: 1 }]) // ['board-..-x.svg']
 */
export function boardFileNames(
  boards: readonly { readonly board: string; readonly copy: number }[],
): string[] {
  const taken = new Set<string>();
  return boards.map(({ board, copy }) => {
    // Cut first, so that the copy's number is never cut off.
    const short = Array.from(sanitiseFileName(board, new Set())).slice(0, 50).join('');
    const name = sanitiseFileName(`board-${short}${copy > 1 ? `-copy-${copy}` : ''}`, taken);
    taken.add(name);
    return `${name}.svg`;
  });
}
