import type { Rectangle } from '../../base/geometry/rectangle.ts';
import type { Part } from '../parts/part.ts';
import type { Shop } from '../shop/shop.ts';
import type { Board } from '../stock/board.ts';
import type { Defect, DefectKind, Face } from '../stock/defect.ts';
import type { PieceFault, PieceOn } from './fault.ts';
import { sharedArea } from './outline.ts';

/** DESIGN, section 6: what a sound face must be free of. */
const unsound: readonly DefectKind[] = [
  'rot',
  'split',
  'check',
  'shake',
  'wane',
  'hole',
  'loose knot',
  'pith',
  'bark pocket',
];

const knots: readonly DefectKind[] = ['sound knot', 'loose knot'];

interface Flaw {
  readonly face: Face;
  readonly defect: Defect;
}

/** The defects under a piece, once for each face they lie on. A knot reaches `knotMargin` farther on every side. */
function flawsUnder(piece: Rectangle, board: Board, shop: Shop): Flaw[] {
  return board.defects.flatMap((defect) => {
    const margin = knots.includes(defect.kind) ? shop.knotMargin : 0;
    const spoilt = {
      x: defect.x - margin,
      y: defect.y - margin,
      length: defect.length + 2 * margin,
      width: defect.width + 2 * margin,
    };
    if (sharedArea(piece, spoilt) === 0) return [];
    const faces: readonly Face[] = defect.face === 'through' ? ['A', 'B'] : [defect.face];
    return faces.map((face) => ({ face, defect }));
  });
}

function isWelcome(defect: Defect, part: Part): boolean {
  return part.accept.some(
    ({ kind, atMost }) =>
      kind === defect.kind && (atMost === null || Math.max(defect.length, defect.width) <= atMost),
  );
}

/**
 * The flaws that forbid a piece of this part with this face showing. What the maker welcomes is excused on that face
 * only, and only where a clear face was asked for: a sound part stays sound.
 */
function forbidden(flaws: readonly Flaw[], part: Part, show: Face): Flaw[] {
  return flaws.filter(({ face, defect }) => {
    if (part.quality === 'any') return false;
    if (part.quality === 'sound') return unsound.includes(defect.kind);
    if (face === show && isWelcome(defect, part)) return false;
    const mustBeClear = part.quality === 'clear-2' || (part.quality === 'clear-1' && face === show);
    return mustBeClear || unsound.includes(defect.kind);
  });
}

/**
 * Quality of one piece. With a show face given, that face and the back must pass; with none given, the piece must
 * pass whichever face shows.
 */
export function faceFaults(given: {
  readonly piece: Rectangle & { readonly showFace: Face | null };
  readonly named: PieceOn;
  readonly part: Part;
  readonly board: Board;
  readonly shop: Shop;
}): PieceFault[] {
  const { piece, named, part, board, shop } = given;
  const flaws = flawsUnder(piece, board, shop);
  const pinned = part.pin?.face ?? null;
  const faults: PieceFault[] = [];
  if (pinned !== null && piece.showFace !== pinned)
    faults.push({ kind: 'not on its face', piece: named, pinned });
  const under = { A: forbidden(flaws, part, 'A'), B: forbidden(flaws, part, 'B') };
  if (piece.showFace === null && (under.A.length === 0) !== (under.B.length === 0)) {
    return [...faults, { kind: 'face left open', piece: named }];
  }
  const found = under[piece.showFace ?? 'A'];
  return [
    ...faults,
    ...found.map(({ face, defect }) => ({ kind: 'defect', piece: named, face, defect }) as const),
  ];
}
