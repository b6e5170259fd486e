import { suits } from '../parts/match.ts';
import type { Part } from '../parts/part.ts';
import type { Meter } from '../patterns/meter.ts';
import type { Kind, Plate, RunPieces, Shape } from '../patterns/plate.ts';
import { withRoom } from '../patterns/room.ts';
import { type Scratch, openScratch } from '../patterns/strip/frame.ts';
import { type Fineness, type Pricer, openStripPricer } from '../patterns/strip/strip-pricer.ts';
import type { Board } from '../stock/board.ts';
import { blocks, extent } from '../stock/clear.ts';
import type { Face } from '../stock/defect.ts';
import type { Job } from '../stock/job.ts';
import { usable } from '../stock/usable.ts';
import { isDeep, openAnyStagePricer, openDeepPricer } from './any-stage-pricer.ts';
import { claimedAreas } from './claimed-area.ts';
import type { BlankKind, Instance, StockGroup } from './instance.ts';
import { kindsOf, piecesIn } from './kinds.ts';
import { exchangeInTurn } from './exchange/exchange-in-turn.ts';
import { priceInTurn } from './price-together.ts';

/** Collects the clearances of one board: sets of its defects, numbered as they turn up. */
interface Clearances {
  readonly numbers: Map<string, number>;
  readonly sets: number[][];
}

function clearanceOf(known: Clearances, blocked: readonly number[]): number {
  const key = blocked.join(',');
  const number = known.numbers.get(key);
  if (number !== undefined) return number;
  known.sets.push([...blocked]);
  known.numbers.set(key, known.sets.length - 1);
  return known.sets.length - 1;
}

/** Faces of the board that the part may show, by its pin; none when the board cannot serve it at all. */
export function facesFor(part: Part, board: Board): readonly Face[] {
  if (board.dressedThickness < part.thickness) return [];
  if (!suits(part, board)) return [];
  if (part.pin === null) return ['A', 'B'];
  if (part.pin.board !== board.name) return [];
  return part.pin.face === null ? ['A', 'B'] : [part.pin.face];
}

/** The fewest clearances that say where a kind may lie: a set of defects that contains another's is no help. */
function clearancesFor(job: Job, kind: BlankKind, board: Board, known: Clearances): number[] {
  const parts = kind.members.map((m) => job.parts[m.part]!);
  const faces = (['A', 'B'] as const).filter((face) => parts.every((p) => facesFor(p, board).includes(face)));
  const sets = faces.map((face) =>
    board.defects.flatMap((defect, index) => (parts.some((p) => blocks(p, defect, face)) ? [index] : [])),
  );
  const least = sets.filter(
    (set, index) =>
      !sets.some(
        (other, k) =>
          k !== index && other.every((d) => set.includes(d)) && (other.length < set.length || k < index),
      ),
  );
  return least.map((set) => clearanceOf(known, set));
}

function shapesOf(job: Job, kind: BlankKind): Shape[] {
  const along: Shape = { length: kind.length, width: kind.width };
  const across: Shape = { length: kind.width, width: kind.length };
  const grain = kind.members.length === 1 ? job.parts[kind.members[0]!.part]!.grain : 'along';
  if (grain === 'along' || kind.length === kind.width) return [along];
  return grain === 'across' ? [across] : [along, across];
}

/** The shapes that can be cut from a board of this width, whatever else: in one stage nothing is ripped. */
function shapesOn({ shop }: Job, shapes: readonly Shape[], width: number): readonly Shape[] {
  return shop.stages === 1 ? shapes.filter((shape) => shape.width === width) : shapes;
}

/**
 * A run's narrower pieces are ripped once the run is crosscut: that takes a second stage, and pieces long enough to be ripped.
 * And all its pieces lie along the grain.
 */
function isCuttable({ shop, parts }: Job, { members, width }: BlankKind): boolean {
  if (members.length > 1 && members.some(({ part }) => parts[part]!.grain === 'across')) return false;
  const narrow = members.filter((member) => member.width < width);
  return (
    narrow.length === 0 || (shop.stages !== 1 && narrow.every(({ length }) => length >= shop.shortestRip))
  );
}

function piecesOf({ members, width }: BlankKind): RunPieces {
  return {
    shortest: members.reduce((least, { length }) => Math.min(least, length), Infinity),
    isEven: members.every((member) => member.width === width),
  };
}

/**
 * Whether the strip engine knows all ways to cut in so many stages. It crosscuts runs in the third: of a run in three stages
 * whose narrower pieces must be ripped after that it knows none, though it can be crosscut in the first.
 */
function isOfStrips(stages: Plate['stages'], kinds: readonly Kind[]): boolean {
  return stages === 4 || (stages === 3 && kinds.every(({ run }) => run?.isEven !== false));
}

/** With more boards than this long pieces beside each other are not looked at: a row of the master for each board. */
const mostBesideRows = 60;

/** What the groups of an instance share. */
interface Shared {
  /** Of each kind. */
  readonly shapes: readonly (readonly Shape[])[];
  readonly fineness: Fineness;
  readonly meter: Meter;
  readonly scratch: Scratch;
  /** Whether there are too many groups for long pieces beside each other to be looked at. */
  readonly isMany: boolean;
}

/** The credit that pieces of each kind lose (see claimedAreas). */
function creditLost(
  { shop }: Job,
  kinds: readonly BlankKind[],
  plate: Plate,
  lying: readonly Kind[],
  { rate, isMany }: { readonly rate: number; readonly isMany: boolean },
): Pick<StockGroup, 'claims' | 'beside'> {
  if (rate === 0) return { claims: new Float64Array(kinds.length), beside: null };
  const least = { length: shop.leastOffcutLength, width: shop.leastOffcutWidth };
  const { areas, beside } = claimedAreas(plate, lying, kinds, least);
  return {
    claims: areas.map((area) => rate * area),
    beside: beside === null || isMany ? null : { kinds: beside.kinds, credit: rate * beside.area },
  };
}

function groupOf(
  job: Job,
  kinds: readonly BlankKind[],
  index: number,
  { shapes, fineness, meter, scratch, isMany }: Shared,
): StockGroup {
  const board = job.boards[index]!;
  const area = usable(board, job.shop);
  const known: Clearances = { numbers: new Map(), sets: [] };
  const platesKinds: Kind[] = kinds.map((kind, k) => {
    const lying = shapesOn(job, shapes[k]!, area.width);
    return {
      shapes: lying.length === 0 ? shapes[k]! : lying,
      cap: kind.demand,
      clearances: lying.length > 0 && isCuttable(job, kind) ? clearancesFor(job, kind, board, known) : [],
      ...(kind.members.length > 1 ? { run: piecesOf(kind) } : {}),
    };
  });
  const plate: Plate = {
    length: Math.max(0, area.length),
    width: Math.max(0, area.width),
    crosscutKerf: job.shop.crosscutKerf,
    ripKerf: job.shop.ripKerf,
    shortestRip: job.shop.shortestRip,
    stages: job.shop.stages,
    clearances: known.sets.map((set) =>
      set.map((d) => {
        const wood = extent(board.defects[d]!, job.shop);
        return { ...wood, x: wood.x - area.x, y: wood.y - area.y };
      }),
    ),
  };
  const lying = withRoom(plate, platesKinds);
  const strips = (on: Plate): Pricer => openStripPricer(on, lying, fineness, meter, scratch);
  const boards = job.boards.length;
  const hasTries = job.shop.goal !== 'most value';
  const general = (): Pricer => openAnyStagePricer(plate, lying, meter, { boards, hasTries });
  const { stages } = plate;
  const pricer = isOfStrips(stages, lying)
    ? strips(plate)
    : isDeep(stages)
      ? openDeepPricer(general(), strips({ ...plate, stages: 4 }), lying, boards)
      : general();
  // An offcut earns credit × price × its share of the board. Offcuts lie in the usable area, where the pieces are not.
  const rate = (job.shop.offcutCredit * board.cost) / (board.length * board.width);
  return {
    board: index,
    copies: board.quantity,
    ...(job.shop.goal === 'most value'
      ? { cost: 0, rate: 0, claims: new Float64Array(kinds.length), beside: null }
      : {
          cost: board.cost - rate * plate.length * plate.width,
          rate,
          ...creditLost(job, kinds, plate, lying, { rate, isMany }),
        }),
    plate,
    kinds: lying,
    pricer,
  };
}

/**
 * How finely positions are listed. Small jobs list all of them; for larger ones each pricing must be cheaper, so
 * patterns are sought on a thinner raster and bounds on a coarser relaxation.
 */
function finenessFor(pieces: number, boards: number): Fineness {
  const size = pieces * boards;
  const rough = { roughX: 120, roughY: 30, wholeX: 2400, wholeY: 700 };
  if (size <= 700)
    return { patternX: 2000, patternY: 300, boundX: 2000, boundY: 300, mostStarts: 16, ...rough };
  if (size <= 3_000)
    return { patternX: 1200, patternY: 140, boundX: 1200, boundY: 140, mostStarts: 12, ...rough };
  const all = { patternX: 2000, patternY: 300, boundX: 2000, boundY: 300 };
  if (size <= 200_000) return { ...all, mostStarts: 4, roughX: 60, roughY: 14 };
  return { ...all, mostStarts: 3, roughX: 40, roughY: 10, mostKept: 460 };
}

/** Whether some piece might lie on the board, defects aside. */
function mayServe(job: Job, kinds: readonly BlankKind[], shapes: Shared['shapes'], board: Board): boolean {
  const area = usable(board, job.shop);
  return kinds.some(
    (kind, k) =>
      isCuttable(job, kind) &&
      shapesOn(job, shapes[k]!, area.width).some(
        ({ length, width }) => length <= area.length && width <= area.width,
      ) &&
      clearancesFor(job, kind, board, { numbers: new Map(), sets: [] }).length > 0,
  );
}

/**
 * Turns a job into numbers. Boards that can hold nothing, too thin or too small, stay out: with many of them a small job would
 * be solved as one of many boards, which is never proven.
 * @param pieces about how many will be cut: tells how finely positions are listed
 */
export function buildInstance(job: Job, pieces = piecesIn(kindsOf(job))): Instance {
  const kinds = kindsOf(job);
  const shapes = kinds.map((kind) => shapesOf(job, kind));
  const boards = job.boards.flatMap((board, index) => (mayServe(job, kinds, shapes, board) ? [index] : []));
  const shared: Shared = {
    shapes,
    fineness: finenessFor(pieces, boards.length),
    meter: { spent: 0 },
    scratch: openScratch(),
    isMany: boards.length > mostBesideRows,
  };
  const groups = boards.map((index) => groupOf(job, kinds, index, shared));
  const { meter } = shared;
  return { kinds, groups, meter, price: priceInTurn(meter), exchange: exchangeInTurn };
}
