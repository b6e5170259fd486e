/** Names are compared by their first so many characters: longer ones are no typing slips. */
const longestCompared = 40;

/** A known name, and how many slips away what was written is. */
export interface NearestName {
  readonly name: string;
  readonly slips: number;
}

/**
 * The known name that is the fewest slips away from what was written, capitals set aside; a slip is a letter added,
 * dropped, changed, or swapped with its neighbour. An abbreviation (`qty`) and a whole word of the name (`knot` for
 * `sound knot`) count as one slip. Of equals the first; undefined only when no name is known.
 * @example nearestName('lenght', ['width', 'length']) // { name: 'length', slips: 1 }
 */
export function nearestName(written: string, known: readonly string[]): NearestName | undefined {
  const folded = written.slice(0, longestCompared).toLowerCase();
  let best: NearestName | undefined;
  for (const name of known) {
    const slips = slipsTo(folded, name.slice(0, longestCompared).toLowerCase());
    if (best === undefined || slips < best.slips) best = { name, slips };
  }
  return best;
}

function slipsTo(written: string, name: string): number {
  const slips = slipsBetween(written, name);
  return slips > 1 && (isAbbreviation(written, name) || name.split(/[ -]/).includes(written)) ? 1 : slips;
}

/** Whether the letters stand in the name in this order, the first at its start: `qty` in `quantity`. */
function isAbbreviation(written: string, name: string): boolean {
  if (written.length < 2 || written[0] !== name[0]) return false;
  let next = 0;
  for (const letter of name) if (letter === written[next]) next += 1;
  return next === written.length;
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
