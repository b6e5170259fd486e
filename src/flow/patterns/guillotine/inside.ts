import type { Net } from './net.ts';
import { anyCut, noCut, statesPerLevel } from './net.ts';

/**
 * The most that each state can hold when every kind may be cut without limit:
 *
 *     F(state) = max( worth of a piece that fills it, F of the state with some waste cut off,
 *                     F(first) + F(second) over its splits, F of the same state one level lower )
 *
 * Gilmore & Gomory 1966 with the recursion of Beasley 1985 over raster points; with places instead of sizes
 * it is the recursion of Scheithauer & Terno 1988 for plates with defects.
 * @param gain worth of one piece of each kind; pieces that gain nothing are left out
 * @param table out, one entry per state. O(passWork), no allocation.
 */
export function fillInside(net: Net, gain: Float64Array, table: Float64Array): void {
  const { columns, rows, leaves } = net;
  const height = rows.count;
  const level = statesPerLevel(net);
  table.fill(0);
  for (let at = 0; at < leaves.state.length; at++) {
    const worth = gain[leaves.kind[at]!]!;
    if (worth > table[leaves.state[at]!]!) table[leaves.state[at]!] = worth;
  }
  for (let column = 0; column < columns.count; column++) {
    const canRip = columns.size[column]! >= net.ripFrom;
    for (let stage = 0; stage < net.levels; stage++) {
      const base = stage * level + column * height;
      if (stage > 0) raise(table, base, base - level, height);
      const crosscuts = net.crosscuts[stage]!;
      if (crosscuts !== noCut) {
        for (let side = 2 * column; side < 2 * column + 2; side++) {
          const inner = columns.narrower[side]!;
          if (inner >= 0) raise(table, base, stage * level + inner * height, height);
        }
      }
      if (crosscuts === anyCut) {
        for (let split = columns.splitStart[column]!; split < columns.splitStart[column + 1]!; split++) {
          const first = stage * level + columns.first[split]! * height;
          const second = stage * level + columns.second[split]! * height;
          for (let row = 0; row < height; row++) {
            const sum = table[first + row]! + table[second + row]!;
            if (sum > table[base + row]!) table[base + row] = sum;
          }
        }
      }
      if (canRip && net.rips[stage] !== noCut) ripColumn(net, table, base, net.rips[stage] === anyCut);
    }
  }
}

/** table[base + row] = max of itself and table[from + row]. */
function raise(table: Float64Array, base: number, from: number, height: number): void {
  for (let row = 0; row < height; row++) {
    const value = table[from + row]!;
    if (value > table[base + row]!) table[base + row] = value;
  }
}

/** The rips of one column: rows from small to large. */
function ripColumn(net: Net, table: Float64Array, base: number, parts: boolean): void {
  const { count, narrower, splitStart, first, second } = net.rows;
  for (let row = 0; row < count; row++) {
    let best = table[base + row]!;
    const low = narrower[2 * row]!;
    const high = narrower[2 * row + 1]!;
    if (low >= 0 && table[base + low]! > best) best = table[base + low]!;
    if (high >= 0 && table[base + high]! > best) best = table[base + high]!;
    if (parts) {
      const end = splitStart[row + 1]!;
      for (let split = splitStart[row]!; split < end; split++) {
        const sum = table[base + first[split]!]! + table[base + second[split]!]!;
        if (sum > best) best = sum;
      }
    }
    table[base + row] = best;
  }
}
