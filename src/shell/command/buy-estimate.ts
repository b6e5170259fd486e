import {
  type Board,
  type GradeEstimate,
  type JobEstimate,
  type LumberWanted,
  drawnGrades,
  estimateCsv,
  estimateJson,
  estimatePage,
  estimateText,
  chanceChart,
  gradeEstimate,
  isAskedFor,
  lumberName,
  lumberWanted,
  priceOf,
  toDraw,
} from '../../index.ts';
import { type Draw, drawMixes } from '../buy/draw-mixes.ts';
import { drawVisits } from '../buy/draw-visits.ts';
import { sanitiseFileName } from '../write/file-name.ts';
import type { VisitTask } from '../buy/visit-task.ts';
import { type Buying, answer } from './buying.ts';
import { type Limit, drive } from './drive.ts';
import { exitCodes, exitWith, nothingYet } from './end.ts';
import { progressLine } from './progress-line.ts';
import type { World } from './world.ts';

/**
 * `buy` without a yard: draws imaginary visits and says how many board feet of which grade to ask for.
 * @param priced boards whose grades and prices tell what a board foot of a grade costs
 */
export async function buyByEstimate(buying: Buying, priced: readonly Board[], world: World): Promise<void> {
  const { job, options } = buying;
  const { wanted, tooThick } = lumberWanted(job);
  const grades = options.grades ?? drawnGrades;
  const { seed } = options;
  const { value: suffices, ended } = await drive({ kind: 'owned', wanted, seed }, world, buying.limit);
  if (suffices === null || ended === 'interrupted') return nothingYet(ended, world);
  const toBuy = wanted.filter((_, index) => suffices[index] === false);
  const tasks = toBuy.flatMap((lumber) => grades.map((grade) => taskOf(lumber, grade, buying)));
  const watch = watched(buying.limit, world);
  const visits = await watch.draw(tasks, 'visits');
  const drawn = Math.min(options.draws, ...visits.map((list) => list.length));
  if (drawn < 1) {
    world.stderr.write('mantelwright: stopped before the first visit was drawn\n');
    exitWith(exitCodes.badInput);
  }
  const given = options.prices ?? new Map();
  const graded = toBuy.map((lumber, at) => ({
    wanted: lumber,
    grades: grades.map((grade, index): GradeEstimate => {
      const alike = priced.filter(({ species }) => isAskedFor(species, lumber.species));
      const price = priceOf(grade, given, alike, lumber.nominalInches);
      const own = visits[at * grades.length + index]!.slice(0, drawn);
      return gradeEstimate(lumber, grade, price, own, toBuy.length);
    }),
  }));
  const mixes = await drawMixes(graded, drawn, options.seed, watch.draw);
  const estimate: JobEstimate = {
    lumber: wanted.map((lumber) => {
      const at = toBuy.indexOf(lumber);
      return { wanted: lumber, grades: graded[at]?.grades ?? [], mix: mixes[at] ?? null };
    }),
    seed: options.seed,
    visits: drawn,
    owned: job.boards.reduce((sum, { quantity }) => sum + quantity, 0),
    tooThick: tooThick.map(({ name }) => name),
  };
  const drawnFor = estimate.lumber.filter((lumber) => lumber.grades.length > 0);
  const charts = drawnFor.map((lumber) => ({
    name: `${chartName(lumber.wanted, toBuy)}.svg`,
    text: `${chanceChart(lumber).markup}\n`,
  }));
  const files = [
    { name: 'buy.html', text: estimatePage(job.name, estimate) },
    { name: 'buy.csv', text: estimateCsv(estimate) },
    ...charts,
  ];
  const early =
    drawn < options.draws ? `\nstopped early: ${drawn} of ${options.draws} visits for each grade` : '';
  const words = { text: `${estimateText(estimate)}${early}`, json: estimateJson(job.name, estimate) };
  await answer(buying, files, words, world);
}

/** `buy-4-4`; with the species where several are bought of one thickness. */
function chartName(wanted: LumberWanted, all: readonly LumberWanted[]): string {
  const alike = all.filter(({ nominalThickness }) => nominalThickness === wanted.nominalThickness);
  const name = alike.length > 1 ? lumberName(wanted) : wanted.nominalThickness;
  return `buy-${sanitiseFileName(name, new Set())}`;
}

function taskOf(wanted: LumberWanted, grade: (typeof drawnGrades)[number], { options }: Buying): VisitTask {
  return { ...toDraw(wanted, grade), mix: null, seed: options.seed, from: 0, to: options.draws };
}

/** Draws with a progress line; Ctrl-C and the time limit end it with the visits drawn so far, and nothing more is drawn. */
function watched({ deadline }: Limit, world: World): { readonly draw: Draw } {
  let stopped = false;
  return {
    draw: async (tasks, what) => {
      if (stopped || tasks.length === 0) return tasks.map(() => []);
      const line = progressLine(world);
      const release = world.onInterrupt(() => (stopped = true));
      try {
        return await drawVisits(tasks, {
          drawn: (done, of) => line.show({ doing: barOf(what, done, of), value: null, bound: null }),
          stop: () => stopped || (deadline !== null && world.now() >= deadline),
        });
      } finally {
        line.clear();
        release();
      }
    },
  };
}

/** `visits [######......] 120 of 400` */
function barOf(what: string, done: number, of: number): string {
  const filled = Math.round((24 * done) / Math.max(1, of));
  return `${what} [${'#'.repeat(filled)}${'.'.repeat(24 - filled)}] ${done} of ${of}`;
}
