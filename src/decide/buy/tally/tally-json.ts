import { ticksPerInch } from '../../../base/units/tick.ts';
import { cuttingUnits } from '../../../trade/grades/cutting-size.ts';
import type { GradeFinding } from '../../../trade/grades/grade-finding.ts';
import type { TallyRow } from './tally.ts';
import { opinion } from './claim-words.ts';

/** The tally for programs: lengths in ticks, units in cutting units; `atMost` null where any number is allowed. */
export function tallyJson(job: string, rows: readonly TallyRow[]): string {
  return `${JSON.stringify({
    format: 'mantelwright tally 1',
    ticksPerInch,
    job,
    note: opinion,
    boards: rows.map((row) => ({
      board: row.board.name,
      from: row.from,
      quantity: row.board.quantity,
      length: row.board.length,
      width: row.board.width,
      surfaceMeasures: row.surfaceMeasures,
      boardFeet: row.boardFeet,
      boardFeetMeasured: row.measuredBoardFeet,
      price: row.price,
      claimed: row.board.grade,
      claim: row.claim.kind,
      grade: row.grade.grade,
      findings: allFindings(row).map(findingJson),
    })),
  })}\n`;
}

/** Every grade looked at, best first: down to the one met, and the claimed one. */
function allFindings({ grade, claim }: TallyRow): GradeFinding[] {
  const claimed = 'finding' in claim && !grade.findings.includes(claim.finding) ? [claim.finding] : [];
  return [...grade.findings, ...claimed];
}

function findingJson({ grade, outcome, largeEnough, faces, limits }: GradeFinding) {
  return {
    grade,
    outcome,
    largeEnough,
    limits,
    faces: faces.map(({ face, rule, tried, outcome: faceOutcome }) => ({
      face,
      rule,
      outcome: faceOutcome,
      ways: tried.map((way) => ({
        way: way.way.kind,
        atMost: 'atMost' in way.way && way.way.atMost !== Infinity ? way.way.atMost : null,
        unitsNeeded: cuttingUnits(way.neededTimes100 / 100),
        unitsFound: cuttingUnits(way.found),
        unitsAtMost: cuttingUnits(way.bound),
        proven: way.found === way.bound,
        outcome: way.outcome,
        cuttings: way.cuttings.map(({ x, y, length, width }) => ({ x, y, length, width })),
      })),
    })),
  };
}
