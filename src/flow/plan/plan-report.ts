import { type LengthStyle, formatLength, formatLengthWithUnit } from '../../base/units/format-length.ts';
import { type Tick, ticks } from '../../base/units/tick.ts';
import { bevelKerf, steepestCommonTilt } from '../../trade/miter.ts';
import { blankSize } from '../shop/blank-size.ts';
import type { Shop } from '../shop/shop.ts';
import { angleText } from './angle-text.ts';
import { clearanceCaution, clearanceLines } from './clearance-caution.ts';
import { hangingLines, weightText } from './hanging-caution.ts';
import { faceJointLines } from './face-joint.ts';
import { contactLines, finishedLines } from './finished-sizes.ts';
import { movementLines, movementNotes } from './movement-notes.ts';
import { grainLines } from './panel-grain.ts';
import type { PlanPiece } from './piece.ts';
import type { MantelPlan } from './plan-mantel.ts';
import { type PlanWeight, planWeight } from './plan-weight.ts';
import { breakRun, facingRun } from './run-break.ts';
import { type AngledCut, sawAngles } from './saw-angles.ts';
import { textTable } from './text-table.ts';

/** One headed part of the report. */
export interface ReportSection {
  readonly heading: string;
  /** Lines of a table keep their columns; other lines may be folded. */
  readonly lines: readonly string[];
  readonly isTable: boolean;
}

/** The plan in words and tables, as data for any door: what to cut, at what angles, and what to mind. */
export function planSections(plan: MantelPlan, shop: Shop): ReportSection[] {
  const weight = planWeight(plan);
  const text = (heading: string, lines: readonly string[]): ReportSection => ({
    heading,
    lines,
    isTable: false,
  });
  return [
    text('Mantel', [overall(plan, shop)]),
    text('Finished sizes', finishedLines(plan, shop)),
    text('At the walls', contactLines(plan, shop)),
    {
      heading: 'Parts, finished, from long point to long point, and their blanks',
      lines: partsTable(plan, shop),
      isTable: true,
    },
    text('Blanks', blankLines(plan, shop)),
    text('Angles: the wall as a bevel gauge reads it, the saw off square', [
      ...angleLines(plan),
      ...faceJointLines(plan.mantel),
    ]),
    text('Grain round the corners', runLines(plan, shop)),
    text('Weight', [weightLine(plan, weight, shop)]),
    text('Caution: distance from the fire', clearanceLines(clearanceCaution(plan), shop)),
    text('Caution: hanging', hangingLines(weight, plan.mantel.ledger !== null, shop.units)),
    text('Caution: short pieces', shortLines(plan, shop)),
    text('Grain of the panels', grainLines(plan, shop)),
    text('Wood movement', movement(plan, weight, shop)),
  ].filter(({ lines }) => lines.length > 0);
}

/** The same as plain text, folded to 100 columns. */
export function planReport(plan: MantelPlan, shop: Shop): string {
  return planSections(plan, shop)
    .map(({ heading, lines, isTable }) => {
      const body = isTable ? lines.map((line) => `  ${line}`) : lines.flatMap((line) => folded(line));
      return `${heading}\n${body.join('\n')}\n`;
    })
    .join('\n');
}

function overall(plan: MantelPlan, style: LengthStyle): string {
  const size = (length: Tick): string => formatLengthWithUnit(length, style);
  const { mantel, legs, front } = plan;
  const leg = legs[front]!;
  const names = legs.map(({ name }) => name).join(', ');
  const count =
    legs.length === 1 ? `One leg (${names})` : `${legs.length} legs (${names}), the front being ${leg.name}`;
  return (
    `${count}. The finished front stands ${size(leg.projection)} off the wall: its carcass is ${size(leg.depth)} deep and the ` +
    `facing stands before it. ${mantel.faceJoint === 'butt' ? 'Panels lie behind the facing' : 'Facing and panels meet in a miter along their long edges'}; ` +
    `all boards ${size(mantel.thickness)} thick.`
  );
}

function partsTable(plan: MantelPlan, style: Shop): string[] {
  const unit = style.units === 'mm' ? 'mm' : 'in';
  const head = ['part', `length, ${unit}`, 'width', 'thick', 'blank', 'left end', 'right end', 'note'];
  const run = facingRun(plan);
  const end = (degrees: number): string => (degrees === 0 ? 'square' : angleText(degrees));
  const rows = plan.pieces.map((piece) => [
    piece.name,
    formatLength(piece.length, style),
    formatLength(piece.width, style),
    formatLength(piece.thickness, style),
    blankText(piece, run.includes(piece), style),
    end(piece.leftEnd),
    end(piece.rightEnd),
    piece.note,
  ]);
  return textTable([head, ...rows]);
}

/** The blank as it is cut, of one board: in the run where the facing's is whole. Empty when it is of finished size. */
function blankText(piece: PlanPiece, inRun: boolean, shop: Shop): string {
  const { length, width } = blankSize({ ...piece, run: inRun ? piece.name : null }, shop, 1);
  if (length === piece.length && width === piece.width) return '';
  return `${formatLength(length, shop)} × ${formatLength(width, shop)}`;
}

/** What no column can say: how blanks differ when they are cut in another way than the table supposes. */
function blankLines(plan: MantelPlan, shop: Shop): string[] {
  const size = (length: Tick): string => formatLengthWithUnit(length, shop);
  const glued = plan.pieces.some(({ glueUp }) => glueUp > 1);
  return [
    ...(shop.miterAllowance > 0
      ? [`Cut outside the run, a facing's blank is ${size(shop.miterAllowance)} longer for each mitered end.`]
      : []),
    ...(glued && shop.gluedLengthAllowance + shop.gluedWidthAllowance > 0
      ? [
          `A panel that is glued up is made ${size(shop.gluedLengthAllowance)} longer and ` +
            `${size(shop.gluedWidthAllowance)} wider, and trimmed to its blank after.`,
        ]
      : []),
  ];
}

function angleLines(plan: MantelPlan): string[] {
  const cut = ({ piece, side, degrees, longPoint }: AngledCut): string =>
    `${piece} (${side} end) ${angleText(degrees)}, long point at the ${longPoint}`;
  return sawAngles(plan).map(({ where, wall, turn, bevels, panels, steep }) => {
    const angle = bevels[0]!.degrees;
    const jig = steep
      ? ` Few saws tilt beyond ${angleText(steepestCommonTilt)}: stand the piece on end in a jig and tilt ${angleText(90 - angle)}.`
      : '';
    const panelWords = panels.length === 0 ? '' : ` Panels: ${panels.map(cut).join('; ')}.`;
    const ends =
      bevels.length === 1
        ? 'the facing end'
        : turn < 0
          ? 'both facing ends, long points on the back'
          : 'both facing ends';
    const back = bevels.length === 1 ? `, long point on the ${bevels[0]!.longPoint}` : '';
    return `${where}: ${wall === null ? '' : `wall ${wall}, `}saw ${angleText(angle)} on ${ends}${back}.${jig}${panelWords}`;
  });
}

/** Beyond this many ways to break the run the list stops helping. */
const mostWaysShown = 3;

function runLines(plan: MantelPlan, shop: Shop): string[] {
  const run = facingRun(plan);
  if (run.length === 0) return [];
  const names = (groups: readonly (readonly string[])[]): string =>
    groups.map((group) => group.join(' + ')).join(' | ');
  const ways = breakRun(plan).slice(1, 1 + mostWaysShown);
  return [
    `The grain wraps the corners when the facing is cut from one strip, in this order: ${names([run.map(({ name }) => name)])}. ` +
      `That takes ${formatLengthWithUnit(runLength(run, shop.crosscutKerf), shop)} of one face, kerfs included.`,
    `Where the boards have no room for it whole, a layout breaks it at a |, the first of these that leaves no part short: ${ways.map(names).join(';  ')}.`,
  ];
}

/** Strip length of pieces cut one after another, with one kerf along the face between two, at the steeper of the two bevels. */
export function runLength(run: readonly PlanPiece[], kerf: Tick): Tick {
  return ticks(
    run.reduce((sum, piece, index) => {
      const next = run[index + 1];
      const angle = next === undefined ? 0 : Math.max(Math.abs(piece.rightEnd), Math.abs(next.leftEnd));
      return sum + piece.length + piece.extraLength + (next === undefined ? 0 : bevelKerf(kerf, angle));
    }, 0),
  );
}

function speciesNames({ mantel }: MantelPlan, { species }: PlanWeight): string {
  const asked = mantel.species.trim();
  if (species.length === 1) return asked;
  return species.length === 0 ? 'wood' : `${asked} (${species.map(({ name }) => name).join('; ')})`;
}

function weightLine(plan: MantelPlan, weight: PlanWeight, shop: Shop): string {
  const { boxBoardFeet, ledgerBoardFeet, species, box } = weight;
  const ledger = ledgerBoardFeet > 0 ? `, and ${ledgerBoardFeet.toFixed(1)} in the ledger` : '';
  const unknown =
    species.length > 0
      ? ''
      : ' The species is not in the table (or not given), so this is the range of all woods in it.';
  return (
    `${boxBoardFeet.toFixed(1)} board feet of finished wood in the box${ledger}. Of ${speciesNames(plan, weight)} at 12 % ` +
    `moisture the box weighs about ${weightText(box.least, box.most, shop.units)}.${unknown}`
  );
}

function shortLines(plan: MantelPlan, shop: Shop): string[] {
  const short = plan.pieces.filter(({ length }) => length < shop.shortestPiece);
  if (short.length === 0) return [];
  const named = short.map(({ name, length }) => `${name} (${formatLengthWithUnit(length, shop)})`).join(', ');
  return [
    `Shorter than ${formatLengthWithUnit(shop.shortestPiece, shop)}: ${named}. Do what you can to such a piece while it is still ` +
      'part of a longer strip, else hold it in a jig; keep hands clear of the blade.',
  ];
}

function movement(plan: MantelPlan, weight: PlanWeight, style: LengthStyle): string[] {
  const wood = weight.species.length === 0 ? 'wood' : plan.mantel.species.trim();
  return movementLines(movementNotes(plan), wood, style);
}

/** Folds a line to 98 columns and hangs what follows two in; a whole number and its fraction stay together. */
function folded(line: string): string[] {
  const lines: string[] = [];
  let current = '  ';
  for (const word of line.replace(/(\d) (?=\d+\/\d)/g, '$1\u00A0').split(' ')) {
    if (current.length + word.length > 98 && current.trim() !== '') {
      lines.push(current.trimEnd());
      current = '    ';
    }
    current += `${word} `;
  }
  return [...lines, current.trimEnd()].map((text) => text.replaceAll('\u00A0', ' '));
}
