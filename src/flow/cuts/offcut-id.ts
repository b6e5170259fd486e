/**
 * Names an offcut so that it can be written on the wood: board name, copy (where the board has several), letter:
 * `B3-a`, `poplar-2b`. Skips names already taken, so ids stay unique even for odd board names.
 * @param taken ids so far; the new one is added
 */
export function offcutId(board: string, copy: number | null, taken: Set<string>): string {
  for (let index = 0; ; index += 1) {
    const id = `${board}-${copy ?? ''}${letters(index)}`;
    if (taken.has(id)) continue;
    taken.add(id);
    return id;
  }
}

/** 0 → a, 25 → z, 26 → aa, as spreadsheet columns count. */
function letters(index: number): string {
  const last = String.fromCharCode(97 + (index % 26));
  return index < 26 ? last : letters(Math.floor(index / 26) - 1) + last;
}
