const longestName = 80;
/** Most systems stop at 255 bytes; an ending such as `.changed.svg` must fit too. */
const mostBytes = 200;

// What a separator is, what some system forbids, what steers a terminal or turns the reading order, and broken signs.
const unusable = /[/\\:*?"<>|\p{Control}\p{Surrogate}\p{Format}\p{Unassigned}\u2028\u2029]+/gu;
const reservedOnWindows = /^(?:con|prn|aux|nul|conin\$|conout\$|com[0-9¹²³]|lpt[0-9¹²³])(?=$|\.)/i;

/**
 * A file name made of any text: no separator, no leading dot or hyphen, no name that some system keeps for itself, at
 * most 80 characters and 200 bytes, and none that differs from a taken one by capitals alone.
 * @param taken names in use; the caller adds the new one
 * @example sanitiseFileName('../x', new Set()) // 'x'
 */
export function sanitiseFileName(text: string, taken: ReadonlySet<string>): string {
  const used = new Set([...taken].map(sameOnDisk));
  // A huge name is cut before any work is done on it.
  const bare = cut(
    text
      .slice(0, 8 * longestName)
      .replace(unusable, '-')
      .normalize('NFC')
      .replace(/\s+/g, ' ')
      .replace(/^[-. ]+/, ''),
    longestName,
    mostBytes,
  );
  const stem = bare === '' ? 'unnamed' : bare.replace(reservedOnWindows, '$&-');
  if (!used.has(sameOnDisk(stem))) return stem;
  for (let number = 2; ; number += 1) {
    const ending = `-${number}`;
    const name = `${cut(stem, longestName - ending.length, mostBytes - ending.length)}${ending}`;
    if (!used.has(sameOnDisk(name))) return name;
  }
}

/** Names that fall together on some disk. */
function sameOnDisk(name: string): string {
  return name.normalize('NFC').toLowerCase();
}

/** The longest start within both limits, without the blanks, dots and hyphens at its end. */
function cut(text: string, characters: number, bytes: number): string {
  const encoder = new TextEncoder();
  let kept = '';
  let left = bytes;
  for (const character of Array.from(text).slice(0, characters)) {
    left -= encoder.encode(character).length;
    if (left < 0) break;
    kept += character;
  }
  return kept.replace(/[-. ]+$/, '');
}
