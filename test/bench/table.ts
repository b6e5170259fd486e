import { faultsOf, medianRun, notesOf } from './judge.ts';
import type { Outcome } from './run-child.ts';

/** Column heads; first and best by the clock that limits the solve, to the checked layout by both; money in the job's. */
const heads = [
  'job',
  'kinds/pieces/boards',
  'value',
  'bound',
  'gap %',
  'proven',
  'first s',
  'best s',
  'wall s',
  'cpu s',
  'MB',
  'by hand',
  'saved %',
  'MIP',
  'checksum',
  'notes',
] as const;

const widths = [14, 19, 9, 9, 6, 6, 7, 7, 7, 7, 5, 9, 7, 9, 8, 0];

function money(value: number | undefined): string {
  return value === undefined || Number.isNaN(value) ? '–' : value.toFixed(2);
}

function seconds(value: number): string {
  return value < 100 ? value.toFixed(2) : value.toFixed(0);
}

/** Share of the hand method's cost that the solver saves, in per cent; null where they cannot be compared. */
export function savedShare({ runs, byHand }: Outcome): number | null {
  const [run] = runs;
  if (run === undefined || byHand === null || byHand.short > 0 || run.short > 0) return null;
  return 100 * (1 - run.value / byHand.cost);
}

function cells(outcome: Outcome): string[] {
  const { family, job, size, byHand, byMip } = outcome;
  const run = medianRun(outcome.runs);
  const faults = faultsOf(outcome).map((fault) => `FAULT: ${fault.split('\n')[0]}`);
  const head = [`${family} ${job}`, size === null ? '–' : `${size.kinds}/${size.pieces}/${size.boards}`];
  const notes = [...faults, ...notesOf(outcome)].join('; ');
  if (run === undefined) return [...head, ...Array.from({ length: 13 }, () => '–'), notes];
  const saved = savedShare(outcome);
  return [
    ...head,
    money(run.value),
    money(run.bound),
    (100 * run.gap).toFixed(2),
    run.proven ? 'yes' : 'no',
    seconds(run.first),
    seconds(run.best),
    seconds(run.wall),
    seconds(run.cpu),
    run.megabytes.toFixed(0),
    byHand === null ? '–' : `${money(byHand.cost)}${byHand.short > 0 ? '*' : ''}`,
    saved === null ? '–' : saved.toFixed(1),
    byMip === null ? '–' : `${money(byMip.cost)}${byMip.status === 'Optimal' ? '' : '?'}`,
    run.checksum,
    notes,
  ];
}

function padded(row: readonly string[]): string {
  return row
    .map((cell, c) => (c === 0 || c === 15 ? cell.padEnd(widths[c] ?? 0) : cell.padStart(widths[c] ?? 0)))
    .join('  ')
    .trimEnd();
}

export function headLine(): string {
  return padded(heads);
}

export function outcomeLine(outcome: Outcome): string {
  return padded(cells(outcome));
}

function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
}

function middle(values: readonly number[], digits: number): string {
  if (values.length === 0) return '–';
  return `${quantile(values, 0.5).toFixed(digits)} (${Math.min(...values).toFixed(digits)} to ${Math.max(...values).toFixed(digits)})`;
}

/** What a family came to: counts, medians and, in brackets, the least and the most. */
export function summary(outcomes: readonly Outcome[]): readonly (readonly [string, string])[] {
  const solved = outcomes.flatMap((outcome) => {
    const run = medianRun(outcome.runs);
    return run === undefined ? [] : [{ outcome, run }];
  });
  const complete = solved.filter(({ run }) => run.short === 0);
  const known = complete.filter(({ outcome }) => outcome.known !== null);
  const atKnown = known.filter(
    ({ outcome, run }) => Math.abs(run.value - (outcome.known ?? 0)) < 1e-6 * run.value,
  );
  const overKnown = known.map(({ outcome, run }) =>
    Math.max(0, 100 * (run.value / (outcome.known ?? 1) - 1)),
  );
  const saved = outcomes.flatMap((outcome) => savedShare(outcome) ?? []);
  const mip = outcomes.filter(({ byMip }) => byMip !== null);
  return [
    [
      'jobs',
      `${outcomes.length}; ${complete.length} complete, ${solved.length - complete.length} with parts short`,
    ],
    ['faults', String(outcomes.filter((outcome) => faultsOf(outcome).length > 0).length)],
    ['proven optimal', String(solved.filter(({ run }) => run.proven).length)],
    [
      'gap %',
      middle(
        solved.map(({ run }) => 100 * run.gap),
        2,
      ),
    ],
    [
      'first layout s',
      middle(
        solved.map(({ run }) => run.first),
        2,
      ),
    ],
    [
      'best layout s',
      middle(
        solved.map(({ run }) => run.best),
        2,
      ),
    ],
    [
      'wall s',
      middle(
        solved.map(({ run }) => run.wall),
        2,
      ),
    ],
    [
      'cpu s',
      middle(
        solved.map(({ run }) => run.cpu),
        2,
      ),
    ],
    [
      'memory MB',
      middle(
        solved.map(({ run }) => run.megabytes),
        0,
      ),
    ],
    ['saved against the hand method %', middle(saved, 1)],
    ...(known.length === 0
      ? []
      : ([
          ['at the known optimum', `${atKnown.length} of ${known.length}`],
          ['above the known optimum %', middle(overKnown, 2)],
        ] as const)),
    ...(mip.length === 0
      ? []
      : ([
          [
            'MIP on the same columns finished',
            `${mip.filter(({ byMip }) => byMip?.status === 'Optimal').length} of ${mip.length}`,
          ],
        ] as const)),
  ];
}

/** The family as Markdown: its summary, then every job. */
export function markdown(title: string, outcomes: readonly Outcome[]): string {
  const row = (of: readonly string[]): string =>
    `| ${of.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
  const rule = (count: number): string => row(Array.from({ length: count }, () => '---'));
  return [
    `### ${title}`,
    '',
    row(['', 'median (least to most)']),
    rule(2),
    ...summary(outcomes).map((line) => row(line)),
    '',
    row(heads),
    rule(heads.length),
    ...outcomes.map((outcome) => row(cells(outcome))),
    '',
  ].join('\n');
}
