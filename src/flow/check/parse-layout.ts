import type { Rectangle } from '../../base/geometry/rectangle.ts';
import { type Result, failure, success } from '../../base/result/result.ts';
import type { BoardToAdd, BrokenRun, Cut, LaidBoard, LaidPiece, Layout, Offcut } from '../cuts/layout.ts';
import type { Face } from '../stock/defect.ts';
import {
  type Field,
  type Reader,
  type ShapeProblem,
  listOf,
  orNull,
  record,
  unreadable,
  where,
} from './read-shape.ts';

type Short = Layout['short'][number];

function needed<T>(read: Reader<T>): Field<T> {
  return { read };
}

function maybe<T>(read: Reader<T>): Field<T> {
  return { read, isOptional: true };
}

const text = where('a text', (value): value is string => typeof value === 'string');
const whole = where('a whole number', (value): value is number => Number.isSafeInteger(value));
const size = where(
  'a whole number above 0',
  (value): value is number => Number.isSafeInteger(value) && (value as number) > 0,
);
const count = where(
  'a whole number, 0 or more',
  (value): value is number => Number.isSafeInteger(value) && (value as number) >= 0,
);
const real = where('a number', (value): value is number => Number.isFinite(value));
const truth = where('true or false', (value): value is boolean => typeof value === 'boolean');
const face = where(
  '"A", "B" or null',
  (value): value is Face | null => value === 'A' || value === 'B' || value === null,
);

function oneOf<T extends string | number>(...values: readonly T[]): Reader<T> {
  const expected = values.map((value) => JSON.stringify(value)).join(' or ');
  return where(expected, (value): value is T => values.some((known) => known === value));
}

const region = { x: needed(whole), y: needed(whole), length: needed(size), width: needed(size) };

const piece = record<LaidPiece>({
  part: needed(text),
  copy: needed(size),
  ...region,
  showFace: needed(face),
  strip: maybe(record<{ index: number; of: number }>({ index: needed(count), of: needed(size) })),
  run: maybe(record<{ run: number; order: number }>({ run: needed(count), order: needed(count) })),
});

const cut = record<Cut>({
  step: needed(size),
  kind: needed(oneOf('crosscut', 'rip')),
  region: needed(record<Rectangle>(region)),
  at: needed(whole),
  kerf: needed(count),
  purpose: maybe(oneOf('end trim', 'edge trim', 'section', 'strip', 'piece', 'rerip', 'deeper')),
});

const board = record<LaidBoard>({
  board: needed(text),
  copy: needed(size),
  length: needed(size),
  width: needed(size),
  pieces: needed(listOf(piece)),
  offcuts: needed(listOf(record<Offcut>({ id: needed(text), ...region }))),
  cuts: needed(listOf(cut)),
  area: needed(
    record<LaidBoard['area']>({
      board: needed(count),
      parts: needed(count),
      offcuts: needed(count),
      kerf: needed(count),
      trim: needed(count),
      scrap: needed(count),
    }),
  ),
  cost: needed(real),
});

const extent = record<{ length: number; width: number }>({ length: needed(size), width: needed(size) });
const stretches = listOf(listOf(text));

const broken = record<BrokenRun>({
  run: needed(text),
  stretches: needed(stretches),
  why: needed(oneOf('no board', 'no layout', 'not found', 'fewest short', 'money')),
  clear: needed(extent),
  inDoubt: needed(orNull(stretches)),
  saves: needed(orNull(real)),
  whole: needed(
    orNull(record<NonNullable<BrokenRun['whole']>>({ board: needed(extent), cost: needed(real) })),
  ),
});

const layout = record<Layout>({
  format: needed(oneOf('mantelwright layout 1')),
  ticksPerInch: needed(oneOf(8128)),
  kerf: needed(record<Layout['kerf']>({ rip: needed(count), crosscut: needed(count) })),
  boards: needed(listOf(board)),
  short: needed(listOf(record<Short>({ part: needed(text), copies: needed(size), why: needed(text) }))),
  broken: maybe(listOf(broken)),
  totals: needed(
    record<Layout['totals']>({
      boards: needed(count),
      boardFeet: needed(real),
      boardFeetMeasured: needed(real),
      cost: needed(real),
      yield: needed(real),
      waste: needed(real),
      setups: needed(count),
    }),
  ),
  proof: needed(
    record<Layout['proof']>({
      value: needed(real),
      bound: needed(orNull(real)),
      gap: needed(orNull(real)),
      proven: needed(truth),
      under: maybe(
        listOf(
          oneOf('grain unbroken', 'grain broken as here', 'one tone', 'boards chosen for parts', 'stages'),
        ),
      ),
      toAdd: maybe(
        orNull(
          record<BoardToAdd>({
            length: needed(size),
            width: needed(size),
            thickness: needed(size),
            least: needed(truth),
          }),
        ),
      ),
    }),
  ),
});

/** More problems than this help nobody. */
const mostProblems = 20;

/**
 * Reads a layout from parsed JSON (DESIGN, section 8), strictly: every field there, of its type, and no other but ours
 * (a cut's purpose, a piece's place in a glue-up or a run, the runs that are broken, which may be missing); whole numbers within ±2⁵³; nothing taken from a prototype. Says nothing about whether the layout is right: `verify` does.
 * @returns the layout, or the first 20 problems with the path of each
 */
export function parseLayout(json: unknown): Result<Layout, ShapeProblem> {
  const problems: ShapeProblem[] = [];
  const value = layout(json, '', problems);
  if (value === unreadable) return failure(problems.slice(0, mostProblems));
  return success(value);
}

/** A problem of `parseLayout` in plain words. */
export function describeShapeProblem({ path, expected }: ShapeProblem): string {
  return `${path === '' ? 'the layout' : path}: expected ${expected}`;
}
