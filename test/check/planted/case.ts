import type { Layout } from '../../../src/flow/cuts/layout.ts';
import type { CheckProblem } from '../../../src/flow/check/fault.ts';
import type { Part } from '../../../src/flow/parts/part.ts';
import type { Shop } from '../../../src/flow/shop/shop.ts';
import type { Defect } from '../../../src/flow/stock/defect.ts';
import type { Job } from '../../../src/flow/stock/job.ts';

type Mutable<T> = T extends readonly (infer Item)[]
  ? Mutable<Item>[]
  : T extends object
    ? { -readonly [Key in keyof T]: Mutable<T[Key]> }
    : T;

export interface Case {
  readonly job: Job;
  readonly layout: Layout;
}

/** One way to spoil a right layout, or the job under it; null where it does not apply. */
export interface Planted {
  readonly name: string;
  /** One of these must be reported. */
  readonly expected: readonly CheckProblem['kind'][];
  readonly plant: (right: Case) => Case | null;
}

export type Draft = Mutable<Layout>;
export type DraftBoard = Draft['boards'][number];
export type DraftPiece = DraftBoard['pieces'][number];

/** Spoils a copy of the layout; the edit says false where it finds nothing to spoil. */
export function spoil(
  name: string,
  expected: CheckProblem['kind'] | readonly CheckProblem['kind'][],
  edit: (draft: Draft, job: Job) => boolean,
): Planted {
  const kinds = typeof expected === 'string' ? [expected] : expected;
  return {
    name,
    expected: kinds,
    plant: ({ job, layout }) => {
      const draft = structuredClone(layout) as Draft;
      return edit(draft, job) ? { job, layout: draft as Layout } : null;
    },
  };
}

/** Changes the job under a layout. */
export function change(
  name: string,
  expected: CheckProblem['kind'] | readonly CheckProblem['kind'][],
  edit: (right: Case) => Partial<Job> | null,
): Planted {
  const kinds = typeof expected === 'string' ? [expected] : expected;
  return {
    name,
    expected: kinds,
    plant: (right) => {
      const changed = edit(right);
      return changed === null ? null : { ...right, job: { ...right.job, ...changed } };
    },
  };
}

/** The first piece that a test accepts. */
export function somePiece(
  draft: Draft,
  accepts: (piece: DraftPiece) => boolean = () => true,
): DraftPiece | null {
  return draft.boards.flatMap((board) => board.pieces).find(accepts) ?? null;
}

/** Edits the first piece that a test accepts; false when there is none. */
export function editPiece(
  draft: Draft,
  edit: (piece: DraftPiece, board: DraftBoard) => void,
  accepts: (piece: DraftPiece) => boolean = () => true,
): boolean {
  for (const board of draft.boards) {
    for (const piece of board.pieces) {
      if (!accepts(piece)) continue;
      edit(piece, board);
      return true;
    }
  }
  return false;
}

/** The first cut that a test accepts. */
export function someCut(draft: Draft, accepts: (cut: DraftBoard['cuts'][number]) => boolean = () => true) {
  return draft.boards.flatMap((board) => board.cuts).find(accepts) ?? null;
}

/** The part of that name. */
export function partOf(job: Job, name: string): Part {
  return job.parts.find((part) => part.name === name) as Part;
}

/** The job with one part changed. */
export function withPart(job: Job, name: string, over: Partial<Part>): Partial<Job> {
  return { parts: job.parts.map((part) => (part.name === name ? { ...part, ...over } : part)) };
}

/** The job with its shop changed. */
export function withShop(job: Job, over: Partial<Shop>): Partial<Job> {
  return { shop: { ...job.shop, ...over } };
}

/** Puts a defect in the middle of a piece. */
export function withDefect(
  { job, layout }: Case,
  accepts: (piece: Layout['boards'][number]['pieces'][number], part: Part) => boolean,
  defectOf: (piece: Layout['boards'][number]['pieces'][number]) => Pick<Defect, 'kind' | 'face'>,
): Partial<Job> | null {
  for (const laid of layout.boards) {
    for (const piece of laid.pieces) {
      if (!accepts(piece, partOf(job, piece.part))) continue;
      const middle = { x: piece.x + Math.floor(piece.length / 2), y: piece.y + Math.floor(piece.width / 2) };
      const defect: Defect = { ...defectOf(piece), ...middle, length: 1, width: 1 };
      const boards = job.boards.map((board) =>
        board.name === laid.board ? { ...board, defects: [...board.defects, defect] } : board,
      );
      return { boards };
    }
  }
  return null;
}
