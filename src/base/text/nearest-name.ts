/** Names are compared by their first so many characters: longer ones are no typing slips. */
const longestCompared = 40;

/**
 * The known name that is the fewest slips away from what was written, capitals set aside; a slip is a letter added,
 * dropped, changed, or swapped with its neighbour. Of equals the first.
 * @param known at least one name
 * @example nearestName('lenght', ['width', 'length']) // 'length'
 */
export function nearestName(written: string, known: readonly string[]): string | undefined {
  const folded = written.slice(0, longestCompared).toLowerCase();
  let best: string | undefined;
  let fewest = Infinity;
  for (const name of known) {
    const slips = slipsBetween(folded, name.slice(0, longestCompared).toLowerCase());
    if (slips < fewest) {
      fewest = slips;
      best = name;
    }
  }
  return best;
}

/**
 * Edit distance with swaps of neighbours (optimal string alignment), by the usual table of which three rows are kept:
 * cost[j] = least slips that turn the first i letters of a into the first j letters of b.
 */
function slipsBetween(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const cost = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const changed = (last[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const least = Math.min(changed, (last[j] ?? 0) + 1, (cost[j - 1] ?? 0) + 1);
      const swaps = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      cost[j] = swaps ? Math.min(least, (beforeLast[j - 2] ?? 0) + 1) : least;
    }
    beforeLast = last;
    last = cost;
  }
  return last[b.length] ?? 0;
}
