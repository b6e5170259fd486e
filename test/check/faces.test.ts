import { describe, expect, test } from 'vitest';
import { inches } from '../../src/base/units/tick.ts';
import { verify } from '../../src/flow/check/verify.ts';
import { layOut } from '../../src/flow/cuts/lay-out.ts';
import type { Part } from '../../src/flow/parts/part.ts';
import { type Shop, defaultShop } from '../../src/flow/shop/shop.ts';
import type { Defect, Face } from '../../src/flow/stock/defect.ts';
import { plainBoard, plainPart } from '../laws/random-board.ts';

const shop: Shop = { ...defaultShop, endTrim: inches(0), edgeTrim: inches(0) };

/** A 1 in defect whose near end stands 30 in along a 60 in board, in the middle of its width. */
function at30(kind: Defect['kind'], face: Defect['face']): Defect {
  return { kind, face, x: inches(30), y: inches(2), length: inches(1), width: inches(1) };
}

/** What the check says of a piece 5 in wide and `length` in long, from the butt end on, over one defect. */
function said(
  defect: Defect,
  over: Partial<Part>,
  showFace: Face | null,
  { length = 40, margin = 0 } = {},
): string[] {
  const part = { ...plainPart({ name: 'p', length: inches(length), width: inches(5) }), ...over };
  const board = plainBoard({ name: 'B', length: inches(60), width: inches(5), defects: [defect] });
  const job = {
    name: 'faces',
    shop: { ...shop, knotMargin: inches(margin) },
    parts: [part],
    boards: [Object.freeze(board)],
  };
  const piece = { x: 0, y: 0, length: part.length, width: part.width, part: 0, copy: 1, showFace };
  const layout = layOut(job, {
    patterns: [{ board: 0, copy: 1, pieces: [piece] }],
    short: [],
    proof: { value: 1, bound: 1, gap: 0, proven: true },
  });
  return verify(job, layout).map(({ kind }) => kind);
}

// By hand from DESIGN, section 6: for each quality and defect, whether the piece may show A, show B, or leave it open.
const rows: readonly [
  Part['quality'],
  Defect['kind'],
  Defect['face'],
  a: boolean,
  b: boolean,
  open: string,
][] = [
  ['clear-1', 'stain', 'A', false, true, 'face left open'],
  ['clear-1', 'stain', 'B', true, false, 'face left open'],
  ['clear-1', 'stain', 'through', false, false, 'defect'],
  ['clear-1', 'sound knot', 'A', false, true, 'face left open'],
  ['clear-1', 'sapwood', 'B', true, false, 'face left open'],
  ['clear-1', 'loose knot', 'A', false, false, 'defect'],
  ['clear-1', 'wane', 'B', false, false, 'defect'],
  ['clear-1', 'pith', 'through', false, false, 'defect'],
  ['clear-2', 'stain', 'A', false, false, 'defect'],
  ['clear-2', 'stain', 'B', false, false, 'defect'],
  ['sound', 'stain', 'through', true, true, 'right'],
  ['sound', 'sound knot', 'through', true, true, 'right'],
  ['sound', 'sapwood', 'A', true, true, 'right'],
  ['sound', 'hole', 'B', false, false, 'defect'],
  ['sound', 'shake', 'A', false, false, 'defect'],
  ['sound', 'bark pocket', 'through', false, false, 'defect'],
  ['any', 'rot', 'through', true, true, 'right'],
  ['any', 'split', 'A', true, true, 'right'],
];

describe('quality by face', () => {
  test.each(rows)('%s over a %s on %s: A %s, B %s, open %s', (quality, kind, face, a, b, open) => {
    const verdict = (isRight: boolean): string => (isRight ? 'right' : 'defect');
    const of = (show: Face | null): string => said(at30(kind, face), { quality }, show)[0] ?? 'right';
    expect([of('A'), of('B'), of(null)]).toEqual([verdict(a), verdict(b), open]);
  });

  test.each([
    // A welcome knot is excused on the show face, where it is the one kind and small enough both ways.
    ['clear-1', 'A', 'A', 1, []],
    ['clear-1', 'A', 'A', 0.5, ['defect']],
    ['clear-1', 'A', 'B', 1, []],
    ['clear-1', 'through', 'A', 1, []],
    // Not on the back of a clear-2 piece: there it counts once, for the back.
    ['clear-2', 'through', 'A', 1, ['defect']],
    ['clear-2', 'A', 'A', 1, []],
    ['clear-2', 'B', 'A', 1, ['defect']],
  ] as const)(
    '%s with a welcome knot on %s, showing %s, up to %s in: %j',
    (quality, face, show, most, found) => {
      const accept = [{ kind: 'sound knot' as const, atMost: inches(most) }];
      expect(said(at30('sound knot', face), { quality, accept }, show)).toEqual(found);
    },
  );

  test('a welcome hole leaves a sound part no sounder', () => {
    const accept = [{ kind: 'hole' as const, atMost: null }];
    expect(said(at30('hole', 'A'), { quality: 'sound', accept }, 'A')).toEqual(['defect']);
    expect(said(at30('hole', 'A'), { quality: 'clear-1', accept }, 'A')).toEqual([]);
  });

  test('a piece may touch a defect; a knot reaches farther by the knot margin, a stain does not', () => {
    expect(said(at30('sound knot', 'A'), {}, 'A', { length: 30 })).toEqual([]);
    expect(said(at30('sound knot', 'A'), {}, 'A', { length: 30 + 1 / 8128 })).toEqual(['defect']);
    expect(said(at30('sound knot', 'A'), {}, 'A', { length: 30, margin: 1 / 2 })).toEqual(['defect']);
    expect(said(at30('sound knot', 'A'), {}, 'A', { length: 29.5, margin: 1 / 2 })).toEqual([]);
    expect(said(at30('stain', 'A'), {}, 'A', { length: 30, margin: 1 / 2 })).toEqual([]);
  });
});
