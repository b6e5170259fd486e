import type { Job } from '../stock/job.ts';
import { blocks, extent } from '../stock/clear.ts';
import type { Face } from '../stock/defect.ts';
import { usable } from '../stock/usable.ts';
import { overlaps, type Rectangle } from '../../base/geometry/rectangle.ts';
import { facesFor } from './build-instance.ts';
import type { BoardPattern, Choice, PlacedPiece, Proof } from './choice.ts';
import type { Column } from './column.ts';
import { type JointJob, ofOwnParts } from './glue-up/joint-job.ts';
import type { BlankKind, Instance } from './instance.ts';
import { valueOf } from './kinds.ts';
import type { Plan } from './plan.ts';
import { isOutOfReach } from './standing.ts';

/** Faces of the board that the part may show where it lies. */
function openFaces(job: Job, part: number, board: number, where: Rectangle): Face[] {
  const wanted = job.parts[part]!;
  const on = job.boards[board]!;
  return facesFor(wanted, on).filter((face) =>
    on.defects.every((d) => !blocks(wanted, d, face) || !overlaps(extent(d, job.shop), where)),
  );
}

/** The face to show: the only one that may; else the better looking for a part that is seen, either for one that is not. */
function showFace(job: Job, parts: readonly number[], board: number, faces: readonly Face[]): Face | null {
  if (faces.length < 2) return faces[0] ?? null;
  const { lookA, lookB } = job.boards[board]!;
  if (parts.every((part) => job.parts[part]!.show === 0)) return null;
  return lookB > lookA ? 'B' : 'A';
}

/** Counts copies of each part, and runs, as they are placed. */
interface Counters {
  readonly copy: (part: number) => number;
  readonly run: () => number;
}

/** Where each member of a placed kind lies on its board. */
function membersAt(kind: BlankKind, x: number, y: number, placement: Rectangle): Rectangle[] {
  if (kind.members.length === 1) return [{ x, y, length: placement.length, width: placement.width }];
  return kind.members.map(({ offset, length, width }) => ({ x: x + offset, y, length, width }));
}

function placedOn(job: Job, instance: Instance, column: Column, counters: Counters): PlacedPiece[] {
  const { board } = instance.groups[column.group]!;
  const origin = usable(job.boards[board]!, job.shop);
  return column.placements.flatMap((placement) => {
    const kind = instance.kinds[placement.kind]!;
    const where = membersAt(kind, origin.x + placement.x, origin.y + placement.y, placement);
    const parts = kind.members.map((member) => member.part);
    const open = parts.map((part, m) => openFaces(job, part, board, where[m]!));
    const common = (['A', 'B'] as const).filter((face) => open.every((faces) => faces.includes(face)));
    const face = showFace(job, parts, board, common);
    const run = parts.length > 1 ? counters.run() : -1;
    return parts.map((part, order) => ({
      part,
      copy: counters.copy(part),
      showFace: face,
      ...where[order]!,
      ...(run >= 0 ? { run: { run, order } } : {}),
    }));
  });
}

/** Money: what the boards cost, or the worth of what is laid out. */
function proofOf(job: Job, instance: Instance, plan: Plan, bound: number): Proof {
  const missing = instance.kinds.reduce(
    (sum, kind, k) => sum + kind.penalty * Math.max(0, plan.missing[k]!),
    0,
  );
  const all = job.parts.reduce((sum, part) => sum + part.quantity * valueOf(part), 0);
  const mostValue = job.shop.goal === 'most value';
  const value = mostValue ? all - missing : plan.objective - missing;
  // With parts left out the bound may lie below nothing: other parts could then still be laid out instead.
  const least = missing > 0 ? bound - missing : Math.max(0, bound);
  const limit = mostValue ? Math.max(value, all - bound) : Math.min(value, least);
  const distance = Math.abs(value - limit);
  const met = distance <= 1e-7 * (1 + Math.abs(value));
  return {
    value,
    bound: met ? value : limit,
    gap: met ? 0 : value === 0 ? 1 : distance / Math.abs(value),
    proven: met,
  };
}

/** The boards and pieces of the job that the instance was built from. */
function patternsOf(job: Job, instance: Instance, plan: Plan): BoardPattern[] {
  const counts = new Int32Array(job.parts.length);
  let runs = -1;
  const counters: Counters = {
    copy: (part) => (counts[part] = counts[part]! + 1),
    run: () => (runs += 1),
  };
  const copies = new Int32Array(instance.groups.length);
  const ordered = [...plan.columns].sort((a, b) => a.group - b.group);
  return ordered.map((column): BoardPattern => {
    copies[column.group] = copies[column.group]! + 1;
    return {
      board: instance.groups[column.group]!.board,
      copy: copies[column.group]!,
      pieces: placedOn(job, instance, column, counters),
    };
  });
}

/**
 * Turns the solver's numbers back into boards and the job's own parts.
 * @param isUnfinished the plan is one so far, and what it leaves out may only not have been laid out yet
 */
export function toChoice(
  job: Job,
  joint: JointJob,
  instance: Instance,
  plan: Plan,
  bound: number,
  isUnfinished = false,
): Choice {
  const { patterns, short } = ofOwnParts(job, joint, patternsOf(joint.job, instance, plan), isUnfinished);
  const proof = proofOf(job, instance, plan, bound);
  if (short.length === 0 || job.shop.goal === 'most value') return { patterns, short, proof };
  const cannotHold = proof.proven || isOutOfReach(instance.groups, bound);
  return { patterns, short, proof, leastWhole: bound, ...(cannotHold ? { cannotHold } : {}) };
}
