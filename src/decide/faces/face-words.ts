import { unreachable } from '../../base/result/unreachable.ts';
import type { RunGroups } from '../../flow/plan/run-break.ts';
import { stretchWords } from '../../flow/sheet/words/grain-words.ts';
import { nameText } from '../../flow/sheet/words/named.ts';
import { counted, decimal, money } from '../../flow/sheet/words/number-text.ts';
import { sizeText, withUnit } from '../../flow/sheet/words/size-text.ts';
import type { Shop } from '../../flow/shop/shop.ts';
import type { FaceChoice, FaceTable, PossibleFace } from './face-table.ts';
import type { Hindrance } from './hindrance.ts';
import type { UnrolledPiece } from './unrolled.ts';

/** What is to be seen: `front facing`, or `front facing and the run with it: …`. */
export function focusWords({ job, focus }: FaceTable): string {
  const lead = nameText(job.parts[focus.lead]!.name);
  if (focus.members.length === 1) return lead;
  return `${lead}, in the run ${focus.members.map((index) => nameText(job.parts[index]!.name)).join(' + ')}`;
}

/** `C1 A` */
export function faceName({ board, face }: FaceChoice): string {
  return `${nameText(board, 40)} ${face}`;
}

/** Why a face cannot carry it, with the figures. */
export function hindranceWords(why: Hindrance, shop: Shop): string {
  switch (why.kind) {
    case 'too thin':
      return `too thin: dresses to ${withUnit(why.has, shop)}, ${withUnit(why.needs, shop)} needed`;
    case 'too short':
    case 'too narrow':
      return `${why.kind}: ${withUnit(why.has, shop)} once trimmed, ${withUnit(why.needs, shop)} needed`;
    case 'other species':
      return `${nameText(why.has, 40)}, where the part asks for ${nameText(why.asked, 40)}`;
    case 'no clear stretch':
      return `no clear stretch of ${sizeText(why, shop)} on this face with a sound back`;
    case 'pinned elsewhere':
      return `the parts file puts it on ${nameText(why.board, 40)}${why.face === null ? '' : ` ${why.face}`}`;
    case 'rest is short': {
      const parts = why.parts.map((part) => nameText(part, 40)).join(', ');
      return why.proven
        ? `the rest cannot all be laid out: ${parts} would be short`
        : `no layout of all the rest was found: ${parts} short`;
    }
    case 'not laid out':
      return why.proven ? 'cannot be laid out there in full' : 'no layout with all of it there was found';
    default:
      return unreachable(why);
  }
}

/** The money beyond the cheapest plan, or the worth that is lost. */
export function extraWords({ extra }: PossibleFace, { job }: FaceTable): string {
  const cents = Math.round(100 * extra) / 100;
  if (job.shop.goal === 'most value') {
    if (cents === 0) return 'no worth lost';
    return cents > 0 ? `${decimal(cents, 2)} of worth lost` : `${decimal(-cents, 2)} of worth won`;
  }
  if (cents === 0) return 'no more';
  return cents > 0 ? `${money(cents)} more` : `${money(-cents)} less`;
}

/** The goal's value with its unit. */
export function valueWords(value: number, { job }: FaceTable): string {
  return job.shop.goal === 'most value' ? `worth ${decimal(value, 2)}` : money(value);
}

/** `+2.31`, `-0.40`, `0`. */
export function feetWords({ moreFeet }: PossibleFace): string {
  const rounded = Math.round(100 * moreFeet) / 100;
  if (rounded === 0) return '0';
  return `${rounded > 0 ? '+' : ''}${decimal(rounded, 2)}`;
}

/** Whether the grain wraps whole, or where it stops. */
export function wrapWords({ groups }: PossibleFace, { focus }: FaceTable): string {
  if (focus.members.length === 1) return '';
  return wrapText(groups);
}

/** `whole`, or `broken: left cap | front facing + …`. */
export function wrapText(groups: RunGroups): string {
  return groups.length === 1 ? 'whole' : `broken: ${stretchWords(groups)}`;
}

/** Where the lead's stretch lies on its board. */
export function whereWords(choice: PossibleFace, table: FaceTable): string {
  const { shop } = table.job;
  const own = ownPieces(choice, table);
  const from = Math.min(...own.map(({ on }) => on.x));
  const to = Math.max(...own.map(({ on }) => on.x + on.length));
  const low = Math.min(...own.map(({ on }) => on.y));
  const high = Math.max(...own.map(({ on }) => on.y + on.width));
  return `${withUnit(from, shop)} to ${withUnit(to, shop)} along, ${withUnit(low, shop)} to ${withUnit(high, shop)} across`;
}

function ownPieces({ groups, unrolled }: PossibleFace, { job, focus }: FaceTable): readonly UnrolledPiece[] {
  const lead = job.parts[focus.lead]!.name;
  const names = groups.find((group) => group.includes(lead)) ?? [];
  return unrolled.pieces.filter(({ part }) => names.includes(part));
}

/** What shows in the face: `nothing but clear wood`, or its defects with sizes. */
export function seenWords({ unrolled }: PossibleFace, shop: Shop): string {
  const seen = new Map(unrolled.pieces.flatMap(({ marks }) => marks.map((mark) => [mark.defect, mark])));
  if (seen.size === 0) return 'clear';
  return [...seen.values()]
    .map(
      ({ defect, isWelcome }) => `${defect.kind} ${sizeText(defect, shop)}${isWelcome ? ' (welcome)' : ''}`,
    )
    .join(', ');
}

/** What glue lines show, if any do. */
export function glueWords({ unrolled }: PossibleFace): string | null {
  const lines = unrolled.pieces.filter(({ glueBelow }) => glueBelow);
  if (lines.length === 0) return null;
  const parts = [...new Set(lines.map(({ part }) => nameText(part, 40)))];
  return `${counted(lines.length, 'glue line')} on the face: ${parts.join(', ')} edge-joined`;
}

/** How sure the cost of a choice is. */
export function sureWords({ proven, value, bound }: PossibleFace, { job }: FaceTable): string {
  if (bound === null) return 'no bound';
  if (proven) return 'proven';
  if (job.shop.goal === 'most value') return `at most ${decimal(Math.ceil(bound * 100 - 1e-6) / 100, 2)}`;
  const least = Math.max(0, Math.floor(bound * 100 + 1e-6) / 100);
  return value > 0 && least > 0 ? `not below ${money(least)}` : 'no bound';
}
