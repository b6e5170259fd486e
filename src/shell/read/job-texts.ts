import type { Board, Defect, Job, Part, PartRow, Shop } from '../../index.ts';
import { type BareBoard, type BoardList, readBoards } from './boards.ts';
import { readDefects } from './defects.ts';
import { type PartsFile, readParts } from './parts.ts';
import { type Implausible, type JobFile, type ReadProblem, type Reading, missing } from './problem.ts';
import { readShop } from './shop.ts';

/** One file of a job: the name to give in problems, and its text; null when there is none. */
export interface JobText {
  readonly file: string;
  readonly text: string | null;
}

/** The files of a job as texts. */
export type JobTexts = Readonly<Record<Exclude<JobFile, 'mantel' | 'legs'>, JobText>>;

/** What a caller already has, or can do without. */
export interface JobNeeds {
  /** Parts in hand, such as those of a plan; `parts.csv` is then left aside. */
  readonly parts?: readonly Part[];
  /** Boards that a part may be pinned to beside those of the files, such as offcuts of the rack. */
  readonly otherBoards?: readonly string[];
  /** A job may do without `boards.csv` when boards come from elsewhere. */
  readonly boardsNeeded?: boolean;
}

/** A job and the boards that its yard offers; none when there is no `yard.csv`. */
export interface JobAndYard extends Job {
  readonly yard: readonly Board[];
  /** What of the files may be meant as it stands, and is to be questioned. */
  readonly cautions: readonly Implausible[];
  /** The rows of its parts, with what a plan wrote of them. */
  readonly partRows: readonly PartRow[];
  /** Whether `parts.csv` tells planned rows from the person's own. */
  readonly marksPlanned: boolean;
}

/**
 * Makes a job of its files' texts. Touches no disk, so that the page can use it too. Reads every file to its end, and
 * what can still be compared across files is compared, so that all problems are found at once.
 */
export function readJobTexts(name: string, texts: JobTexts, needs: JobNeeds = {}): Reading<JobAndYard> {
  const shop = readShop(texts.shop.file, texts.shop.text);
  const owned = boardsOf(texts.boards, shop.value, needs.boardsNeeded ?? true);
  const yard = boardsOf(texts.yard, shop.value, false);
  const lists = owned.value === null || yard.value === null ? null : [owned.value, yard.value];
  const names =
    lists === null ? null : new Set([...lists.flatMap((list) => list.names), ...(needs.otherBoards ?? [])]);
  const parts = partsOf(texts.parts, shop.value, names, needs);
  const defects = defectsOf(texts.defects, shop.value, lists);
  const readings: readonly Reading<unknown>[] = [shop, owned, yard, parts, defects];
  return {
    value: {
      name,
      shop: shop.value,
      parts: parts.value.rows.map(({ part }) => part),
      partRows: parts.value.rows,
      marksPlanned: parts.value.marksPlanned,
      boards: withDefects(owned.value?.boards ?? [], defects.value),
      yard: withDefects(yard.value?.boards ?? [], defects.value),
      cautions: readings.flatMap(({ cautions = [] }) => cautions),
    },
    problems: readings.flatMap(({ problems }) => problems),
  };
}

function boardsOf({ file, text }: JobText, shop: Shop, needed: boolean): Reading<BoardList | null> {
  if (text !== null) return readBoards(file, text, shop);
  return {
    value: needed ? null : { boards: [], names: [] },
    problems: needed ? [missing(file, 'boards')] : [],
  };
}

function partsOf(
  { file, text }: JobText,
  shop: Shop,
  boards: ReadonlySet<string> | null,
  needs: JobNeeds,
): Reading<PartsFile> {
  if (needs.parts !== undefined) return { value: ownRows(needs.parts), problems: [] };
  if (text === null) return { value: ownRows([]), problems: [missing(file, 'parts')] };
  return readParts(file, text, shop, boards);
}

function ownRows(parts: readonly Part[]): PartsFile {
  return { rows: parts.map((part) => ({ part, planned: null })), marksPlanned: false };
}

function defectsOf(
  { file, text }: JobText,
  shop: Shop,
  lists: readonly BoardList[] | null,
): Reading<ReadonlyMap<string, readonly Defect[]>> {
  return text === null ? { value: new Map(), problems: [] } : readDefects(file, text, shop, lists);
}

/** Boards of which there is at least one copy, each with its defects. */
function withDefects(boards: readonly BareBoard[], defects: ReadonlyMap<string, readonly Defect[]>): Board[] {
  return boards
    .filter(({ quantity }) => quantity > 0)
    .map((board) => ({ ...board, defects: defects.get(board.name) ?? [] }));
}

/** Sorted as they stand in the files, for printing: file by file in the order of first mention, then by place. */
export function inFileOrder(problems: readonly ReadProblem[]): ReadProblem[] {
  const files = [...new Set(problems.map(fileOf))];
  const rank = (problem: ReadProblem): readonly [number, number, number] => [
    files.indexOf(fileOf(problem)),
    'at' in problem ? problem.at.line : 0,
    'at' in problem ? problem.at.column : 0,
  ];
  return [...problems].sort((a, b) => {
    const [first, second] = [rank(a), rank(b)];
    return first[0] - second[0] || first[1] - second[1] || first[2] - second[2];
  });
}

function fileOf(problem: ReadProblem): string {
  if ('at' in problem) return problem.at.file;
  return 'file' in problem ? problem.file : problem.folder;
}
