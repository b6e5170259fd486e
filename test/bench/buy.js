/**
 * Slow measurements of buying, run by hand on a built project:
 * node test/bench/buy.js [lumber|time|coverage|yields|yard] [n] [grades] [job]
 *
 * lumber    what the imaginary boards of each grade measure, beside the published means
 * time      seconds for n draws of each grade of the job, nothing owned
 * coverage  the 80 % quantity from n draws, tried on n fresh piles of another seed: what comes home for it is laid out once
 * yields    yields by grade for a furniture bill of mixed lengths, beside the published ranges
 * yard      seconds for the choice at a yard that offers the demo's own boards, effort n / 100
 *
 * The job is the demo's mantel, or with `two` two such mantels and a shelf.
 */
import { cpSync, mkdtempSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { random } from '../../dist/base/random/random.js';
import { inches } from '../../dist/base/units/tick.js';
import { completer } from '../../dist/decide/buy/comes-out/completer.js';
import { completes } from '../../dist/decide/buy/estimate/draw.js';
import { chanceOf, shareOf, summarise } from '../../dist/decide/buy/estimate/summary.js';
import { drawBoard } from '../../dist/decide/buy/lumber/draw-board.js';
import { drawnGrades } from '../../dist/decide/buy/lumber/population.js';
import { solver } from '../../dist/decide/buy/solve-job.js';
import { leastMoney } from '../../dist/decide/buy/yard/least-money.js';
import { yardAnswer } from '../../dist/decide/buy/yard/yard-answer.js';
import { finish } from '../../dist/flow/choice/progress.js';
import { bestCuttings } from '../../dist/trade/grades/best-cuttings.js';
import { blockedOn } from '../../dist/trade/grades/marked-board.js';
import { faceRules } from '../../dist/trade/grades/rule.js';
import { unionArea } from '../../dist/trade/grades/union-area.js';
import { planJob } from '../../dist/pipeline.js';
import { readJob, readMantel } from '../../dist/shell/read/job.js';
import { drawVisits } from '../../dist/shell/buy/draw-visits.js';
import { defaultShop } from '../../dist/flow/shop/shop.js';

const [what = 'lumber', given] = process.argv.slice(2);
const count = Number(given ?? 200);
const grades = (process.argv[4] ?? drawnGrades.join(',')).split(',');
const which = process.argv[5] ?? 'demo';
const mean = (values) => values.reduce((sum, value) => sum + value, 0) / values.length;
const lumberOf = (grade) => ({
  grade,
  nominalThickness: '4/4',
  nominalInches: 1,
  dressedThickness: inches(13 / 16),
  surface: 'rough',
  tone: '',
});

/** The demo's mantel with nothing owned; its run whole, as planned without boards at hand. */
async function demoJob() {
  const folder = mkdtempSync(join(tmpdir(), 'mantelwright-bench-'));
  cpSync(new URL('../../fixtures/jobs/hearth/', import.meta.url), folder, { recursive: true });
  const measured = await readMantel(folder);
  const read = await readJob(folder, { parts: [], boardsNeeded: false });
  if (!measured.ok || !read.ok) throw new Error('the demo job cannot be read');
  const { shop, mantel, legs } = measured.value;
  const planned = planJob(shop, mantel, legs, read.value.boards);
  if (!planned.ok) throw new Error('the demo mantel cannot be planned');
  const job = { name: 'hearth', shop, parts: planned.value.parts, boards: [] };
  return { job, stock: read.value.boards };
}

/** The job to be bought for, nothing owned. */
async function jobAsked() {
  const { job: demo } = await demoJob();
  if (which !== 'two') return demo;
  const plain = { ...demo.parts.find(({ run }) => run === null), quality: 'clear-1', glueUp: 1, note: '' };
  const part = (name, quantity, length, width, more = {}) => ({
    ...{ ...plain, name, quantity, length: inches(length), width: inches(width), ...more },
  });
  const second = demo.parts.map((each) => ({
    ...each,
    name: `${each.name}, second`,
    run: each.run === null ? null : `${each.run}, second`,
  }));
  const shelf = [
    part('shelf', 1, 48, 9, { glueUp: 3 }),
    part('bracket', 2, 9, 6),
    part('cleat', 1, 46, 2.5, { quality: 'sound', show: 0 }),
  ];
  return { ...demo, name: 'two mantels and a shelf', parts: [...demo.parts, ...second, ...shelf] };
}

/** A furniture bill: clear one face, 15 to 60 in long, 1 1/2 to 4 1/2 in wide, 20 pieces, our own. */
function furnitureJob() {
  const lengths = [15, 18, 20, 24, 28, 32, 36, 42, 50, 60];
  const widths = [1.5, 2, 2.5, 3, 3.5, 4.5];
  const parts = lengths.map((length, index) => ({
    ...{ name: `part ${index + 1}`, quantity: 2, length: inches(length), width: inches(widths[index % 6]) },
    ...{ thickness: inches(13 / 16), grain: 'along', quality: 'clear-1', show: 0, accept: [], run: null },
    ...{ leftEnd: 0, rightEnd: 0, glueUp: 1, value: null, pin: null, note: '' },
  }));
  return { name: 'furniture', shop: defaultShop, parts, boards: [] };
}

function lumber() {
  for (const grade of grades) {
    const stream = random(1);
    const boards = Array.from({ length: count }, () => drawBoard(stream, grade));
    const face = (board, side) =>
      unionArea(board.defects.filter((d) => d.face === side || d.face === 'through'));
    const covered = boards.map((b) => (face(b, 'A') + face(b, 'B')) / (2 * b.length * b.width));
    const next = { '1C': [10, '1C'], '2A': [8, '2A'] }[grade];
    const upgraded = next && boards.filter((b) => clearShare(b, ...next)).length;
    console.log(
      grade.padEnd(8),
      `SM ${mean(boards.map((b) => b.surfaceMeasure)).toFixed(2)}`,
      `defect area ${(100 * mean(covered)).toFixed(2)} %`,
      `pith in ${(100 * mean(boards.map((b) => Number(b.defects.some((d) => d.kind === 'pith'))))).toFixed(0)} %`,
      next ? `clear share of the next grade reached by ${((100 * upgraded) / count).toFixed(0)} %` : '',
    );
  }
}

/** Whether the grade's own number of its own cuttings holds the next grade's units on the poor face. */
function clearShare(board, units, grade) {
  const rule = faceRules.get(grade);
  const { plus, per, most } = rule.allowed;
  const atMost = Math.max(1, Math.min(most, Math.floor((board.surfaceMeasure + plus) / per)));
  const whole = { x: 0, y: 0, length: board.length, width: board.width };
  const needed = board.surfaceMeasure * units * 12 * 8128 ** 2;
  return ['A', 'B'].every((side) => {
    const blocked = blockedOn(board.defects, side, 'clear');
    return bestCuttings({ board: whole, blocked, size: rule.cutting, atMost }, 1000, needed).area >= needed;
  });
}

async function time() {
  const job = await jobAsked();
  const tasks = grades.map((grade) => ({ job, lumber: lumberOf(grade), seed: 1, from: 0, to: count }));
  const start = performance.now();
  const cpu = process.cpuUsage();
  const visits = await drawVisits(tasks, { drawn: () => undefined, stop: () => false });
  const seconds = (performance.now() - start) / 1000;
  const { user, system } = process.cpuUsage(cpu);
  console.log(
    `${grades.length} grades x ${count} draws: ${seconds.toFixed(1)} s on ${cpus().length} cores, ${((user + system) / 1e6).toFixed(1)} s of processor`,
  );
  grades.forEach((grade, index) => report(grade, visits[index]));
}

function report(grade, visits) {
  const { completed, quantities, yield: share, yieldLow, yieldHigh } = summarise(visits);
  const feet = quantities.map(
    ({ chance, boardFeet, low, high }) => `${100 * chance} %: ${boardFeet} (${low} to ${high})`,
  );
  const yields =
    share === null
      ? '-'
      : `${(100 * share).toFixed(1)} (${(100 * yieldLow).toFixed(1)} to ${(100 * yieldHigh).toFixed(1)}) %`;
  console.log(
    grade.padEnd(8),
    `came out ${completed} of ${visits.length}`,
    feet.join(', '),
    `yield ${yields}`,
  );
}

async function coverage() {
  const job = await jobAsked();
  const tasks = grades.map((grade) => ({ job, lumber: lumberOf(grade), seed: 1, from: 0, to: count }));
  const visits = await drawVisits(tasks, { drawn: () => undefined, stop: () => false });
  for (const [index, grade] of grades.entries()) {
    report(grade, visits[index]);
    const { boardFeet } = summarise(visits[index]).quantities[1];
    if (boardFeet === null) continue;
    const near = [boardFeet - 0.5, boardFeet, boardFeet + 0.5];
    const shares = near.map((feet) => `${feet}: ${(100 * chanceOf(visits[index], feet).share).toFixed(1)}`);
    let done = 0;
    for (let visit = 0; visit < count; visit += 1)
      if (completes(job, lumberOf(grade), 987_654, visit, boardFeet, completer(1))) done += 1;
    const { share, low, high } = shareOf(done, count);
    console.log(
      `  of the draws complete, %: ${shares.join(', ')};`,
      `${boardFeet} BF complete ${done} of ${count} fresh piles: ${(100 * share).toFixed(1)} % (${(100 * low).toFixed(1)} to ${(100 * high).toFixed(1)})`,
    );
  }
}

async function yard() {
  const { job, stock } = await demoJob();
  const effort = Number(given ?? 100) / 100;
  const seconds = { cheapest: 0, comesOut: 0, least: 0 };
  const calls = { cheapest: 0, comesOut: 0, least: 0 };
  const timed = (name, ask) => (asked) => {
    const cpu = process.cpuUsage();
    const answer = ask(asked);
    const { user, system } = process.cpuUsage(cpu);
    seconds[name] += (user + system) / 1e6;
    calls[name] += 1;
    return answer;
  };
  const solve = solver({ seed: 1, effort });
  const cheapest = timed('cheapest', (asked) => finish(solve(asked)));
  const solvers = {
    // Run to its end at once, so that its time is its own.
    // eslint-disable-next-line require-yield
    cheapest: function* (asked) {
      return cheapest(asked);
    },
    comesOut: timed('comesOut', completer(1)),
    least: timed('least', leastMoney(1)),
  };
  const { kind, best, runnerUps, spares } = finish(yardAnswer(job, stock, 3, solvers));
  for (const name of ['cheapest', 'comesOut', 'least'])
    console.log(`${name}: ${calls[name]} calls, ${seconds[name].toFixed(1)} s of processor`);
  console.log(
    kind,
    best?.money,
    best?.atLeast,
    runnerUps?.map(({ money }) => money),
    spares?.cheapest,
  );
}

async function yields() {
  const job = furnitureJob();
  const tasks = grades.map((grade) => ({ job, lumber: lumberOf(grade), seed: 1, from: 0, to: count }));
  const visits = await drawVisits(tasks, { drawn: () => undefined, stop: () => false });
  grades.forEach((grade, index) => report(grade, visits[index]));
  console.log(
    'published, mixed furniture bills (from memory, a sanity band): FAS 63 to 70, 1C 55 to 65, 2A 45 to 50 %',
  );
}

const tasks = { lumber, time, coverage, yields, yard };
await tasks[what]();
