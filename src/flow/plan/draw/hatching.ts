import { type Markup, svg } from '../../../base/markup/element.ts';

/** What a hatched area is made of. Told apart by direction and spacing, not by colour. */
export type Material = 'wall' | 'facing' | 'panel' | 'ledger';

/** Hatch patterns of a drawing. @param prefix keeps the ids of two drawings on one page apart */
export function hatchPatterns(prefix: string): Markup {
  return svg(
    'defs',
    {},
    pattern(`${prefix}-wall`, 18, [
      ['M-3 21L21 -3', 2],
      ['M-12 12L12 -12', 2],
      ['M6 30L30 6', 2],
    ]),
    pattern(`${prefix}-facing`, 12, [
      ['M0 0L12 12', 3],
      ['M0 12L12 0', 3],
    ]),
    pattern(`${prefix}-panel`, 12, [
      ['M-3 -3L15 15', 2],
      ['M-9 3L3 15', 2],
      ['M3 -9L15 3', 2],
    ]),
    pattern(`${prefix}-ledger`, 8, [
      ['M-2 10L10 -2', 2],
      ['M-2 2L2 -2', 2],
      ['M6 10L10 6', 2],
    ]),
  );
}

/** The fill that refers to a pattern of the drawing. */
export function hatched(prefix: string, material: Material): string {
  return `url(#${prefix}-${material})`;
}

function pattern(
  id: string,
  size: number,
  lines: readonly (readonly [path: string, width: number])[],
): Markup {
  return svg(
    'pattern',
    { id, width: size, height: size, patternUnits: 'userSpaceOnUse' },
    svg('rect', { width: size, height: size, fill: '#fff' }),
    lines.map(([d, width]) => svg('path', { d, stroke: '#000', 'stroke-width': width, fill: 'none' })),
  );
}
