import type { Areas, LaidBoard } from '../../cuts/layout.ts';

/** The five ways in which board area is spent, in the order in which they are shown. */
export const shareKinds = ['parts', 'offcuts', 'kerf', 'trim', 'scrap'] as const;
export type ShareKind = (typeof shareKinds)[number];

/** What each is called. */
export const shareNames: Readonly<Record<ShareKind, string>> = {
  parts: 'parts (the yield)',
  offcuts: 'kept offcuts',
  kerf: 'kerf',
  trim: 'trim',
  scrap: 'defects and scrap',
};

/** The boards' areas added up, square ticks. */
export function totalAreas(boards: readonly LaidBoard[]): Areas {
  const sum = (kind: keyof Areas): number => boards.reduce((total, { area }) => total + area[kind], 0);
  return {
    board: sum('board'),
    parts: sum('parts'),
    offcuts: sum('offcuts'),
    kerf: sum('kerf'),
    trim: sum('trim'),
    scrap: sum('scrap'),
  };
}

/**
 * Each share in tenths of a percent, whole numbers that add up to exactly 1000: all are rounded down, and what is
 * missing goes to those that lost most (the method of largest remainders). All 0 when there is no board.
 */
export function sharesInTenths(areas: Areas): Record<ShareKind, number> {
  const shares: Record<ShareKind, number> = { parts: 0, offcuts: 0, kerf: 0, trim: 0, scrap: 0 };
  if (areas.board <= 0) return shares;
  const exact = shareKinds.map((kind) => ({ kind, tenths: (areas[kind] / areas.board) * 1000 }));
  for (const { kind, tenths } of exact) shares[kind] = Math.floor(tenths);
  const missing = 1000 - shareKinds.reduce((sum, kind) => sum + shares[kind], 0);
  const byLoss = [...exact].sort((a, b) => (b.tenths % 1) - (a.tenths % 1));
  for (const { kind } of byLoss.slice(0, Math.max(0, missing))) shares[kind] += 1;
  return shares;
}

/** A share as text: `71.4 %`. */
export function tenthsText(tenths: number): string {
  return `${(tenths / 10).toFixed(1)} %`;
}
