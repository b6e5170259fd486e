import { type LengthStyle, formatLengthWithUnit } from '../../base/units/format-length.ts';
import { type Tick, inches, ticks, ticksPerInch } from '../../base/units/tick.ts';
import {
  type LeastDistance,
  ircClearance,
  leastDistance,
  leastDistanceNfpa,
  mostProjection,
} from '../../trade/clearance.ts';
import type { MantelPlan } from './plan-mantel.ts';

/** What the rules ask of a mantel over an opening, beside what this plan has. */
export interface ClearanceCaution {
  /** From the top of the opening to the underside; null: not given. */
  readonly height: Tick | null;
  /** The most that any leg stands off its wall, facing included. */
  readonly projection: Tick;
  /** The model code turned round for that projection. */
  readonly ircAsks: LeastDistance;
  /** Inches that the model code lets project at that height; null: no limit from this rule, or no height given. */
  readonly ircLets: number | null;
  /** Inches from the top of the opening, for that projection. */
  readonly nfpaAsks: number;
  /** Whether the plan's figures lie within what either rule asks for; null when the height is not given. */
  readonly nearerThanAsked: boolean | null;
}

/** The figures of the clearance caution. It compares; it never says that a design is safe or complies. */
export function clearanceCaution(plan: MantelPlan): ClearanceCaution {
  const { heightAboveOpening: height } = plan.mantel;
  const projection = ticks(Math.max(...plan.legs.map((leg) => leg.projection)));
  const off = projection / ticksPerInch;
  const ircAsks = leastDistance(off);
  const nfpaAsks = leastDistanceNfpa('above', off);
  if (height === null) return { height, projection, ircAsks, ircLets: null, nfpaAsks, nearerThanAsked: null };
  const up = height / ticksPerInch;
  const tooNear = ircAsks.beyond ? up <= ircAsks.inches : up < ircAsks.inches;
  return {
    height,
    projection,
    ircAsks,
    ircLets: mostProjection(up),
    nfpaAsks,
    nearerThanAsked: tooNear || up < nfpaAsks,
  };
}

/** The caution in words: what the rules ask, what this plan has, who decides. */
export function clearanceLines(caution: ClearanceCaution, style: LengthStyle): string[] {
  const size = (length: Tick): string => formatLengthWithUnit(length, style);
  const sized = (count: number): string => size(ticks(Math.round(inches(1) * count)));
  const { height, projection, ircAsks, nfpaAsks } = caution;
  const lines = [
    `The model code for masonry fireplaces (IRC 2018, R1001.11, exception 4): no combustible trim within ` +
      `${sized(ircClearance.none)} of the opening; from there to ${sized(ircClearance.sliding)} it may project 1/8 of ` +
      `its distance; farther off the rule sets no limit.`,
    `For something that projects ${size(projection)} it asks for ${ircAsks.beyond ? 'more than' : 'at least'} ` +
      `${sized(ircAsks.inches)}. NFPA 211 asks for at least ${sized(nfpaAsks)} above the opening.`,
  ];
  if (height === null) {
    lines.push(
      `This plan projects ${size(projection)}; its height above the opening is not given. Measure it.`,
    );
  } else {
    lines.push(`This plan: ${size(projection)} projection, its underside ${size(height)} above the opening.`);
    if (caution.nearerThanAsked === true) lines.push(nearer(caution, style));
  }
  lines.push(
    'A factory-built fireplace, gas appliance or insert has a listing of its own, which comes first, as does local code. ' +
      'Ask the building department or a licensed installer; this tool does not decide it.',
  );
  return lines;
}

function nearer({ ircLets }: ClearanceCaution, style: LengthStyle): string {
  const most = ircLets === null ? null : formatLengthWithUnit(ticks(Math.round(inches(1) * ircLets)), style);
  const lets =
    most === null
      ? ''
      : ircLets === 0
        ? ' At that height the model code allows none.'
        : ` At that height the model code lets ${most} project.`;
  return `THAT IS NEARER THAN THESE RULES ASK FOR.${lets} Raise the mantel or make it shallower before you cut.`;
}
