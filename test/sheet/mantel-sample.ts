import { inches } from '../../src/base/units/tick.ts';
import type { Layout } from '../../src/flow/cuts/layout.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { layoutOf, Saw } from './saw.ts';
import { boardOf, flaw, partOf } from './stock-of.ts';

const i = inches;

/** A double-return mantel in inches: a run across the front, a glued shelf, a long thin board, a rack offcut. */
export const mantelJob: Job = {
  name: 'Hearth beam, north room',
  shop: { ...defaultShop, rack: 'rack.csv' },
  parts: [
    partOf('left return face', 1, i(8), i(7.25), { run: 'face', rightEnd: 45, leftEnd: 0, show: 2 }),
    partOf('front face', 1, i(66.5), i(7.25), { run: 'face', leftEnd: 45, rightEnd: 45, show: 3 }),
    partOf('right return face', 1, i(8), i(7.25), { run: 'face', leftEnd: 45, show: 2 }),
    partOf('top shelf', 1, i(66.5), i(9), { glueUp: 2, show: 1 }),
    partOf('bottom', 1, i(65), i(5.5), { quality: 'sound' }),
    partOf('end cap', 2, i(7.25), i(5.5), { grain: 'across', show: 1, note: 'match the grain of the front' }),
    partOf('ledger', 1, i(58), i(1.5), { quality: 'sound' }),
    partOf('glue block, inside corner of the panel', 8, i(2.5), i(1.25), { quality: 'any', grain: 'any' }),
    partOf('plug', 12, i(1), i(0.75), { quality: 'any' }),
    partOf('cleat', 4, i(14.5), i(1.25), { quality: 'sound' }),
    partOf('second bottom panel', 1, i(120), i(5.5), { quality: 'sound' }),
  ],
  boards: [
    boardOf('Oak 1', i(120), i(9.25), {
      grade: 'FAS',
      note: 'the good one',
      defects: [
        flaw('sound knot', 'A', 88, 90, 4, 6),
        flaw('loose knot', 'B', 52, 53.25, 2.5, 3.75),
        flaw('check', 'through', 0, 4.5, 3, 3.75),
        flaw('sapwood', 'B', 1, 119, 0.25, 1.25),
        flaw('stain', 'A', 104, 112, 1, 4),
        flaw('split', 'through', 114, 120, 6, 6.5),
        flaw('wane', 'B', 96, 119, 8.25, 9.25),
        flaw('hole', 'through', 91.5, 92, 1.5, 2),
        flaw('bark pocket', 'A', 95, 97.5, 5.5, 6.25),
        flaw('pith', 'B', 98, 112, 6.75, 7.25),
        flaw('shake', 'A', 99, 108, 4.25, 5.25),
        flaw('rot', 'B', 113, 118, 2, 4),
      ],
    }),
    boardOf('Oak 2', i(96), i(11), { quantity: 2, defects: [flaw('sound knot', 'A', 40, 41.5, 9.25, 10.5)] }),
    boardOf('long strip', i(192), i(3), {
      surface: 'S4S',
      grade: 'Select',
      defects: [flaw('sound knot', 'through', 100, 101, 1, 2), flaw('pith', 'B', 150, 168, 1.25, 1.75)],
    }),
    boardOf('R-7', i(31), i(6.5), { origin: 'rack', cost: 4.2, surface: 'S4S', tone: 'warm' }),
  ],
};

/** The mantel's layout, sawn by hand. One part is short. */
export function mantelLayout(): Layout {
  const { shop } = mantelJob;
  const [oak1, oak2, strip, rack] = mantelJob.boards;
  if (!oak1 || !oak2 || !strip || !rack) throw new Error('the sample has four boards');
  const bevel = Math.ceil(shop.crosscutKerf / Math.cos(Math.PI / 4));
  const face = (board: Saw): void => {
    const blank = board.trimmed();
    const front = board.crosscut(blank, i(8) + bevel + i(66.5) + bevel + i(8));
    const run = board.rip(front.part, i(7.25));
    const left = board.crosscut(run.part, i(8), 'piece', bevel);
    const middle = board.crosscut(left.rest, i(66.5), 'piece', bevel);
    board.piece(left.part, 'left return face', 1, 'A', { run: { run: 1, order: 0 } });
    board.piece(middle.part, 'front face', 1, 'A', { run: { run: 1, order: 1 } });
    board.piece(middle.rest, 'right return face', 1, 'A', { run: { run: 1, order: 2 } });
    const lower = board.rip(run.rest, i(1.25));
    let rest = lower.part;
    for (let copy = 1; copy <= 4; copy += 1) {
      const cut = board.crosscut(rest, i(14.5), 'piece');
      board.piece(cut.part, 'cleat', copy, null);
      rest = cut.rest;
    }
    for (let copy = 1; copy <= 5; copy += 1) {
      const cut = board.crosscut(rest, i(2.5), 'piece');
      board.piece(cut.part, 'glue block, inside corner of the panel', copy, null);
      rest = cut.rest;
    }
    board.keep(front.rest, 'N-1');
  };
  const panel = (board: Saw): void => {
    const blank = board.trimmed();
    const section = board.crosscut(blank, i(66.5));
    const first = board.rip(section.part, i(4.5625));
    const second = board.rip(first.rest, i(4.5625));
    board.piece(first.part, 'top shelf', 1, 'A', { strip: { index: 0, of: 2 } });
    board.piece(second.part, 'top shelf', 1, 'A', { strip: { index: 1, of: 2 } });
    const caps = board.rip(section.rest, i(7.25));
    const one = board.crosscut(caps.part, i(5.5), 'piece');
    const two = board.crosscut(one.rest, i(5.5), 'piece');
    board.piece(one.part, 'end cap', 1, 'B');
    board.piece(two.part, 'end cap', 2, 'B');
    board.keep(two.rest, 'N-2');
  };
  const bottoms = (board: Saw): void => {
    const section = board.crosscut(board.trimmed(), i(65));
    const wide = board.rip(section.part, i(5.5));
    board.piece(wide.part, 'bottom', 1, null);
    const ledger = board.rip(wide.rest, i(1.5));
    const cut = board.crosscut(ledger.part, i(58), 'piece');
    board.piece(cut.part, 'ledger', 1, null);
    board.keep(ledger.rest, 'N-3');
    board.keep(section.rest, 'N-4');
  };
  const thin = (board: Saw): void => {
    let { rest } = board.crosscut(board.trimmed(), i(20));
    const small = board.crosscut(rest, i(15));
    rest = small.rest;
    const upper = board.rip(small.part, i(0.75));
    let plugs = upper.part;
    for (let copy = 1; copy <= 12; copy += 1) {
      const cut = board.crosscut(plugs, i(1), 'piece');
      board.piece(cut.part, 'plug', copy, null);
      plugs = cut.rest;
    }
    let blocks = board.rip(upper.rest, i(1.25)).part;
    for (let copy = 6; copy <= 8; copy += 1) {
      const cut = board.crosscut(blocks, i(2.5), 'piece');
      board.piece(cut.part, 'glue block, inside corner of the panel', copy, null);
      blocks = cut.rest;
    }
    board.keep(rest, 'N-5');
  };
  const saws: [Saw, (board: Saw) => void][] = [
    [new Saw(oak1, shop), face],
    [new Saw(oak2, shop, 1), panel],
    [new Saw(oak2, shop, 2), bottoms],
    [new Saw(strip, shop), thin],
  ];
  for (const [saw, work] of saws) work(saw);
  const boards = saws.map(([saw]) => saw.done());
  const cost = boards.reduce((sum, board) => sum + board.cost, 0);
  return layoutOf(mantelJob, boards, { value: cost, bound: cost * 0.996, gap: 0.004, proven: false }, [
    {
      part: 'second bottom panel',
      copies: 1,
      why: 'no board has 120" of sound length; the nearest, Oak 1, gives 118" after its trims',
    },
  ]);
}
