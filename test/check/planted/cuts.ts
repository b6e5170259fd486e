import { ticks } from '../../../src/base/units/tick.ts';
import { type DraftBoard, type Planted, spoil, change, someCut, withShop } from './case.ts';

function isTrim(cut: DraftBoard['cuts'][number] | undefined): boolean {
  return cut?.purpose?.endsWith('trim') === true;
}

/** Faults of the cuts. */
export const cutFaults: readonly Planted[] = [
  spoil('kerf of the header', 'wrong header', (draft) => {
    draft.kerf.rip += 1;
    return true;
  }),
  spoil('kerf of a cut one tick less', 'wrong kerf', (draft) => {
    const cut = someCut(draft, ({ kerf }) => kerf > 0);
    if (cut !== null) cut.kerf -= 1;
    return cut !== null;
  }),
  spoil('kerf dropped', 'wrong kerf', (draft) => {
    const cut = someCut(draft, ({ kerf, at, region }) => kerf > 0 && at > Math.max(region.x, region.y));
    if (cut !== null) cut.kerf = 0;
    return cut !== null;
  }),
  spoil('last cut dropped', 'not cut free', (draft) => {
    const board = draft.boards.find(({ cuts }) => cuts.length > 0 && cuts.at(-1)?.purpose !== 'end trim');
    return board?.cuts.pop() !== undefined && board.pieces.length > 0;
  }),
  spoil('first cut dropped', ['no such workpiece', 'not trimmed', 'not cut free'], (draft) => {
    const board = draft.boards.find(({ cuts, pieces }) => cuts.length > 0 && pieces.length > 0);
    return board?.cuts.shift() !== undefined;
  }),
  spoil('two cuts in the wrong order', 'no such workpiece', (draft) => {
    const cuts = draft.boards.find((board) => board.cuts.length > 1)?.cuts;
    const [first, second] = cuts ?? [];
    if (cuts === undefined || first === undefined || second === undefined) return false;
    cuts.splice(0, 2, { ...second, step: 1 }, { ...first, step: 2 });
    return true;
  }),
  spoil('step numbered wrong', 'wrong step', (draft) => {
    const cut = someCut(draft);
    if (cut !== null) cut.step += 1;
    return cut !== null;
  }),
  spoil('blade a tick on', ['no such workpiece', 'not cut free', 'before the trims'], (draft) => {
    const cut = someCut(draft);
    if (cut !== null) cut.at += 1;
    return cut !== null;
  }),
  spoil('workpiece a tick wider', 'no such workpiece', (draft) => {
    const cut = someCut(draft);
    if (cut !== null) cut.region.width += 1;
    return cut !== null;
  }),
  spoil('blade past the workpiece', 'misses the workpiece', (draft) => {
    const cut = someCut(draft, ({ kind }) => kind === 'crosscut');
    if (cut !== null) cut.at = cut.region.x + cut.region.length;
    return cut !== null;
  }),
  spoil('blade before the workpiece', 'misses the workpiece', (draft) => {
    const cut = someCut(draft, ({ kind }) => kind === 'rip');
    if (cut !== null) cut.at = cut.region.y - cut.kerf;
    return cut !== null;
  }),
  spoil('rip called a crosscut', ['no such workpiece', 'not cut free', 'misses the workpiece'], (draft) => {
    const cut = someCut(draft, ({ kind, purpose }) => kind === 'rip' && purpose !== 'edge trim');
    if (cut !== null) cut.kind = 'crosscut';
    return cut !== null;
  }),
  spoil('purpose', 'wrong purpose', (draft) => {
    const cut = someCut(draft, ({ purpose }) => purpose !== 'deeper');
    if (cut !== null) cut.purpose = 'deeper';
    return cut !== null;
  }),
  spoil('no cuts at all', 'not trimmed', (draft, job) => {
    const board = draft.boards.find(({ cuts }) => cuts[0]?.purpose === 'end trim');
    if (board !== undefined) board.cuts = [];
    return board !== undefined && job.shop.endTrim > 0;
  }),
  spoil('the trims left out', 'before the trims', (draft) => {
    const board = draft.boards.find(({ cuts }) => cuts.some((cut) => !isTrim(cut)));
    const first = board?.cuts.find((cut) => !isTrim(cut));
    if (board === undefined || first === undefined || !isTrim(board.cuts[0])) return false;
    board.cuts = [{ ...first, step: 1, region: { x: 0, y: 0, length: board.length, width: board.width } }];
    return true;
  }),
  change('shop with fewer stages', 'nests too deep', ({ job, layout }) => {
    const isDeep = layout.boards.some(({ cuts }) => cuts.some(({ purpose }) => purpose === 'rerip'));
    return isDeep ? withShop(job, { stages: 3 }) : null;
  }),
  change('shop that rips nothing short', 'too short to rip', ({ job, layout }) => {
    const rips = layout.boards.flatMap(({ cuts }) => cuts.filter(({ kind }) => kind === 'rip'));
    const shortest = Math.min(...rips.map(({ region }) => region.length));
    return rips.length > 0 ? withShop(job, { shortestRip: ticks(shortest + 1) }) : null;
  }),
  change('shop with a longer end trim', 'outside the usable area', ({ job, layout }) => {
    const touches = layout.boards.some(({ board, pieces }) => {
      const { origin } = job.boards.find(({ name }) => name === board) ?? { origin: 'rack' };
      return origin === 'job' && pieces.some(({ x }) => x === job.shop.endTrim);
    });
    const endTrim = ticks(Math.max(job.shop.endTrim, job.shop.crosscutKerf) + 1);
    return touches ? withShop(job, { endTrim }) : null;
  }),
];

/** Faults of the offcuts. */
export const offcutFaults: readonly Planted[] = [
  spoil('offcut enlarged', 'not cut free', (draft) => {
    const offcut = draft.boards.flatMap((board) => board.offcuts)[0];
    if (offcut !== undefined) offcut.length += 1;
    return offcut !== undefined;
  }),
  spoil('offcut moved', 'not cut free', (draft) => {
    const offcut = draft.boards.flatMap((board) => board.offcuts)[0];
    if (offcut !== undefined) offcut.y += 1;
    return offcut !== undefined;
  }),
  spoil('offcut dropped', 'offcut not listed', (draft) => {
    const board = draft.boards.find(({ offcuts }) => offcuts.length > 0);
    return board?.offcuts.pop() !== undefined;
  }),
  spoil('offcut listed twice', ['offcut named twice'], (draft) => {
    const board = draft.boards.find(({ offcuts }) => offcuts.length > 0);
    const [offcut] = board?.offcuts ?? [];
    if (offcut !== undefined) board?.offcuts.push({ ...offcut });
    return offcut !== undefined;
  }),
  change('shop that keeps only longer offcuts', 'offcut too small', ({ job, layout }) => {
    const offcuts = layout.boards.flatMap((board) => board.offcuts);
    const longest = Math.max(...offcuts.map(({ length }) => length));
    return offcuts.length > 0 ? withShop(job, { leastOffcutLength: ticks(longest + 1) }) : null;
  }),
];
