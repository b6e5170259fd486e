import type { Rectangle } from '../../src/base/geometry/rectangle.ts';
import { area } from '../../src/base/geometry/rectangle.ts';
import type { Cut, LaidBoard, LaidPiece, Layout, Offcut } from '../../src/flow/cuts/layout.ts';
import type { Shop } from '../../src/flow/shop/shop.ts';
import type { Board } from '../../src/flow/stock/board.ts';
import { usable } from '../../src/flow/stock/usable.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { boardFeet } from '../../src/trade/board-feet.ts';

type Side = { readonly rest: Rectangle };

/** Cuts one board by hand, step by step, and keeps the books as the real thing does: for tests of the sheet. */
export class Saw {
  readonly cuts: Cut[] = [];
  readonly pieces: LaidPiece[] = [];
  readonly offcuts: Offcut[] = [];
  private readonly board: Board;
  private readonly shop: Shop;
  private readonly copy: number;

  constructor(board: Board, shop: Shop, copy = 1) {
    this.board = board;
    this.shop = shop;
    this.copy = copy;
  }

  /** Takes the trims off; what is left. */
  trimmed(): Rectangle {
    const keep = usable(this.board, this.shop);
    let work: Rectangle = { x: 0, y: 0, length: this.board.length, width: this.board.width };
    const { crosscutKerf, ripKerf } = this.shop;
    if (keep.x > 0) work = this.cut(work, 'crosscut', keep.x - crosscutKerf, crosscutKerf, 'end trim').far;
    const end = keep.x + keep.length;
    if (end < this.board.length) work = this.cut(work, 'crosscut', end, crosscutKerf, 'end trim').near;
    if (keep.y > 0) work = this.cut(work, 'rip', keep.y - ripKerf, ripKerf, 'edge trim').far;
    const far = keep.y + keep.width;
    if (far < this.board.width) work = this.cut(work, 'rip', far, ripKerf, 'edge trim').near;
    return work;
  }

  crosscut(
    work: Rectangle,
    length: number,
    purpose: NonNullable<Cut['purpose']> = 'section',
    kerf: number = this.shop.crosscutKerf,
  ): { part: Rectangle } & Side {
    const { near, far } = this.cut(work, 'crosscut', work.x + length, kerf, purpose);
    return { part: near, rest: far };
  }

  rip(
    work: Rectangle,
    width: number,
    purpose: NonNullable<Cut['purpose']> = 'strip',
  ): { part: Rectangle } & Side {
    const { near, far } = this.cut(work, 'rip', work.y + width, this.shop.ripKerf, purpose);
    return { part: near, rest: far };
  }

  piece(
    where: Rectangle,
    part: string,
    copy: number,
    showFace: LaidPiece['showFace'],
    more: Partial<LaidPiece> = {},
  ): void {
    this.pieces.push({ ...where, part, copy, showFace, ...more });
  }

  keep(where: Rectangle, id: string): void {
    this.offcuts.push({ ...where, id });
  }

  /** The board as the layout lists it. */
  done(): LaidBoard {
    const { length, width, name, cost } = this.board;
    const sum = (rectangles: readonly Rectangle[]): number =>
      rectangles.reduce((total, one) => total + area(one), 0);
    const kerf = this.cuts.reduce((total, { kind, region, at, kerf: blade }) => {
      const room = kind === 'crosscut' ? region.x + region.length - at : region.y + region.width - at;
      return total + Math.min(blade, room) * (kind === 'crosscut' ? region.width : region.length);
    }, 0);
    const keep = usable(this.board, this.shop);
    const trimKerf = this.cuts
      .filter(({ purpose }) => purpose?.endsWith('trim'))
      .reduce(
        (total, { kind, region, kerf: blade }) =>
          total + blade * (kind === 'crosscut' ? region.width : region.length),
        0,
      );
    const board = length * width;
    const trim = board - area(keep) - trimKerf;
    const parts = sum(this.pieces);
    const offcuts = sum(this.offcuts);
    return {
      board: name,
      copy: this.copy,
      length,
      width,
      pieces: this.pieces,
      offcuts: this.offcuts,
      cuts: this.cuts,
      area: { board, parts, offcuts, kerf, trim, scrap: board - parts - offcuts - kerf - trim },
      cost,
    };
  }

  private cut(
    region: Rectangle,
    kind: Cut['kind'],
    at: number,
    kerf: number,
    purpose: NonNullable<Cut['purpose']>,
  ): { near: Rectangle; far: Rectangle } {
    this.cuts.push({ step: this.cuts.length + 1, kind, region, at, kerf, purpose });
    if (kind === 'crosscut') {
      const near = { ...region, length: at - region.x };
      return {
        near,
        far: { ...region, x: at + kerf, length: Math.max(0, region.length - near.length - kerf) },
      };
    }
    const near = { ...region, width: at - region.y };
    return { near, far: { ...region, y: at + kerf, width: Math.max(0, region.width - near.width - kerf) } };
  }
}

/** A whole layout from its boards; `bound` is made up, as the proof of a hand-made layout must be. */
export function layoutOf(
  job: Job,
  boards: readonly LaidBoard[],
  proof: Partial<Layout['proof']>,
  short: Layout['short'] = [],
): Layout {
  const total = (pick: (board: LaidBoard) => number): number =>
    boards.reduce((sum, board) => sum + pick(board), 0);
  const whole = total(({ area: { board } }) => board);
  const parts = total(({ area }) => area.parts);
  const cost = total((board) => board.cost);
  const boardOf = (laid: LaidBoard): Job['boards'][number] | undefined =>
    job.boards.find(({ name }) => name === laid.board);
  const measured = total((laid) => {
    const board = boardOf(laid);
    return board ? boardFeet(board.length, board.width, board.nominalInches) : 0;
  });
  const places = new Set(
    boards.flatMap(({ cuts }) =>
      cuts.map(({ kind, region, at }) => `${kind} ${at - (kind === 'rip' ? region.y : region.x)}`),
    ),
  );
  return {
    format: 'mantelwright layout 1',
    ticksPerInch: 8128,
    kerf: { rip: job.shop.ripKerf, crosscut: job.shop.crosscutKerf },
    boards,
    short,
    totals: {
      boards: boards.length,
      boardFeet: total((laid) => boardOf(laid)?.yardFeet ?? 0),
      boardFeetMeasured: measured,
      cost,
      yield: whole > 0 ? parts / whole : 0,
      waste: whole > 0 ? 1 - (parts + total(({ area }) => area.offcuts)) / whole : 0,
      setups: places.size,
    },
    proof:
      short.length > 0 && job.shop.goal === 'least cost'
        ? { value: cost, bound: null, gap: null, proven: false }
        : { value: cost, bound: cost, gap: 0, proven: true, ...proof },
  };
}
