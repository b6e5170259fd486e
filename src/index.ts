/**
 * mantelwright's public door and table of contents, in the order the data flows. The core behind it is pure: it reads
 * no file, clock or environment. The shell, which does, takes all it needs from here.
 */

// base: lengths in whole ticks
export * from './base/units/tick.ts';
export * from './base/units/read-length.ts';
export { runTogether } from './base/units/run-together.ts';
export * from './base/units/format-length.ts';
export * from './base/units/write-length.ts';
export type { RoundingSide } from './base/units/rounded-quotient.ts';
export type { Rectangle } from './base/geometry/rectangle.ts';

// base: what a user can cause is a value
export type { Place, ProblemBase, Result } from './base/result/result.ts';
export { failure, success } from './base/result/result.ts';
export * from './base/result/unreachable.ts';

// base: text, tables and markup
export * from './base/text/nearest-name.ts';
export * from './base/text/terminal-width.ts';
export * from './base/csv/read-csv.ts';
export * from './base/csv/write-csv.ts';
export * from './base/markup/element.ts';

// trade: published tables
export * from './trade/board-feet.ts';
export * from './trade/thickness.ts';
export { allSpecies, type Species, speciesCalled } from './trade/species.ts';

// shop: the saw and its settings
export * from './flow/shop/shop.ts';

// plan: from wall measurements to the parts of a mantel
export type { EndKind, Leg, Mantel } from './flow/plan/mantel.ts';
export { type MantelPlan, type PlanOptions, planMantel } from './flow/plan/plan-mantel.ts';
export type { PlanProblem, SizeName } from './flow/plan/plan-problem.ts';
export { planProblemWords } from './flow/plan/plan-problem-words.ts';
export { type WallCorner, turnOf } from './flow/plan/wall-corner.ts';
export { planReport, planSections, type ReportSection } from './flow/plan/plan-report.ts';
export { drawPlanView } from './flow/plan/draw/plan-view.ts';
export { drawSection } from './flow/plan/draw/section.ts';
export { breakRun, facingRun, type RunGroups } from './flow/plan/run-break.ts';

// parts and stock: what to cut, and from what
export type * from './flow/parts/part.ts';
export { isAskedFor, type Match } from './flow/parts/match.ts';
export type { PartRow } from './flow/parts/part-row.ts';
export {
  adopted,
  losesWork,
  type MadeOtherwise,
  type PartField,
  replan,
  type Replanned,
  type RowChange,
} from './flow/parts/replan.ts';
export { planParts } from './flow/parts/plan-parts.ts';
export type { Board, Surface } from './flow/stock/board.ts';
export { usable } from './flow/stock/usable.ts';
export * from './flow/stock/defect.ts';
export type { Job } from './flow/stock/job.ts';

// choice: which boards, and what on each
export type * from './flow/choice/choice.ts';
export * from './flow/choice/progress.ts';
export type {
  GroupAsk,
  OpenThread,
  OtherThread,
  SharedAsks,
  SharedExchange,
} from './flow/choice/other-thread.ts';
export { answerer } from './flow/choice/other-thread.ts';
export type { Exchange, Exchanged } from './flow/choice/exchange/exchange.ts';
export { exchangeColumns } from './flow/choice/exchange/exchange-columns.ts';
export type { Priced } from './flow/choice/price-together.ts';

// cuts: the order of rips and crosscuts, and the answer for programs
export type * from './flow/cuts/layout.ts';
export { layOut } from './flow/cuts/lay-out.ts';

// check: the whole answer worked anew, by code that shares none with the stages above
export type { CheckProblem } from './flow/check/fault.ts';
export { verify } from './flow/check/verify.ts';
export { describeFault } from './flow/check/describe-fault.ts';
export { describeShapeProblem, parseLayout } from './flow/check/parse-layout.ts';

// the whole run: one call for each stage
export { type CheckedLayout, type ForRack, layOutJob, planJob, type PlannedParts } from './pipeline.ts';

// sheet: everything a checked layout is shown as
export { boardSvg } from './flow/sheet/board/board-svg.ts';
export { type SheetExtras, sheetHtml } from './flow/sheet/page/sheet-html.ts';
export { stretchWords } from './flow/sheet/words/grain-words.ts';
export type { Said } from './flow/sheet/words/cautions.ts';
export { shownWoodLines, unnamedWood } from './flow/sheet/words/wood-words.ts';
export { layoutCsv, layoutRows } from './flow/sheet/table/layout-rows.ts';
export { cutsCsv, cutsRows } from './flow/sheet/table/cuts-rows.ts';
export { summaryText } from './flow/sheet/text/summary-text.ts';

// rack: what the cuts left, kept in a journal, as stock of the next job
export type { BookingDraft } from './flow/rack/booking-draft.ts';
export { bookingText } from './flow/rack/booking-draft.ts';
export { bookLayout, type CutLayout, type LayoutBooking } from './flow/rack/book-layout.ts';
export * from './flow/rack/by-hand.ts';
export { findPiece } from './flow/rack/find-piece.ts';
export { foldJournal, type Held, onRack, type Rack, type UsedBoard } from './flow/rack/fold.ts';
export { isJournal } from './flow/rack/is-journal.ts';
export { labelsHtml } from './flow/rack/labels/labels-html.ts';
export { listPieces, type PieceFilter } from './flow/rack/list-pieces.ts';
export { nameOffcuts } from './flow/rack/name-offcuts.ts';
export { offcutWorth } from './flow/rack/offcut-worth.ts';
export { type Need, needsOf, usualNeeds } from './flow/rack/need.ts';
export type { RackPiece } from './flow/rack/piece.ts';
export type { BookingProblem, JournalNotice, NoJournal } from './flow/rack/problem.ts';
export { rackBoardsOf, rackNote, type RackNote } from './flow/rack/rack-note.ts';
export { rackTable, rackTotals } from './flow/rack/rack-table.ts';
export { emptyJournal, type Journal, readJournal } from './flow/rack/read-journal.ts';
export { jobOfLayout, type StockedJob, stockedJob, withoutRack } from './flow/rack/stock-for-job.ts';
export { type Turn, turns } from './flow/rack/turn.ts';
export { type Kerfs, totalUsefulness, usefulness } from './flow/rack/usefulness.ts';

// decide: the show face. What each choice costs, and what it makes impossible
export { drawFace } from './decide/faces/draw-face.ts';
export { type FaceTable, faceTable, type LayOutSteps } from './decide/faces/face-table.ts';
export { hindranceWords } from './decide/faces/face-words.ts';
export { facesJson } from './decide/faces/faces-json.ts';
export { facesPage } from './decide/faces/faces-page.ts';
export { facesCsv, facesText } from './decide/faces/faces-text.ts';
export { type Focus, focusOf, type FocusProblem } from './decide/faces/focus.ts';
export { type FaceOfLayout, type LayoutAnswer, layoutAnswer } from './decide/faces/layout-answer.ts';
export { glueLines } from './decide/faces/layout-face.ts';
export { readWish, type WishProblem } from './decide/faces/wish.ts';

// decide: buying. The grade of marked boards; what to ask for; which boards of a yard to take
export { readGrade } from './trade/grades/read-grade.ts';
export { type TallyRow, tallySteps } from './decide/buy/tally/tally.ts';
export { tallyJson } from './decide/buy/tally/tally-json.ts';
export { tallyPage } from './decide/buy/tally/tally-page.ts';
export { tallyCsv, tallyText } from './decide/buy/tally/tally-rows.ts';
export { type ComesOut, completer } from './decide/buy/comes-out/completer.ts';
export { type SolveJob, solver } from './decide/buy/solve-job.ts';
export { type DrawnGrade, drawnGrades } from './decide/buy/lumber/population.ts';
export { type Lumber, type Visit, drawMixedVisit, drawVisit } from './decide/buy/estimate/draw.ts';
export {
  type Mix,
  type MixEstimate,
  hardestToFind,
  mixEstimate,
  mixesOf,
} from './decide/buy/estimate/mix.ts';
export { wantedPieces } from './decide/buy/estimate/wanted.ts';
export {
  type LumberWanted,
  lumberName,
  lumberWanted,
  ownedSuffice,
  toDraw,
} from './decide/buy/estimate/lumber-wanted.ts';
export { type GradeEstimate, gradeEstimate, type LumberEstimate } from './decide/buy/estimate/estimate.ts';
export { priceOf } from './decide/buy/estimate/grade-price.ts';
export type { JobEstimate } from './decide/buy/estimate/estimate-words.ts';
export { chanceChart } from './decide/buy/estimate/chance-chart.ts';
export { estimatePage } from './decide/buy/estimate/estimate-page.ts';
export { estimateCsv, estimateJson, estimateText } from './decide/buy/estimate/estimate-text.ts';
export { leastMoney } from './decide/buy/yard/least-money.ts';
export { type YardAnswer, yardAnswer } from './decide/buy/yard/yard-answer.ts';
export { yardPage } from './decide/buy/yard/yard-page.ts';
export { yardCsv, yardJson, yardText } from './decide/buy/yard/yard-text.ts';
