import { describe, expect, it } from 'vitest';
import type { Column } from '../../src/flow/choice/column.ts';
import { type ColumnTable, columnTable } from '../../src/flow/choice/column-table.ts';
import type { Exchange, Exchanged } from '../../src/flow/choice/exchange/exchange.ts';
import { exchangeColumns } from '../../src/flow/choice/exchange/exchange-columns.ts';
import { type Laid, lay, leastAdding, nothingLaid, takeUp } from '../../src/flow/choice/exchange/laid.ts';
import { finish } from '../../src/flow/choice/progress.ts';
import { type Seeded, seeded } from '../laws/seeded.ts';

interface Drawn {
  readonly columns: readonly Column[];
  readonly copies: number[];
  readonly demand: number[];
  readonly price: Float64Array;
}

function drawn(stream: Seeded): Drawn {
  const demand = Array.from({ length: stream.whole(2, 5) }, () => stream.whole(1, 3));
  const copies = Array.from({ length: stream.whole(2, 4) }, () => stream.whole(1, 2));
  const columns = Array.from({ length: stream.whole(4, 9) }, (): Column => {
    const held = [...demand.keys()].filter(() => stream.chance(0.5));
    const kinds = held.length > 0 ? held : [0];
    const counts = kinds.map((kind) => stream.whole(1, demand[kind]!));
    const group = stream.whole(0, copies.length - 1);
    return { group, placements: [], kinds, counts, cost: stream.whole(3, 12) };
  });
  return { columns, copies, demand, price: Float64Array.from(demand, () => stream.whole(2, 9)) };
}

function tableOf({ columns, copies, demand }: Drawn): ColumnTable {
  return columnTable(columns, copies.length, demand.length);
}

function opened(given: Drawn): Laid {
  return nothingLaid(tableOf(given).flat, given.copies, given.demand, given.price);
}

/** Annealed from nothing laid, or from these columns. */
function annealed(given: Drawn, seed: number, start?: Int32Array): Exchanged {
  const { columns, flat } = tableOf(given);
  const { copies, demand, price } = given;
  const slots = copies.reduce((sum, count) => sum + count, 0);
  const task: Exchange = {
    columns: flat,
    order: Int32Array.from(columns.keys()),
    copies: Int32Array.from(copies),
    demand: Int32Array.from(demand),
    price,
    start: start ?? new Int32Array(slots).fill(-1),
    moves: start === undefined ? 4000 : 0,
    cooling: { from: 5, to: 0.1 },
    seed,
  };
  return finish(exchangeColumns(task));
}

/** What these columns cost and what they leave open, worked out anew. */
function costOf({ demand, price }: Drawn, chosen: readonly Column[]): number {
  const left = demand.slice();
  for (const { kinds, counts } of chosen) kinds.forEach((kind, i) => (left[kind] = left[kind]! - counts[i]!));
  const open = left.reduce((sum, count, kind) => sum + Math.max(0, count) * price[kind]!, 0);
  return chosen.reduce((sum, { cost }) => sum + cost, open);
}

/** The least that any choice costs: every subset of column copies that the boards allow. */
function leastCost(given: Drawn): number {
  const { columns, copies } = given;
  const walk = (c: number, left: readonly number[], chosen: readonly Column[]): number => {
    if (c === columns.length) return costOf(given, chosen);
    const column = columns[c]!;
    let least = walk(c + 1, left, chosen);
    for (let times = 1; times <= left[column.group]!; times += 1) {
      const after = left.map((count, g) => (g === column.group ? count - times : count));
      const more = Array.from({ length: times }, () => column);
      least = Math.min(least, walk(c + 1, after, [...chosen, ...more]));
    }
    return least;
  };
  return walk(0, copies, []);
}

describe('exchange of columns', () => {
  it('finds the cheapest choice of small tables, open pieces priced in', () => {
    let someOpen = 0;
    for (let seed = 1; seed <= 60; seed += 1) {
      const given = drawn(seeded(seed));
      const { columns } = tableOf(given);
      const best = annealed(given, seed);
      const chosen = [...best.chosen].flatMap((c) => (c < 0 ? [] : [columns[c]!]));
      const used = given.copies.map((_, g) => chosen.filter(({ group }) => group === g).length);
      used.forEach((count, g) => expect(count).toBeLessThanOrEqual(given.copies[g]!));
      expect(costOf(given, chosen)).toBeCloseTo(leastCost(given), 9);
      expect(annealed(given, seed, best.chosen).chosen).toEqual(best.chosen);
      if (costOf(given, chosen) > chosen.reduce((sum, { cost }) => sum + cost, 0)) someOpen += 1;
    }
    expect(someOpen).toBeGreaterThan(5);
  });

  it('keeps count of what is open, who holds it and what it costs, whatever is laid and taken up', () => {
    let taken = 0;
    for (let seed = 1; seed <= 40; seed += 1) {
      const stream = seeded(seed);
      const given = drawn(stream);
      const laid = opened(given);
      const { columns } = tableOf(given);
      const cost = (): number => costOf(given, laidOut(laid, columns));
      for (let step = 0; step < 60; step += 1) {
        const slot = stream.whole(0, laid.slots.length - 1);
        const full = cost();
        const freed = takeUp(laid, slot);
        const empty = cost();
        expect(empty).toBeCloseTo(full - freed, 9);
        const own = [...columns.keys()].filter((c) => columns[c]!.group === laid.slots[slot]);
        const added = own.map((column) => {
          const each = lay(laid, slot, column);
          expect(cost()).toBeCloseTo(empty + each, 9);
          expect(takeUp(laid, slot)).toBeCloseTo(each, 9);
          return each;
        });
        const least = leastAdding(laid, slot);
        if (least >= 0) taken += 1;
        const any = stream.chance(0.5) && own.length > 0 ? own[stream.whole(0, own.length - 1)]! : least;
        const leastOfAll = Math.min(0, ...added);
        expect(least < 0 ? 0 : added[own.indexOf(least)]).toBeCloseTo(leastOfAll, 9);
        lay(laid, slot, any);
      }
      expectCounted(given, laid, columns);
    }
    expect(taken).toBeGreaterThan(500);
  });
});

/** The columns laid. */
function laidOut({ chosen }: Laid, columns: readonly Column[]): Column[] {
  return [...chosen].flatMap((c) => (c < 0 ? [] : [columns[c]!]));
}

function expectCounted(
  { demand }: Drawn,
  { chosen, left, slots, holders, held }: Laid,
  columns: readonly Column[],
): void {
  demand.forEach((wanted, kind) => {
    const holding = [...chosen.keys()].filter((slot) => columns[chosen[slot]!]?.kinds.includes(kind));
    const from = kind * slots.length;
    const listed = [...holders.subarray(from, from + held[kind]!)];
    expect(listed.sort((a, b) => a - b)).toEqual(holding);
    const out = holding.reduce((sum, slot) => {
      const { kinds, counts } = columns[chosen[slot]!]!;
      return sum + counts[kinds.indexOf(kind)]!;
    }, 0);
    expect(left[kind]).toBe(wanted - out);
  });
}
