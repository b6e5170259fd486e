import type { Rectangle } from '../../base/geometry/rectangle.ts';

export type Face = 'A' | 'B';

export const defectKinds = [
  'sound knot',
  'loose knot',
  'check',
  'split',
  'shake',
  'wane',
  'pith',
  'rot',
  'hole',
  'stain',
  'sapwood',
  'bark pocket',
] as const;

export type DefectKind = (typeof defectKinds)[number];

/** One row of `defects.csv`: a rectangle in board coordinates as seen on face A, whichever face it is on. */
export interface Defect extends Rectangle {
  readonly kind: DefectKind;
  readonly face: Face | 'through';
}

const unsoundKinds: ReadonlySet<DefectKind> = new Set<DefectKind>([
  'rot',
  'split',
  'check',
  'shake',
  'wane',
  'hole',
  'loose knot',
  'pith',
  'bark pocket',
]);

/** Whether a defect of this kind weakens the wood (DESIGN, section 6: what a sound back must be free of). */
export function isUnsound(kind: DefectKind): boolean {
  return unsoundKinds.has(kind);
}

/** Whether the defect shows on the face; a `through` defect lies on both. */
export function liesOn(defect: Defect, face: Face): boolean {
  return defect.face === face || defect.face === 'through';
}
