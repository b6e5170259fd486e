/**
 * The published problems of one plate: name, published optimum, found, bound, gap, milliseconds, steps, checksum.
 * Arguments: parts of names or families to pick (all when none), `work=1e10`, `seed=1`.
 */
import { performance } from 'node:perf_hooks';
import { prepareGuillotine } from '../../src/flow/patterns/guillotine/prepare-guillotine.ts';
import { plateFamilies, plateProblems } from '../published/guillotine-plates.ts';

const words = process.argv.slice(2);
const setting = (name: string, usual: number): number =>
  Number(words.find((word) => word.startsWith(`${name}=`))?.slice(name.length + 1) ?? usual);
const names = words.filter((word) => !word.includes('='));
const work = setting('work', 1e10);
const seed = setting('seed', 1);

for (const family of plateFamilies) {
  const problems = plateProblems(family).filter(
    ({ name }) => names.length === 0 || names.some((word) => name.includes(word) || family.includes(word)),
  );
  if (problems.length === 0) continue;
  console.log(`\n${family}`);
  console.log(
    'name                     published       found       bound    gap          ms   Msteps  checksum',
  );
  let exact = 0;
  let proven = 0;
  let slowest = 0;
  for (const { name, plate, kinds, worth, freeTrim, optimum } of problems) {
    const began = performance.now();
    const answer = prepareGuillotine(plate, kinds, { freeTrim }).price(worth, undefined, { work, seed });
    const ms = performance.now() - began;
    const { value, placements } = answer.pattern;
    let checksum = 0;
    for (const { kind, x, y } of placements)
      checksum = (Math.imul(checksum, 31) + kind * 7919 + x * 31 + y) | 0;
    exact += value === optimum ? 1 : 0;
    proven += answer.proven ? 1 : 0;
    slowest = Math.max(slowest, ms);
    console.log(
      name.padEnd(24),
      String(optimum).padStart(9),
      String(value).padStart(11),
      String(Math.round(answer.bound)).padStart(11),
      `${(((answer.bound - value) / value) * 100).toFixed(2)} %`.padStart(8),
      ms.toFixed(0).padStart(9),
      (answer.work / 1e6).toFixed(1).padStart(8),
      (checksum >>> 0).toString(16).padStart(9),
      value === optimum
        ? ''
        : value > optimum
          ? 'above the published optimum'
          : 'below the published optimum',
    );
  }
  const memory = process.memoryUsage().rss / 2 ** 20;
  console.log(
    `${exact} of ${problems.length} at the published optimum, ${proven} proven, slowest ${slowest.toFixed(0)} ms,`,
    `memory ${memory.toFixed(0)} MiB`,
  );
}
