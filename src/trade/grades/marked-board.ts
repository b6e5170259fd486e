import type { Rectangle } from '../../base/geometry/rectangle.ts';
import type { Tick } from '../../base/units/tick.ts';

/** A defect as the grader sees it: what it is, and where on which face, in board coordinates as seen on face A. */
export interface MarkedDefect extends Rectangle {
  readonly kind: string;
  readonly face: 'A' | 'B' | 'through';
}

/** A board as it is graded: its whole rough outline, no trim taken off. */
export interface MarkedBoard {
  readonly length: Tick;
  readonly width: Tick;
  readonly defects: readonly MarkedDefect[];
}

export type BoardFace = 'A' | 'B';

/** What a kind of defect keeps a cutting from being. */
interface Blocks {
  /** A clear face: it may not show there. */
  readonly clear: boolean;
  /** Sound: it may be neither on the back of a clear cutting nor in a sound one. */
  readonly sound: boolean;
}

/**
 * How each kind of defect counts. From memory (NHLA, definitions of clear-face and sound cutting; the text was not at
 * hand): a clear face is free of all defects, bright sapwood is none; a sound cutting is free of rot, pith, shake and
 * wane and admits sound knots and stain. Ours, on the strict side: a check or a split that was marked counts as
 * unsound (ordinary season checks are admitted and need not be marked), and so do loose knots, holes and bark
 * pockets of any size.
 */
const blocksOf: ReadonlyMap<string, Blocks> = new Map([
  ['sound knot', { clear: true, sound: false }],
  ['loose knot', { clear: true, sound: true }],
  ['check', { clear: true, sound: true }],
  ['split', { clear: true, sound: true }],
  ['shake', { clear: true, sound: true }],
  ['wane', { clear: true, sound: true }],
  ['pith', { clear: true, sound: true }],
  ['rot', { clear: true, sound: true }],
  ['hole', { clear: true, sound: true }],
  ['stain', { clear: true, sound: false }],
  ['sapwood', { clear: false, sound: false }],
  ['bark pocket', { clear: true, sound: true }],
]);

/** Kinds the grader knows. A kind it does not know blocks everything. */
export const gradedKinds: readonly string[] = [...blocksOf.keys()];

function blocks(defect: MarkedDefect): Blocks {
  return blocksOf.get(defect.kind) ?? { clear: true, sound: true };
}

/** Whether a defect shows on a face; one that goes through shows on both. */
export function isOn(defect: MarkedDefect, face: BoardFace): boolean {
  return defect.face === face || defect.face === 'through';
}

/** Whether a defect keeps wood from being sound. */
export function isUnsoundForGrade(defect: MarkedDefect): boolean {
  return blocks(defect).sound;
}

/** The face on the back. */
export function otherFace(face: BoardFace): BoardFace {
  return face === 'A' ? 'B' : 'A';
}

/** `clear`: one clear face and a sound back; `clear face`: one clear face, any back; `sound`: nothing unsound. */
export type CuttingKind = 'clear' | 'clear face' | 'sound';

/** What cuttings of a kind, taken from a face, must keep clear of. Sapwood keeps nothing from being clear. */
export function blockedOn(
  defects: readonly MarkedDefect[],
  face: BoardFace,
  cuttings: CuttingKind,
): Rectangle[] {
  return defects.filter((defect) => {
    const { clear, sound } = blocks(defect);
    const showing = clear && isOn(defect, face);
    return cuttings === 'sound' ? sound : showing || (cuttings === 'clear' && sound);
  });
}
