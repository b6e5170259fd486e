import type { LaidBoard, LaidPiece, Layout } from '../../../src/flow/cuts/layout.ts';
import type { Part } from '../../../src/flow/parts/part.ts';
import type { Board } from '../../../src/flow/stock/board.ts';
import type { Defect } from '../../../src/flow/stock/defect.ts';
import type { Job } from '../../../src/flow/stock/job.ts';
import { boardFaults, tilted } from './replay-board.ts';

/** What spoils a back that need not be clear (DESIGN, section 6). */
const unsound = ['rot', 'split', 'check', 'shake', 'wane', 'hole', 'loose knot', 'pith', 'bark pocket'];

/** Money and shares may differ in their last digits. */
function isNear(a: number, b: number): boolean {
  return Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a), Math.abs(b));
}

/**
 * Everything wrong with a layout, in words: a replay written for the tests, which shares no code with the product's own
 * check. The bound is only held against the value.
 */
export function replayFaults(asked: Job, layout: Layout): string[] {
  const { job, wrong: wrongBreaks } = brokenApart(asked, layout);
  const boards = new Map(job.boards.map((board) => [board.name, board]));
  const parts = new Map(job.parts.map((part) => [part.name, part]));
  const wrong: string[] = [...wrongBreaks];
  const used = new Set<string>();
  for (const laid of layout.boards) {
    const board = boards.get(laid.board);
    const known = board !== undefined && laid.copy >= 1 && laid.copy <= board.quantity;
    if (!known || laid.pieces.some(({ part }) => !parts.has(part))) return ['no such board, copy or part'];
    const key = JSON.stringify([laid.board, laid.copy]);
    if (used.has(key)) wrong.push(`${laid.board} copy ${laid.copy} twice`);
    used.add(key);
    if (laid.length !== board.length || laid.width !== board.width || !isNear(laid.cost, board.cost))
      wrong.push(`${laid.board}: size or cost`);
    wrong.push(
      ...boardFaults(laid, board, parts, job.shop).map((why) => `${laid.board} ${laid.copy}: ${why}`),
    );
    for (const piece of laid.pieces)
      wrong.push(
        ...pieceFaults(piece, board, parts.get(piece.part)!, job).map((why) => `${piece.part}: ${why}`),
      );
  }
  return [
    ...wrong,
    ...copyFaults(job, layout),
    ...woodFaults(job, layout),
    ...runFaults(job, layout),
    ...moneyFaults(job, layout),
  ];
}

function pieceFaults(piece: LaidPiece, board: Board, part: Part, { shop }: Job): string[] {
  const wrong: string[] = [];
  const strips = piece.strip?.of ?? 1;
  const long = part.length + shop.lengthAllowance;
  const full = part.width + shop.widthAllowance;
  const wide = strips === 1 ? full : Math.ceil(full / strips) + 1016;
  const isAlong = piece.length === long && piece.width === wide;
  const isAcross = piece.length === wide && piece.width === long;
  // The strip of a run lies along the grain; so do the strips of a glue-up.
  const grain = strips > 1 ? 'along' : part.grain;
  if (!((isAlong && grain !== 'across') || (isAcross && grain !== 'along'))) wrong.push('size');
  if (strips > part.glueUp) wrong.push('too many strips');
  if (board.dressedThickness < part.thickness) wrong.push('too thin a board');
  if (part.pin !== null && part.pin.board !== board.name) wrong.push('not on its board');
  const face = part.pin?.face ?? null;
  if (face !== null && face !== piece.showFace) wrong.push('not on its face');
  const may = (['A', 'B'] as const).filter((face) =>
    board.defects.every((defect) => isFree(piece, defect, face, part, shop.knotMargin)),
  );
  if (piece.showFace === null ? may.length < 2 : !may.includes(piece.showFace)) wrong.push('a defect');
  return wrong;
}

function isFree(piece: LaidPiece, defect: Defect, show: 'A' | 'B', part: Part, knotMargin: number): boolean {
  const margin = defect.kind === 'sound knot' || defect.kind === 'loose knot' ? knotMargin : 0;
  const isOff =
    defect.x + defect.length + margin <= piece.x ||
    defect.x - margin >= piece.x + piece.length ||
    defect.y + defect.width + margin <= piece.y ||
    defect.y - margin >= piece.y + piece.width;
  if (isOff || part.quality === 'any') return true;
  const spoils = unsound.includes(defect.kind);
  if (part.quality === 'sound') return !spoils;
  const onShow = defect.face === 'through' || defect.face === show;
  const onBack = defect.face === 'through' || defect.face !== show;
  const size = Math.max(defect.length, defect.width);
  const isWelcome = part.accept.some(
    ({ kind, atMost }) => kind === defect.kind && (atMost === null || size <= atMost),
  );
  return !(onShow && !isWelcome) && !(onBack && (spoils || part.quality === 'clear-2'));
}

function pieces(layout: Layout): { readonly piece: LaidPiece; readonly on: LaidBoard }[] {
  return layout.boards.flatMap((on) => on.pieces.map((piece) => ({ piece, on })));
}

function copyFaults(job: Job, layout: Layout): string[] {
  const woodOf = new Map(job.boards.map(({ name, species, tone }) => [name, `${species} | ${tone}`]));
  return job.parts.flatMap((part) => {
    const wrong: string[] = [];
    const own = pieces(layout).filter(({ piece }) => piece.part === part.name);
    const copies = new Set(own.map(({ piece }) => piece.copy));
    for (const copy of copies) {
      const made = own.filter(({ piece }) => piece.copy === copy);
      const of = made[0]!.piece.strip?.of ?? 1;
      const indices = new Set(made.map(({ piece }) => piece.strip?.index ?? 0));
      if (copy < 1 || copy > part.quantity) wrong.push(`${part.name}: no copy ${copy}`);
      if (made.length !== of || indices.size !== of) wrong.push(`${part.name} ${copy}: its strips`);
      if (of > 1 && new Set(made.map(({ on }) => woodOf.get(on.board))).size > 1)
        wrong.push(`${part.name} ${copy}: tones`);
    }
    const short = layout.short
      .filter(({ part: name }) => name === part.name)
      .reduce((sum, one) => sum + one.copies, 0);
    const all = copies.size + short;
    if (job.shop.goal === 'most value' ? all > part.quantity : all !== part.quantity)
      wrong.push(`${part.name}: ${all} copies`);
    return wrong;
  });
}

/** The woods that a part may ask for by one word, as far as the random jobs use such words. */
const woodsCalled: Readonly<Record<string, readonly string[]>> = { oak: ['red oak', 'white oak'] };

/** Species and tones: each part of its own wood; what shows of one wood and one tone, as far as the shop does not mix them. */
function woodFaults({ shop, parts, boards }: Job, layout: Layout): string[] {
  const wrong: string[] = [];
  const shown: { asked: string; species: string; tone: string }[] = [];
  for (const { piece, on } of pieces(layout)) {
    const part = parts.find(({ name }) => name === piece.part)!;
    const { species, tone } = boards.find(({ name }) => name === on.board)!;
    const asked = part.species;
    const may = woodsCalled[asked] ?? [asked];
    if (asked !== '' && species !== '' && !may.includes(species)) wrong.push(`${part.name}: of ${species}`);
    if (part.show > 0) shown.push({ asked, species, tone });
  }
  const several = (values: readonly string[]): boolean => new Set(values).size > 1;
  for (const word of new Set(shown.map(({ asked }) => asked))) {
    const own = shown.filter(({ asked }) => asked === word).map(({ species }) => species);
    const isOpen = word === '' && shop.showSpecies === 'any';
    if (several(own) && !isOpen) wrong.push('species of what shows');
  }
  if (shop.showTone === 'any') return wrong;
  const kept = shown.map((one) =>
    one.asked === '' && shop.showSpecies === 'any' ? 'any' : `of ${one.species}`,
  );
  for (const wood of new Set(kept)) {
    if (several(shown.filter((_, index) => kept[index] === wood).map(({ tone }) => tone)))
      wrong.push('tones of what shows');
  }
  return wrong;
}

/** The job with each stretch of a broken run as a run of its own, and what is wrong with the breaks. */
function brokenApart(job: Job, layout: Layout): { readonly job: Job; readonly wrong: readonly string[] } {
  const wrong: string[] = [];
  let parts = job.parts;
  for (const { run, stretches } of layout.broken ?? []) {
    const own = parts.filter((part) => part.run === run && part.quantity > 0).map(({ name }) => name);
    if (run !== 'facing' && job.shop.ownRuns !== 'may break') wrong.push(`${run} may not be broken`);
    if (stretches.length < 2 || own.join('|') !== stretches.flat().join('|'))
      wrong.push(`${run}: its stretches`);
    parts = parts.map((part) => {
      if (part.run !== run) return part;
      const at = stretches.findIndex((names) => names.includes(part.name));
      return { ...part, run: at < 0 || stretches[at]!.length < 2 ? null : `${run} / ${at}` };
    });
  }
  return { job: { ...job, parts }, wrong };
}

/** Runs laid, each against the parts that its copy holds, and pieces outside a run against the copies that hold one part alone. */
function runFaults(job: Job, layout: Layout): string[] {
  const wrong: string[] = [];
  const wanted: string[] = [];
  for (const run of new Set(job.parts.map((part) => part.run))) {
    for (let copy = 1; run !== null; copy += 1) {
      const held = job.parts.filter((part) => part.run === run && part.quantity >= copy);
      if (held.length === 0) break;
      wanted.push(held.map(({ name }) => JSON.stringify(name)).join());
    }
  }
  const isOfRun = new Set(job.parts.filter(({ run }) => run !== null).map(({ name }) => name));
  const laid = new Map<string, { readonly piece: LaidPiece; readonly on: LaidBoard }[]>();
  pieces(layout).forEach((one, index) => {
    if (!isOfRun.has(one.piece.part)) return;
    const key = one.piece.run === undefined ? `alone ${index}` : `run ${one.piece.run.run}`;
    laid.set(key, [...(laid.get(key) ?? []), one]);
  });
  for (const [key, list] of laid) {
    const row = [...list].sort((a, b) => (a.piece.run?.order ?? 0) - (b.piece.run?.order ?? 0));
    const at = wanted.indexOf(row.map(({ piece }) => JSON.stringify(piece.part)).join());
    if (at < 0) wrong.push(`${key}: not what a copy of the run holds`);
    else wanted.splice(at, 1);
    if (row.length > 1) wrong.push(...rowFaults(job, row).map((why) => `${key}: ${why}`));
  }
  return wrong;
}

function rowFaults(
  job: Job,
  row: readonly { readonly piece: LaidPiece; readonly on: LaidBoard }[],
): string[] {
  const wrong: string[] = [];
  const list = row.map(({ piece }) => piece);
  const [first, second] = list as [LaidPiece, LaidPiece];
  if (new Set(row.map(({ on }) => on)).size > 1) wrong.push('on several boards');
  if (new Set(list.map(({ showFace }) => showFace)).size > 1) wrong.push('faces');
  const isForward = second.x > first.x;
  const partOf = (piece: LaidPiece): Part => job.parts.find(({ name }) => name === piece.part)!;
  list.slice(1).forEach((after, index) => {
    const before = list[index]!;
    const gap = isForward ? after.x - before.x - before.length : before.x - after.x - after.length;
    if (gap !== tilted(job.shop.crosscutKerf, partOf(before), partOf(after))) wrong.push(`a gap of ${gap}`);
    const low = Math.max(before.y, after.y);
    const high = Math.min(before.y + before.width, after.y + after.width);
    if (high - low !== Math.min(before.width, after.width)) wrong.push('not in one strip');
  });
  return wrong;
}

function moneyFaults(job: Job, layout: Layout): string[] {
  const wrong: string[] = [];
  const { value, bound, gap, proven } = layout.proof;
  const isMost = job.shop.goal === 'most value';
  const worth = job.parts.reduce((sum, part) => {
    const copies = new Set(
      pieces(layout).flatMap(({ piece }) => (piece.part === part.name ? [piece.copy] : [])),
    ).size;
    return sum + copies * (part.value ?? (part.length / 8128) * (part.width / 8128));
  }, 0);
  const cost = layout.boards.reduce((sum, laid) => {
    const kept = laid.offcuts.reduce((area, offcut) => area + offcut.length * offcut.width, 0);
    return sum + laid.cost * (1 - (job.shop.offcutCredit * kept) / (laid.length * laid.width));
  }, 0);
  if (!isNear(value, isMost ? worth : cost)) wrong.push(`value ${value}, not ${isMost ? worth : cost}`);
  const isShort = !isMost && layout.short.length > 0;
  if (bound === null || gap === null) return isShort ? wrong : [...wrong, 'no bound'];
  if (isShort) wrong.push('a bound, though parts are short');
  const over = (isMost ? bound - value : value - bound) / Math.max(1, Math.abs(value));
  if (!(over >= -1e-9)) wrong.push(`bound ${bound} beyond ${value}`);
  if (!(gap >= 0) || (proven && gap > 1e-9)) wrong.push(`gap ${gap}`);
  if (
    !isNear(
      layout.totals.cost,
      layout.boards.reduce((sum, laid) => sum + laid.cost, 0),
    )
  )
    wrong.push('total cost');
  return wrong;
}
