import type { Rectangle } from '../../../base/geometry/rectangle.ts';
import type { FaceFinding, WayTried } from '../../../trade/grades/face-finding.ts';
import type { GradeFinding } from '../../../trade/grades/grade-finding.ts';
import type { TallyRow } from './tally.ts';

/** A face to be drawn: the way that decided on it, and its cuttings. */
export interface ShownFace {
  readonly face: FaceFinding['face'];
  readonly tried: WayTried;
  readonly cuttings: readonly Rectangle[];
}

/**
 * The findings to tell of a board: the grade it meets, and before it the claim, where that is another; for a board too
 * small for any grade the claim alone.
 */
export function toldFindings({ claim, grade }: TallyRow): GradeFinding[] {
  const met = grade.findings.find((finding) => finding.grade === grade.grade);
  const claimed = 'finding' in claim ? claim.finding : undefined;
  const tooSmall = grade.findings.every(({ largeEnough }) => !largeEnough);
  const last = tooSmall && claimed !== undefined ? undefined : grade.findings.at(-1);
  const told = [claimed, met ?? last].filter((finding) => finding !== undefined);
  return told.filter((finding, index) => told.findIndex((other) => other.grade === finding.grade) === index);
}

/** The faces to draw of a finding: for each the way that was met, else the one that came nearest. */
export function shownFaces(finding: GradeFinding): ShownFace[] {
  return finding.faces.flatMap(({ face, tried }) => {
    const shown = tried.find(({ outcome }) => outcome === 'met') ?? nearest(tried);
    return shown === undefined ? [] : [{ face, tried: shown, cuttings: shown.cuttings }];
  });
}

/** By the share of the area wanted. */
function nearest(tried: readonly WayTried[]): WayTried | undefined {
  const share = ({ found, neededTimes100 }: WayTried): number => found / neededTimes100;
  return [...tried].sort((a, b) => share(b) - share(a))[0];
}
