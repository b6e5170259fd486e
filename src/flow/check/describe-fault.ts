import type { Rectangle } from '../../base/geometry/rectangle.ts';
import { unreachable } from '../../base/result/unreachable.ts';
import { type LengthStyle, formatLengthWithUnit } from '../../base/units/format-length.ts';
import { ticks, ticksPerInch } from '../../base/units/tick.ts';
import type { BoardCopy, CheckProblem, CutFault, PieceFault, PieceOn, SumFault } from './fault.ts';

type Say = (length: number) => string;

/**
 * One fault in plain words, one line. Lengths that the style would round are given in ticks too, since a fault may be
 * a single tick.
 */
export function describeFault(
  problem: CheckProblem,
  style: LengthStyle = { units: 'in', printFraction: 64 },
): string {
  const say: Say = (length) => {
    if (!Number.isSafeInteger(length)) return `${length} ticks`;
    const text = formatLengthWithUnit(ticks(length), style);
    return text.startsWith('~') ? `${text} (${length} ticks)` : text;
  };
  switch (problem.kind) {
    case 'wrong area':
    case 'wrong cost':
    case 'wrong total':
    case 'wrong proof':
    case 'bound on the wrong side':
    case 'not proven':
      return describeSum(problem);
    case 'wrong step':
    case 'no such workpiece':
    case 'misses the workpiece':
    case 'wrong kerf':
    case 'wrong header':
    case 'too short to rip':
    case 'nests too deep':
    case 'wrong purpose':
    case 'before the trims':
    case 'slanted through a neighbour':
    case 'not trimmed':
    case 'not cut free':
    case 'offcut not listed':
    case 'offcut too small':
    case 'offcut named twice':
      return describeCut(problem, say);
    default:
      return describePiece(problem, say);
  }
}

function boardText({ board, copy }: BoardCopy): string {
  return `board ${board} copy ${copy}`;
}

function pieceText({ part, copy, on }: PieceOn): string {
  return `${boardText(on)}: ${part} copy ${copy}`;
}

function sizeText(size: { length: number; width: number }, say: Say): string {
  return `${say(size.length)} × ${say(size.width)}`;
}

function regionText(region: Rectangle, say: Say): string {
  return `${sizeText(region, say)} at ${say(region.x)} along, ${say(region.y)} across`;
}

function listed(words: readonly string[]): string {
  return words.map((word) => word || '(none)').join(', ');
}

function describePiece(problem: PieceFault, say: Say): string {
  switch (problem.kind) {
    case 'unknown board':
      return `${boardText(problem.on)}: the job has no such board`;
    case 'no such board copy':
      return `${boardText(problem.on)}: the job has ${problem.quantity}`;
    case 'board used twice':
      return `${boardText(problem.on)} is used twice`;
    case 'wrong outline':
      return `${boardText(problem.on)}: ${sizeText(problem.said, say)}, but the board is ${sizeText(problem.right, say)}`;
    case 'unknown part':
      return `${pieceText(problem.piece)}: the job has no such part`;
    case 'wrong size': {
      const right = problem.right.map((size) => sizeText(size, say)).join(' or ');
      return `${pieceText(problem.piece)} is ${sizeText(problem.said, say)}, should be ${right}`;
    }
    case 'outside the usable area':
      return `${boardText(problem.on)}: ${problem.what} reaches past what the trims leave`;
    case 'overlap':
      return `${boardText(problem.on)}: ${problem.what[0]} and ${problem.what[1]} overlap`;
    case 'copy twice':
      return `${pieceText(problem.piece)} is laid out twice`;
    case 'no such part copy':
      return `${pieceText(problem.piece)}: the job wants ${problem.quantity}`;
    case 'wrong count':
      return `${problem.part}: ${problem.laid} laid out and ${problem.short} short, but ${problem.wanted} wanted`;
    case 'bad short':
      return `list of short parts: ${problem.part}: ${problem.why}`;
    case 'bad glue-up':
      return `${problem.part} copy ${problem.copy}: ${problem.why}`;
    case 'board too thin':
      return `${pieceText(problem.piece)} needs ${say(problem.needs)}, the board dresses to ${say(problem.has)}`;
    case 'not on its board':
      return `${pieceText(problem.piece)} belongs on board ${problem.pinned}`;
    case 'not on its face':
      return `${pieceText(problem.piece)} must show face ${problem.pinned}`;
    case 'defect': {
      const { defect } = problem;
      return `${pieceText(problem.piece)}: ${defect.kind} on face ${problem.face} (${regionText(defect, say)})`;
    }
    case 'face left open':
      return `${pieceText(problem.piece)}: only one face is good enough to show, and it does not say which`;
    case 'wrong species':
      return `${pieceText(problem.piece)} asks for ${problem.asked}, the board is ${problem.has}`;
    case 'mixed species':
      return `what shows${problem.asked === '' ? '' : ` and asks for ${problem.asked}`} comes from boards of different species: ${listed(problem.species)}`;
    case 'mixed tones':
      return `what shows${problem.species === '' ? '' : ` of ${problem.species}`} comes from boards of different tones: ${listed(problem.tones)}`;
    case 'bad run':
      return problem.run < 0 ? `run: ${problem.why}` : `run ${problem.run}: ${problem.why}`;
    default:
      return unreachable(problem);
  }
}

function describeCut(problem: CutFault, say: Say): string {
  if (problem.kind === 'wrong header') return `${problem.what}: ${problem.said}, should be ${problem.right}`;
  const board = boardText(problem.on);
  switch (problem.kind) {
    case 'wrong step':
      return `${board}: step ${problem.said} stands where step ${problem.right} should`;
    case 'no such workpiece':
      return `${board}, step ${problem.step}: there is no workpiece ${regionText(problem.region, say)}`;
    case 'misses the workpiece':
      return `${board}, step ${problem.step}: the blade misses the workpiece`;
    case 'wrong kerf':
      return `${board}, step ${problem.step}: kerf ${say(problem.said)}, should be ${say(problem.right)}`;
    case 'too short to rip':
      return `${board}, step ${problem.step}: rips ${say(problem.length)}, shorter than ${say(problem.least)}`;
    case 'nests too deep':
      return `${board}, step ${problem.step}: a cut of stage ${problem.stage}, the shop allows ${problem.stages}`;
    case 'wrong purpose':
      return `${board}, step ${problem.step}: its purpose is ${problem.right}`;
    case 'before the trims':
      return `${board}, step ${problem.step}: a cut through wood that the trims should have taken off`;
    case 'slanted through a neighbour':
      return `${board}, step ${problem.step}: the bevel cut would slant through a piece beside the run`;
    case 'not trimmed':
      return `${board}: what is left was never trimmed`;
    case 'not cut free':
      return `${board}: the cuts do not leave ${problem.what} as listed`;
    case 'offcut not listed':
      return `${board}: an offcut ${regionText(problem.region, say)} is not listed`;
    case 'offcut too small':
      return `${board}: offcut ${problem.id} is too small to keep`;
    case 'offcut named twice':
      return `${board}: a second offcut is called ${problem.id}`;
    default:
      return unreachable(problem);
  }
}

function describeSum(problem: SumFault): string {
  switch (problem.kind) {
    case 'wrong area': {
      const inches = (area: number): string => `${(area / ticksPerInch ** 2).toFixed(3)} sq in`;
      const { said, right } = problem;
      return `${boardText(problem.on)}: area of ${problem.what} ${inches(said)}, should be ${inches(right)} (off by ${said - right} square ticks)`;
    }
    case 'wrong cost':
      return `${boardText(problem.on)}: cost ${problem.said}, should be ${problem.right}`;
    case 'wrong total':
      return `totals: ${problem.what} ${problem.said}, should be ${problem.right}`;
    case 'wrong proof':
      return `proof: ${problem.what} ${problem.said ?? 'left out'}, should be ${problem.right ?? 'left out'}`;
    case 'bound on the wrong side':
      return `proof: the bound ${problem.bound} is on the wrong side of the value ${problem.value}`;
    case 'not proven':
      return `proof: says proven with a gap of ${problem.gap}`;
    default:
      return unreachable(problem);
  }
}
