import type { Highs } from 'highs';
import { keptOffcuts, maximalCounts } from '../../patterns/strip/every-cut.ts';
import { kindsOfJob } from './job-kinds.ts';
import { jobPlates } from './job-plates.ts';
import type { TinyJob } from './tiny-job.ts';

/** One way to cut one copy of a board: what it costs (offcut credit taken off) and how many of each kind it gives. */
interface Way {
  readonly board: number;
  readonly cost: number;
  readonly counts: readonly number[];
}

/** Every way to cut each board that could be of use: the largest sets of pieces, or with credit every set. */
function waysOf(tiny: TinyJob, tone: string | null): Way[] {
  const { job, cell } = tiny;
  const { shop } = job;
  return jobPlates(tiny, tone).flatMap(({ plate, kinds, runs }, index): Way[] => {
    const { cost, length, width } = job.boards[index]!;
    if (plate.length <= 0 || plate.width <= 0) return [];
    if (shop.goal === 'most value' || shop.offcutCredit === 0)
      return maximalCounts(plate, kinds, runs).map((counts) => ({ board: index, cost, counts }));
    if (runs.length > 0) throw new Error('no runs where offcuts earn credit');
    const keep = { length: shop.leastOffcutLength / cell, width: shop.leastOffcutWidth / cell };
    const whole = (length / cell) * (width / cell);
    return keptOffcuts(plate, kinds, keep).map(({ counts, area }) => ({
      board: index,
      cost: cost * (1 - (shop.offcutCredit * area) / whole),
      counts,
    }));
  });
}

/** What leaving one copy of a part out costs: more than all boards together, and more for a part of more value. */
export function penalties({ job }: Pick<TinyJob, 'job'>): number[] {
  const values = job.parts.map(({ value, length, width }) => value ?? (length * width) / 8128 ** 2);
  if (job.shop.goal === 'most value') return values;
  const all = job.boards.reduce((sum, { cost, quantity }) => sum + cost * quantity, 0) + 1;
  const least = Math.min(...values.filter((value) => value > 0));
  return values.map((value) => all * (value > 0 ? value / least : 1));
}

/** A glued-up part's strips of one sort from boards of one tone, and how many make a copy. */
interface Gluing {
  readonly part: number;
  readonly kind: number;
  readonly strips: number;
  readonly tone: string;
}

function gluingsOf({ job }: TinyJob): Gluing[] {
  const tones = [...new Set(job.boards.map(({ tone }) => tone))];
  return kindsOfJob(job).flatMap(({ parts, strips }, kind) =>
    strips === 1 ? [] : tones.map((tone) => ({ part: parts[0]!, kind, strips, tone })),
  );
}

/** The program's rows: `x` ways, `g` copies glued up, `s` copies of each part left out. */
function rowsOf(tiny: TinyJob, ways: readonly Way[], gluings: readonly Gluing[]): string[] {
  const { job } = tiny;
  const kinds = kindsOfJob(job);
  const countsOf = (kind: number, tone: string | null): string[] =>
    ways.flatMap(({ board, counts }, w) => {
      const isOfTone = tone === null || job.boards[board]!.tone === tone;
      return isOfTone && counts[kind]! > 0 ? [`${counts[kind]} x${w}`] : [];
    });
  const cover = job.parts.map(({ quantity }, part) => {
    const kind = kinds.findIndex(({ parts, strips }) => strips === 1 && parts.includes(part));
    const whole = kind < 0 ? [] : countsOf(kind, null);
    const glued = gluings.flatMap((gluing, g) => (gluing.part === part ? [`g${g}`] : []));
    return `c${part}: ${[...whole, ...glued, `s${part}`].join(' + ')} >= ${quantity}`;
  });
  const strips = gluings.map(({ kind, strips: each, tone }, g) => {
    const cut = countsOf(kind, tone);
    return `t${g}: ${cut.length > 0 ? `${cut.join(' + ')} ` : ''}- ${each} g${g} >= 0`;
  });
  const stock = job.boards.flatMap(({ quantity }, board) => {
    const terms = ways.flatMap((way, w) => (way.board === board ? [`x${w}`] : []));
    return terms.length === 0 ? [] : [`b${board}: ${terms.join(' + ')} <= ${quantity}`];
  });
  return [...cover, ...strips, ...stock];
}

/**
 * The least of boards' cost plus penalties of parts left out over every way to cut every board, found by an independent
 * integer solver: a set-covering program, one whole variable for each way (under `most value` boards cost nothing) and
 * one for each sort of strips that copies may be glued of.
 * @param tone the only one of whose boards the parts that show are cut; null: any
 */
export function bestTotal(highs: Highs, tiny: TinyJob, tone: string | null = null): number {
  const isMost = tiny.job.shop.goal === 'most value';
  const ways = waysOf(tiny, tone);
  const gluings = gluingsOf(tiny);
  const penalty = penalties(tiny);
  const costs = ways.map((way, w) => `${isMost ? 0 : way.cost} x${w}`);
  const lacks = penalty.map((money, part) => `${money} s${part}`);
  const whole = [
    ...ways.map((_, w) => `x${w}`),
    ...gluings.map((_, g) => `g${g}`),
    ...penalty.map((_, p) => `s${p}`),
  ];
  const program = [
    'Minimize',
    ` obj: ${[...costs, ...lacks].join(' + ')}`,
    'Subject To',
    ...rowsOf(tiny, ways, gluings).map((row) => ` ${row}`),
    'General',
    ` ${whole.join(' ')}`,
    'End',
  ].join('\n');
  const { Status, ObjectiveValue } = highs.solve(program, {
    mip_rel_gap: 0,
    mip_abs_gap: 1e-9,
    output_flag: false,
  });
  if (Status !== 'Optimal') throw new Error(`the integer solver says ${Status}`);
  return ObjectiveValue;
}
