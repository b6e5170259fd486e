/** Widths of saw kerf, inches. Source: consumer references, common practice; band saw from a trade page. */
export const kerfs = { 'full kerf': 1 / 8, 'thin kerf': 3 / 32, 'band saw': 0.035 } as const;

/** A published limit on short stock. */
export interface WorkpieceRule {
  readonly rule: string;
  readonly inches: number;
  readonly source: string;
}

/**
 * Shortest workpieces in print. They are rules of schools, not of a law: the United States' safety standard for woodworking
 * machines sets guards and no length (from memory).
 */
export const shortestWorkpieces: readonly WorkpieceRule[] = [
  { rule: 'jointer, shortest length (class rule)', inches: 12, source: 'a school shop safety card' },
  {
    rule: 'jointer, shortest length (another school manual)',
    inches: 14,
    source: "a school's safety manual",
  },
  {
    rule: 'any machine, avoid at or below',
    inches: 12,
    source: "the '12 in. and 3 in. rule' of school shops",
  },
  { rule: 'table saw, push stick at or below (width)', inches: 6, source: "a school's safety manual" },
  { rule: 'miter saw, hands from the blade', inches: 6, source: 'a trade safety page' },
];
