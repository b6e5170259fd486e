import { unreachable } from '../../../base/result/unreachable.ts';
import type { Shop } from '../../shop/shop.ts';
import type { Cut, LaidBoard } from '../../cuts/layout.ts';
import { cutSides, type Fate, isTrim, sideBecomes } from './cut-sides.ts';
import { nameText, type Named } from './named.ts';
import { pieceWords } from './piece-words.ts';
import { bare, sizeText, withUnit } from './size-text.ts';

/** One cut in words: what goes to the saw, where the blade enters, and what each side becomes. */
export interface CutWords {
  readonly step: number;
  readonly saw: Cut['kind'];
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
  /** A part's name, `keep` and an offcut's id, `cut 7`, `trim`, `scrap`, or empty when nothing is left. */
  readonly becomes: string;
}

/** Every cut of a board in words, in order. */
export function cutWords(board: LaidBoard, named: Named, shop: Shop): CutWords[] {
  return board.cuts.map((cut) => {
    const [near, far] = cutSides(cut).map((side): CutSide => {
      const measure = Math.max(0, cut.kind === 'crosscut' ? side.length : side.width);
      return { size: bare(measure, shop), becomes: fateText(sideBecomes(board, cut, side), named, shop) };
    }) as [CutSide, CutSide];
    return {
      step: cut.step,
      saw: cut.kind,
      workpiece: sizeText(cut.region, shop),
      at: bare(cut.at, shop),
      sides: [near, far],
    };
  });
}

/** A cut's spoken name: `cut 7: rip, 5 1/4" from the near edge`. */
export function cutTitle(cut: Cut, shop: Shop): string {
  const from = cut.kind === 'crosscut' ? 'the butt end' : 'the near edge';
  const trim = isTrim(cut) ? ` (${cut.purpose})` : '';
  return `cut ${cut.step}: ${cut.kind}${trim}, ${withUnit(cut.at, shop)} from ${from}`;
}

function fateText(fate: Fate, named: Named, shop: Shop): string {
  switch (fate.kind) {
    case 'piece': {
      const { name, copy } = pieceWords(fate.piece, named, shop);
      return copy === '' ? name : `${name}, ${copy}`;
    }
    case 'offcut':
      return `keep ${nameText(fate.offcut.id, 40)}`;
    case 'cut':
      return `cut ${fate.step}`;
    case 'trim':
    case 'scrap':
      return fate.kind;
    case 'nothing':
      return '';
    default:
      return unreachable(fate);
  }
}
