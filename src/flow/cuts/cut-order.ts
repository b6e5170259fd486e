import type { Rectangle } from '../../base/geometry/rectangle.ts';
import { slice } from './cut-positions.ts';
import type { CutNode } from './cut-tree.ts';
import type { Cut } from './layout.ts';
import { type CutKind, purposeAt, stageAfter } from './stage.ts';

/** A cut before its step is numbered. */
export type UnnumberedCut = Omit<Cut, 'step'>;

interface Blade {
  readonly at: number;
  readonly kerf: number;
  /** Between two pieces of a run: tilted, perhaps, and through their strip alone. */
  readonly partsRun: boolean;
}

/**
 * The cuts of a tree in the order a person makes them: all cuts of one kind that a workpiece needs, from its near
 * end on, so that the saw stays set up; then each workpiece they gave, in the same order, to the end.
 */
export function cutOrder(tree: CutNode, stage = 0): UnnumberedCut[] {
  if (tree.kind === 'piece' || tree.kind === 'leftover') return [];
  const { kind, region } = tree;
  const blades: Blade[] = [];
  const rest: CutNode[] = [];
  collect(tree, kind, blades, rest);
  const next = stageAfter(stage, kind);
  const own = chain(kind, region, blades).map((cut) => ({ ...cut, purpose: purposeAt(next) }));
  return [...own, ...rest.flatMap((node) => cutOrder(node, next))];
}

/** The cuts of one kind made on the same workpiece, and what they leave, both from the near end on. */
function collect(node: CutNode | null, kind: CutKind, blades: Blade[], rest: CutNode[]): void {
  if (node === null) return;
  if (node.kind !== kind) {
    rest.push(node);
    return;
  }
  collect(node.before, kind, blades, rest);
  blades.push({ at: node.at, kerf: node.kerf, partsRun: node.partsRun });
  collect(node.after, kind, blades, rest);
}

/**
 * Cuts of one kind along a workpiece, each with the workpiece it then divides. They go from the near end on, except
 * that cuts within a run come last, when its strip lies alone on the saw, and that where two kerfs overlap the
 * farther one is made first, so that the other runs off the end of what is left.
 * @param blades by position
 */
function chain(kind: CutKind, region: Rectangle, blades: readonly Blade[]): Omit<UnnumberedCut, 'purpose'>[] {
  const order = [
    ...fartherFirst(blades.filter((blade) => !blade.partsRun)),
    ...blades.filter((blade) => blade.partsRun),
  ];
  let workpieces: readonly Rectangle[] = [region];
  const cuts: Omit<UnnumberedCut, 'purpose'>[] = [];
  for (const { at, kerf } of order) {
    const divided = workpieces.find((workpiece) => {
      const [start, end] = extent(kind, workpiece);
      return at < end && at + kerf > start;
    });
    if (divided === undefined) continue;
    cuts.push({ kind, region: divided, at, kerf });
    const [start, end] = extent(kind, divided);
    workpieces = workpieces.flatMap((workpiece) => {
      if (workpiece !== divided) return [workpiece];
      const near = at > start ? [slice(kind, divided, start, at)] : [];
      return at + kerf < end ? [...near, slice(kind, divided, at + kerf, end)] : near;
    });
  }
  return cuts;
}

function extent(kind: CutKind, region: Rectangle): readonly [number, number] {
  return kind === 'crosscut' ? [region.x, region.x + region.length] : [region.y, region.y + region.width];
}

/** Ascending, but each series of overlapping kerfs descending. */
function fartherFirst(blades: readonly Blade[]): Blade[] {
  const order: Blade[] = [];
  let series: Blade[] = [];
  for (const blade of blades) {
    const last = series[0];
    if (last !== undefined && blade.at >= last.at + last.kerf) {
      order.push(...series);
      series = [];
    }
    series.unshift(blade);
  }
  return [...order, ...series];
}
