import type { Rectangle } from '../../../base/geometry/rectangle.ts';
import { type Markup, svg } from '../../../base/markup/element.ts';
import { sansSerif, textWidth } from '../../../base/markup/text-width.ts';
import { defectMark } from '../../../flow/sheet/board/defect-mark.ts';
import {
  boxInRow,
  type Frame,
  frameOf,
  leftMargin,
  rightMargin,
  sheetWidth,
} from '../../../flow/sheet/board/frame.ts';
import { lengthRuler, rulerHeight, widthRuler } from '../../../flow/sheet/board/ruler.ts';
import { fitted, lineAt, textAt } from '../../../flow/sheet/board/text-line.ts';
import { nameText } from '../../../flow/sheet/words/named.ts';
import { sizeText } from '../../../flow/sheet/words/size-text.ts';
import type { Shop } from '../../../flow/shop/shop.ts';
import { type Defect, type DefectKind, defectKinds } from '../../../flow/stock/defect.ts';
import type { Board } from '../../../flow/stock/board.ts';
import type { BoardFace } from '../../../trade/grades/marked-board.ts';
import { unitsFound } from './finding-words.ts';

const margin = 6;
const type = 24;
const captionHeight = 44;
const legendStep = 40;
const swatch = { x: 6, w: 34, h: 28 };

/**
 * One face of a board with the cuttings that were found on it, to scale, in black and white: each cutting in a heavy
 * outline with its size and units, defects hatched by kind. Board coordinates as seen on face A, whichever face it is.
 * All coordinates are whole numbers.
 */
export function cuttingsPicture(
  board: Pick<Board, 'name' | 'length' | 'width' | 'defects'>,
  shop: Shop,
  face: BoardFace,
  cuttings: readonly Rectangle[],
): Markup {
  const unit = board.length / (sheetWidth - leftMargin - rightMargin);
  const frame = frameOf({ from: 0, to: board.length }, unit, board.length, board.width);
  const top = margin + captionHeight;
  const rulerTop = frame.board.h + 8;
  const { markup: signs, height: signsHeight } = legend(board.defects);
  const legendTop = top + rulerTop + rulerHeight + 10;
  const height = legendTop + signsHeight + margin;
  const title = `Board ${nameText(board.name)}: cuttings on face ${face}`;
  const view = face === 'A' ? '' : ', drawn as if seen through from face A';
  const caption = `Face ${face}${view}. Butt end left, near edge below.`;
  return svg(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${sheetWidth} ${height}`,
      role: 'group',
      'aria-label': title,
      'font-family': sansSerif,
    },
    svg('title', {}, title),
    svg('rect', { width: sheetWidth, height, fill: '#fff' }),
    svg('g', { transform: `translate(0 ${margin})` }, lineAt(4, 0, type, [{ text: caption }])),
    svg(
      'g',
      { transform: `translate(0 ${top})` },
      widthRuler(frame, leftMargin - 8, shop),
      board.defects.map((defect) => marked(defect, frame)),
      outline(frame),
      cuttings.map((cutting) => cuttingMark(cutting, frame, shop)),
      lengthRuler(frame, rulerTop, shop),
    ),
    svg('g', { transform: `translate(0 ${legendTop})` }, signs),
  );
}

function marked(defect: Defect, frame: Frame): Markup | null {
  const box = boxInRow(frame, defect);
  if (box === null) return null;
  const title = `${defect.kind}, ${defect.face === 'through' ? 'through' : `face ${defect.face}`}`;
  return svg(
    'g',
    { 'aria-label': title },
    svg('title', {}, title),
    defectMark(defect.kind, defect.face, box),
  );
}

function outline({ board }: Frame): Markup {
  return svg('rect', {
    ...{ x: board.x, y: board.y, width: board.w, height: board.h },
    ...{ fill: 'none', stroke: '#000', 'stroke-width': 3 },
  });
}

/** A cutting: heavy outline drawn inside its edges, so that neighbours stay apart, and its label where it fits. */
function cuttingMark(cutting: Rectangle, frame: Frame, shop: Shop): Markup | null {
  const box = boxInRow(frame, cutting);
  if (box === null) return null;
  const units = `${unitsFound(cutting.length * cutting.width)} units`;
  const size = sizeText(cutting, shop);
  const title = `cutting ${size}, ${units}`;
  const lines = [`${size}, ${units}`, units].filter((line) => textWidth(line, type, true) < box.w - 24);
  const [label] = lines;
  const pen = { fill: 'none', stroke: '#000', 'stroke-width': 8 };
  return svg(
    'g',
    { 'aria-label': title },
    svg('title', {}, title),
    svg('rect', {
      ...{ x: box.x + 6, y: box.y + 6, width: Math.max(1, box.w - 12), height: Math.max(1, box.h - 12) },
      ...pen,
    }),
    label !== undefined &&
      box.h > type + 22 &&
      svg(
        'g',
        { 'paint-order': 'stroke', stroke: '#fff', 'stroke-width': 6, 'stroke-linejoin': 'round' },
        textAt(
          box.x + Math.round((box.w - textWidth(label, type, true)) / 2),
          box.y + Math.round(box.h / 2) + 9,
          type,
          label,
          true,
        ),
      ),
  );
}

/** The signs that this picture uses. */
function legend(defects: readonly Defect[]): { markup: readonly Markup[]; height: number } {
  const kinds = defectKinds.filter((kind) => defects.some((defect) => defect.kind === kind));
  const entries: { readonly text: string; readonly mark: (x: number, y: number) => readonly Markup[] }[] = [
    { text: 'clear cutting', mark: (x, y) => [heavy(x, y)] },
    ...kinds.map((kind) => ({ text: kind, mark: kindMark(kind) })),
  ];
  if (defects.some(({ face }) => face === 'A'))
    entries.push({ text: 'plain outline: on face A', mark: (x, y) => edgeMark('A', x, y) });
  if (defects.some(({ face }) => face === 'B'))
    entries.push({ text: 'broken outline: on face B', mark: (x, y) => edgeMark('B', x, y) });
  if (defects.some(({ face }) => face === 'through'))
    entries.push({ text: 'double outline: through both', mark: (x, y) => edgeMark('through', x, y) });
  let [x, y] = [0, 0];
  const marks = entries.map(({ text, mark }) => {
    const words = fitted(text, type, false, 400);
    const width = 60 + textWidth(words, type, false) + 30;
    if (x > 0 && x + width > sheetWidth) [x, y] = [0, y + legendStep];
    const placed = svg('g', {}, mark(x, y), lineAt(x + 56, y, type, [{ text: words }]));
    x += width;
    return placed;
  });
  return { markup: marks, height: y + legendStep };
}

function heavy(x: number, y: number): Markup {
  return svg('rect', {
    ...{ x: x + swatch.x + 2, y: y + 4, width: swatch.w, height: swatch.h - 8 },
    ...{ fill: 'none', stroke: '#000', 'stroke-width': 8 },
  });
}

function kindMark(kind: DefectKind): (x: number, y: number) => readonly Markup[] {
  return (x, y) => defectMark(kind, 'A', { x: x + swatch.x, y, w: swatch.w, h: swatch.h });
}

function edgeMark(face: Defect['face'], x: number, y: number): readonly Markup[] {
  return defectMark('stain', face, { x: x + swatch.x, y, w: swatch.w, h: swatch.h }).slice(1);
}
