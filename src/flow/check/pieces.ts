import type { LaidBoard, LaidPiece, Layout } from '../cuts/layout.ts';
import type { Part } from '../parts/part.ts';
import type { Board } from '../stock/board.ts';
import type { Job } from '../stock/job.ts';
import { faceFaults } from './faces.ts';
import type { BoardCopy, PieceFault, PieceOn } from './fault.ts';
import { isWithin, sharedArea, trimmed } from './outline.ts';

interface Sides {
  readonly length: number;
  readonly width: number;
}

/** Boards named by the layout: they exist, each copy is there and used once, outlines are right. */
export function boardFaults(layout: Layout, boards: ReadonlyMap<string, Board>): PieceFault[] {
  const faults: PieceFault[] = [];
  const used = new Map<string, Set<number>>();
  for (const { board, copy, length, width } of layout.boards) {
    const on: BoardCopy = { board, copy };
    const known = boards.get(board);
    if (known === undefined) {
      faults.push({ kind: 'unknown board', on });
      continue;
    }
    if (!Number.isInteger(copy) || copy < 1 || copy > known.quantity) {
      faults.push({ kind: 'no such board copy', on, quantity: known.quantity });
    }
    const copies = used.get(board) ?? new Set<number>();
    if (copies.has(copy)) faults.push({ kind: 'board used twice', on });
    used.set(board, copies.add(copy));
    if (length !== known.length || width !== known.width) {
      const right = { length: known.length, width: known.width };
      faults.push({ kind: 'wrong outline', on, said: { length, width }, right });
    }
  }
  return faults;
}

/** What straightening its edges takes off each strip before gluing: 1/16 in an edge, in ticks. Common practice, no source. */
const jointing = 1016;

/**
 * Sizes a blank may have on the board: finished size, what is left on it for fitting, and allowances, lengthwise or turned as
 * the grain says. Outside a run each slanted end has its allowance. Of a glue-up of n strips, made longer and wider to be
 * trimmed, each is the n-th part of the width, up to a whole tick, plus what jointing its edges takes.
 */
function blanks(part: Part, strips: number, job: Job): Sides[] {
  const { shop } = job;
  let length = part.length + shop.lengthAllowance + (part.extraLength ?? 0);
  let whole = part.width + shop.widthAllowance + (part.extraWidth ?? 0);
  if (part.run === null) {
    if (part.leftEnd !== 0) length += shop.miterAllowance;
    if (part.rightEnd !== 0) length += shop.miterAllowance;
  }
  if (strips > 1) {
    length += shop.gluedLengthAllowance;
    whole += shop.gluedWidthAllowance;
  }
  const width = strips > 1 ? Math.ceil(whole / strips) + jointing : whole;
  const along = { length, width };
  const turned = { length: width, width: length };
  if (part.grain === 'along') return [along];
  return part.grain === 'across' ? [turned] : [along, turned];
}

/** All pieces of one board against the board and their parts. */
export function pieceFaults(
  laid: LaidBoard,
  board: Board,
  job: Job,
  parts: ReadonlyMap<string, Part>,
): PieceFault[] {
  const on: BoardCopy = { board: laid.board, copy: laid.copy };
  const usable = trimmed(board, job.shop);
  const faults = laid.pieces.flatMap((piece) => onePiece(piece, { on, board, job, parts }));
  const regions = [
    ...laid.pieces.map((piece) => ({ what: `${piece.part} copy ${piece.copy}`, region: piece })),
    ...laid.offcuts.map((offcut) => ({ what: `offcut ${offcut.id}`, region: offcut })),
  ];
  for (const [index, { what, region }] of regions.entries()) {
    if (!isWithin(region, usable)) faults.push({ kind: 'outside the usable area', on, what });
    for (const other of regions.slice(0, index)) {
      if (sharedArea(region, other.region) === 0) continue;
      faults.push({ kind: 'overlap', on, what: [other.what, what] });
    }
  }
  return faults;
}

function onePiece(
  piece: LaidPiece,
  { on, board, job, parts }: { on: BoardCopy; board: Board; job: Job; parts: ReadonlyMap<string, Part> },
): PieceFault[] {
  const named: PieceOn = { part: piece.part, copy: piece.copy, on };
  const part = parts.get(piece.part);
  if (part === undefined) return [{ kind: 'unknown part', piece: named }];
  const faults: PieceFault[] = [];
  const said = { length: piece.length, width: piece.width };
  const right = blanks(part, piece.strip?.of ?? 1, job);
  if (!right.some((size) => size.length === said.length && size.width === said.width)) {
    faults.push({ kind: 'wrong size', piece: named, said, right });
  }
  if (board.dressedThickness < part.thickness) {
    faults.push({ kind: 'board too thin', piece: named, has: board.dressedThickness, needs: part.thickness });
  }
  if (part.pin !== null && part.pin.board !== board.name) {
    faults.push({ kind: 'not on its board', piece: named, pinned: part.pin.board });
  }
  return [...faults, ...faceFaults({ piece, named, part, board, shop: job.shop })];
}
