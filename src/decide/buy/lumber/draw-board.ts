import {
  type Random,
  chance,
  normal,
  poisson,
  uniform,
  weighted,
  whole,
} from '../../../base/random/random.ts';
import { type Tick, ticks, ticksPerInch } from '../../../base/units/tick.ts';
import type { Defect, Face } from '../../../flow/stock/defect.ts';
import { otherFace } from '../../../trade/grades/marked-board.ts';
import { surfaceMeasure } from '../../../trade/board-feet.ts';
import { isSurely } from '../../../trade/grades/grade-board.ts';
import {
  type DefectShape,
  type DrawnGrade,
  edgeShare,
  type Population,
  defectShapes,
  overlength,
  pithShape,
  populations,
} from './population.ts';

/** An imaginary board: its size and defects, all in whole quarters of an inch, as lumber is measured by hand. */
export interface DrawnBoard {
  readonly length: Tick;
  readonly width: Tick;
  /** Whole square feet. */
  readonly surfaceMeasure: number;
  readonly defects: readonly Defect[];
}

/** After this many refusals in a row something is wrong with the population: only a bug of ours can cause that. */
const mostRefusals = 2000;
/** Nodes of one cutting search: a board that cannot be graded so quickly is refused, as one that is not of the grade. */
const drawEffort = 300;

/**
 * Draws boards of a population until the tally's own grader surely gives one the asked grade: neither a lower grade nor
 * a higher one, as a yard would sort it.
 */
export function drawBoard(stream: Random, grade: DrawnGrade): DrawnBoard {
  const population = populations.get(grade)!;
  for (let refused = 0; refused < mostRefusals; refused += 1) {
    const board = rawBoard(stream, population);
    const options = { effort: drawEffort, aim: 'enough' } as const;
    if (isSurely(board, population.grades, board.surfaceMeasure, options)) return board;
  }
  throw new Error(`${mostRefusals} boards in a row were not ${grade}`);
}

/** One board as it comes, of whatever grade it turns out to be. */
export function rawBoard(stream: Random, population: Population): DrawnBoard {
  const feet = weighted(stream, population.feet);
  const length = quarters(feet * 12 + uniform(stream) * overlength);
  const width = quarters(drawnWidth(stream, population));
  const area = (length * width) / (12 * ticksPerInch) ** 2;
  // A log runs clean or knotty as a whole: each board has its own share of the defects (0.5 to 1.5).
  const expected = population.defectsPerFoot * area * (0.5 + uniform(stream));
  const shapes = Array.from({ length: poisson(stream, expected) }, () =>
    weighted(
      stream,
      defectShapes.map((shape) => [shape, shape.weight] as const),
    ),
  );
  if (chance(stream, population.pith)) shapes.push(pithShape);
  const poorFace: Face = chance(stream, 0.5) ? 'A' : 'B';
  const defects = shapes.map((shape) => {
    const onPoor = chance(stream, population.poorFace);
    return drawnDefect(stream, shape, length, width, onPoor ? poorFace : otherFace(poorFace));
  });
  return {
    length,
    width,
    surfaceMeasure: surfaceMeasure(length, width, chance(stream, 0.5) ? 'up' : 'down'),
    defects,
  };
}

function drawnWidth(stream: Random, { meanWidth, widthDeviation, leastWidth }: Population): number {
  for (let attempt = 0; attempt < 100; attempt += 1) {
    const width = meanWidth + widthDeviation * normal(stream);
    if (width >= leastWidth && width <= 16) return width;
  }
  return meanWidth;
}

function drawnDefect(
  stream: Random,
  shape: DefectShape,
  boardLength: Tick,
  boardWidth: Tick,
  oneFace: Face,
): Defect {
  const between = ([least, most]: readonly [number, number]): number =>
    least + (most - least) * uniform(stream);
  const length = Math.min(quarters(between(shape.length)), boardLength);
  const width = Math.min(quarters(between(shape.width)), boardWidth);
  const [alongRoom, acrossRoom] = [boardLength - length, boardWidth - width];
  const [atFarEnd, atFarEdge] = [chance(stream, 0.5), chance(stream, 0.5)];
  const x = shape.place === 'end' ? (atFarEnd ? alongRoom : 0) : roomFor(stream, alongRoom);
  const atEdge = shape.place === 'edge' || (shape.place === 'anywhere' && chance(stream, edgeShare));
  const y = atEdge ? (atFarEdge ? acrossRoom : 0) : roomFor(stream, acrossRoom);
  const face = chance(stream, shape.through) ? 'through' : oneFace;
  return { kind: shape.kind, face, x, y, length, width };
}

/** A place in whole quarter inches, 0 ≤ place ≤ room. */
function roomFor(stream: Random, room: number): number {
  return whole(stream, 0, Math.floor((4 * room) / ticksPerInch)) * (ticksPerInch / 4);
}

/** Inches to the nearest quarter, at least one. */
function quarters(inches: number): Tick {
  return ticks(Math.max(1, Math.round(inches * 4)) * (ticksPerInch / 4));
}
