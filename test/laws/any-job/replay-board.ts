import type { Rectangle } from '../../../src/base/geometry/rectangle.ts';
import type { Cut, LaidBoard, LaidPiece } from '../../../src/flow/cuts/layout.ts';
import type { Part } from '../../../src/flow/parts/part.ts';
import type { Shop } from '../../../src/flow/shop/shop.ts';
import type { Board } from '../../../src/flow/stock/board.ts';

// A replay of one board that shares no code with the product's solver, cuts or check. Corners instead of sizes throughout:
// slips that corners invite are not those that sizes invite.

/** A rectangle by its corners. */
interface Box {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** A workpiece, and the stages of the cuts that freed it. */
interface Workpiece extends Box {
  readonly stage: number;
}

function boxOf({ x, y, length, width }: Rectangle): Box {
  return { x0: x, y0: y, x1: x + length, y1: y + width };
}

function areaOf({ x0, y0, x1, y1 }: Box): number {
  return Math.max(0, x1 - x0) * Math.max(0, y1 - y0);
}

function isInside(inner: Box, outer: Box): boolean {
  return inner.x0 >= outer.x0 && inner.y0 >= outer.y0 && inner.x1 <= outer.x1 && inner.y1 <= outer.y1;
}

function same(a: Box, b: Box): boolean {
  return a.x0 === b.x0 && a.y0 === b.y0 && a.x1 === b.x1 && a.y1 === b.y1;
}

/** What the trims leave (DESIGN, section 6, as the README has it). */
export function woodOf(board: Board, shop: Shop): Box {
  const end = shop.endTrim > 0 && board.origin !== 'rack' ? Math.max(shop.endTrim, shop.crosscutKerf) : 0;
  const edge = shop.edgeTrim > 0 ? Math.max(shop.edgeTrim, shop.ripKerf) : 0;
  const near = board.surface === 'rough' || board.surface === 'S2S' ? edge : 0;
  const far = board.surface === 'S4S' ? 0 : edge;
  return { x0: end, y0: near, x1: board.length - end, y1: board.width - far };
}

/** The kerf of a blade tilted by the steeper of two ends, up to a whole tick. */
export function tilted(kerf: number, one: Part, two: Part): number {
  const steep = Math.max(Math.abs(one.rightEnd), Math.abs(two.leftEnd));
  return Math.ceil(kerf / Math.cos((steep / 180) * Math.PI) - 1e-7);
}

/** Where two pieces of a run meet on the board. */
interface Joint {
  readonly first: LaidPiece;
  readonly second: LaidPiece;
  readonly kerf: number;
}

function jointsOn(laid: LaidBoard, parts: ReadonlyMap<string, Part>, shop: Shop): Joint[] {
  return laid.pieces.flatMap((first) =>
    laid.pieces
      .filter(
        ({ run }) =>
          first.run !== undefined && run?.run === first.run.run && run.order === first.run.order + 1,
      )
      .map((second) => ({
        first,
        second,
        kerf: tilted(shop.crosscutKerf, parts.get(first.part)!, parts.get(second.part)!),
      })),
  );
}

/** A crosscut at odd stages, a rip at even ones. */
function nextStage(stage: number, kind: Cut['kind']): number {
  const isOdd = kind === 'crosscut';
  const least = Math.max(stage, 1);
  return (least % 2 === 1) === isOdd ? least : least + 1;
}

/** Everything wrong with the cuts, pieces, offcuts and areas of one board, in words. */
export function boardFaults(
  laid: LaidBoard,
  board: Board,
  parts: ReadonlyMap<string, Part>,
  shop: Shop,
): string[] {
  const wrong: string[] = [];
  const wood = woodOf(board, shop);
  const joints = jointsOn(laid, parts, shop);
  let bench: Workpiece[] = [{ x0: 0, y0: 0, x1: board.length, y1: board.width, stage: 0 }];
  let kerfArea = 0;
  for (const cut of laid.cuts) {
    const region = boxOf(cut.region);
    const on = bench.find((workpiece) => same(workpiece, region));
    if (on === undefined) return [...wrong, `step ${cut.step}: no such workpiece`];
    const isRip = cut.kind === 'rip';
    const [from, to] = isRip ? [region.y0, region.y1] : [region.x0, region.x1];
    const end = cut.at + cut.kerf;
    const isTrim = isRip ? end <= wood.y0 || cut.at >= wood.y1 : end <= wood.x0 || cut.at >= wood.x1;
    const stage = isTrim ? on.stage : nextStage(on.stage, cut.kind);
    if (!isTrim && shop.stages !== 'any' && stage > shop.stages)
      wrong.push(`step ${cut.step}: stage ${stage}`);
    if (!isTrim && !isInside(region, wood)) wrong.push(`step ${cut.step}: before the trims`);
    if (isRip && region.x1 - region.x0 < shop.shortestRip) wrong.push(`step ${cut.step}: too short to rip`);
    wrong.push(...wrongKerf(cut, laid, joints, shop).map((why) => `step ${cut.step}: ${why}`));
    const [near, far]: [Workpiece, Workpiece] = isRip
      ? [
          { ...region, y1: cut.at, stage },
          { ...region, y0: end, stage },
        ]
      : [
          { ...region, x1: cut.at, stage },
          { ...region, x0: end, stage },
        ];
    const breadth = isRip ? region.x1 - region.x0 : region.y1 - region.y0;
    if (!isTrim) kerfArea += (Math.min(to, end) - Math.max(from, cut.at)) * breadth;
    bench = [
      ...bench.filter((workpiece) => workpiece !== on),
      ...[near, far].filter((side) => areaOf(side) > 0),
    ];
  }
  return [...wrong, ...leftWrong(laid, bench, wood, kerfArea, shop)];
}

function wrongKerf(cut: Cut, laid: LaidBoard, joints: readonly Joint[], shop: Shop): string[] {
  const region = boxOf(cut.region);
  const parted = joints.filter(({ first, second }) => {
    const [near, far] = first.x < second.x ? [first, second] : [second, first];
    const both = isInside(boxOf(near), region) && isInside(boxOf(far), region);
    return cut.kind === 'crosscut' && both && near.x + near.length <= cut.at && cut.at <= far.x;
  });
  const [joint, ...more] = parted;
  const right = joint?.kerf ?? (cut.kind === 'rip' ? shop.ripKerf : shop.crosscutKerf);
  const wrong = cut.kerf === right ? [] : [`kerf ${cut.kerf}, not ${right}`];
  if (joint === undefined) return wrong;
  if (more.length > 0) return [...wrong, 'two joints at once'];
  const { first, second } = joint;
  const low = Math.min(first.x, second.x);
  const high = Math.max(first.x + first.length, second.x + second.length);
  const beside = laid.pieces.some(
    (piece) =>
      piece !== first &&
      piece !== second &&
      isInside(boxOf(piece), region) &&
      piece.x < high &&
      piece.x + piece.length > low,
  );
  return beside ? [...wrong, 'a tilted cut beside another piece'] : wrong;
}

/** The bench at the end: exactly the pieces, all that is worth keeping, and scrap; and the areas that make the board. */
function leftWrong(
  laid: LaidBoard,
  bench: readonly Workpiece[],
  wood: Box,
  kerf: number,
  shop: Shop,
): string[] {
  const wrong: string[] = [];
  let rest = [...bench];
  for (const { what, region } of [
    ...laid.pieces.map((region) => ({ what: region.part, region })),
    ...laid.offcuts.map((region) => ({ what: region.id, region })),
  ]) {
    const found = rest.find((workpiece) => same(workpiece, boxOf(region)));
    if (found === undefined) wrong.push(`${what} is not cut free`);
    rest = rest.filter((workpiece) => workpiece !== found);
  }
  const isWorthKeeping = ({ x0, y0, x1, y1 }: Box): boolean =>
    x1 - x0 >= shop.leastOffcutLength && y1 - y0 >= shop.leastOffcutWidth;
  const scraps = rest.filter((workpiece) => isInside(workpiece, wood));
  if (scraps.some(isWorthKeeping)) wrong.push('an offcut worth keeping is not listed');
  if (!laid.offcuts.every((offcut) => isWorthKeeping(boxOf(offcut)))) wrong.push('an offcut is too small');
  const sum = (boxes: readonly Box[]): number => boxes.reduce((total, box) => total + areaOf(box), 0);
  const whole = laid.length * laid.width;
  const right = {
    board: whole,
    parts: sum(laid.pieces.map(boxOf)),
    offcuts: sum(laid.offcuts.map(boxOf)),
    kerf,
    trim: whole - areaOf(wood),
    scrap: sum(scraps),
  };
  if (right.parts + right.offcuts + kerf + right.trim + right.scrap !== whole)
    wrong.push('areas do not sum up');
  for (const [what, area] of Object.entries(right)) {
    if (laid.area[what as keyof typeof right] !== area) wrong.push(`area of ${what}`);
  }
  return wrong;
}
