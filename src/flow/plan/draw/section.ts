import type { LengthStyle } from '../../../base/units/format-length.ts';
import { type Tick, ticks } from '../../../base/units/tick.ts';
import { type Markup, svg } from '../../../base/markup/element.ts';
import { isolate, shorten } from '../../../base/markup/shorten.ts';
import { hollowHeight } from '../check-mantel.ts';
import type { Mantel } from '../mantel.ts';
import type { MantelPlan } from '../plan-mantel.ts';
import { dimension } from './dimension.ts';
import { legendRow, nameOf } from './legend.ts';
import { type PieceKey, pieceKeys } from './piece-keys.ts';
import { type Material, hatchPatterns, hatched } from './hatching.ts';
import { badge, bodyType, headed, lettered, sizeOnDrawing } from './lettering.ts';
import type { Spot } from './paper.ts';

const paperWidth = 1840;
/** The wall's face, drawing units from the left. */
const wallFace = 320;
const wallBand = 130;
const top = 240;
const mostWide = 620;
const mostTall = 900;
/** Wall drawn above the mantel. */
const above = 70;

/** The section's measures on paper. */
interface Scale {
  /** Ticks to one drawing unit. */
  readonly unit: number;
  /** Ticks from the underside of the mantel to where the drawing's wall ends; the opening's top unless `broken`. */
  readonly below: number;
  /** Whether the opening lies farther down than is drawn, or its height is not given. */
  readonly broken: boolean;
}

/**
 * A section through the front: wall, ledger, panels and facing as they lie behind one another, with their sizes and the height
 * above the firebox opening, as an SVG document.
 * Whole-number coordinates; legible in black and white.
 */
export function drawSection(plan: MantelPlan, style: LengthStyle): string {
  const { mantel, legs, front } = plan;
  const scale = scaleOf(plan);
  const height = top + across(scale, mantel.faceHeight + scale.below) + 130;
  const title = 'Section through the front of the mantel';
  return svg(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${paperWidth} ${height}`,
      width: '184mm',
      height: `${Math.round(height / 10)}mm`,
      role: 'img',
      'aria-label': `${title}: ${legs[front]!.name}`,
    },
    svg('title', {}, title),
    hatchPatterns('section'),
    svg('rect', { width: paperWidth, height, fill: '#fff' }),
    headed(`Section through ${isolate(shorten(legs[front]!.name, 40))}`, style),
    wall(plan, scale),
    boards(plan, scale),
    depths(plan, scale, style),
    heights(plan, scale, style),
    keyed(plan, scale, style),
    fire(plan, scale, style),
  ).markup;
}

function across({ unit }: Scale, length: number): number {
  return Math.round(length / unit);
}

/** Fits the mantel and, where it is not too far, the top of the opening. */
function scaleOf({ mantel, legs, front }: MantelPlan): Scale {
  const { faceHeight, heightAboveOpening: height } = mantel;
  const far = 2.6 * faceHeight;
  const broken = height === null || height > far;
  const below = height === null ? 0.7 * faceHeight : Math.min(height, far);
  const wide = legs[front]!.projection;
  return { unit: Math.max(wide / mostWide, (faceHeight + below) / mostTall), below, broken };
}

function wall({ mantel }: MantelPlan, scale: Scale): Markup {
  const low = top + across(scale, mantel.faceHeight + scale.below);
  const [left, high] = [wallFace - wallBand, top - above];
  const outline = `M${left} ${high}H${wallFace}V${low}H${left}Z`;
  const face = `M${wallFace} ${high}V${low}${scale.broken ? '' : `H${left}`}`;
  return svg(
    'g',
    { 'aria-label': 'wall' },
    svg('path', { d: outline, fill: hatched('section', 'wall'), stroke: 'none' }),
    svg('path', { d: face, fill: 'none', stroke: '#000', 'stroke-width': 6 }),
  );
}

/** A board of the section; its corners from `off` the wall and `down` from the top, ticks. */
interface Board {
  readonly material: Material;
  readonly corners: readonly (readonly [off: number, down: number])[];
}

function boardsOf({ mantel, legs, front }: MantelPlan): Board[] {
  const { faceHeight, thickness, bottom, ledger } = mantel;
  const { depth, projection, panelFront } = legs[front]!;
  const isMitered = panelFront > depth;
  const under = bottom === 'closed' ? faceHeight - thickness : faceHeight;
  // How far the facing's back stops short of its face, at a mitered edge.
  const topShy = isMitered ? thickness : 0;
  const lowShy = isMitered && bottom === 'closed' ? thickness : 0;
  const panel = (outside: number, inside: number): Board => ({
    material: 'panel',
    corners: [
      [0, outside],
      [panelFront, outside],
      [depth, inside],
      [0, inside],
    ],
  });
  return [
    ...(ledger === null ? [] : [ledgerBoard(thickness, ledger)]),
    panel(0, thickness),
    ...(bottom === 'closed' ? [panel(faceHeight, under)] : []),
    {
      material: 'facing',
      corners: [
        [projection, 0],
        [projection, faceHeight],
        [depth, faceHeight - lowShy],
        [depth, topShy],
      ],
    },
  ];
}

function ledgerBoard(down: number, { thickness, width }: NonNullable<Mantel['ledger']>): Board {
  return {
    material: 'ledger',
    corners: [
      [0, down],
      [thickness, down],
      [thickness, down + width],
      [0, down + width],
    ],
  };
}

function boards(plan: MantelPlan, scale: Scale): Markup {
  const path = ({ corners }: Board): string =>
    corners
      .map(
        ([off, down], at) =>
          `${at === 0 ? 'M' : 'L'}${wallFace + across(scale, off)} ${top + across(scale, down)}`,
      )
      .join('');
  return svg(
    'g',
    { stroke: '#000', 'stroke-width': 4, 'stroke-linejoin': 'round' },
    boardsOf(plan).map((board) =>
      svg('path', { d: `${path(board)}Z`, fill: hatched('section', board.material) }),
    ),
  );
}

function depths({ legs, front }: MantelPlan, scale: Scale, style: LengthStyle): Markup {
  const { depth, projection } = legs[front]!;
  const size = (length: number): string => sizeOnDrawing(ticks(length), style);
  const at = (off: number): Spot => ({ x: wallFace + across(scale, off), y: top });
  return svg(
    'g',
    { 'aria-label': 'depths' },
    dimension(at(0), at(depth), -40, size(depth)),
    dimension(at(0), at(projection), -105, size(projection)),
  );
}

function heights({ mantel, legs, front }: MantelPlan, scale: Scale, style: LengthStyle): Markup {
  const { faceHeight, thickness } = mantel;
  const { depth, projection } = legs[front]!;
  const outer = wallFace + across(scale, projection);
  const size = (length: Tick): string => sizeOnDrawing(length, style);
  const at = (x: number, down: number): Spot => ({ x, y: top + across(scale, down) });
  const hollowAt = wallFace + across(scale, depth * 0.8);
  const hollow = hollowHeight(mantel);
  return svg(
    'g',
    { 'aria-label': 'heights' },
    dimension(at(outer, 0), at(outer, faceHeight), -70, size(faceHeight)),
    dimension(at(hollowAt, thickness), at(hollowAt, thickness + hollow), 0, size(ticks(hollow))),
  );
}

/** The same numbers as in the plan view, on the boards that the section cuts, and what they are. */
function keyed(plan: MantelPlan, scale: Scale, style: LengthStyle): Markup {
  const { mantel, legs, front } = plan;
  const { faceHeight, thickness } = mantel;
  const { depth, projection } = legs[front]!;
  const spot = (off: number, down: number): Spot => ({
    x: wallFace + across(scale, off),
    y: top + across(scale, down),
  });
  const left = wallFace + across(scale, projection) + 190;
  const cut = pieceKeys(plan).filter(({ piece }) => piece.leg === front && piece.kind !== 'cap');
  const onBoards = ({ piece, under }: PieceKey): Spot[] => {
    if (piece.kind === 'facing') return [spot(depth + thickness / 2, faceHeight * 0.5)];
    if (piece.kind === 'ledger') return [spot(piece.thickness / 2, thickness + piece.width / 2)];
    const tops = [spot(depth * 0.5, thickness / 2)];
    return under === null ? tops : [...tops, spot(depth * 0.5, faceHeight - thickness / 2)];
  };
  return svg(
    'g',
    { 'aria-label': 'boards' },
    cut.map((key, index) => {
      const { piece } = key;
      const size = (length: Tick): string => sizeOnDrawing(length, style);
      const text = `${nameOf(key)}, ${size(piece.thickness)} × ${size(piece.width)}`;
      const y = top + 20 + index * legendRow;
      return [
        onBoards(key).map((at) => badge(key.number, at)),
        badge(key.number, { x: left, y }),
        lettered(text, { x: left + 40, y }, { anchor: 'start' }),
      ];
    }),
  );
}

/** The opening's top, its distance, and who decides whether that is enough. */
function fire({ mantel, legs, front }: MantelPlan, scale: Scale, style: LengthStyle): Markup {
  const { faceHeight, heightAboveOpening: height } = mantel;
  const outer = wallFace + across(scale, legs[front]!.projection);
  const under = top + across(scale, faceHeight);
  const low = top + across(scale, faceHeight + scale.below);
  const note =
    height === null
      ? 'height above the firebox opening: not given'
      : scale.broken
        ? 'top of the firebox opening, not drawn to scale'
        : 'top of the firebox opening';
  const size = height === null ? '?' : sizeOnDrawing(height, style);
  const says = (text: string, y: number, type: number): Markup =>
    lettered(text, { x: wallFace + 30, y }, { anchor: 'start', size: type });
  return svg(
    'g',
    { 'aria-label': 'height above the opening' },
    dimension({ x: outer, y: under }, { x: outer, y: low }, -70, size),
    svg('path', { d: `M${wallFace + 10} ${low}H${outer}`, stroke: '#000', 'stroke-width': 2 }),
    scale.broken ? breakMark(low) : null,
    says(note, low + 36, bodyType),
    says("How much is enough: the appliance's listing and local code decide.", low + 76, bodyType - 4),
  );
}

/** A zigzag across the wall: it goes on farther than is drawn. */
function breakMark(y: number): Markup {
  const left = wallFace - wallBand - 20;
  const step = Math.round((wallBand + 40) / 4);
  const d = `M${left} ${y}h${step}l${Math.round(step / 2)} -22l${step} 44l${Math.round(step / 2)} -22h${step}`;
  return svg('path', { d, fill: 'none', stroke: '#000', 'stroke-width': 4 });
}
