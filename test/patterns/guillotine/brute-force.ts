import type { Rectangle } from '../../../src/base/geometry/rectangle.ts';
import type { Kind, Plate } from '../../../src/flow/patterns/plate.ts';

/**
 * The best value of a tiny plate by trying every cut at every whole place of every workpiece, with the sets of pieces
 * that each workpiece can hold written out. Shares nothing with the engine but the shapes of its input.
 *
 * A blade at p takes [p, p + kerf) and may hang over either end, as long as it takes something or parts something.
 * @param freeTrim with limited stages: whether a piece may be freed of waste by cuts beyond the last stage (not by rips of what is too short)
 */
export function bruteForceBest(
  plate: Plate,
  kinds: readonly Kind[],
  worth: readonly number[],
  freeTrim = false,
): number {
  const radix = kinds.map((kind) => kind.cap + 1);
  const total = radix.reduce((product, each) => product * each, 1);
  const digits = Array.from({ length: total }, (_, code) => {
    let rest = code;
    return radix.map((base) => {
      const digit = rest % base;
      rest = Math.floor(rest / base);
      return digit;
    });
  });
  const encode = (counts: readonly number[]): number =>
    counts.reduceRight((code, count, kind) => code * radix[kind]! + count, 0);
  const plus = digits.map((a) =>
    digits.map((b) => {
      const sum = a.map((count, kind) => count + b[kind]!);
      return sum.every((count, kind) => count <= kinds[kind]!.cap) ? encode(sum) : -1;
    }),
  );
  const known = new Map<string, readonly number[]>();

  const isClear = (piece: Rectangle, kind: Kind): boolean =>
    kind.clearances.some((index) =>
      plate.clearances[index]!.every(
        (block) =>
          piece.x + piece.length <= block.x ||
          block.x + block.length <= piece.x ||
          piece.y + piece.width <= block.y ||
          block.y + block.width <= piece.y,
      ),
    );

  const singles = (region: Rectangle, trimmed: boolean): number[] =>
    kinds.flatMap((kind, index) => {
      if (kind.cap < 1) return [];
      const code = encode(kinds.map((_, other) => (other === index ? 1 : 0)));
      return kind.shapes.some(({ length, width }) => {
        if (!trimmed) {
          return length === region.length && width === region.width && isClear(region, kind);
        }
        if (width !== region.width && region.length < plate.shortestRip) return false;
        for (let x = region.x; x + length <= region.x + region.length; x++) {
          for (let y = region.y; y + width <= region.y + region.width; y++) {
            if (isClear({ x, y, length, width }, kind)) return true;
          }
        }
        return false;
      })
        ? [code]
        : [];
    });

  /** Codes of the sets that the region can hold, from stage `stage` on (1 crosscuts, 2 rips, ...; 0: any cut). */
  const holds = (region: Rectangle, stage: number): readonly number[] => {
    const { x, y, length, width } = region;
    const key = `${x},${y},${length},${width},${stage}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const isLast = plate.stages !== 'any' && stage > plate.stages;
    const found = new Set<number>([0, ...singles(region, isLast && freeTrim)]);
    const addPairs = (first: readonly number[], second: readonly number[]): void => {
      for (const a of first) {
        for (const b of second) if (plus[a]![b]! >= 0) found.add(plus[a]![b]!);
      }
    };
    if (!isLast) {
      if (stage > 0) for (const code of holds(region, stage + 1)) found.add(code);
      if (stage % 2 === 1 || stage === 0) {
        const kerf = plate.crosscutKerf;
        for (let at = x - kerf + 1; at < x + length; at++) {
          const near = at > x ? holds({ x, y, length: at - x, width }, stage) : [0];
          const rest = x + length - at - kerf;
          const far = rest > 0 ? holds({ x: at + kerf, y, length: rest, width }, stage) : [0];
          if (at > x || kerf > 0) addPairs(near, far);
        }
      }
      if (stage % 2 === 0 && length >= plate.shortestRip) {
        const kerf = plate.ripKerf;
        for (let at = y - kerf + 1; at < y + width; at++) {
          const low = at > y ? holds({ x, y, length, width: at - y }, stage) : [0];
          const rest = y + width - at - kerf;
          const high = rest > 0 ? holds({ x, y: at + kerf, length, width: rest }, stage) : [0];
          if (at > y || kerf > 0) addPairs(low, high);
        }
      }
    }
    const sets = [...found];
    known.set(key, sets);
    return sets;
  };

  const whole = { x: 0, y: 0, length: plate.length, width: plate.width };
  const values = holds(whole, plate.stages === 'any' ? 0 : 1).map((code) =>
    digits[code]!.reduce((sum, count, kind) => sum + count * Math.max(0, worth[kind]!), 0),
  );
  return Math.max(...values);
}
