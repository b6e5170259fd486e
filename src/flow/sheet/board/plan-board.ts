import type { BoardFacts } from './facts.ts';
import { frameOf, leftMargin, rightMargin, sheetWidth } from './frame.ts';
import { planRow, type RowPlan } from './row-plan.ts';
import type { Labelled } from './row-things.ts';
import { type Scale, scalesFor } from './scale.ts';

/** One board's diagram, all places found. */
export interface Plan {
  readonly scale: Scale;
  readonly rows: readonly RowPlan[];
  /** The things marked by a letter, in the order in which they come up. */
  readonly lettered: readonly Labelled[];
}

/** Strips narrower than this (ticks, 1 1/4 in) get call-outs rather than a larger scale for the whole board. */
const tiny = 10_160;
/** What a call-out costs in legibility (see `scalesFor`), and the most that all of them may. */
const callOutCost = 0.12;
const mostForCallOuts = 1;

/** Tries the scales, best first by size, and takes the one that is best with its call-outs counted. */
export function planBoard(facts: BoardFacts): Plan {
  let best: { plan: Plan; worth: number } | null = null;
  for (const { scale, worth } of candidates(facts)) {
    if (best !== null && worth <= best.worth) break;
    const plan = planAt(facts, scale);
    const kinds = new Set(plan.lettered.map(({ kindLine }) => kindLine)).size;
    const left = worth - Math.min(mostForCallOuts, callOutCost * Math.max(kinds, plan.lettered.length / 2));
    if (best === null || left > best.worth) best = { plan, worth: left };
  }
  if (best === null) throw new Error('a board has at least one scale');
  return best.plan;
}

function planAt(facts: BoardFacts, scale: Scale): Plan {
  const { laid } = facts;
  const frames = scale.reaches.map((reach) => frameOf(reach, scale.unit, laid.length, laid.width));
  const widestLetter = new Set(facts.things.map(({ kindLine }) => kindLine)).size > 26 ? 'mm' : 'm';
  const rows = frames.map((_, index) => planRow(facts, frames, index, widestLetter));
  const lettered = rows.flatMap(({ places }) =>
    places.callOuts.flatMap(({ things }) => things.map(({ thing }) => thing)),
  );
  return { scale, rows, lettered };
}

function candidates(facts: BoardFacts): { readonly scale: Scale; readonly worth: number }[] {
  const { laid, things, defects } = facts;
  const isParted = (x: number, thing: { x: number; length: number }): boolean =>
    thing.x < x && x < thing.x + thing.length;
  const throughCuts = laid.cuts.filter(
    ({ kind, region }) => kind === 'crosscut' && region.width > laid.width * 0.7,
  );
  return scalesFor({
    length: laid.length,
    width: laid.width,
    narrowest: Math.min(laid.width, ...things.map(({ width }) => Math.max(width, tiny))),
    goodBreaks: throughCuts.map(({ at, kerf }) => at + kerf),
    parted: (x) =>
      things.filter((thing) => isParted(x, thing)).length +
      0.2 * defects.filter((defect) => isParted(x, defect)).length,
    room: sheetWidth - leftMargin - rightMargin,
  });
}
