import type { Claim, TallyRow } from './tally.ts';

/** The grade that the marked defects meet, as a yard would say it; `too small` for any grade. */
export function metWords({ grade }: TallyRow): string {
  if (grade.findings.every(({ largeEnough }) => !largeEnough)) return 'too small';
  const open = grade.findings.some(({ outcome }) => outcome === 'not shown');
  return `${grade.grade ?? 'below 3B'}${open ? ' or better' : ''}`;
}

/** What became of the claim, in words; empty when nothing was claimed. */
export function claimWords(claim: Claim): string {
  switch (claim.kind) {
    case 'none':
      return '';
    case 'not a standard grade':
      return 'no standard grade';
    case 'met':
      return 'met';
    case 'better':
      return 'better than claimed';
    case 'not met':
      return 'not met';
    case 'not shown':
      return 'not settled';
  }
}

/** What must stand on every tally. */
export const opinion =
  'An opinion for planning, from the defects marked in the files: a certified inspector grades lumber. Warp, how far a split runs aside, and what nobody marked are not seen here.';

/** Where the rules come from, and how sure that is. */
export const ruleSource =
  'Rules: the published summary chart of the NHLA standard grades; the limits on pith, wane, knots, splits and ends of FAS, F1F and Selects, and what makes wood sound, are from memory.';
