import type { Part } from '../../../flow/parts/part.ts';

/**
 * The parts with those that are alike put together as one part of all their copies, and runs of alike parts as one run of
 * so many copies: whether a job comes out does not hang on their names, and the solver is quicker with fewer kinds of
 * piece. Parts that nobody wants are left out.
 */
export function alikeTogether(parts: readonly Part[]): Part[] {
  const cut = cutTogether(parts.filter(({ quantity }) => quantity > 0));
  const found = new Map<string, readonly Part[]>();
  for (const members of cut) {
    const key = JSON.stringify(members.map(keyOf));
    const known = found.get(key) ?? members.map((part) => ({ ...part, quantity: 0 }));
    found.set(
      key,
      known.map((part, at) => ({ ...part, quantity: part.quantity + members[at]!.quantity })),
    );
  }
  return [...found.values()].flat();
}

/** Free parts each by itself, the parts of a run together. */
function cutTogether(parts: readonly Part[]): Part[][] {
  const runs = new Map<string, Part[]>();
  return parts.flatMap((part) => {
    if (part.run === null) return [[part]];
    const run = runs.get(part.run);
    if (run !== undefined) {
      run.push(part);
      return [];
    }
    const members = [part];
    runs.set(part.run, members);
    return [members];
  });
}

/** All that says where a part may lie and how it may be made. Copies of a free part do not matter, those of a run's do. */
function keyOf(part: Part): unknown[] {
  const { length, width, thickness, grain, quality, accept, glueUp, pin, species, match } = part;
  const { leftEnd, rightEnd, extraLength = 0, extraWidth = 0 } = part;
  const inRun = part.run === null ? null : [part.leftEnd, part.rightEnd, part.quantity];
  const fitted = [leftEnd, rightEnd, extraLength, extraWidth];
  return [
    length,
    width,
    thickness,
    grain,
    quality,
    accept,
    glueUp,
    pin,
    species,
    match ?? null,
    inRun,
    fitted,
  ];
}
