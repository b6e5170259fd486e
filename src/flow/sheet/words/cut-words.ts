import type { Rectangle } from '../../../base/geometry/rectangle.ts';
import type { Shop } from '../../shop/shop.ts';
import type { Cut, LaidBoard } from '../../cuts/layout.ts';
import { nameText, type Named } from './named.ts';
import { pieceWords } from './piece-words.ts';
import { bare, sizeText, withUnit } from './size-text.ts';

/** One cut in words: what goes to the saw, where the blade enters, and what each side becomes. */
export interface CutWords {
  readonly step: number;
  /** `rip` or `crosscut`, and `end trim` or `edge trim` where it is one. */
  readonly saw: string;
  /** Size of the workpiece, length × width. */
  readonly workpiece: string;
  /** Where the blade enters, from the board's butt end or near edge. */
  readonly at: string;
  /** The side towards butt end or near edge, then the other: its size along the measure, and what it becomes. */
  readonly sides: readonly [CutSide, CutSide];
}

export interface CutSide {
  /** Length (crosscut) or width (rip); `0` where the blade runs off the edge. */
  readonly size: string;
  /** A part's name, an offcut's id, `cut 7`, `scrap`, or empty when nothing is left. */
  readonly becomes: string;
}

/** Every cut of a board in words, in order. */
export function cutWords(board: LaidBoard, named: Named, shop: Shop): CutWords[] {
  return board.cuts.map((cut, index) => {
    const [near, far] = sidesOf(cut);
    const becomes = (side: Rectangle): string => {
      if (side.length <= 0 || side.width <= 0) return '';
      const piece = board.pieces.find((candidate) => same(candidate, side));
      if (piece) {
        const words = pieceWords(piece, named, shop);
        return words.copy === '' ? words.name : `${words.name}, ${words.copy}`;
      }
      const offcut = board.offcuts.find((candidate) => same(candidate, side));
      if (offcut) return `keep ${nameText(offcut.id)}`;
      const next = board.cuts.slice(index + 1).find((candidate) => same(candidate.region, side));
      return next ? `cut ${next.step}` : 'scrap';
    };
    const measure = (side: Rectangle): string =>
      bare(Math.max(0, cut.kind === 'crosscut' ? side.length : side.width), shop);
    return {
      step: cut.step,
      saw:
        cut.purpose === 'end trim' || cut.purpose === 'edge trim' ? `${cut.kind}, ${cut.purpose}` : cut.kind,
      workpiece: sizeText(cut.region, shop),
      at: bare(cut.at, shop),
      sides: [
        { size: measure(near), becomes: becomes(near) },
        { size: measure(far), becomes: becomes(far) },
      ],
    };
  });
}

/** A cut's spoken name: `cut 7: rip, 5 1/4" from the near edge`. */
export function cutTitle(cut: Cut, shop: Shop): string {
  const from = cut.kind === 'crosscut' ? 'the butt end' : 'the near edge';
  const trim = cut.purpose === 'end trim' || cut.purpose === 'edge trim' ? ` (${cut.purpose})` : '';
  return `cut ${cut.step}: ${cut.kind}${trim}, ${withUnit(cut.at, shop)} from ${from}`;
}

function sidesOf({ kind, region, at, kerf }: Cut): [Rectangle, Rectangle] {
  if (kind === 'crosscut') {
    const end = region.x + region.length;
    return [
      { ...region, length: at - region.x },
      { ...region, x: at + kerf, length: end - at - kerf },
    ];
  }
  const end = region.y + region.width;
  return [
    { ...region, width: at - region.y },
    { ...region, y: at + kerf, width: end - at - kerf },
  ];
}

function same(a: Rectangle, b: Rectangle): boolean {
  return a.x === b.x && a.y === b.y && a.length === b.length && a.width === b.width;
}
