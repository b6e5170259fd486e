/**
 * Moves items along a line just far enough apart that none overlaps the next, keeping their order and staying
 * as near to where they belong as possible (least squares: items that push one another form a block, which
 * sits at the mean of their wishes).
 * @param wished centres, in rising order   @param sizes of the items, same order
 * @param from,to the line's ends; when the items need more than it has, they run past `to`
 * @returns whole-number centres
 */
export function spread(
  wished: readonly number[],
  sizes: readonly number[],
  from: number,
  to: number,
): number[] {
  const blocks: { first: number; start: number; size: number; count: number }[] = [];
  wished.forEach((centre, index) => {
    const size = sizes[index] ?? 0;
    blocks.push({ first: index, start: inside(centre - size / 2, size, from, to), size, count: 1 });
    mergeBack(blocks, wished, sizes, from, to);
  });
  const centres: number[] = [];
  for (const block of blocks) {
    let at = Math.round(block.start);
    for (let index = block.first; index < block.first + block.count; index += 1) {
      const size = sizes[index] ?? 0;
      centres.push(Math.round(at + size / 2));
      at += size;
    }
  }
  return centres;
}

function inside(start: number, size: number, from: number, to: number): number {
  return Math.max(from, Math.min(start, to - size));
}

function mergeBack(
  blocks: { first: number; start: number; size: number; count: number }[],
  wished: readonly number[],
  sizes: readonly number[],
  from: number,
  to: number,
): void {
  for (;;) {
    const last = blocks.at(-1);
    const before = blocks.at(-2);
    if (!last || !before || before.start + before.size <= last.start) return;
    blocks.length -= 2;
    const count = before.count + last.count;
    let offset = 0;
    let sum = 0;
    for (let index = before.first; index < before.first + count; index += 1) {
      const size = sizes[index] ?? 0;
      sum += (wished[index] ?? 0) - size / 2 - offset;
      offset += size;
    }
    const size = before.size + last.size;
    blocks.push({ first: before.first, start: inside(sum / count, size, from, to), size, count });
  }
}
