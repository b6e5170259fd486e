import { type LengthStyle, formatLength } from '../../../base/units/format-length.ts';
import type { Tick } from '../../../base/units/tick.ts';
import { type Markup, svg } from '../../../base/markup/element.ts';
import { isolate, shorten } from '../../../base/markup/shorten.ts';
import { angleText } from '../angle-text.ts';
import { badge, lettered } from './lettering.ts';
import type { PlanPiece } from '../piece.ts';
import { panelAngle, panelShape } from '../panel-pieces.ts';
import type { MantelPlan } from '../plan-mantel.ts';
import type { PieceKey } from './piece-keys.ts';

export const legendRow = 52;
const longestName = 24;

/** The key of the numbers: name, sizes, and how the ends are cut. @param top where it begins, drawing units */
export function legend(
  plan: MantelPlan,
  keys: readonly PieceKey[],
  left: number,
  top: number,
  style: LengthStyle,
): Markup {
  const columns = [0, 50, 620, 1040];
  const cell = (text: string, column: number, y: number, bold = false): Markup | null =>
    text === '' ? null : lettered(text, { x: left + columns[column]!, y }, { anchor: 'start', bold });
  const unit = style.units === 'mm' ? 'mm' : 'inches';
  return svg(
    'g',
    { 'aria-label': 'key to the numbers' },
    cell('Piece', 1, top, true),
    cell(`Length × width × thickness, ${unit}`, 2, top, true),
    keys.map((key, index) => {
      const y = top + legendRow * (index + 1);
      return [
        badge(key.number, { x: left + 10, y }),
        cell(nameOf(key), 1, y),
        cell(sizeOf(key, style), 2, y),
        cell(
          key.piece.kind === 'top'
            ? panelWords(plan, key.piece)
            : endsOf(key, plan.mantel.faceJoint === 'miter'),
          3,
          y,
        ),
      ];
    }),
    signs(keys, plan.mantel.faceJoint === 'miter', left, top + legendRow * (keys.length + 1)),
  );
}

/** What the signs of the drawing mean. */
function signs(keys: readonly PieceKey[], isMitered: boolean, left: number, y: number): Markup {
  const hasLedger = keys.some(({ piece }) => piece.kind === 'ledger');
  const dotted = isMitered ? 'Dotted: facing, its edges and the top’s beveled 45°. ' : '';
  const text = `${hasLedger ? 'Dashed: ledger, under the top. ' : ''}${dotted}Arrows: way of the grain. At the corners: wall as a bevel gauge reads it, saw off square.`;
  return lettered(text, { x: left - 11, y }, { anchor: 'start', size: 24 });
}

/** How a panel is made and cut, seen from above. */
function panelWords(plan: MantelPlan, { leg }: PlanPiece): string {
  const { legs } = plan;
  const joined = panelShape(legs, leg).grain === 'edge-joined';
  const neighbour = legs[leg === 0 ? 1 : leg - 1];
  const ends = (['left', 'right'] as const).flatMap((side) => {
    const angle = panelAngle(legs[leg]!, side);
    return Math.abs(angle) < 0.05 ? [] : [`${side} end ${angleText(angle)}`];
  });
  return [
    ...(joined && neighbour
      ? [`grain along ${isolate(shorten(neighbour.name, longestName))}, edge-joined to it`]
      : []),
    ...(ends.length > 0 ? [`mitered across its width: ${ends.join(', ')}`] : []),
  ].join('; ');
}

/** Height of the legend, drawing units. */
export function legendHeight(count: number): number {
  return legendRow * (count + 2);
}

/** What a number stands for. */
export function nameOf({ piece, under }: PieceKey): string {
  // A long leg name is cut, but not what the piece is.
  const kind = piece.name.endsWith(` ${piece.kind}`) ? ` ${piece.kind}` : '';
  const leg = piece.name.slice(0, piece.name.length - kind.length);
  const name = `${isolate(shorten(leg, longestName))}${kind}`;
  return under === null ? name : `${name} (bottom alike)`;
}

function sizeOf({ piece }: PieceKey, style: LengthStyle): string {
  const size = (length: Tick): string => formatLength(length, style);
  return `${size(piece.length)} × ${size(piece.width)} × ${size(piece.thickness)}`;
}

function endsOf({ piece }: PieceKey, isMitered: boolean): string {
  const { kind, leftEnd, rightEnd } = piece;
  if (kind !== 'facing' && kind !== 'cap') return '';
  const end = (degrees: number): string =>
    degrees === 0 ? 'square' : `${angleText(degrees)} ${degrees < 0 ? 'inside ' : ''}bevel`;
  const edges = isMitered ? '; long edges 45°' : '';
  return leftEnd === rightEnd
    ? `both ends ${end(leftEnd)}${edges}`
    : `left end ${end(leftEnd)}, right end ${end(rightEnd)}${edges}`;
}
