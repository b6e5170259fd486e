/**
 * FNV-1a over UTF-16 code units, with a seed and a final mix so that short texts spread: not a secret, only a spread.
 * @returns a whole number, 0 ≤ value < 2³²
 * Source: the offset basis and prime of the FNV reference (Fowler, Noll, Vo), the mix of MurmurHash3's finaliser.
 */
export function hash32(text: string, seed: number): number {
  let state = 0x811c9dc5 ^ seed;
  for (let index = 0; index < text.length; index += 1) {
    const unit = text.charCodeAt(index);
    state = Math.imul(state ^ (unit & 0xff), 0x01000193);
    state = Math.imul(state ^ (unit >>> 8), 0x01000193);
  }
  state = Math.imul(state ^ (state >>> 16), 0x85ebca6b);
  state = Math.imul(state ^ (state >>> 13), 0xc2b2ae35);
  return (state ^ (state >>> 16)) >>> 0;
}
