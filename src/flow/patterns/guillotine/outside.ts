import type { Net } from './net.ts';
import { anyCut, noCut, statesPerLevel, stateCount } from './net.ts';

/**
 * The most that the rest of the plate can hold when a state is cut out of it, whatever the state holds:
 *
 *     G(root) = 0,   G(first) = max over parents ( G(parent) + F(second) ),
 *     G(state cut free of waste) = G(parent)
 *
 * so that F(state) + G(state) bounds every pattern in which the state occurs; -Infinity where it cannot occur.
 * @param inside the table of `fillInside` for the same gains   @param table out
 */
export function fillOutside(net: Net, inside: Float64Array, table: Float64Array): void {
  const { columns, rows } = net;
  const height = rows.count;
  const level = statesPerLevel(net);
  table.fill(-Infinity);
  table[stateCount(net) - 1] = 0;
  for (let column = columns.count - 1; column >= 0; column--) {
    const canRip = columns.size[column]! >= net.ripFrom;
    for (let stage = net.levels - 1; stage >= 0; stage--) {
      const base = stage * level + column * height;
      if (canRip && net.rips[stage] !== noCut) {
        ripColumn(net, inside, table, base, net.rips[stage] === anyCut);
      }
      if (net.crosscuts[stage] !== noCut) {
        for (let side = 2 * column; side < 2 * column + 2; side++) {
          const inner = columns.narrower[side]!;
          if (inner >= 0) raise(table, stage * level + inner * height, base, height);
        }
      }
      if (net.crosscuts[stage] === anyCut) {
        for (let split = columns.splitStart[column]!; split < columns.splitStart[column + 1]!; split++) {
          const first = stage * level + columns.first[split]! * height;
          const second = stage * level + columns.second[split]! * height;
          for (let row = 0; row < height; row++) {
            const around = table[base + row]!;
            const besideFirst = around + inside[second + row]!;
            if (besideFirst > table[first + row]!) table[first + row] = besideFirst;
            const besideSecond = around + inside[first + row]!;
            if (besideSecond > table[second + row]!) table[second + row] = besideSecond;
          }
        }
      }
      if (stage > 0) raise(table, base - level, base, height);
    }
  }
}

function raise(table: Float64Array, base: number, from: number, height: number): void {
  for (let row = 0; row < height; row++) {
    const value = table[from + row]!;
    if (value > table[base + row]!) table[base + row] = value;
  }
}

/** The rips of one column: rows from large to small, so that each is final before it is handed on. */
function ripColumn(net: Net, inside: Float64Array, table: Float64Array, base: number, parts: boolean): void {
  const { count, narrower, splitStart, first, second } = net.rows;
  for (let row = count - 1; row >= 0; row--) {
    const around = table[base + row]!;
    if (around === -Infinity) continue;
    for (let side = 2 * row; side < 2 * row + 2; side++) {
      const inner = narrower[side]!;
      if (inner >= 0 && around > table[base + inner]!) table[base + inner] = around;
    }
    if (!parts) continue;
    for (let split = splitStart[row]!; split < splitStart[row + 1]!; split++) {
      const a = base + first[split]!;
      const b = base + second[split]!;
      const besideA = around + inside[b]!;
      if (besideA > table[a]!) table[a] = besideA;
      const besideB = around + inside[a]!;
      if (besideB > table[b]!) table[b] = besideB;
    }
  }
}
