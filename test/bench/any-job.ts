/**
 * `npm run bench -- any-job [FROM-TO] [EFFORT]`: random small jobs in which any rules meet, each laid out as the command does
 * it and held against the check and the tests' own replay. Says which seeds end in a fault of the program.
 */
import { outcomeOf } from '../laws/any-job/outcome.ts';

/** Every so many jobs one line of how far it is; and so many are drawn as well, which takes as long as laying them out. */
const linesApart = 1000;
const drawnApart = 10;

/** Processor seconds beyond which a job is named as slow. */
const slow = 10;

function main(): void {
  const [range = '1-200', effortText = '0'] = process.argv.slice(2);
  const [from = 1, to = from] = range.split('-').map(Number);
  const effort = Number(effortText);
  const counts = { jobs: 0, faults: 0, short: 0, proven: 0, withRuns: 0 };
  const seconds = (since?: NodeJS.CpuUsage): number => process.cpuUsage(since).user / 1e6;
  let slowest = { seed: 0, seconds: 0 };
  for (let seed = from; seed <= to; seed += 1) {
    const before = process.cpuUsage();
    const { wrong, isShort, isProven, hasRun } = outcomeOf(seed, effort, seed % drawnApart === 0);
    const taken = seconds(before);
    if (taken > slowest.seconds) slowest = { seed, seconds: taken };
    if (taken > slow) console.log(`seed ${seed}: ${taken.toFixed(1)} s`);
    for (const why of wrong) console.log(`seed ${seed}: ${why}`);
    counts.jobs += 1;
    counts.faults += wrong.length > 0 ? 1 : 0;
    counts.short += isShort ? 1 : 0;
    counts.proven += isProven ? 1 : 0;
    counts.withRuns += hasRun ? 1 : 0;
    if (counts.jobs % linesApart === 0 || seed === to)
      console.log(
        `${counts.jobs} jobs, effort ${effort}: ${counts.faults} with faults; ${counts.withRuns} with runs laid, ` +
          `${counts.short} short, ${counts.proven} proven; ${seconds().toFixed(0)} CPU s, ` +
          `slowest seed ${slowest.seed} with ${slowest.seconds.toFixed(1)} s`,
      );
  }
  process.exitCode = counts.faults > 0 ? 1 : 0;
}

main();
