import { describe, expect, it } from 'vitest';
import { inches } from '../../src/base/units/tick.ts';
import { boardSvg } from '../../src/flow/sheet/board/board-svg.ts';
import { hatch } from '../../src/flow/sheet/board/hatch.ts';
import { keyEntries, letterFor } from '../../src/flow/sheet/board/key.ts';
import { wrap } from '../../src/flow/sheet/board/wordings.ts';
import { boardFacts } from '../../src/flow/sheet/board/facts.ts';
import { defectKinds } from '../../src/flow/stock/defect.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';
import { hostileJob, hostileLayout } from './hostile-sample.ts';
import { mantelJob, mantelLayout } from './mantel-sample.ts';
import { randomBoard } from './random-layout.ts';
import { Saw } from './saw.ts';
import { boardOf, flaw, partOf } from './stock-of.ts';

const drawings = [
  ...mantelLayout().boards.map((laid) => boardSvg(mantelJob, laid)),
  ...hostileLayout().boards.map((laid) => boardSvg(hostileJob, laid)),
  ...Array.from({ length: 25 }, (_, index) => {
    const { job, laid } = randomBoard(100 + index);
    return boardSvg(job, laid);
  }),
];

/** Attributes that place things, and the text of paths. */
const placed = /\s(?:x|y|width|height|rx|d|transform|viewBox|textLength|font-size|points)="([^"]*)"/g;

describe('every board diagram', () => {
  it('has whole-number coordinates only', () => {
    for (const drawing of drawings) {
      const numbers = [...drawing.matchAll(placed)].flatMap(
        ([, value = '']) => value.match(/-?[\d.]+(?:e[-+]?\d+)?/g) ?? [],
      );
      expect(numbers.length).toBeGreaterThan(50);
      expect(numbers.filter((number) => !/^-?\d+$/.test(number))).toEqual([]);
    }
  });

  it('holds no broken value', () => {
    for (const drawing of drawings) expect(drawing).not.toMatch(/NaN|undefined|Infinity|\[object/);
  });

  it('has a title, names its groups, and refers to nothing outside', () => {
    for (const drawing of drawings) {
      expect(drawing).toMatch(/^<svg [^>]*aria-label="Board [^"]*: cutting diagram"/);
      expect(drawing).toContain('<title>Board ');
      expect(drawing.match(/<g aria-label=/g)?.length).toBeGreaterThan(5);
      expect(drawing.replaceAll('xmlns="http://www.w3.org/2000/svg"', '')).not.toMatch(/href|url\(|https?:/);
    }
  });

  it('is the same each time', () => {
    const { job, laid } = randomBoard(7);
    expect(boardSvg(job, laid)).toBe(boardSvg(job, laid));
  });
});

describe('what a diagram shows', () => {
  it('numbers every cut', () => {
    for (let seed = 1; seed <= 30; seed += 1) {
      const { job, laid } = randomBoard(seed);
      const drawing = boardSvg(job, laid);
      for (const { step } of laid.cuts) {
        expect(drawing).toMatch(
          new RegExp(`<title>cut ${step}: [^<]*</title><rect [^>]*rx[^>]*/><text [^>]*>${step}</text>`),
        );
      }
    }
  });

  it('writes or keys the name of every piece and offcut', () => {
    for (let seed = 1; seed <= 30; seed += 1) {
      const { job, laid } = randomBoard(seed);
      // Wrapped names stand in several text elements: take the words one by one.
      const words = new Set(
        [...boardSvg(job, laid).matchAll(/<text [^>]*>([^<]*)</g)].flatMap(([, text = '']) =>
          text.split(/[ ,]+/),
        ),
      );
      const names = [...laid.pieces.map(({ part }) => part), ...laid.offcuts.map(({ id }) => id)];
      for (const name of names) for (const word of name.split(/[ ,]+/)) expect(words).toContain(word);
    }
  });

  it('puts a knot where the defects file puts it, near edge at the bottom', () => {
    // 96 × 12 S4S without trims, drawn 1 : 16: a unit is 512 ticks, 15.875 units are an inch.
    const board = boardOf('B', inches(96), inches(12), {
      surface: 'S4S',
      defects: [flaw('sound knot', 'A', 40, 42, 1, 2.5)],
    });
    const shop = { ...defaultShop, endTrim: inches(0) };
    const saw = new Saw(board, shop);
    const { part, rest } = saw.crosscut(saw.trimmed(), inches(60));
    saw.piece(part, 'shelf', 1, 'A');
    saw.keep(rest, 'B-a');
    const job = { name: 'j', shop, boards: [board], parts: [partOf('shelf', 1, inches(60), inches(12))] };
    const drawing = boardSvg(job, saw.done());
    expect(drawing).toContain('Scale 1 : 16 ');
    const mark =
      /<g aria-label="sound knot on face A, 40&quot; from the butt end, 1&quot; from the near edge">.*?<rect x="(\d+)" y="(\d+)" width="(\d+)" height="(\d+)"/.exec(
        drawing,
      );
    // x: 206 + 40 × 15.875 = 841; width 2 × 15.875 = 32 (to 873 − 841); y: (12 − 2.5) × 15.875 = 151; bottom (12 − 1) × 15.875 = 175.
    expect(mark?.slice(1).map(Number)).toEqual([841, 151, 32, 24]);
  });

  it('hatches each kind of defect in a way of its own', () => {
    const box = { x: 0, y: 0, w: 60, h: 40 };
    const marks = defectKinds.map((kind) => hatch(kind, box).markup);
    expect(new Set(marks).size).toBe(defectKinds.length);
  });

  it('marks the face by the outline: solid, dashed, double', () => {
    const [oak] = mantelLayout().boards;
    if (!oak) throw new Error('the sample has boards');
    const drawing = boardSvg(mantelJob, oak);
    const outlines = (label: string): string[] => {
      const group = new RegExp(`<g aria-label="${label}[^>]*>(.*?)</g>`).exec(drawing)?.[1] ?? '';
      return group.match(/<rect [^>]*>/g) ?? [];
    };
    expect(outlines('stain on face A').join()).not.toContain('dasharray');
    expect(outlines('rot on face B').join()).toContain('stroke-dasharray');
    expect(outlines('split through')).toHaveLength(2);
  });
});

describe('key and wrapping', () => {
  it('counts letters as spreadsheets count columns', () => {
    expect([0, 25, 26, 51, 52, 701, 702].map(letterFor)).toEqual(['a', 'z', 'aa', 'az', 'ba', 'zz', 'aaa']);
  });

  it('gives one letter to all copies of a part, and says which', () => {
    const laid = mantelLayout().boards[3];
    if (!laid) throw new Error('the sample has four boards');
    const entries = keyEntries(boardFacts(mantelJob, laid).things.filter(({ kind }) => kind === 'piece'));
    expect(entries.map(({ line }) => line).sort()).toEqual([
      'glue block, inside corner of the panel, 2 1/2 × 1 1/4 (6 to 8 of 8)',
      'plug, 1 × 3/4 (1 to 12 of 12)',
    ]);
  });

  it('wraps at spaces into lines of like length', () => {
    expect(wrap('left return facing', 2)).toEqual(['left return', 'facing']);
    expect(wrap('one two three four five six', 3)).toHaveLength(3);
    expect(wrap('single', 3)).toEqual(['single']);
  });
});
