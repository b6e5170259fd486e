import { describe, expect, it } from 'vitest';
import { inches, ticksPerInch } from '../../src/base/units/tick.ts';
import { commonRatio, drawFace, faceBox } from '../../src/decide/faces/draw-face.ts';
import { type Unrolled, unroll } from '../../src/decide/faces/unrolled.ts';
import type { LaidPiece, Layout } from '../../src/flow/cuts/layout.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';
import type { Defect, Face } from '../../src/flow/stock/defect.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { plainBoard, plainPart } from '../laws/random-board.ts';

const inch = ticksPerInch;
/** What one 45 degree cut of 1/8 in takes along the face (see the bevel's own test). */
const bevel = 1437;

const knot = (face: Defect['face'], x: number, y: number, length: number, width: number): Defect => ({
  kind: 'sound knot',
  face,
  x: x * inch,
  y: y * inch,
  length: length * inch,
  width: width * inch,
});

/**
 * A wrap of return 10, front 40, return 8, all 6 high, with a corner of 90 degrees between each two. On the board, near
 * edge at y = 1, from x = 2: the return takes 2 to 12, a kerf, the front 40 more, a kerf, the other return 8.
 */
const parts = [
  plainPart({ name: 'left', length: inches(10), width: inches(6), show: 1, run: 'wrap', rightEnd: 45 }),
  plainPart({
    ...{
      name: 'front',
      length: inches(40),
      width: inches(6),
      show: 2,
      run: 'wrap',
      leftEnd: 45,
      rightEnd: 45,
    },
    accept: [{ kind: 'sound knot', atMost: null }],
  }),
  plainPart({ name: 'right', length: inches(8), width: inches(6), show: 1, run: 'wrap', leftEnd: 45 }),
];
const focus = { lead: 1, members: [0, 1, 2] };
const size = { y: inch, width: 6 * inch };
const frontX = 12 * inch + bevel;
const rightX = frontX + 40 * inch + bevel;

const defects: readonly Defect[] = [
  // 3 in from the butt end, 2 in above the near edge: 1 in into the left return, 1 in above its low edge.
  knot('A', 3, 2, 1.5, 1),
  // On face B only.
  knot('B', 5, 5, 2, 1),
  // Through, in the front: 20 in from its left end.
  { ...knot('through', 0, 4, 1, 2), x: frontX + 20 * inch },
  // Reaches from the right return past its upper edge: what is above is cut away.
  { ...knot('A', 0, 6.5, 1, 2), x: rightX + 2 * inch },
  // Beside the strip: seen on no piece.
  knot('through', 20, 7.5, 1, 1),
];

function laid(show: Face, places: readonly { part: string; x: number; length: number }[]): Layout {
  const pieces = places.map(({ part, x, length }, order): LaidPiece => {
    return { part, copy: 1, x, length, ...size, showFace: show, run: { run: 0, order } };
  });
  const board = {
    board: 'B1',
    copy: 1,
    length: 80 * inch,
    width: 9 * inch,
    pieces,
    offcuts: [],
    cuts: [],
    cost: 1,
  };
  const area = { board: 0, parts: 0, offcuts: 0, kerf: 0, trim: 0, scrap: 0 };
  return {
    format: 'mantelwright layout 1',
    ticksPerInch,
    kerf: { rip: 1016, crosscut: 1016 },
    boards: [{ ...board, area }],
    short: [],
    totals: { boards: 1, boardFeet: 5, boardFeetMeasured: 5, cost: 1, yield: 0, waste: 0, setups: 0 },
    proof: { value: 1, bound: 1, gap: 0, proven: true },
  };
}

const job: Job = {
  name: 'wrap',
  shop: defaultShop,
  parts,
  boards: [plainBoard({ name: 'B1', length: inches(80), width: inches(9), defects })],
};

const forward = [
  { part: 'left', x: 2 * inch, length: 10 * inch },
  { part: 'front', x: frontX, length: 40 * inch },
  { part: 'right', x: rightX, length: 8 * inch },
];

/** u, v, length and width of every mark, in inches, left to right. */
function seen(face: Unrolled): number[][] {
  return face.pieces.flatMap(({ marks }) =>
    marks.map(({ u, v, length, width }) => [u, v, length, width].map((ticks) => ticks / inch)),
  );
}

describe('the wrap unrolled', () => {
  it('face A: left to right as the board lies, kerfs gone, near edge below', () => {
    const face = unroll(job, laid('A', forward), focus);
    expect(face.length).toBe(58 * inch);
    expect(face.width).toBe(6 * inch);
    expect(face.pieces.map(({ u }) => u / inch)).toEqual([0, 10, 50]);
    expect(seen(face)).toEqual([
      [1, 1, 1.5, 1],
      [30, 3, 1, 2],
      [52, 5.5, 1, 0.5],
    ]);
  });

  it('face B: still left to right, but turned over about the length, near edge above', () => {
    const face = unroll(job, laid('B', forward), focus);
    // The knot of face B: x 5 to 7, y 5 to 6; 3 in into the return, its far side 1 in below the far edge (y 7).
    // The through knot: y 4 to 6, that is 3 to 5 above the near edge; turned over, 1 to 3 above the far edge.
    expect(seen(face)).toEqual([
      [3, 1, 2, 1],
      [30, 1, 1, 2],
    ]);
  });

  it('a run that lies the other way along the board is turned end for end', () => {
    const backward = [
      { part: 'left', x: 60 * inch, length: 10 * inch },
      { part: 'front', x: 60 * inch - bevel - 40 * inch, length: 40 * inch },
      { part: 'right', x: 12 * inch - 2 * bevel, length: 8 * inch },
    ];
    const flaw = [knot('A', 61, 2, 1.5, 1)];
    const turned = { ...job, boards: [{ ...job.boards[0]!, defects: flaw }] };
    // x 61 to 62.5 in a piece from 60 to 70: 7.5 in from its far end, which now stands left; y 2 to 3 of 1 to 7: 4 from above.
    expect(seen(unroll(turned, laid('A', backward), focus))).toEqual([[7.5, 4, 1.5, 1]]);
    const back = { ...turned, boards: [{ ...job.boards[0]!, defects: [knot('B', 61, 2, 1.5, 1)] }] };
    expect(seen(unroll(back, laid('B', backward), focus))).toEqual([[7.5, 1, 1.5, 1]]);
  });

  it('corners stand where pieces meet, with the angle that the wall turns; what is welcome is known', () => {
    const face = unroll(job, laid('A', forward), focus);
    expect(face.pieces.map(({ joint }) => joint)).toEqual([
      null,
      { turn: 90, grainRuns: true },
      { turn: 90, grainRuns: true },
    ]);
    expect(face.pieces.map(({ marks }) => marks.map(({ isWelcome }) => isWelcome))).toEqual([
      [false],
      [true],
      [false],
    ]);
  });

  it('pieces that come from two strips meet without the grain running on', () => {
    const layout = laid('A', forward);
    const [board] = layout.boards;
    const pieces = board!.pieces.map((piece) =>
      piece.part === 'right' ? { ...piece, run: undefined } : piece,
    );
    const broken = { ...layout, boards: [{ ...board!, pieces: pieces as LaidPiece[] }] };
    expect(unroll(job, broken, focus).pieces.map(({ joint }) => joint?.grainRuns)).toEqual([
      undefined,
      true,
      false,
    ]);
  });

  it('a glue-up stands strip on strip, with its line', () => {
    const strips = [0, 1].map((index): LaidPiece => {
      const y = inch * (1 + 4 * index);
      return {
        part: 'front',
        copy: 1,
        x: inch,
        y,
        length: 40 * inch,
        width: 3 * inch,
        showFace: 'A',
        strip: { index, of: 2 },
      };
    });
    const layout = laid('A', []);
    const glued = { ...layout, boards: [{ ...layout.boards[0]!, pieces: strips }] };
    const face = unroll(job, glued, { lead: 1, members: [1] });
    expect(face.pieces.map(({ u, v, glueBelow }) => [u, v / inch, glueBelow])).toEqual([
      [0, 0, false],
      [0, 3, true],
    ]);
    expect(face.width).toBe(6 * inch);
  });

  it('is drawn to scale: 58 in on 176 mm is 1 : 9, a knot and a corner where they belong', () => {
    const face = unroll(job, laid('A', forward), focus);
    const ratio = commonRatio([face]);
    expect(ratio).toBe(9); // 58 × 25.4 / 176 = 8.37
    const paper = (length: number): number => Math.round((length * 254) / ratio);
    const box = faceBox(face, ratio, face.pieces[1]!.marks[0]!);
    const left = faceBox(face, ratio, { u: 0, v: 0, length: 0, width: face.width });
    expect(box.x - left.x).toBe(paper(30));
    expect(box.w).toBeCloseTo(paper(1), -0.5);
    expect(left.y + left.h - (box.y + box.h)).toBeCloseTo(paper(3), -0.5);
    const { markup } = drawFace(face, ratio, defaultShop, 'the wrap <drawn>');
    expect(markup).toContain(`M${left.x + paper(10)} `);
    expect(markup).toContain(`M${left.x + paper(50)} `);
    expect(markup.match(/aria-label="corner: 90°"/g)).toHaveLength(2);
    expect(markup).toContain('the wrap &lt;drawn&gt;');
  });
});
