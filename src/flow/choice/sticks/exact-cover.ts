/** A set that may be chosen: items ascending, its share of the budget, and what it draws on. */
export interface CoverSet {
  readonly items: readonly number[];
  readonly share: number;
  readonly cost: number;
  /** Index of a stock, of which there is a limited number. */
  readonly stock: number;
}

export interface Cover {
  readonly items: number;
  readonly sets: readonly CoverSet[];
  /** Most that the shares may sum to. */
  readonly budget: number;
  /** Most that the costs may sum to. */
  readonly money: number;
  /** Of each stock. */
  readonly copies: Int32Array;
}

export interface CoverAnswer {
  /** Indices of the sets chosen; null when none was found. */
  readonly chosen: readonly number[] | null;
  /** True when the search ended by itself: null then means that there is none. */
  readonly complete: boolean;
  readonly steps: number;
}

/** Doubly linked rows and columns of a sparse matrix; node 0 … items−1 are the column heads, `items` the root. */
interface Links {
  readonly left: Int32Array;
  readonly right: Int32Array;
  readonly up: Int32Array;
  readonly down: Int32Array;
  readonly column: Int32Array;
  readonly set: Int32Array;
  readonly count: Int32Array;
}

function linksOf(items: number, sets: readonly CoverSet[]): Links {
  const size = items + 1 + sets.reduce((sum, set) => sum + set.items.length, 0);
  const whole = (): Int32Array => new Int32Array(size);
  const links: Links = {
    left: whole(),
    right: whole(),
    up: whole(),
    down: whole(),
    column: whole(),
    set: whole(),
    count: new Int32Array(items),
  };
  for (let c = 0; c <= items; c += 1) {
    links.left[c] = c === 0 ? items : c - 1;
    links.right[c] = c === items ? 0 : c + 1;
    links.up[c] = links.down[c] = links.column[c] = c;
  }
  let node = items + 1;
  sets.forEach((set, s) => {
    const first = node;
    for (const item of set.items) {
      links.column[node] = item;
      links.set[node] = s;
      const last = links.up[item]!;
      links.up[node] = last;
      links.down[node] = item;
      links.down[last] = links.up[item] = node;
      links.count[item]! += 1;
      links.left[node] = node - 1;
      links.right[node] = node + 1;
      node += 1;
    }
    links.left[first] = node - 1;
    links.right[node - 1] = first;
  });
  return links;
}

/** Takes the column out of the heads and its sets out of the other columns; says how many links it changed. */
function hide({ left, right, up, down, column, count }: Links, head: number): number {
  let steps = 1;
  right[left[head]!] = right[head]!;
  left[right[head]!] = left[head]!;
  for (let row = down[head]!; row !== head; row = down[row]!) {
    for (let node = right[row]!; node !== row; node = right[node]!) {
      down[up[node]!] = down[node]!;
      up[down[node]!] = up[node]!;
      count[column[node]!]! -= 1;
      steps += 1;
    }
  }
  return steps;
}

/** Undoes `hide`, in the opposite order. */
function show({ left, right, up, down, column, count }: Links, head: number): void {
  for (let row = up[head]!; row !== head; row = up[row]!) {
    for (let node = left[row]!; node !== row; node = left[node]!) {
      count[column[node]!]! += 1;
      down[up[node]!] = node;
      up[down[node]!] = node;
    }
  }
  right[left[head]!] = head;
  left[right[head]!] = head;
}

/**
 * Covers every item exactly once by sets whose shares sum to at most `budget`, stocks drawn on within their copies:
 * depth-first search over the item with the fewest sets left (Knuth 2000, Dancing links). Sets are tried in the order
 * given.
 */
export function exactCover({ items, sets, budget, money, copies }: Cover, mostSteps: number): CoverAnswer {
  const links = linksOf(items, sets);
  const { left, right, down, column, set, count } = links;
  const chosen: number[] = [];
  const stock = copies.slice();
  let steps = 0;
  const visit = (room: number, purse: number): boolean => {
    if (right[items] === items) return true;
    let head = -1;
    for (let c = right[items]!; c !== items; c = right[c]!) {
      steps += 1;
      if (head < 0 || count[c]! < count[head]!) head = c;
      if (count[head]! < 2) break;
    }
    if (count[head] === 0 || steps > mostSteps) return false;
    steps += hide(links, head);
    for (let row = down[head]!; row !== head; row = down[row]!) {
      const { share, cost, stock: from } = sets[set[row]!]!;
      if (share > room || cost > purse || stock[from]! <= 0) continue;
      stock[from]! -= 1;
      chosen.push(set[row]!);
      for (let node = right[row]!; node !== row; node = right[node]!) steps += hide(links, column[node]!);
      if (visit(room - share, purse - cost)) return true;
      for (let node = left[row]!; node !== row; node = left[node]!) show(links, column[node]!);
      chosen.pop();
      stock[from]! += 1;
      if (steps > mostSteps) break;
    }
    show(links, head);
    return false;
  };
  const found = visit(budget, money);
  return { chosen: found ? chosen : null, complete: found || steps <= mostSteps, steps };
}
