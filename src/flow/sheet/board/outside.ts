import type { Box } from './box.ts';
import type { Lane, LaneRequest } from './lanes.ts';
import type { ThingInRow } from './row-things.ts';

/** Things of one kind side by side, marked together by one letter outside the board. */
export interface OutsideGroup {
  readonly things: readonly ThingInRow[];
}

/** Neighbours along a strip stand at most this far apart: a kerf. */
const widestGap = 40;

/** Things that must be marked from outside, those of one kind that lie end to end taken together. */
export function outsideGroups(things: Iterable<ThingInRow>): OutsideGroup[] {
  const sorted = [...things].sort((a, b) => a.box.y - b.box.y || a.box.x - b.box.x);
  const groups: ThingInRow[][] = [];
  for (const thing of sorted) {
    const group = groups.at(-1);
    const last = group?.at(-1);
    if (group && last && followsOn(last, thing)) group.push(thing);
    else groups.push([thing]);
  }
  return groups.map((members) => ({ things: members }));
}

function followsOn(a: ThingInRow, b: ThingInRow): boolean {
  const isBeside = a.box.y === b.box.y && a.box.h === b.box.h && b.box.x - a.box.x - a.box.w <= widestGap;
  return isBeside && a.thing.kindLine === b.thing.kindLine;
}

/** What a leader marks and where it goes: a lane's request, and the room the leader takes on the board. */
export interface ThroughLeader {
  readonly lane: Lane;
  readonly request: LaneRequest;
  readonly leader: Box;
}

/**
 * A leader from the middle of the group's boxes straight to the nearer long edge of the board. Several boxes are
 * strung together first, a line through all their middles.
 */
export function throughLeader(
  boxes: readonly Box[],
  board: Box,
  words: Pick<LaneRequest, 'kind' | 'text' | 'title'>,
): ThroughLeader {
  const centres = boxes.map((box) => box.x + Math.round(box.w / 2));
  const first = boxes[0] ?? board;
  const x = centres[Math.floor((centres.length - 1) / 2)] ?? board.x;
  const y = first.y + Math.round(first.h / 2);
  const isUpper = y - board.y <= board.y + board.h - y;
  const [top, bottom] = isUpper ? [board.y, y] : [y, board.y + board.h];
  const string = centres.length > 1 ? `M${centres[0] ?? x} ${y}H${centres.at(-1) ?? x}` : '';
  return {
    lane: isUpper ? 'above' : 'below',
    request: { ...words, x, y, string },
    leader: { x: x - 4, y: top, w: 8, h: Math.max(1, bottom - top) },
  };
}
