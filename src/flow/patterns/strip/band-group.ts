import type { Plate } from '../plate.ts';
import { type InTheWay, type Obstacle, type Places, changesUnder, openPlaces } from './obstacles.ts';
import type { LengthGroup, Raster } from './raster-plate.ts';
import { type StackOption, type StripShape, lowestFree, optionKey, stackOn } from './stack.ts';
import { type Numbering, numberFor, openNumbering } from './numbering.ts';

/** The shapes of one length that a strip of one width can hold. */
interface Fitting {
  readonly shapes: readonly StripShape[];
  /** By clearance, whether some of them know it (1). */
  readonly knows: Uint8Array;
  /** Of a single shape: option by how many of it are stacked. Null for several shapes, and for runs. */
  readonly byCount: number[] | null;
  readonly clear: number;
  /** The group of a strip with nothing in the way; −1 before it is asked for. */
  whole: number;
}

/** What strips of one plate offer, each thing worked out once. */
export interface Offering {
  readonly plate: Plate;
  readonly raster: Raster;
  readonly options: StackOption[];
  /** Options by what they offer. */
  readonly numbers: Map<string, number>;
  /** What was in the way of several shapes, by length group, width and obstacles, and the option that was left of each. */
  readonly asked: Numbering;
  readonly answers: number[];
  readonly places: Places;
  /** By length group × widths + width. */
  readonly fitting: (Fitting | undefined)[];
  /** Each group as numbers: length group, clear option, then first and stop position and option of each span that differs. */
  readonly groups: Numbering;
  /** The group in the making, and what is in its way. */
  readonly spans: number[];
  readonly key: number[];
}

const nothing: StackOption = { length: 0, nodes: 1, arcs: [] };

/** Nothing offered yet. */
export function openOffering(plate: Plate, raster: Raster): Offering {
  return {
    plate,
    raster,
    options: [nothing],
    numbers: new Map(),
    asked: openNumbering(),
    answers: [],
    places: openPlaces(plate, raster),
    fitting: new Array<Fitting | undefined>(raster.groups.length * raster.widths.length),
    groups: openNumbering(),
    spans: [],
    key: [],
  };
}

function numberOf({ options, numbers }: Offering, option: StackOption | null): number {
  if (option === null) return 0;
  const key = optionKey(option);
  const known = numbers.get(key);
  if (known !== undefined) return known;
  options.push(option);
  numbers.set(key, options.length - 1);
  return options.length - 1;
}

function listed(
  offering: Offering,
  { length }: LengthGroup,
  shapes: readonly StripShape[],
  width: number,
  under: readonly Obstacle[],
): number {
  return numberOf(offering, stackOn(offering.plate, shapes, { length, width, blocked: under }));
}

function fittingOf(offering: Offering, index: number, w: number): Fitting {
  const { plate, raster, fitting } = offering;
  const at = index * raster.widths.length + w;
  const known = fitting[at];
  if (known !== undefined) return known;
  const width = raster.widths[w]!;
  const group = raster.groups[index]!;
  const shapes = group.shapes.filter((s) => s.width <= width);
  const isSingle = shapes.length === 1 && shapes[0]!.shortestOfRun === null;
  const knows = new Uint8Array(plate.clearances.length);
  for (const { clearances } of shapes) for (const clearance of clearances) knows[clearance] = 1;
  const made: Fitting = {
    shapes,
    knows,
    byCount: isSingle ? [0] : null,
    clear: shapes.length === 0 ? 0 : listed(offering, group, shapes, width, []),
    whole: -1,
  };
  fitting[at] = made;
  return made;
}

/** How many pieces of a shape one above the other a strip holds. */
function stacked(
  { plate }: Offering,
  length: number,
  shape: StripShape,
  width: number,
  under: readonly Obstacle[],
): number {
  const mustFill = length < plate.shortestRip || plate.stages === 3;
  if (mustFill && shape.width !== width) return 0;
  let count = 0;
  for (let at = 0; ; count += 1) {
    let best = Infinity;
    for (let c = 0; c < shape.clearances.length; c += 1)
      best = Math.min(best, lowestFree(under, shape.clearances[c]!, at, shape.width));
    if (best + shape.width > width || (mustFill && best > 0)) return count;
    at = best + shape.width + plate.ripKerf;
  }
}

/** The option of one length on a strip of one width with these obstacles under it. */
function optionUnder(
  offering: Offering,
  index: number,
  fitting: Fitting,
  width: number,
  under: readonly Obstacle[],
): number {
  if (under.length === 0) return fitting.clear;
  const group = offering.raster.groups[index]!;
  const { shapes, byCount } = fitting;
  if (byCount !== null) {
    const count = stacked(offering, group.length, shapes[0]!, width, under);
    return (byCount[count] ??= listed(offering, group, shapes, width, under));
  }
  const { asked, answers, key } = offering;
  key.length = 0;
  key.push(index, width);
  for (let i = 0; i < under.length; i += 1) key.push(under[i]!.clearance, under[i]!.low, under[i]!.high);
  const number = numberFor(asked, key);
  return (answers[number] ??= listed(offering, group, shapes, width, under));
}

/** Whether every shape has a clearance with nothing in the way. */
function isClear({ shapes }: Fitting, blocked: Uint8Array): boolean {
  for (let s = 0; s < shapes.length; s += 1) {
    const { clearances } = shapes[s]!;
    let isFree = false;
    for (let c = 0; c < clearances.length && !isFree; c += 1) isFree = blocked[clearances[c]!] === 0;
    if (!isFree) return false;
  }
  return true;
}

/** Obstacles that shapes know of; the list itself where they know all of it. */
function known(obstacles: readonly Obstacle[], knows: Uint8Array): readonly Obstacle[] {
  for (let i = 0; i < obstacles.length; i += 1)
    if (knows[obstacles[i]!.clearance] === 0) return obstacles.filter((o) => knows[o.clearance] === 1);
  return obstacles;
}

/**
 * The group of one length along a strip; −1 when it is offered nothing. Which obstacles lie under the piece decides the option,
 * and that changes only where one begins or ends to be under it. On a relaxed raster a position stands for all x up to the next one: where
 * the obstacles change in between, the strip counts as clear there.
 * @param w number of the strip's width
 */
export function bandGroup(
  offering: Offering,
  index: number,
  w: number,
  { obstacles, blocked }: InTheWay,
): number {
  const fitting = fittingOf(offering, index, w);
  const { clear } = fitting;
  if (clear === 0) return -1;
  const { spans } = offering;
  spans.length = 0;
  spans.push(index, clear);
  if (obstacles.length === 0 || isClear(fitting, blocked)) {
    if (fitting.whole < 0) fitting.whole = numberFor(offering.groups, spans);
    return fitting.whole;
  }
  const { length } = offering.raster.groups[index]!;
  const { xs, relaxed, exactX, widths } = offering.raster;
  const inReach = known(obstacles, fitting.knows);
  const changes = changesUnder(offering.places, offering.raster, inReach, index);
  let stop = changes[0]!.index;
  for (let k = 0; k + 1 < changes.length; k += 1) {
    const { at: from } = changes[k]!;
    const { at: next, index: end } = changes[k + 1]!;
    if (next === from) continue;
    const first = stop;
    stop = end;
    // On a relaxed raster the last position stands for places behind the change as well.
    const last = relaxed && !exactX && stop > first && (xs[stop] ?? next) > next ? stop - 1 : stop;
    if (last <= first) continue;
    const under: Obstacle[] = [];
    for (let i = 0; i < inReach.length; i += 1) {
      const o = inReach[i]!;
      if (o.x < from + length && o.end > from) under.push(o);
    }
    const id = optionUnder(offering, index, fitting, widths[w]!, under);
    if (id === clear) continue;
    const goesOn = spans.length > 2 && spans.at(-1) === id && spans.at(-2) === first;
    if (goesOn) spans[spans.length - 2] = last;
    else spans.push(first, last, id);
  }
  return numberFor(offering.groups, spans);
}
