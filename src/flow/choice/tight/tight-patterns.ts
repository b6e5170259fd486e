import { blockedForAll } from '../areas.ts';
import type { StockGroup } from '../instance.ts';
import { type Column, columnKey, columnOf } from '../column.ts';
import { type Bench, type Flaw, arrange } from './arrange.ts';
import { type Allowance, type Block, type Joining, join } from './block.ts';

/** A pattern and the grown area of its board that neither pieces nor flaws claim. */
export interface TightPattern {
  readonly column: Column;
  readonly loss: number;
}

/** Flaws that no piece may touch, with the kerfs of the cuts that keep them out. Those that a kind may hold after all are none. */
export function flawsOf(group: StockGroup): Flaw[] {
  const { plate } = group;
  return blockedForAll(group)
    .map((r) => {
      const x = Math.max(0, r.x);
      const y = Math.max(0, r.y);
      const toX = Math.min(plate.length, r.x + r.length) + plate.crosscutKerf;
      const toY = Math.min(plate.width, r.y + r.width) + plate.ripKerf;
      return { x, y, length: toX - x, width: toY - y };
    })
    .filter(({ length, width }) => length > plate.crosscutKerf && width > plate.ripKerf);
}

/** Orders of the parts of one pattern that are tried to bring flaws where they lie. */
const mostOrders = 3000;

/** The four joinings of a board, from single pieces up, and what blocks each may make. */
function joiningsOf({ plate, kinds }: StockGroup): readonly Pick<Joining, 'along' | 'fills' | 'allows'>[] {
  const rippable = plate.shortestRip + plate.crosscutKerf;
  const isFree = plate.stages === 4 || plate.stages === 'any';
  const isFlaw = (part: Block): boolean => part.kinds[0]! >= kinds.length;
  return [
    {
      along: 'width',
      fills: false,
      // Pieces of a stack are of one length: to trim one would take a fifth stage. A flaw may be shorter.
      allows: (stack, size) =>
        stack.length === 1 ||
        (isFree && size >= rippable && stack.every((part) => part.length === size || isFlaw(part))),
    },
    {
      along: 'length',
      fills: false,
      allows: (strip, size) =>
        strip.every(({ width, length }) => width === size || (isFree && length >= rippable)),
    },
    {
      along: 'width',
      fills: true,
      allows: (section, size) =>
        size >= rippable || (section.length === 1 && section[0]!.width === plate.width + plate.ripKerf),
    },
    { along: 'length', fills: true, allows: () => true },
  ];
}

/**
 * The patterns of a board, in four stages, that lose no more than so much of its grown area, flaws aside: stacks of
 * equal length, strips of stacks, sections of strips, the board of sections (see `join`), then put in order. Runs are
 * left out, and sections made longer so that they can be ripped.
 * @param demand pieces that are wanted of each kind
 * @returns the patterns; `isComplete` unless the allowance ran out
 */
export function tightPatterns(
  group: StockGroup,
  index: number,
  demand: ArrayLike<number>,
  loss: number,
  allowance: Allowance,
): { readonly patterns: TightPattern[]; readonly isComplete: boolean } {
  const { plate, kinds } = group;
  const flaws = flawsOf(group);
  const most = { length: plate.length + plate.crosscutKerf, width: plate.width + plate.ripKerf };
  const wanted = [...Array.from(demand), ...flaws.map(() => 1)];
  let blocks = leaves(group, flaws, demand);
  let isComplete = true;
  for (const step of joiningsOf(group)) {
    const joining = { ...step, most: most[step.along], loss, demand: wanted, firstFlaw: kinds.length };
    const joined = join(blocks, joining, allowance);
    blocks = joined.blocks;
    isComplete &&= joined.isComplete;
  }
  const patterns = new Map<string, TightPattern>();
  for (const block of blocks) {
    if (block.kinds.filter((kind) => kind >= kinds.length).length < flaws.length) continue;
    const bench: Bench = { plate, kinds, flaws, steps: mostOrders };
    const placements = arrange(block, bench);
    allowance.steps -= mostOrders - Math.max(0, bench.steps);
    if (placements === null) continue;
    const column = columnOf(index, placements, group);
    patterns.set(columnKey(column), { column, loss: block.loss });
  }
  return { patterns: [...patterns.values()], isComplete };
}

/** Single pieces and flaws. Runs stay out: what may lie beside them is a matter of its own. */
function leaves({ plate, kinds }: StockGroup, flaws: readonly Flaw[], demand: ArrayLike<number>): Block[] {
  const pieces = kinds.flatMap((kind, k): Block[] =>
    demand[k]! <= 0 || kind.run !== undefined || kind.clearances.length === 0
      ? []
      : kind.shapes.map(({ length, width }) => ({
          length: length + plate.crosscutKerf,
          width: width + plate.ripKerf,
          loss: 0,
          kinds: [k],
          parts: [],
        })),
  );
  return [
    ...pieces,
    ...flaws.map(({ length, width }, f) => ({
      length,
      width,
      loss: 0,
      kinds: [kinds.length + f],
      parts: [],
    })),
  ];
}
