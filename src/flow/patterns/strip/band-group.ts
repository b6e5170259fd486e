import type { Plate } from '../plate.ts';
import { type InTheWay, type Obstacle, type Places, changesUnder, openPlaces } from './obstacles.ts';
import type { LengthGroup, Raster } from './raster-plate.ts';
import { type StackOption, type StripShape, lowestFree, optionKey, stackOn } from './stack.ts';
import { type Numbering, forgetLists, numberPut, openNumbering, put } from './numbering.ts';

/** The shapes of one length that a strip of one width can hold. */
interface Fitting {
  readonly shapes: readonly StripShape[];
  /** By clearance, whether some of them know it (1). */
  readonly knows: Uint8Array;
  /** Of a single shape: option by how many of it are stacked, whatever the strip's width. Null for several shapes, and for runs. */
  readonly byCount: number[] | null;
  readonly clear: number;
  /** The group of a strip with nothing in the way; −1 before it is asked for. */
  whole: number;
}

/** Lists that are told apart while a plate's bands are made. */
export interface Numberings {
  /** What was in the way of several shapes: length group, width and obstacles. */
  readonly asked: Numbering;
  /** Each group of a strip: length group, clear option, then first and stop position and option of each span that differs. */
  readonly groups: Numbering;
  /** Each band: its width, then its groups. */
  readonly bands: Numbering;
}

/** Memory for lists, to be used for one plate after another. */
export function openNumberings(): Numberings {
  return { asked: openNumbering(), groups: openNumbering(), bands: openNumbering() };
}

/** What strips of one plate offer, each thing worked out once. */
export interface Offering extends Numberings {
  readonly plate: Plate;
  readonly raster: Raster;
  readonly options: StackOption[];
  /** Options by what they offer. */
  readonly numbers: Map<string, number>;
  /** The option that was left, by what was asked. */
  readonly answers: number[];
  readonly places: Places;
  /** By length group × widths + width. */
  readonly fitting: (Fitting | undefined)[];
}

const nothing: StackOption = { length: 0, nodes: 1, arcs: [] };

const none: readonly Obstacle[] = [];

/** Nothing offered yet. @param numberings what they held before is forgotten */
export function openOffering(plate: Plate, raster: Raster, numberings: Numberings): Offering {
  const { asked, groups, bands } = numberings;
  for (const each of [asked, groups, bands]) forgetLists(each);
  return {
    ...numberings,
    plate,
    raster,
    options: [nothing],
    numbers: new Map(),
    answers: [],
    places: openPlaces(plate, raster),
    fitting: new Array<Fitting | undefined>(raster.groups.length * raster.widths.length),
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

/** What is told of shapes whatever the width of the strip that holds them all. */
function toldOf(plate: Plate, shapes: readonly StripShape[]): Pick<Fitting, 'shapes' | 'knows' | 'byCount'> {
  const knows = new Uint8Array(plate.clearances.length);
  for (const { clearances } of shapes) for (const clearance of clearances) knows[clearance] = 1;
  const isSingle = shapes.length === 1 && shapes[0]!.shortestOfRun === null;
  return { shapes, knows, byCount: isSingle ? [0] : null };
}

function fittingOf(offering: Offering, index: number, w: number): Fitting {
  const { plate, raster, fitting } = offering;
  const at = index * raster.widths.length + w;
  const known = fitting[at];
  if (known !== undefined) return known;
  const width = raster.widths[w]!;
  const group = raster.groups[index]!;
  const shapes = group.shapes.filter((s) => s.width <= width);
  const narrower = w > 0 ? fitting[at - 1] : undefined;
  // Strips of most widths hold the same shapes as those a little narrower.
  const told = narrower?.shapes.length === shapes.length ? narrower : toldOf(plate, shapes);
  const clear = shapes.length === 0 ? 0 : offered(offering, index, told, width, none);
  const made: Fitting = { ...told, clear, whole: -1 };
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
function offered(
  offering: Offering,
  index: number,
  { shapes, byCount }: Pick<Fitting, 'shapes' | 'byCount'>,
  width: number,
  under: readonly Obstacle[],
): number {
  const group = offering.raster.groups[index]!;
  if (byCount !== null) {
    const count = stacked(offering, group.length, shapes[0]!, width, under);
    return (byCount[count] ??= listed(offering, group, shapes, width, under));
  }
  const { asked, answers } = offering;
  put(asked, index);
  put(asked, width);
  for (let i = 0; i < under.length; i += 1) {
    const { clearance, low, high } = under[i]!;
    put(asked, clearance);
    put(asked, low);
    put(asked, high);
  }
  const number = numberPut(asked);
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

/** Obstacles under a piece that lies from `from` up to `to`: next to none, mostly. */
function underPiece(obstacles: readonly Obstacle[], from: number, to: number): readonly Obstacle[] {
  let count = 0;
  for (let i = 0; i < obstacles.length; i += 1) if (isUnder(obstacles[i]!, from, to)) count += 1;
  if (count === 0) return none;
  // Millions of them: an array that grows as it is filled has room for many more.
  const under = new Array<Obstacle>(count);
  for (let i = obstacles.length - 1; i >= 0; i -= 1) {
    if (isUnder(obstacles[i]!, from, to)) under[(count -= 1)] = obstacles[i]!;
  }
  return under;
}

function isUnder({ x, end }: Obstacle, from: number, to: number): boolean {
  return x < to && end > from;
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
  const isWhole = obstacles.length === 0 || isClear(fitting, blocked);
  if (isWhole && fitting.whole >= 0) return fitting.whole;
  const { groups, raster } = offering;
  put(groups, index);
  put(groups, clear);
  if (!isWhole) putSpans(offering, index, fitting, raster.widths[w]!, obstacles);
  const number = numberPut(groups);
  if (isWhole) fitting.whole = number;
  return number;
}

/** Where along a strip a length is offered another option than its clear one. */
function putSpans(
  offering: Offering,
  index: number,
  fitting: Fitting,
  width: number,
  obstacles: readonly Obstacle[],
): void {
  const { groups, places, raster } = offering;
  const { xs, relaxed, exactX } = raster;
  const { length } = raster.groups[index]!;
  const inReach = known(obstacles, fitting.knows);
  const { count, at, index: indices } = changesUnder(places, raster, inReach, index);
  let stop = indices[0]!;
  let [lastId, lastStop] = [-1, -1];
  for (let k = 0; k + 1 < count; k += 1) {
    const [from, next] = [at[k]!, at[k + 1]!];
    if (next === from) continue;
    const first = stop;
    stop = indices[k + 1]!;
    // On a relaxed raster the last position stands for places behind the change as well.
    const last = relaxed && !exactX && stop > first && (xs[stop] ?? next) > next ? stop - 1 : stop;
    if (last <= first) continue;
    const under = underPiece(inReach, from, from + length);
    const id = under.length === 0 ? fitting.clear : offered(offering, index, fitting, width, under);
    if (id === fitting.clear) continue;
    if (lastId === id && lastStop === first) groups.lists[groups.end - 2] = last;
    else {
      put(groups, first);
      put(groups, last);
      put(groups, id);
    }
    [lastId, lastStop] = [id, last];
  }
}
