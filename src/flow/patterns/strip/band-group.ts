import type { Plate } from '../plate.ts';
import { ceilIndex } from './raster.ts';
import type { LengthGroup, Raster } from './raster-plate.ts';
import { type Blocked, type StackOption, type StripShape, lowestFree, optionKey, stackOn } from './stack.ts';

/** What a strip offers pieces of one length: `clear` everywhere but from x index `start` on, where `ids` says. */
export interface BandGroup {
  /** Of all that strips offer each its own, equal offers the same. */
  readonly number: number;
  /** As in the raster: x index behind a piece that starts at each x index. */
  readonly next: Int16Array;
  /** Option number where nothing is in the way. */
  readonly clear: number;
  readonly start: number;
  readonly ids: Int32Array;
}

/** What is blocked of a strip, and from where to where along it. */
export interface Obstacle extends Blocked {
  readonly x: number;
  readonly end: number;
}

/** The shapes of one length that a strip of one width can hold. */
interface Fitting {
  readonly shapes: readonly StripShape[];
  /** Clearances that some of them know. */
  readonly clearances: ReadonlySet<number>;
  /** Of a single shape: option by how many of it are stacked; −1 where not asked yet. Null for several shapes, and for runs. */
  readonly byCount: number[] | null;
  readonly clear: number;
  /** What a strip with nothing in the way offers; null before it is asked for. */
  whole: BandGroup | null;
}

/** What strips of one plate offer, each thing worked out once. */
export interface Offering {
  readonly plate: Plate;
  readonly raster: Raster;
  readonly options: StackOption[];
  /** Options by what they offer, and of several shapes by what is in the way of them. */
  readonly numbers: Map<string, number>;
  readonly asked: Map<string, number>;
  readonly fitting: Map<number, Fitting>[];
  readonly groups: Map<string, BandGroup>;
}

const nothing: StackOption = { length: 0, nodes: 1, arcs: [] };

/** Nothing offered yet. */
export function openOffering(plate: Plate, raster: Raster): Offering {
  return {
    plate,
    raster,
    options: [nothing],
    numbers: new Map(),
    asked: new Map(),
    fitting: raster.groups.map(() => new Map()),
    groups: new Map(),
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

function fittingOf(offering: Offering, index: number, width: number): Fitting {
  const known = offering.fitting[index]!.get(width);
  if (known !== undefined) return known;
  const group = offering.raster.groups[index]!;
  const shapes = group.shapes.filter((s) => s.width <= width);
  const isSingle = shapes.length === 1 && shapes[0]!.shortestOfRun === null;
  const made: Fitting = {
    shapes,
    clearances: new Set(shapes.flatMap((s) => s.clearances)),
    byCount: isSingle ? [0] : null,
    clear: shapes.length === 0 ? 0 : listed(offering, group, shapes, width, []),
    whole: null,
  };
  offering.fitting[index]!.set(width, made);
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
    for (const clearance of shape.clearances)
      best = Math.min(best, lowestFree(under, clearance, at, shape.width));
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
  const key = `${index}|${width}|${under.map((o) => `${o.clearance},${o.low},${o.high}`).join(';')}`;
  const known = offering.asked.get(key);
  if (known !== undefined) return known;
  const id = listed(offering, group, shapes, width, under);
  offering.asked.set(key, id);
  return id;
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

/** The places, ascending and each once, where an obstacle begins or ends to lie under a piece of this length. */
function changesUnder(inReach: readonly Obstacle[], length: number): number[] {
  const changes: number[] = [];
  for (const { x, end } of inReach) changes.push(x - length + 1, end);
  changes.sort((a, b) => a - b);
  return changes;
}

/** Obstacles in the way along a strip, and which clearances have any (1). */
export interface InTheWay {
  readonly obstacles: readonly Obstacle[];
  readonly blocked: Uint8Array;
}

/**
 * The options of one length along a strip; null when it has none. Which obstacles lie under the piece decides the option,
 * and that changes only where one begins or ends to be under it. On a relaxed raster a position stands for all x up to the next one: where
 * the obstacles change in between, the strip counts as clear there.
 */
export function bandGroup(
  offering: Offering,
  index: number,
  width: number,
  { obstacles, blocked }: InTheWay,
): BandGroup | null {
  const fitting = fittingOf(offering, index, width);
  const { clear } = fitting;
  if (clear === 0) return null;
  if (obstacles.length === 0 || isClear(fitting, blocked)) {
    return (fitting.whole ??= groupOf(offering, index, clear, []));
  }
  const { length } = offering.raster.groups[index]!;
  const { xs, relaxed, exactX } = offering.raster;
  const inReach = obstacles.filter(({ clearance }) => fitting.clearances.has(clearance));
  const changes = changesUnder(inReach, length);
  const spans: Span[] = [];
  let stop = ceilIndex(xs, changes[0]!);
  for (let k = 0; k + 1 < changes.length; k += 1) {
    const from = changes[k]!;
    const next = changes[k + 1]!;
    if (next === from) continue;
    const first = stop;
    stop = ceilIndex(xs, next);
    // On a relaxed raster the last position stands for places behind the change as well.
    const last = relaxed && !exactX && stop > first && (xs[stop] ?? next) > next ? stop - 1 : stop;
    if (last <= first) continue;
    const under = inReach.filter((o) => o.x < from + length && o.end > from);
    const id = optionUnder(offering, index, fitting, width, under);
    const before = spans.at(-1);
    if (id === clear) continue;
    if (before?.id === id && before.stop === first) before.stop = last;
    else spans.push({ first, stop: last, id });
  }
  return groupOf(offering, index, clear, spans);
}

/** Positions from `first` on, `stop` exclusive, that have the option. */
interface Span {
  readonly first: number;
  stop: number;
  readonly id: number;
}

function groupOf(offering: Offering, index: number, clear: number, spans: readonly Span[]): BandGroup {
  let key = `${index}|${clear}`;
  for (const { first, stop, id } of spans) key += `|${first},${stop},${id}`;
  const known = offering.groups.get(key);
  if (known !== undefined) return known;
  const start = spans[0]?.first ?? 0;
  const ids = new Int32Array((spans.at(-1)?.stop ?? start) - start).fill(clear);
  for (const { first, stop, id } of spans) ids.fill(id, first - start, stop - start);
  const made: BandGroup = {
    number: offering.groups.size,
    next: offering.raster.groups[index]!.next,
    clear,
    start,
    ids,
  };
  offering.groups.set(key, made);
  return made;
}
