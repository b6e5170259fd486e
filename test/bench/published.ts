/**
 * The published problems, each from a job to a checked layout as the command does it (those in two stages, which no job
 * can ask for, by the pattern engine alone): published optimum, value, bound, CPU seconds, checksum; then a summary.
 * Arguments: parts of names or families to pick (all when none), `effort=1`, `seed=1`.
 */
import { createHash } from 'node:crypto';
import { prepareGuillotine } from '../../src/flow/patterns/guillotine/prepare-guillotine.ts';
import { plateProblems } from '../published/guillotine-plates.ts';
import { plateJobFamilies, plateJobs } from '../published/plate-jobs.ts';
import { stickFamilies, stickJob, stickProblems } from '../published/sticks-jobs.ts';
import { measureSolve } from './measure.ts';

interface Found {
  readonly value: number;
  readonly bound: number;
  readonly proven: boolean;
  readonly cpu: number;
  readonly checksum: string;
  readonly faults: number;
}

interface Task {
  readonly name: string;
  readonly optimum: number;
  readonly solve: () => Found;
}

interface Tally {
  readonly family: string;
  readonly problems: number;
  readonly exact: number;
  readonly proven: number;
  readonly worst: number;
  readonly cpu: number;
  readonly slowest: number;
}

const words = process.argv.slice(2);
const setting = (name: string, usual: number): number =>
  Number(words.find((word) => word.startsWith(`${name}=`))?.slice(name.length + 1) ?? usual);
const names = words.filter((word) => !word.includes('='));
const effort = setting('effort', 1);
const seed = setting('seed', 1);

function isPicked(family: string, name: string): boolean {
  return names.length === 0 || names.some((word) => name.includes(word) || family.includes(word));
}

function solveJob(job: Parameters<typeof measureSolve>[0]): Found {
  const { faults, ...solved } = measureSolve(job, { seed, effort, seconds: 1e9, clock: 'cpu', threads: 1 });
  return { ...solved, faults: faults.length };
}

/** Trimming is free in these problems and takes a stage in a job. */
function solvePlate({ plate, kinds, worth, freeTrim }: ReturnType<typeof plateProblems>[number]): Found {
  const before = process.cpuUsage();
  const answer = prepareGuillotine(plate, kinds, { freeTrim }).price(worth, undefined, { work: 4e9, seed });
  const { user, system } = process.cpuUsage(before);
  return {
    value: answer.pattern.value,
    bound: answer.bound,
    proven: answer.proven,
    cpu: (user + system) / 1e6,
    checksum: createHash('sha256').update(JSON.stringify(answer.pattern)).digest('hex').slice(0, 8),
    faults: 0,
  };
}

const tasks: readonly (readonly [family: string, tasks: readonly Task[]])[] = [
  ...stickFamilies.map((family) => {
    const problems = stickProblems(family).map((problem) => ({
      name: problem.name,
      optimum: problem.known.value,
      solve: () => solveJob(stickJob(problem)),
    }));
    return [`1d ${family}`, problems] as const;
  }),
  ...plateJobFamilies.map((family) => {
    const problems = plateJobs(family).map(({ job, ...rest }) => ({ ...rest, solve: () => solveJob(job) }));
    return [`2d ${family}`, problems] as const;
  }),
  [
    '2d two_staged_value',
    plateProblems('two_staged_value').map((problem) => ({ ...problem, solve: () => solvePlate(problem) })),
  ],
];

function lineOf({ name, optimum }: Task, { value, bound, proven, cpu, checksum, faults }: Found): string {
  return [
    name.padEnd(24),
    String(optimum).padStart(10),
    String(value).padStart(10),
    bound.toFixed(2).padStart(13),
    proven ? 'proven' : '      ',
    `${cpu.toFixed(2)} s`.padStart(10),
    checksum,
    value === optimum ? '' : value > optimum ? 'above the published optimum' : 'below the published optimum',
    faults > 0 ? `FAULT: ${faults} faults` : '',
  ].join('  ');
}

const tallies: Tally[] = [];
let faults = 0;
for (const [family, all] of tasks) {
  const picked = all.filter(({ name }) => isPicked(family, name));
  if (picked.length === 0) continue;
  console.log(`\n${family}`);
  console.log('name                       published      value          bound                 cpu  checksum');
  const results = picked.map((task) => {
    const found = task.solve();
    console.log(lineOf(task, found).trimEnd());
    return { ...found, off: Math.abs(found.value - task.optimum) / task.optimum };
  });
  faults += results.filter((found) => found.faults > 0).length;
  tallies.push({
    family,
    problems: results.length,
    exact: results.filter(({ off }) => off < 1e-9).length,
    proven: results.filter(({ off, proven }) => off < 1e-9 && proven).length,
    worst: Math.max(...results.map(({ off }) => off)),
    cpu: results.reduce((sum, { cpu }) => sum + cpu, 0),
    slowest: Math.max(...results.map(({ cpu }) => cpu)),
  });
}
console.log(
  '\n| family | problems | at the published optimum | proven there | worst % | cpu s | slowest s |',
);
console.log('| --- | --- | --- | --- | --- | --- | --- |');
for (const { family, problems, exact, proven, worst, cpu, slowest } of tallies) {
  const cells = [
    family,
    problems,
    exact,
    proven,
    (100 * worst).toFixed(2),
    cpu.toFixed(1),
    slowest.toFixed(1),
  ];
  console.log(`| ${cells.join(' | ')} |`);
}
const memory = process.resourceUsage().maxRSS / 1024;
console.log(`memory ${memory.toFixed(0)} MiB`);
if (faults > 0) process.exitCode = 1;
