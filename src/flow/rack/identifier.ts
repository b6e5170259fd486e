import { hash32 } from './hash.ts';

/**
 * Consonants and digits that are not mistaken for one another in pencil on wood: no 0 O, 1 I L, 2 Z, 5 S, 6 G, 8 B,
 * U V, Q. No vowels (and no Y), so that no word and no month is spelt, which a spreadsheet would turn into a date.
 * Nineteen of them, a prime, which the check character needs.
 */
export const identifierCharacters = 'CDFHJKMNPRTWX234679';
const letters = 13;
const base = identifierCharacters.length;
const bodies = letters * base ** 3;

/**
 * A name for an offcut, to write on the wood: a letter (so that no spreadsheet reads a number), three characters,
 * and a check character, all of `identifierCharacters`. 89,167 of them.
 * @param seed what the piece is (job, board, corner, size): the same piece gets the same name
 * @param used names that are taken; the next free one is given
 * @throws when all names are used: a bug, since a rack that large cannot be loaded
 * @example identifier('hearth B3 0 0', new Set()) // five characters such as 'K7M3X'
 */
export function identifier(seed: string, used: ReadonlySet<string>): string {
  const start = hash32(seed, 0) % bodies;
  for (let step = 0; step < bodies; step += 1) {
    const body = spell((start + step) % bodies);
    const name = body + checkCharacter(body);
    if (!used.has(name)) return name;
  }
  throw new Error('every identifier is used');
}

/** Whether the text is one of our identifiers, its check character right. */
export function isIdentifier(text: string): boolean {
  const characters = [...text];
  if (characters.length !== 5 || characters.some((one) => !identifierCharacters.includes(one))) return false;
  return characters[4] === checkCharacter(text.slice(0, 4));
}

function spell(index: number): string {
  const first = identifierCharacters.charAt(Math.floor(index / base ** 3));
  const rest = [base ** 2, base, 1].map((place) =>
    identifierCharacters.charAt(Math.floor(index / place) % base),
  );
  return first + rest.join('');
}

/**
 * Check value c = Σ i·vᵢ mod 19 (i = 1 … 4). Since 19 is prime and every weight and every difference of weights
 * (1 … 4 against the check character's −1, too) is not 0 mod 19, one wrong character or two swapped ones never pass.
 */
function checkCharacter(body: string): string {
  let sum = 0;
  for (let place = 0; place < body.length; place += 1) {
    sum += (place + 1) * identifierCharacters.indexOf(body.charAt(place));
  }
  return identifierCharacters.charAt(sum % base);
}
