import { type Box, freeBoxes } from './box.ts';
import { type CutInRow, laneOf, laneRequest, placeOnLine } from './cut-places.ts';
import { type Flag, flagHeight, flagWidth } from './flag.ts';
import { type PlacedLabel, placeLabel } from './label.ts';
import { type Lane, type LaneRequest, layLane } from './lanes.ts';
import { outsideGroups, throughLeader } from './outside.ts';
import type { ThingInRow } from './row-things.ts';

/** All that has to find a place in one row. */
export interface RowNeeds {
  readonly board: Box;
  readonly cuts: readonly CutInRow[];
  readonly things: readonly ThingInRow[];
  /** Taken already: signs drawn on the board. */
  readonly taken: readonly Box[];
  /** Hatches: labels keep off them where they can. */
  readonly hatches: readonly Box[];
  /** How far the flags above and below may spread. */
  readonly room: { readonly from: number; readonly to: number };
  /** Stands for a call-out's letter until the diagram knows which: as wide as the widest. */
  readonly widestLetter: string;
}

/** A letter in place of a label, for one thing or for several of one kind end to end. */
export interface CallOut {
  readonly things: readonly ThingInRow[];
  readonly flag: Flag;
}

export interface RowPlaces {
  readonly flags: readonly Flag[];
  readonly labels: readonly { readonly thing: ThingInRow; readonly label: PlacedLabel }[];
  /** In order along the row. */
  readonly callOuts: readonly CallOut[];
  readonly depth: Readonly<Record<Lane, number>>;
}

/**
 * Finds a place for every number and label of a row so that none touches another. A label that fits nowhere in
 * its piece becomes a letter in it, and where even that does not fit, a letter outside the board with a leader.
 * Such a leader runs over other pieces, whose labels must then make way: so the row is laid anew until no
 * further letter has to go outside (at most as often as there are pieces).
 */
export function placeRow(needs: RowNeeds): RowPlaces {
  const outside = new Set<ThingInRow>();
  for (;;) {
    const { places, homeless } = attempt(needs, outside);
    if (homeless.length === 0) return places;
    for (const thing of homeless) outside.add(thing);
  }
}

function attempt(
  needs: RowNeeds,
  outside: ReadonlySet<ThingInRow>,
): { places: RowPlaces; homeless: ThingInRow[] } {
  const requests: Record<Lane, LaneRequest[]> = { above: [], below: [], left: [], right: [] };
  const taken = [...needs.taken];
  const outsideRequests = new Map<LaneRequest, readonly ThingInRow[]>();
  for (const { things } of outsideGroups(outside)) {
    const title = things.map(({ thing }) => thing.line).join('; ');
    const boxes = things.map(({ box }) => box);
    const words = { kind: 'call-out', text: needs.widestLetter, title } as const;
    const { lane, request, leader } = throughLeader(boxes, needs.board, words);
    requests[lane].push(request);
    outsideRequests.set(request, things);
    taken.push(leader);
  }
  const onBoard = numberCuts(needs, requests, taken);
  const { flags: outsideFlags, depth } = layLanes(requests, needs);
  const callOuts: CallOut[] = [];
  for (const [request, things] of outsideRequests) {
    const flag = outsideFlags.get(request);
    if (flag) callOuts.push({ things, flag });
  }
  const inside = labelThings(needs, outside, [...taken, ...onBoard.map(({ box }) => box)]);
  const all = [...callOuts, ...inside.callOuts].sort(
    (a, b) => a.flag.box.x - b.flag.box.x || a.flag.box.y - b.flag.box.y,
  );
  const lettered = new Set(all.map(({ flag }) => flag));
  const numbers = [...onBoard, ...outsideFlags.values()].filter((flag) => !lettered.has(flag));
  return {
    places: { flags: numbers, labels: inside.labels, callOuts: all, depth },
    homeless: inside.homeless,
  };
}

/** Sends each cut's number to a lane, or finds it a place on its own line (added to `taken`). */
function numberCuts(needs: RowNeeds, requests: Record<Lane, LaneRequest[]>, taken: Box[]): Flag[] {
  const sideRoom = Math.max(1, Math.floor((needs.board.h + 40) / (flagHeight + 5)));
  const kerfs = needs.cuts.map(({ kerf }) => kerf);
  const placed: Flag[] = [];
  for (const cut of needs.cuts) {
    const lane = laneOf(cut.kerf, cut.cut.kind, needs.board);
    const isSide = lane === 'left' || lane === 'right';
    if (lane !== null && !(isSide && requests[lane].length >= sideRoom)) {
      requests[lane].push(laneRequest(cut, lane));
      continue;
    }
    const others = kerfs.filter((kerf) => kerf !== cut.kerf);
    const flag = placeOnLine(cut, needs.board, taken, [...needs.hatches, ...others]);
    if (flag) {
      placed.push(flag);
      taken.push(flag.box);
      continue;
    }
    const through = throughLeader([cut.kerf], needs.board, {
      kind: 'cut',
      text: String(cut.cut.step),
      title: cut.title,
    });
    requests[through.lane].push(through.request);
    taken.push(through.leader);
  }
  return placed;
}

function layLanes(
  requests: Record<Lane, LaneRequest[]>,
  needs: RowNeeds,
): { flags: Map<LaneRequest, Flag>; depth: Record<Lane, number> } {
  const flags = new Map<LaneRequest, Flag>();
  const depth: Record<Lane, number> = { above: 0, below: 0, left: 0, right: 0 };
  for (const lane of ['above', 'below', 'left', 'right'] as const) {
    const laid = layLane(lane, requests[lane], needs.board, needs.room);
    depth[lane] = laid.depth;
    for (const [request, flag] of laid.flags) flags.set(request, flag);
  }
  return { flags, depth };
}

function labelThings(
  needs: RowNeeds,
  outside: ReadonlySet<ThingInRow>,
  taken: readonly Box[],
): Pick<RowPlaces, 'labels' | 'callOuts'> & { homeless: ThingInRow[] } {
  const labels: { thing: ThingInRow; label: PlacedLabel }[] = [];
  const callOuts: CallOut[] = [];
  const homeless: ThingInRow[] = [];
  for (const thing of needs.things) {
    if (outside.has(thing)) continue;
    const wordings = thing.isMain ? thing.thing.wordings : thing.thing.continued;
    const label = placeLabel(wordings, thing.box, taken, needs.hatches);
    if (label) labels.push({ thing, label });
    else if (thing.isMain) {
      const flag = letterInside(thing, needs.widestLetter, taken);
      if (flag) callOuts.push({ things: [thing], flag });
      else homeless.push(thing);
    }
  }
  return { labels, callOuts, homeless };
}

function letterInside(thing: ThingInRow, text: string, taken: readonly Box[]): Flag | null {
  const w = flagWidth(text);
  const rooms = freeBoxes(thing.box, taken, { w: w + 4, h: flagHeight + 4 });
  const room = rooms[0];
  if (!room) return null;
  const box = {
    x: room.x + Math.round((room.w - w) / 2),
    y: room.y + Math.round((room.h - flagHeight) / 2),
    w,
    h: flagHeight,
  };
  return { kind: 'call-out', text, title: thing.thing.line, box, leader: '' };
}
