import { type Tick, ticksPerInch } from '../base/units/tick.ts';

const squareTicksPerSquareFoot = 144 * ticksPerInch * ticksPerInch;
const ticksPerFoot = 12 * ticksPerInch;

/**
 * Board feet by volume: one board foot is 1 ft × 1 ft × 1 in of nominal thickness.
 * Stock thinner than 1 in counts as 1 in (TRADE 2.1: Wengert's terminology reprint; US Navy, Engineering Aid Basic).
 * @param length ticks, ≥ 0   @param width ticks, ≥ 0   @param nominalInches nominal thickness, 1 for 4/4
 * @returns board feet, not rounded
 * @example boardFeet(inches(96), inches(9), 1) // 6
 */
export function boardFeet(length: Tick, width: Tick, nominalInches: number): number {
  return ((length * width) / squareTicksPerSquareFoot) * Math.max(1, nominalInches);
}

/**
 * Board feet that a finished piece really holds (144 cubic inches each), thin or thick: for weights, not for buying.
 * @param length ticks   @param width ticks   @param thickness ticks, the finished one
 */
export function solidBoardFeet(length: Tick, width: Tick, thickness: Tick): number {
  return ((length * width) / squareTicksPerSquareFoot) * (thickness / ticksPerInch);
}

/**
 * Surface measure of one board in whole square feet: full width in inches with its fractions × whole feet of
 * length (a fraction of a foot is dropped) ÷ 12, to the nearest whole foot. Worked in whole ticks, so exact.
 * @param atHalf what an exact half becomes; a tally alternates (see `surfaceMeasures`)
 * Source: NHLA, Rules for the Measurement and Inspection of Hardwood and Cypress (2015), para. 18 and its measurement
 * examples; halves: King, Elements of Woodwork (1911), and NHLA from memory.
 * @example surfaceMeasure(inches(96), inches(6.5)) // 4, from 4 1/3
 */
export function surfaceMeasure(length: Tick, width: Tick, atHalf: 'down' | 'up' = 'down'): number {
  const wholeFeet = Math.floor(length / ticksPerFoot);
  const twice = 2 * width * wholeFeet;
  const isHalf = twice % (2 * ticksPerFoot) === ticksPerFoot;
  const down = Math.floor(twice / (2 * ticksPerFoot));
  if (isHalf) return atHalf === 'up' ? down + 1 : down;
  return Math.floor((twice + ticksPerFoot) / (2 * ticksPerFoot));
}

/** Surface measures of a tally in its order: exact halves go down and up by turns, the first one down. */
export function surfaceMeasures(
  boards: readonly { readonly length: Tick; readonly width: Tick }[],
): number[] {
  const measures: number[] = [];
  let halves = 0;
  for (const { length, width } of boards) {
    const low = surfaceMeasure(length, width, 'down');
    const isHalf = surfaceMeasure(length, width, 'up') !== low;
    measures.push(isHalf && halves % 2 === 1 ? low + 1 : low);
    if (isHalf) halves += 1;
  }
  return measures;
}

/**
 * Board feet that a yard charges for one copy of a board, on the average over its copies: surface measure × nominal
 * thickness. What is too small to count a whole square foot stands on no tally and is charged by its content (ours).
 * @param measures surface measure of each copy, as tallied; the average makes good that exact halves go down and up by turns
 */
export function yardFeet(
  length: Tick,
  width: Tick,
  nominalInches: number,
  measures: readonly number[],
): number {
  const content = boardFeet(length, width, nominalInches);
  if (measures.length === 0) return content;
  const charged = measures.map((measure) =>
    measure === 0 ? content : talliedBoardFeet([measure], nominalInches),
  );
  return charged.reduce((sum, feet) => sum + feet, 0) / measures.length;
}

/**
 * Board feet of a tally of one thickness as a yard counts them: surface measures summed, then × nominal thickness.
 * Not rounded: the trade rounds a bundle's total, once, to the closest foot.
 * Source: Wengert's terminology reprint (TRADE 2.1).
 */
export function talliedBoardFeet(measures: readonly number[], nominalInches: number): number {
  return measures.reduce((sum, measure) => sum + measure, 0) * Math.max(1, nominalInches);
}
