import { overlaps, type Rectangle } from '../../src/base/geometry/rectangle.ts';
import type { PlacedPiece } from '../../src/flow/choice/choice.ts';
import { blocks, extent } from '../../src/flow/stock/clear.ts';
import type { Face } from '../../src/flow/stock/defect.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { usable } from '../../src/flow/stock/usable.ts';

// A board under a person's pencil: sections between crosscuts, strips between rips, gaps left in each. All in ticks,
// board coordinates.
//
//      ┌─────────── section ───────────┬── section ──┐
//      │ strip: │ piece │kerf│ gap     │             │
//      ├────────────────── kerf ───────┤   free      │
//      │ free band                     │             │
//      └───────────────────────────────┴─────────────┘

export type Habit = 'rip first' | 'crosscut first';

/** One copy of a part, still to be placed. */
export interface Blank {
  readonly part: number;
  readonly copy: number;
  readonly length: number;
  readonly width: number;
}

interface Span {
  readonly from: number;
  readonly to: number;
}

interface Strip {
  readonly y: number;
  readonly width: number;
  gaps: Span[];
}

interface Section extends Span {
  readonly strips: Strip[];
  bands: Span[];
}

export interface OpenBoard {
  readonly board: number;
  readonly copy: number;
  readonly whole: Rectangle;
  readonly sections: Section[];
  /** What is not crosscut into sections yet. */
  ends: Span[];
  readonly pieces: PlacedPiece[];
}

/** A place for a blank that a pencil has found, and what drawing it there does. */
interface Spot {
  /** Less is tighter: first the width left over, then the length. */
  readonly slack: readonly [number, number];
  readonly take: () => void;
}

/** Starts a board: under "rip first" it is one section; null when nothing can be cut from it. */
export function openBoard(job: Job, board: number, copy: number, habit: Habit): OpenBoard | null {
  const whole = usable(job.boards[board]!, job.shop);
  if (whole.length <= 0 || whole.width <= 0) return null;
  const all: Span = { from: whole.x, to: whole.x + whole.length };
  const opened: OpenBoard = { board, copy, whole, sections: [], ends: [], pieces: [] };
  if (habit === 'rip first') opened.sections.push(freshSection(whole, all));
  else opened.ends = [all];
  return opened;
}

function freshSection(whole: Rectangle, span: Span): Section {
  return { ...span, strips: [], bands: [{ from: whole.y, to: whole.y + whole.width }] };
}

/** Draws the blank on one of the started boards, in the tightest strip, else as a new strip or section; false if none holds it. */
export function placeOn(job: Job, boards: readonly OpenBoard[], blank: Blank, habit: Habit): boolean {
  const spot =
    tightest(boards.flatMap((open) => stripSpots(job, open, blank))) ??
    tightest(boards.flatMap((open) => bandSpots(job, open, blank))) ??
    (habit === 'crosscut first' ? tightest(boards.flatMap((open) => endSpots(job, open, blank))) : null);
  spot?.take();
  return spot !== null;
}

function tightest(spots: readonly Spot[]): Spot | null {
  return spots.reduce<Spot | null>((best, spot) => {
    if (best === null) return spot;
    const [width, length] = [spot.slack[0] - best.slack[0], spot.slack[1] - best.slack[1]];
    return width < 0 || (width === 0 && length < 0) ? spot : best;
  }, null);
}

/** What is left of a span when a stretch of it and a kerf on either side are taken. */
function without(span: Span, from: number, to: number, kerf: number): Span[] {
  const rest = [
    { from: span.from, to: from - kerf },
    { from: to + kerf, to: span.to },
  ];
  return rest.filter((left) => left.to > left.from);
}

function replaced(spans: readonly Span[], old: Span, by: readonly Span[]): Span[] {
  return spans.flatMap((span) => (span === old ? by : [span]));
}

function obstacles(job: Job, open: OpenBoard, part: number, face: Face): Rectangle[] {
  const wanted = job.parts[part]!;
  return job.boards[open.board]!.defects.filter((defect) => blocks(wanted, defect, face)).map((defect) =>
    extent(defect, job.shop),
  );
}

/** The first clear place along a gap at a height, on the face that has it nearer the butt end; null when there is none. */
function clearAlong(
  job: Job,
  open: OpenBoard,
  blank: Blank,
  gap: Span,
  y: number,
): { readonly x: number; readonly face: Face } | null {
  if (job.boards[open.board]!.dressedThickness < job.parts[blank.part]!.thickness) return null;
  let best: { readonly x: number; readonly face: Face } | null = null;
  for (const face of ['A', 'B'] as const) {
    let x = gap.from;
    const flaws = obstacles(job, open, blank.part, face).sort((a, b) => a.x - b.x);
    for (const flaw of flaws) {
      const here = { x, y, length: blank.length, width: blank.width };
      if (overlaps(here, flaw)) x = Math.max(x, flaw.x + flaw.length);
    }
    if (x + blank.length <= gap.to && (best === null || x < best.x)) best = { x, face };
  }
  return best;
}

function draw(open: OpenBoard, blank: Blank, x: number, y: number, face: Face): void {
  const { part, copy, length, width } = blank;
  open.pieces.push({ part, copy, x, y, length, width, showFace: face });
}

/** In strips already ripped: as wide as the blank, or wider where it is long enough to be ripped once more. */
function stripSpots(job: Job, open: OpenBoard, blank: Blank): Spot[] {
  const { shortestRip, crosscutKerf } = job.shop;
  return open.sections.flatMap(({ strips }) =>
    strips.flatMap((strip) => {
      const spare = strip.width - blank.width;
      if (spare < 0 || (spare > 0 && blank.length < shortestRip)) return [];
      return strip.gaps.flatMap((gap): Spot[] => {
        if (gap.to - gap.from < blank.length) return [];
        for (const y of spare > 0 ? [strip.y, strip.y + spare] : [strip.y]) {
          const found = clearAlong(job, open, blank, gap, y);
          if (found === null) continue;
          const take = (): void => {
            const end = found.x + blank.length;
            strip.gaps = replaced(strip.gaps, gap, without(gap, found.x, end, crosscutKerf));
            draw(open, blank, found.x, y, found.face);
          };
          return [{ slack: [spare, gap.to - gap.from - blank.length], take }];
        }
        return [];
      });
    }),
  );
}

/** The lowest height at which the blank lies clear in a band of the section, as a new strip as wide as the blank. */
function bandSpots(job: Job, open: OpenBoard, blank: Blank): Spot[] {
  return open.sections.flatMap((section) => {
    const long = section.to - section.from;
    if (long < blank.length) return [];
    return section.bands.flatMap((band): Spot[] => {
      const spare = band.to - band.from - blank.width;
      const unripped = spare === 0 && band.to - band.from === open.whole.width;
      if (spare < 0 || (long < job.shop.shortestRip && !unripped)) return [];
      for (const y of heights(job, open, blank, band)) {
        const found = clearAlong(job, open, blank, section, y);
        if (found === null) continue;
        const take = (): void => {
          section.bands = replaced(section.bands, band, without(band, y, y + blank.width, job.shop.ripKerf));
          const gap: Span = { from: section.from, to: section.to };
          const gaps = without(gap, found.x, found.x + blank.length, job.shop.crosscutKerf);
          section.strips.push({ y, width: blank.width, gaps });
          draw(open, blank, found.x, y, found.face);
        };
        return [{ slack: [spare, long - blank.length], take }];
      }
      return [];
    });
  });
}

/** Heights worth trying: the band's near edge, the far side of each flaw in it, the band's far edge. */
function heights(job: Job, open: OpenBoard, blank: Blank, band: Span): number[] {
  const flaws = (['A', 'B'] as const).flatMap((face) => obstacles(job, open, blank.part, face));
  const last = band.to - blank.width;
  const tries = [band.from, last, ...flaws.map((flaw) => flaw.y + flaw.width)];
  return [...new Set(tries)].filter((y) => y >= band.from && y <= last).sort((a, b) => a - b);
}

/** A new section just as long as the blank (or as the shortest rip), from what is not crosscut yet. */
function endSpots(job: Job, open: OpenBoard, blank: Blank): Spot[] {
  const { shortestRip, crosscutKerf } = job.shop;
  if (open.whole.width < blank.width) return [];
  const long = Math.max(blank.length, open.whole.width === blank.width ? 0 : shortestRip);
  const across: Span = { from: open.whole.y, to: open.whole.y + open.whole.width };
  return open.ends.flatMap((end): Spot[] => {
    if (end.to - end.from < long) return [];
    const found = heights(job, open, blank, across).flatMap((y) => {
      const clear = clearAlong(job, open, blank, { from: end.from, to: end.to - long + blank.length }, y);
      return clear === null ? [] : [clear.x];
    });
    if (found.length === 0) return [];
    const from = Math.min(...found);
    const take = (): void => {
      open.ends = replaced(open.ends, end, without(end, from, from + long, crosscutKerf));
      open.sections.push(freshSection(open.whole, { from, to: from + long }));
      const only: OpenBoard = { ...open, sections: open.sections.slice(-1) };
      tightest(bandSpots(job, only, blank))?.take();
    };
    return [{ slack: [open.whole.width - blank.width, end.to - end.from - long], take }];
  });
}
