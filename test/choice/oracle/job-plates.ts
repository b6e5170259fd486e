import type { Rectangle } from '../../../src/base/geometry/rectangle.ts';
import type { Part } from '../../../src/flow/parts/part.ts';
import type { Kind, Plate } from '../../../src/flow/patterns/plate.ts';
import type { RunKind } from '../../patterns/strip/every-cut.ts';
import type { Shop } from '../../../src/flow/shop/shop.ts';
import type { Board } from '../../../src/flow/stock/board.ts';
import type { Defect } from '../../../src/flow/stock/defect.ts';
import { type JobKind, jointing, kindsOfJob } from './job-kinds.ts';
import type { TinyJob } from './tiny-job.ts';

/** A board as a plate of whole cells with all of the job's kinds: worked out from the rules, not from the solver. */
export interface JobPlate {
  readonly plate: Plate;
  /** In the order of `kindsOfJob`; a run's has no shapes, what it is is in `runs`. */
  readonly kinds: readonly Kind[];
  readonly runs: readonly RunKind[];
}

/** What is left of the board once its ends and rough edges are trimmed. */
function trimmedBoard(board: Board, shop: Shop): Rectangle {
  const end = board.origin === 'rack' || shop.endTrim === 0 ? 0 : Math.max(shop.endTrim, shop.crosscutKerf);
  const edge = shop.edgeTrim === 0 ? 0 : Math.max(shop.edgeTrim, shop.ripKerf);
  const near = board.surface === 'rough' || board.surface === 'S2S' ? edge : 0;
  const far = board.surface === 'S4S' ? 0 : edge;
  const isTooShort = near + far > 0 && board.length < shop.shortestRip;
  return {
    x: end,
    y: near,
    length: board.length - 2 * end,
    width: isTooShort ? 0 : board.width - near - far,
  };
}

const unsound: ReadonlySet<string> = new Set([
  'rot',
  'split',
  'check',
  'shake',
  'wane',
  'hole',
  'loose knot',
  'pith',
  'bark pocket',
]);

/** Whether a defect under a piece forbids that this face of it shows. */
function spoils(part: Part, defect: Defect, show: 'A' | 'B'): boolean {
  if (part.quality === 'any') return false;
  if (part.quality === 'sound') return unsound.has(defect.kind);
  const isWelcome = part.accept.some(
    ({ kind, atMost }) =>
      kind === defect.kind && (atMost === null || Math.max(defect.length, defect.width) <= atMost),
  );
  const isOnShow = defect.face === 'through' || defect.face === show;
  const isOnBack = defect.face === 'through' || defect.face !== show;
  if (isOnShow && !isWelcome) return true;
  return isOnBack && (part.quality === 'clear-2' || unsound.has(defect.kind));
}

/** Faces of the board that the part may show; none where the board cannot serve it. */
function openFaces(part: Part, board: Board, tone: string | null): ('A' | 'B')[] {
  const isHere = part.pin === null || part.pin.board === board.name;
  const hasTone = tone === null || part.show === 0 || board.tone === tone;
  if (!isHere || !hasTone || board.dressedThickness < part.thickness) return [];
  return (['A', 'B'] as const).filter((face) => (part.pin?.face ?? face) === face);
}

/** The wood a defect spoils, in cells of the plate. */
function grown(defect: Defect, area: Rectangle, shop: Shop, cell: number): Rectangle {
  const margin = defect.kind.includes('knot') ? shop.knotMargin : 0;
  return {
    x: (defect.x - margin - area.x) / cell,
    y: (defect.y - margin - area.y) / cell,
    length: (defect.length + 2 * margin) / cell,
    width: (defect.width + 2 * margin) / cell,
  };
}

/** A single blank or strip as it may lie on the board. */
function plainKind(
  { job, cell }: TinyJob,
  { parts, strips, copies }: JobKind,
  board: Board,
  tone: string | null,
): Kind {
  const index = parts[0]!;
  const part = job.parts[index]!;
  const miters = [part.leftEnd, part.rightEnd].filter((end) => end !== 0).length;
  const overLong = miters * job.shop.miterAllowance + (strips > 1 ? job.shop.gluedLengthAllowance : 0);
  const length = (part.length + job.shop.lengthAllowance + overLong) / cell;
  const whole = part.width + job.shop.widthAllowance;
  const width = (strips === 1 ? whole : whole / strips + jointing) / cell;
  if (!Number.isInteger(length) || !Number.isInteger(width))
    throw new Error(`${part.name} is not of whole cells`);
  const along = { length, width };
  const across = { length: width, width: length };
  return {
    // Strips are joined edge to edge: their grain runs along, whichever way the part's may.
    shapes:
      part.grain === 'along' || strips > 1 ? [along] : part.grain === 'across' ? [across] : [along, across],
    cap: copies * strips,
    clearances: openFaces(part, board, tone).map((face) => 2 * index + (face === 'A' ? 0 : 1)),
  };
}

/** Kerf of a blade tilted for the steeper of two ends: kerf / cos, in cells; the angles of tiny jobs keep it whole. */
function meetingKerf(kerf: number, first: number, second: number): number {
  const steeper = Math.max(Math.abs(first), Math.abs(second));
  const slanted = kerf / Math.cos((steeper * Math.PI) / 180);
  if (Math.abs(slanted - Math.round(slanted)) > 1e-6) throw new Error(`a kerf of ${slanted} cells`);
  return Math.round(slanted);
}

/** A run as it may lie on the board; it goes either way along it, which makes no difference to its rectangle. */
function runKind(
  { job, cell }: TinyJob,
  plate: Plate,
  { kind, members }: { readonly kind: number; readonly members: readonly number[] },
  board: Board,
  tone: string | null,
): RunKind {
  const parts = members.map((index) => job.parts[index]!);
  const blanks = parts.map((part) => ({
    length: (part.length + job.shop.lengthAllowance) / cell,
    width: (part.width + job.shop.widthAllowance) / cell,
  }));
  const kerfs = parts
    .slice(1)
    .map((part, m) => meetingKerf(plate.crosscutKerf, parts[m]!.rightEnd, part.leftEnd));
  const faces = (['A', 'B'] as const).filter((face) =>
    parts.every((part) => openFaces(part, board, tone).includes(face)),
  );
  return {
    kind,
    length: [...blanks.map(({ length }) => length), ...kerfs].reduce((sum, each) => sum + each, 0),
    width: Math.max(...blanks.map(({ width }) => width)),
    members: blanks,
    blocked: faces.map((face) =>
      members.flatMap((index) => plate.clearances[2 * index + (face === 'A' ? 0 : 1)]!),
    ),
  };
}

/**
 * The plates of the job's boards, in their order; clearances 2p and 2p + 1 are part p showing face A and face B.
 * @param tone the only one of whose boards the parts that show are cut; null: any
 */
export function jobPlates(tiny: TinyJob, tone: string | null = null): JobPlate[] {
  const { job, cell } = tiny;
  const { shop, parts } = job;
  const all = kindsOfJob(job);
  return job.boards.map((board) => {
    const area = trimmedBoard(board, shop);
    const plate: Plate = {
      length: Math.max(0, area.length / cell),
      width: Math.max(0, area.width / cell),
      crosscutKerf: shop.crosscutKerf / cell,
      ripKerf: shop.ripKerf / cell,
      shortestRip: shop.shortestRip / cell,
      stages: shop.stages,
      clearances: parts.flatMap((part) =>
        (['A', 'B'] as const).map((show) =>
          board.defects
            .filter((defect) => spoils(part, defect, show))
            .map((defect) => grown(defect, area, shop, cell)),
        ),
      ),
    };
    const kinds = all.map((kind): Kind =>
      kind.parts.length > 1
        ? { shapes: [], cap: kind.copies, clearances: [] }
        : plainKind(tiny, kind, board, tone),
    );
    const runs = all.flatMap(({ parts: members }, kind) =>
      members.length > 1 ? [runKind(tiny, plate, { kind, members }, board, tone)] : [],
    );
    return { plate, kinds, runs };
  });
}
