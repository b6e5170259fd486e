import type { Box } from './box.ts';
import { type Flag, flagHeight, flagWidth } from './flag.ts';
import { spread } from './spread.ts';

/** A flag that stands beside the board, in one of the four lanes, joined by a leader to the point it marks. */
export interface LaneRequest {
  readonly kind: Flag['kind'];
  readonly text: string;
  readonly title: string;
  /** The point on the paper that it marks. */
  readonly x: number;
  readonly y: number;
  /** Path of a line that strings several things together before the leader starts. */
  readonly string?: string;
}

export type Lane = 'above' | 'below' | 'left' | 'right';

/** A leader's length straight out; longer where flags were pushed far aside, so that leaders stay apart. */
const shortestReach = 14;
const longestReach = 70;
const levelStep = flagHeight + 8;
const gap = 5;

/**
 * Sets the flags of one lane side by side in the order of what they mark, pushed apart as little as needed.
 * A lane too full for one level uses several, by turns.
 * @param board the board in this row   @param room how far the flags of an upper or lower lane may spread
 * @returns each request with its flag, and the lane's depth measured from the board (0 when empty)
 */
export function layLane(
  lane: Lane,
  requests: readonly LaneRequest[],
  board: Box,
  room: { readonly from: number; readonly to: number },
): { flags: [LaneRequest, Flag][]; depth: number } {
  const upright = lane === 'left' || lane === 'right';
  const sorted = [...requests].sort((a, b) => (upright ? a.y - b.y : a.x - b.x));
  const sizes = sorted.map((request) => (upright ? flagHeight : flagWidth(request.text)) + gap);
  const [from, to] = upright ? [board.y - 20, board.y + board.h + 20] : [room.from, room.to];
  const needed = sizes.reduce((sum, size) => sum + size, 0);
  const levels = upright ? 1 : Math.max(1, Math.ceil(needed / (to - from)));
  const places: { request: LaneRequest; centre: number; level: number }[] = [];
  for (let level = 0; level < levels; level += 1) {
    const mine = sorted.filter((_, index) => index % levels === level);
    const mySizes = sizes.filter((_, index) => index % levels === level);
    const wished = mine.map((request) => (upright ? request.y : request.x));
    const centres = spread(wished, mySizes, from, to);
    mine.forEach((request, index) => places.push({ request, centre: centres[index] ?? 0, level }));
  }
  const moved = Math.max(0, ...places.map(({ request, centre }) => Math.abs(centre - request.x)));
  const reach = upright
    ? shortestReach
    : Math.max(shortestReach, Math.min(longestReach, Math.round(moved / 2)));
  const flags = places.map(({ request, centre, level }): [LaneRequest, Flag] => [
    request,
    flagIn(lane, request, centre, reach + level * levelStep, board),
  ]);
  const widest = Math.max(0, ...sorted.map((request) => flagWidth(request.text)));
  const deep = reach + (upright ? widest : (levels - 1) * levelStep + flagHeight);
  return { flags, depth: sorted.length === 0 ? 0 : deep };
}

function flagIn(lane: Lane, request: LaneRequest, centre: number, reach: number, board: Box): Flag {
  const { kind, text, title, x, y, string = '' } = request;
  const w = flagWidth(text);
  const along = (size: number): number => centre - Math.round(size / 2);
  const bottom = board.y + board.h;
  const right = board.x + board.w;
  const make = (left: number, top: number, leader: string): Flag => ({
    kind,
    text,
    title,
    box: { x: left, y: top, w, h: flagHeight },
    leader: string + leader,
  });
  switch (lane) {
    case 'above':
      return make(
        along(w),
        board.y - reach - flagHeight,
        `M${x} ${y}V${board.y - 3}L${centre} ${board.y - reach}`,
      );
    case 'below':
      return make(along(w), bottom + reach, `M${x} ${y}V${bottom + 3}L${centre} ${bottom + reach}`);
    case 'left':
      return make(
        board.x - reach - w,
        along(flagHeight),
        `M${x} ${y}H${board.x - 3}L${board.x - reach} ${centre}`,
      );
    case 'right':
      return make(right + reach, along(flagHeight), `M${x} ${y}H${right + 3}L${right + reach} ${centre}`);
  }
}
