import type { Solved } from './measure.ts';
import type { Outcome } from './run-child.ts';

/** Share of a value below which two sums of money are equal. */
const rounding = 1e-6;

function below(a: number, b: number): boolean {
  return a < b - rounding * (1 + Math.abs(b));
}

/** Seconds between two chances to stop beyond which Ctrl-C feels deaf. */
const deaf = 2;

/** What must never be: each makes the bench fail. */
export function faultsOf(outcome: Outcome): string[] {
  const { runs, byHand, byMip, known, failures } = outcome;
  const [run] = runs;
  const found = [...failures];
  if (run === undefined) return found.length > 0 ? found : ['no answer'];
  const faults = runs.flatMap((one) => one.faults);
  if (faults.length > 0)
    found.push(`${faults.length} faults in the layout: ${faults.slice(0, 3).join('; ')}`);
  if (below(run.value, run.bound)) found.push(`value ${run.value} below bound ${run.bound}`);
  const sums = new Set(runs.filter(({ stopped }) => !stopped).map(({ checksum }) => checksum));
  if (sums.size > 1) found.push(`not the same answer each time: ${[...sums].join(', ')}`);
  if (run.proven && run.gap > rounding) found.push('proven with a gap');
  if (byHand !== null && byHand.faults.length > 0)
    found.push(`the hand method's layout: ${byHand.faults[0]}`);
  if (run.short > 0) {
    if (byHand !== null && byHand.short < run.short)
      found.push(`${run.short} short, by hand ${byHand.short}`);
    return found;
  }
  if (byHand !== null && byHand.short === 0) {
    if (below(byHand.cost, run.value)) found.push(`dearer than by hand: ${run.value} > ${byHand.cost}`);
    if (below(byHand.cost, run.bound))
      found.push(`bound ${run.bound} above the hand method's ${byHand.cost}`);
  }
  if (byMip !== null && below(byMip.cost, run.bound))
    found.push(`bound ${run.bound} above the MIP's ${byMip.cost}`);
  if (known !== null && below(known, run.bound))
    found.push(`bound ${run.bound} above the known optimum ${known}`);
  if (known !== null && below(run.value, known))
    found.push(`value ${run.value} below the known optimum ${known}`);
  return found;
}

/** What is worth a look, but no fault. */
export function notesOf(outcome: Outcome): string[] {
  const { runs, byMip, known } = outcome;
  const [run] = runs;
  if (run === undefined) return [];
  const notes: string[] = [];
  if (run.stopped) notes.push('ended by the clock');
  if (run.short > 0) notes.push(`${run.short} short`);
  if (known !== null && below(known, run.value)) notes.push(`known optimum ${known.toFixed(2)}`);
  if (byMip !== null && below(byMip.cost, run.value)) notes.push('the MIP chooses better');
  if (run.longestStep > deaf) notes.push(`${run.longestStep.toFixed(1)} s deaf while ${run.longestDoing}`);
  return notes;
}

/** The middle one by processor time. */
export function medianRun(runs: readonly Solved[]): Solved | undefined {
  return [...runs].sort((a, b) => a.cpu - b.cpu)[Math.floor((runs.length - 1) / 2)];
}
