import type { Rectangle } from '../../src/base/geometry/rectangle.ts';
import { inches, ticks, ticksPerInch } from '../../src/base/units/tick.ts';
import type { BoardPattern, Choice, PlacedPiece, Short } from '../../src/flow/choice/choice.ts';
import type { Accepted, Part, Quality } from '../../src/flow/parts/part.ts';
import { type Shop, defaultShop } from '../../src/flow/shop/shop.ts';
import type { Board } from '../../src/flow/stock/board.ts';
import { type Defect, type Face, defectKinds, isUnsound, liesOn } from '../../src/flow/stock/defect.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { usable } from '../../src/flow/stock/usable.ts';
import { type CuttingRules, type Workpiece, cutAtRandom } from './cut-at-random.ts';
import { plainBoard, plainPart } from './random-board.ts';
import { type Seeded, seeded } from './seeded.ts';

/** A job and a choice for it that can be cut: made by cutting boards at random and calling what lies there parts. */
export interface CuttableJob {
  readonly job: Job;
  readonly choice: Choice;
}

/** How large and how odd the job may be. */
export interface Oddness {
  readonly boards: number;
  /** Workpieces per board, pieces and leftovers together. */
  readonly pieces: number;
}

function randomShop(random: Seeded): Shop {
  const length = (values: readonly number[]): number => random.pick(values) * ticksPerInch;
  return {
    ...defaultShop,
    showTone: 'any',
    ripKerf: ticks(length([0, 1 / 16, 3 / 32, 1 / 8])),
    crosscutKerf: ticks(length([0, 1 / 16, 1 / 8])),
    endTrim: ticks(length([0, 1 / 16, 1, 2])),
    edgeTrim: ticks(length([0, 1 / 16, 1 / 4])),
    shortestRip: ticks(length([0, 5, 12])),
    lengthAllowance: ticks(length([0, 0, 1 / 4])),
    widthAllowance: ticks(length([0, 0, 1 / 8])),
    // Blanks come first here and parts from them: what is trimmed off later is told apart elsewhere.
    miterAllowance: ticks(0),
    gluedLengthAllowance: ticks(0),
    gluedWidthAllowance: ticks(0),
    stages: random.pick([2, 3, 4, 4, 5, 'any'] as const),
    leastOffcutLength: ticks(length([0, 8, 12])),
    leastOffcutWidth: ticks(length([0, 1, 2])),
    offcutCredit: random.pick([0, 0, 0.5]),
    goal: random.pick(['least cost', 'least cost', 'most value'] as const),
    knotMargin: ticks(length([0, 0, 1 / 2])),
  };
}

function randomBoard(random: Seeded, index: number): Board {
  const length = random.whole(30 * 16, 90 * 16) * 508;
  const width = random.whole(4 * 16, 12 * 16) * 508;
  const defects = Array.from({ length: random.whole(0, 5) }, (): Defect => {
    const long = Math.min(length, random.whole(1, 8 * ticksPerInch));
    const wide = Math.min(width, random.whole(1, 2 * ticksPerInch));
    return {
      kind: random.pick(defectKinds),
      face: random.pick(['A', 'B', 'through'] as const),
      x: random.whole(0, length - long),
      y: random.whole(0, width - wide),
      length: long,
      width: wide,
    };
  });
  return {
    ...plainBoard({ name: `board ${index + 1}`, length, width }),
    quantity: random.whole(1, 2),
    surface: random.pick(['rough', 'S2S', 'S3S', 'S4S'] as const),
    nominalInches: random.pick([1, 1.25]),
    cost: random.whole(0, 9000) / 100,
    tone: random.pick(['', 'red', 'pale']),
    defects,
  };
}

/** Which faces may show for a piece with these defects under it: none, one, or both. */
function showable(defects: readonly Defect[], quality: Quality, accept: readonly Accepted[]): Face[] {
  if (quality === 'any') return ['A', 'B'];
  if (quality === 'sound') return defects.some(({ kind }) => isUnsound(kind)) ? [] : ['A', 'B'];
  const isWelcome = (defect: Defect): boolean =>
    accept.some(
      ({ kind, atMost }) =>
        kind === defect.kind && (atMost === null || (defect.length <= atMost && defect.width <= atMost)),
    );
  return (['A', 'B'] as const).filter((show) =>
    defects.every((defect) => {
      if (liesOn(defect, show) && !isWelcome(defect)) return false;
      const back = show === 'A' ? 'B' : 'A';
      return !liesOn(defect, back) || (quality !== 'clear-2' && !isUnsound(defect.kind));
    }),
  );
}

function under(board: Board, shop: Shop, region: Rectangle): Defect[] {
  return board.defects.filter((defect) => {
    const margin = defect.kind === 'sound knot' || defect.kind === 'loose knot' ? shop.knotMargin : 0;
    const along =
      defect.x - margin < region.x + region.length && region.x < defect.x + defect.length + margin;
    return (
      along && defect.y - margin < region.y + region.width && region.y < defect.y + defect.width + margin
    );
  });
}

/** Everything about a part but its size that suits what lies under all its blanks, and the faces that may show. */
function suited(
  random: Seeded,
  board: Board,
  shop: Shop,
  blanks: readonly Rectangle[],
): { readonly part: Pick<Part, 'quality' | 'accept' | 'pin'>; readonly faces: readonly Face[] } {
  const defects = blanks.map((blank) => under(board, shop, blank));
  const accept: Accepted[] = defects.flat().flatMap(({ kind, length, width }) => {
    if (random.chance(0.7)) return [];
    return [{ kind, atMost: random.pick([null, ticks(Math.max(length, width))]) }];
  });
  const qualities: Quality[] = random.chance(0.5)
    ? ['clear-2', 'clear-1', 'sound', 'any']
    : ['clear-1', 'sound', 'any'];
  for (const quality of random.chance(0.9) ? qualities : (['any'] as const)) {
    const each = defects.map((list) => showable(list, quality, accept));
    const faces = (['A', 'B'] as const).filter((face) => each.every((list) => list.includes(face)));
    if (faces.length === 0) continue;
    if (random.chance(0.8)) return { part: { quality, accept, pin: null }, faces };
    const face = random.pick([null, ...faces]);
    const pin = { board: board.name, face };
    return { part: { quality, accept, pin }, faces: face === null ? faces : [face] };
  }
  return { part: { quality: 'any', accept, pin: null }, faces: ['A', 'B'] };
}

interface Growing {
  readonly random: Seeded;
  readonly shop: Shop;
  readonly rules: CuttingRules;
  readonly parts: Part[];
  runs: number;
}

/** Gives the leaf to one part, as one blank, several equal ones, strips of a glue-up or a run. Empty: it stays leftover. */
function fill(growing: Growing, board: Board, leaf: Workpiece): PlacedPiece[] {
  const { random } = growing;
  if (random.chance(0.25)) return [];
  const way = random.next();
  if (way < 0.2) return equalPieces(growing, board, leaf, 'crosscut');
  if (way < 0.3) return equalPieces(growing, board, leaf, 'rip');
  if (way < 0.5) return runOf(growing, board, leaf);
  return equalPieces(growing, board, leaf, 'none');
}

/** Whether the rules allow the leaf one more level of cuts of this kind. */
function mayCut({ rules }: Growing, leaf: Workpiece, kind: 'crosscut' | 'rip'): boolean {
  const isOwn = leaf.stage % 2 === (kind === 'crosscut' ? 1 : 0) && leaf.stage > 0;
  const stage = isOwn ? leaf.stage : leaf.stage === 0 && kind === 'rip' ? 2 : leaf.stage + 1;
  if (rules.stages !== 'any' && stage > rules.stages) return false;
  return kind === 'crosscut' || leaf.length >= rules.shortestRip;
}

/** One blank, or equal ones side by side: copies when crosscut, strips of one glued-up copy when ripped. */
function equalPieces(
  growing: Growing,
  board: Board,
  leaf: Workpiece,
  kind: 'crosscut' | 'rip' | 'none',
): PlacedPiece[] {
  const { random, shop, parts } = growing;
  const count = kind !== 'none' && mayCut(growing, leaf, kind) ? random.whole(2, 3) : 1;
  const kerf = kind === 'rip' ? shop.ripKerf : shop.crosscutKerf;
  const size = kind === 'rip' ? leaf.width : leaf.length;
  const each = Math.floor((size - (count - 1) * kerf) / count);
  const blanks = Array.from({ length: count }, (_, index): Rectangle => {
    const from = index * (each + kerf);
    const { x, y, length, width } = leaf;
    if (count === 1) return { x, y, length, width };
    return kind === 'rip' ? { x, y: y + from, length, width: each } : { x: x + from, y, length: each, width };
  });
  const strips = kind === 'rip' ? count : 1;
  const shape = blanks[0] as Rectangle;
  const grain = strips > 1 ? 'along' : random.pick(['along', 'along', 'any', 'across'] as const);
  const isTurned = grain === 'across' || (grain === 'any' && random.chance(0.5));
  const [long, wide] = isTurned ? [shape.width, shape.length] : [shape.length, shape.width];
  const length = long - shop.lengthAllowance;
  const jointed = strips > 1 ? (wide - inches(1 / 8)) * strips : wide;
  const width = jointed - shop.widthAllowance;
  if (each <= 0 || length <= 0 || width <= 0) return [];
  const { part, faces } = suited(random, board, shop, blanks);
  const made = plainPart({ name: `part ${parts.length + 1}`, length, width, grain, ...part });
  const quantity = strips > 1 ? 1 : count;
  parts.push({
    ...made,
    quantity,
    glueUp: strips,
    value: random.pick([null, random.whole(0, 500) / 10]),
    leftEnd: random.pick([0, 0, 45]),
  });
  return blanks.map((blank, index) => ({
    ...blank,
    part: parts.length - 1,
    copy: strips > 1 ? 1 : index + 1,
    showFace: faces.length === 2 && random.chance(0.6) ? null : random.pick(faces),
    ...(strips > 1 ? { strip: { index, of: strips } } : {}),
  }));
}

/** Kerf along the face of a cut tilted by some degrees, up to a whole tick; worked here apart from the product. */
function tiltedKerf(kerf: number, degrees: number): number {
  return Math.ceil(kerf / Math.cos((degrees * Math.PI) / 180) - 1e-9);
}

/** Two to four parts one after another along the leaf, either way, one face, bevels where they meet. */
function runOf(growing: Growing, board: Board, leaf: Workpiece): PlacedPiece[] {
  const { random, shop, parts } = growing;
  const count = random.whole(2, 4);
  if (!mayCut(growing, leaf, 'crosscut')) return [];
  const ends = Array.from({ length: count }, () => [
    random.pick([0, 22.5, 45, -45]),
    random.pick([0, 30, 45]),
  ]);
  const between = ends
    .slice(1)
    .map(([left], index) =>
      tiltedKerf(shop.crosscutKerf, Math.max(Math.abs(ends[index]?.[1] ?? 0), Math.abs(left ?? 0))),
    );
  const isForward = random.chance(0.5);
  const gaps = isForward ? between : [...between].reverse();
  const free = leaf.length - gaps.reduce((sum, gap) => sum + gap, 0);
  const each = Math.floor(free / count);
  if (each - shop.lengthAllowance <= ticksPerInch || leaf.width <= shop.widthAllowance) return [];
  let x = leaf.x;
  const blanks = Array.from({ length: count }, (_, index): Rectangle => {
    const length = index === count - 1 ? leaf.x + leaf.length - x - random.whole(0, 40) : each;
    const blank = { x, y: leaf.y, length, width: leaf.width };
    x += length + (gaps[index] ?? 0);
    return blank;
  });
  if (!isForward) blanks.reverse();
  const { part, faces } = suited(random, board, shop, blanks);
  const showFace = random.pick(faces);
  const run = growing.runs;
  growing.runs += 1;
  return blanks.map((blank, order) => {
    const length = blank.length - shop.lengthAllowance;
    const width = blank.width - shop.widthAllowance;
    const [leftEnd, rightEnd] = ends[order] as [number, number];
    const name = `part ${parts.length + 1}`;
    parts.push({ ...plainPart({ name, length, width, ...part }), run: `run ${run}`, leftEnd, rightEnd });
    return { ...blank, part: parts.length - 1, copy: 1, showFace, run: { run, order } };
  });
}

/** Parts that no board holds: listed as short. */
function addShorts({ random, parts }: Growing): Short[] {
  return Array.from({ length: random.whole(0, 2) }, () => {
    const copies = random.whole(1, 3);
    const made = plainPart({ name: `part ${parts.length + 1}`, length: inches(200), width: inches(3) });
    parts.push({ ...made, quantity: copies });
    return { part: parts.length - 1, copies, why: 'longer than every board' };
  });
}

/**
 * A random job with a choice that is known to be cuttable within its random shop's rules: trims, kerfs (none too),
 * stages, shortest rip, allowances, runs either way along a board, glue-ups, pins, welcome defects, turned grain,
 * kerfs that run off. The proof's value is left to be worked out, its bound is a
 * weak but true one. Deterministic in its arguments.
 */
export function cuttableJob(seed: number, { boards: most, pieces }: Oddness): CuttableJob {
  const random = seeded(seed);
  const shop = randomShop(random);
  const rules: CuttingRules = {
    ...shop,
    grid: random.pick([1, 508, ticksPerInch]),
    leastLength: random.pick([1 / 4, 4]) * ticksPerInch,
    leastWidth: random.pick([1 / 8, 1]) * ticksPerInch,
    runOff: random.pick([0, 0.1]),
  };
  const growing: Growing = { random, shop, rules, parts: [], runs: 0 };
  const boards = Array.from({ length: random.whole(1, most) }, (_, index) => randomBoard(random, index));
  const patterns = boards.flatMap((board, index): BoardPattern[] => {
    const plate = usable(board, shop);
    if (plate.length < Math.max(shop.shortestRip, ticksPerInch) || plate.width < ticksPerInch) return [];
    const copies = Array.from({ length: board.quantity }, (_, copy) => copy + 1);
    return copies
      .filter(() => random.chance(0.8))
      .map((copy) => {
        const leaves = cutAtRandom(random, plate, rules, random.whole(1, pieces));
        return { board: index, copy, pieces: leaves.flatMap((leaf) => fill(growing, board, leaf)) };
      });
  });
  const short = addShorts(growing);
  const bound = shop.goal === 'most value' ? 1e9 : 0;
  const job = { name: `cuttable ${seed}`, shop, parts: growing.parts, boards };
  return { job, choice: { patterns, short, proof: { value: -1, bound, gap: 1, proven: false } } };
}
