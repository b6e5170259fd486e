import type { Job } from '../stock/job.ts';
import type { Cut, LaidBoard, Layout } from './layout.ts';
import { type SetCut, settings } from './settings.ts';

/** Where a cut is found: board, its copy, and the step in that board's own numbering. */
export interface CutPlace {
  readonly board: string;
  readonly copy: number;
  readonly cut: Cut;
}

/** Everything cut at one position of the fence or stop. */
export interface Setup {
  /** Fence to blade, or stop to blade, in ticks. */
  readonly position: number;
  readonly cuts: readonly CutPlace[];
}

/** One mitered end of one copy of a part. */
export interface MiterEnd {
  readonly part: string;
  readonly copy: number;
  readonly end: 'left' | 'right';
  /** Where its blank comes from; null for a copy glued up of strips, which is mitered after gluing. */
  readonly from: { readonly board: string; readonly copy: number } | null;
  /** Whether it meets its neighbour of a run: there two passes, tilted either way, meet in one kerf on the show face. */
  readonly isInRun: boolean;
}

/** All mitered ends cut at one saw angle. */
export interface MiterSetup {
  /** Degrees from square, > 0. */
  readonly angle: number;
  readonly ends: readonly MiterEnd[];
}

/** The cut list as a person works it: setting by setting, each board's steps in order within a setting. */
export interface SetupList {
  /** Trim cuts, board by board: they take no setting. */
  readonly trims: readonly CutPlace[];
  /** By fence distance, widest first. */
  readonly rips: readonly Setup[];
  /** By stop length, longest first. */
  readonly crosscuts: readonly Setup[];
  /** By saw angle, flattest first. */
  readonly miters: readonly MiterSetup[];
}

/**
 * The cut list of a layout grouped by setup (`settings` says where fence and stop stand), and the miters by angle.
 * A miter is cut after the blank, at its long point, the kerf running off the end.
 */
export function setupList(layout: Layout, job: Job): SetupList {
  const set = settings(layout.boards);
  const isTrim = ({ purpose }: Cut): boolean => purpose === 'end trim' || purpose === 'edge trim';
  return {
    trims: layout.boards.flatMap((board) => board.cuts.filter(isTrim).map((cut) => placeOf(board, cut))),
    rips: grouped(set.filter(({ cut }) => cut.kind === 'rip')),
    crosscuts: grouped(set.filter(({ cut }) => cut.kind === 'crosscut')),
    miters: miters(layout, job),
  };
}

function placeOf(board: LaidBoard, cut: Cut): CutPlace {
  return { board: board.board, copy: board.copy, cut };
}

function grouped(cuts: readonly SetCut[]): Setup[] {
  const groups = new Map<number, CutPlace[]>();
  for (const { board, cut, position } of cuts) {
    const group = groups.get(position) ?? [];
    group.push(placeOf(board, cut));
    groups.set(position, group);
  }
  return [...groups]
    .map(([position, places]) => ({ position, cuts: places }))
    .sort((a, b) => b.position - a.position);
}

function miters(layout: Layout, job: Job): MiterSetup[] {
  const groups = new Map<number, MiterEnd[]>();
  const parts = new Map(job.parts.map((part) => [part.name, part]));
  const lengthOfRun = new Map<number, number>();
  const laid = layout.boards.flatMap((board) => board.pieces.map((piece) => ({ board, piece })));
  for (const { piece } of laid) {
    if (piece.run === undefined) continue;
    lengthOfRun.set(piece.run.run, Math.max(lengthOfRun.get(piece.run.run) ?? 0, piece.run.order + 1));
  }
  const glued = new Set<string>();
  for (const { board, piece } of laid) {
    const part = parts.get(piece.part);
    if (part === undefined) continue;
    if (piece.strip !== undefined && piece.strip.of > 1) {
      const key = JSON.stringify([piece.part, piece.copy]);
      if (glued.has(key)) continue;
      glued.add(key);
    }
    const from = piece.strip === undefined ? { board: board.board, copy: board.copy } : null;
    for (const end of ['left', 'right'] as const) {
      const angle = Math.abs(end === 'left' ? part.leftEnd : part.rightEnd);
      if (angle === 0) continue;
      const last = piece.run === undefined ? 0 : (lengthOfRun.get(piece.run.run) ?? 0) - 1;
      const isInRun = piece.run !== undefined && piece.run.order !== (end === 'left' ? 0 : last);
      const group = groups.get(angle) ?? [];
      group.push({ part: piece.part, copy: piece.copy, end, from, isInRun });
      groups.set(angle, group);
    }
  }
  return [...groups].map(([angle, ends]) => ({ angle, ends })).sort((a, b) => a.angle - b.angle);
}
