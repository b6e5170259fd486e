/**
 * A rectangle made of pieces, or one piece, by its size in start space: every size grown by one kerf, so that blocks side
 * by side add up and a full board is the board grown by one kerf each way.
 */
export interface Block {
  readonly length: number;
  readonly width: number;
  /** Area within it that no piece claims; pieces claim their grown area. */
  readonly loss: number;
  /** Kinds of its pieces, ascending, one entry a piece. Numbers from the count of kinds on are flaws to be kept out. */
  readonly kinds: readonly number[];
  /** What it is made of, in no order; empty for one piece. */
  readonly parts: readonly Block[];
}

/** How blocks are joined into larger ones. */
export interface Joining {
  /** Axis on which sizes add up; on the other the largest counts. */
  readonly along: 'length' | 'width';
  /** Most that the sizes may add up to. */
  readonly most: number;
  /** Whether they must add up to that, but for loss. */
  readonly fills: boolean;
  /** Most area that may be lost in one block. */
  readonly loss: number;
  /** How often a kind may be used, flaws included. */
  readonly demand: ArrayLike<number>;
  /** Kinds from here on are flaws. */
  readonly firstFlaw: number;
  /** Whether a block may be one of these, `parts` of them joined, and `size` the largest across. */
  readonly allows: (parts: readonly Block[], size: number) => boolean;
}

/** Steps and blocks left; counted down by all that join. */
export interface Allowance {
  steps: number;
  readonly mostBlocks: number;
}

/** Blocks were listed in full, or the allowance ran out. */
export interface Joined {
  readonly blocks: Block[];
  readonly isComplete: boolean;
}

/**
 * Lists all blocks that can be made by laying blocks side by side on one axis with no more than so much area lost, each set once
 * (Wang 1983, with sets in place of pairs). Blocks of the same size and pieces count once, unless flaws are in them: where these lie matters.
 */
export function join(blocks: readonly Block[], joining: Joining, allowance: Allowance): Joined {
  const { along, most, fills, loss: mostLoss, demand, firstFlaw, allows } = joining;
  const across = along === 'length' ? 'width' : 'length';
  const sorted = [...blocks].sort((a, b) => b[across] - a[across] || b[along] - a[along]);
  const size = Float64Array.from(sorted, (block) => block[along]);
  const other = Float64Array.from(sorted, (block) => block[across]);
  const least = size.reduce((low, each) => Math.min(low, each), Infinity);
  const used = new Int32Array(demand.length);
  const made = new Map<string, Block>();
  const chosen: Block[] = [];
  let isComplete = true;
  const keep = (sum: number, largest: number, loss: number): void => {
    if (!allows(chosen, largest)) return;
    const kinds = chosen.flatMap((block) => block.kinds).sort((a, b) => a - b);
    const hasFlaw = kinds.length > 0 && kinds.at(-1)! >= firstFlaw;
    const length = along === 'length' ? sum : largest;
    const width = along === 'length' ? largest : sum;
    const key = `${length} ${width} ${kinds.join(',')}` + (hasFlaw ? ` ${made.size}` : '');
    if (!made.has(key)) made.set(key, { length, width, loss, kinds, parts: chosen.slice() });
  };
  const extend = (from: number, sum: number, loss: number): void => {
    for (let i = from; i < sorted.length; i += 1) {
      if (allowance.steps <= 0 || made.size >= allowance.mostBlocks) {
        isComplete = false;
        return;
      }
      allowance.steps -= 1;
      const largest = chosen.length === 0 ? other[i]! : chosen[0]![across];
      const gap = largest - other[i]!;
      if (loss + gap * least > mostLoss) return;
      const here = loss + sorted[i]!.loss + gap * size[i]!;
      const total = sum + size[i]!;
      if (here > mostLoss || total > most) continue;
      const end = fills ? here + (most - total) * largest : here;
      // What is left must be lost, or hold another block.
      if (fills && end > mostLoss && most - total < least) continue;
      if (!take(sorted[i]!, used, demand)) continue;
      chosen.push(sorted[i]!);
      if (end <= mostLoss) keep(fills ? most : total, largest, end);
      extend(i, total, here);
      chosen.pop();
      give(sorted[i]!, used);
    }
  };
  extend(0, 0, 0);
  return { blocks: [...made.values()], isComplete };
}

function take(block: Block, used: Int32Array, demand: ArrayLike<number>): boolean {
  for (let k = 0; k < block.kinds.length; k += 1) {
    const kind = block.kinds[k]!;
    used[kind] = used[kind]! + 1;
    if (used[kind]! <= demand[kind]!) continue;
    for (let back = k; back >= 0; back -= 1) used[block.kinds[back]!] = used[block.kinds[back]!]! - 1;
    return false;
  }
  return true;
}

function give(block: Block, used: Int32Array): void {
  for (const kind of block.kinds) used[kind] = used[kind]! - 1;
}
