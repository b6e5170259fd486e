import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { identifier, identifierCharacters, isIdentifier } from '../../src/flow/rack/identifier.ts';

describe('identifiers to write on the wood', () => {
  const anyIdentifier = fc.string().map((seed) => identifier(seed, new Set()));

  it('are five characters that are not mistaken for one another, a letter first', () => {
    fc.assert(
      fc.property(anyIdentifier, (name) => {
        expect(name).toMatch(/^[A-Z][A-Z2-9]{4}$/);
        expect(name).not.toMatch(/[01588OILZSBGUVQAEY]/);
        expect(isIdentifier(name)).toBe(true);
      }),
    );
  });

  it('with one wrong character or two swapped ones are none', () => {
    fc.assert(
      fc.property(anyIdentifier, fc.nat(4), fc.nat(18), fc.nat(4), (name, at, which, other) => {
        const wrong = [...name];
        wrong[at] = identifierCharacters.charAt(which);
        if (wrong.join('') !== name) expect(isIdentifier(wrong.join(''))).toBe(false);
        const swapped = [...name];
        [swapped[at], swapped[other]] = [swapped[other] ?? '', swapped[at] ?? ''];
        if (swapped.join('') !== name) expect(isIdentifier(swapped.join(''))).toBe(false);
      }),
    );
  });

  it('are never given twice, the same seed finding the next free one', () => {
    const used = new Set<string>();
    for (let count = 0; count < 600; count += 1) {
      const name = identifier(count % 2 === 0 ? 'the same piece' : `piece ${count}`, used);
      expect(used.has(name)).toBe(false);
      used.add(name);
    }
  });

  it('spread: ten thousand seeds give at least nine thousand names', () => {
    const names = new Set(Array.from({ length: 10_000 }, (_, index) => identifier(`B${index}`, new Set())));
    // Expected for a fair spread over 89,167 names: 89167·(1 − e^(−10000/89167)) ≈ 9,460.
    expect(names.size).toBeGreaterThan(9300);
  });
});
