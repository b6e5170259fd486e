import type { Rectangle } from '../../base/geometry/rectangle.ts';
import type { ProblemBase } from '../../base/result/result.ts';
import type { Defect, Face } from '../stock/defect.ts';

/** A board copy of the layout. */
export interface BoardCopy {
  readonly board: string;
  readonly copy: number;
}

/** A piece of the layout and the board copy it is said to lie on. */
export interface PieceOn {
  readonly part: string;
  readonly copy: number;
  readonly on: BoardCopy;
}

/** Faults of boards, pieces, copies, faces and runs. */
export type PieceFault =
  | { readonly kind: 'unknown board'; readonly on: BoardCopy }
  | { readonly kind: 'no such board copy'; readonly on: BoardCopy; readonly quantity: number }
  | { readonly kind: 'board used twice'; readonly on: BoardCopy }
  | {
      readonly kind: 'wrong outline';
      readonly on: BoardCopy;
      readonly said: { readonly length: number; readonly width: number };
      readonly right: { readonly length: number; readonly width: number };
    }
  | { readonly kind: 'unknown part'; readonly piece: PieceOn }
  | {
      readonly kind: 'wrong size';
      readonly piece: PieceOn;
      readonly said: { readonly length: number; readonly width: number };
      readonly right: readonly { readonly length: number; readonly width: number }[];
    }
  | { readonly kind: 'outside the usable area'; readonly on: BoardCopy; readonly what: string }
  | { readonly kind: 'overlap'; readonly on: BoardCopy; readonly what: readonly [string, string] }
  | { readonly kind: 'copy twice'; readonly piece: PieceOn }
  | { readonly kind: 'no such part copy'; readonly piece: PieceOn; readonly quantity: number }
  | {
      readonly kind: 'wrong count';
      readonly part: string;
      readonly wanted: number;
      readonly laid: number;
      readonly short: number;
    }
  | { readonly kind: 'bad short'; readonly part: string; readonly why: string }
  | { readonly kind: 'bad glue-up'; readonly part: string; readonly copy: number; readonly why: string }
  | { readonly kind: 'board too thin'; readonly piece: PieceOn; readonly has: number; readonly needs: number }
  | { readonly kind: 'not on its board'; readonly piece: PieceOn; readonly pinned: string }
  | { readonly kind: 'not on its face'; readonly piece: PieceOn; readonly pinned: Face }
  | { readonly kind: 'defect'; readonly piece: PieceOn; readonly face: Face; readonly defect: Defect }
  | { readonly kind: 'face left open'; readonly piece: PieceOn }
  | {
      readonly kind: 'wrong species';
      readonly piece: PieceOn;
      readonly asked: string;
      readonly has: string;
    }
  | { readonly kind: 'mixed species'; readonly asked: string; readonly species: readonly string[] }
  | { readonly kind: 'mixed tones'; readonly species: string; readonly tones: readonly string[] }
  | { readonly kind: 'bad run'; readonly run: number; readonly why: string };

/** Faults of the cuts and of what they leave. */
export type CutFault =
  | { readonly kind: 'wrong step'; readonly on: BoardCopy; readonly said: number; readonly right: number }
  | {
      readonly kind: 'no such workpiece';
      readonly on: BoardCopy;
      readonly step: number;
      readonly region: Rectangle;
    }
  | { readonly kind: 'misses the workpiece'; readonly on: BoardCopy; readonly step: number }
  | {
      readonly kind: 'wrong kerf';
      readonly on: BoardCopy;
      readonly step: number;
      readonly said: number;
      readonly right: number;
    }
  | { readonly kind: 'wrong header'; readonly what: string; readonly said: number; readonly right: number }
  | {
      readonly kind: 'too short to rip';
      readonly on: BoardCopy;
      readonly step: number;
      readonly length: number;
      readonly least: number;
    }
  | {
      readonly kind: 'nests too deep';
      readonly on: BoardCopy;
      readonly step: number;
      readonly stage: number;
      readonly stages: number;
    }
  | { readonly kind: 'wrong purpose'; readonly on: BoardCopy; readonly step: number; readonly right: string }
  | { readonly kind: 'before the trims'; readonly on: BoardCopy; readonly step: number }
  | { readonly kind: 'slanted through a neighbour'; readonly on: BoardCopy; readonly step: number }
  | { readonly kind: 'not trimmed'; readonly on: BoardCopy }
  | { readonly kind: 'not cut free'; readonly on: BoardCopy; readonly what: string }
  | { readonly kind: 'offcut not listed'; readonly on: BoardCopy; readonly region: Rectangle }
  | { readonly kind: 'offcut too small'; readonly on: BoardCopy; readonly id: string }
  | { readonly kind: 'offcut named twice'; readonly on: BoardCopy; readonly id: string };

/** Faults of areas, money, totals and proof. */
export type SumFault =
  | {
      readonly kind: 'wrong area';
      readonly on: BoardCopy;
      readonly what: string;
      readonly said: number;
      readonly right: number;
    }
  | { readonly kind: 'wrong cost'; readonly on: BoardCopy; readonly said: number; readonly right: number }
  | { readonly kind: 'wrong total'; readonly what: string; readonly said: number; readonly right: number }
  | {
      readonly kind: 'wrong proof';
      readonly what: string;
      readonly said: number | null;
      readonly right: number | 'a number' | null;
    }
  | { readonly kind: 'bound on the wrong side'; readonly value: number; readonly bound: number }
  | { readonly kind: 'not proven'; readonly gap: number };

/** Anything the check finds wrong with a layout. All lengths in ticks, areas in square ticks. */
export type CheckProblem = ProblemBase & (PieceFault | CutFault | SumFault);
