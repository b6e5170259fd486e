import type { Layout } from '../cuts/layout.ts';
import { hash32 } from './hash.ts';
import { identifierCharacters } from './identifier.ts';

const digits = 12;

/**
 * Twelve characters that tell layouts apart: boards, pieces and offcuts with their names and places, whatever order
 * the boards stand in. Costs, proof and cut order do not count: the wood that is used up is the same.
 * Begins with a letter, so that no spreadsheet takes it for a number. Two different layouts agree by chance about
 * once in 2⁴⁸, which keeps a slip of the hand out; it is no protection against intent.
 */
export function layoutFingerprint(layout: Layout): string {
  const boards = layout.boards
    .map(({ board, copy, length, width, pieces, offcuts }) =>
      JSON.stringify([
        [board, copy, length, width],
        pieces.map((piece) => [piece.part, piece.copy, piece.x, piece.y, piece.length, piece.width]),
        offcuts.map((offcut) => [offcut.id, offcut.x, offcut.y, offcut.length, offcut.width]),
      ]),
    )
    .sort();
  const text = boards.join('\n');
  let spelt = '';
  for (let place = 0; place < digits; place += 1) {
    // The first 13 characters are the letters: the first place takes one of those.
    const choices = place === 0 ? 13 : identifierCharacters.length;
    spelt += identifierCharacters.charAt(hash32(text, 0x9e3779b9 ^ (place + 1)) % choices);
  }
  return spelt;
}
