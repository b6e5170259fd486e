import { spawn } from 'node:child_process';
import { existsSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { loadavg } from 'node:os';
import { type Family, scripts } from './families.ts';
import { faultsOf } from './judge.ts';
import { type Options, readOptions } from './options.ts';
import { type Outcome, runChild } from './run-child.ts';
import { headLine, markdown, outcomeLine, summary } from './table.ts';

async function benchFamily(family: Family, options: Options): Promise<Outcome[]> {
  const [first, last] = options.seeds ?? family.seeds;
  const seconds = options.seconds ?? family.seconds;
  console.log(
    `\n${family.title}; effort ${options.effort}, threads ${options.threads}, at most ${seconds} s (${options.clock}) each`,
  );
  console.log(headLine());
  const outcomes: Outcome[] = [];
  for (let job = first; job <= last; job += 1) {
    const { clock, effort, mipSeconds, runs, solverSeed, threads } = options;
    const outcome = await runChild({
      family: family.name,
      job,
      seconds,
      clock,
      effort,
      threads,
      mipSeconds,
      runs,
      seed: solverSeed,
    });
    outcomes.push(outcome);
    console.log(outcomeLine(outcome));
    for (const failure of outcome.failures) if (failure.includes('\n')) console.log(failure);
  }
  console.log(`${family.name}, median (least to most):`);
  for (const [what, value] of summary(outcomes)) console.log(`  ${what}: ${value}`);
  return outcomes;
}

/** Runs a bench that has a script of its own; false when it is missing or fails. */
function benchScript(name: string, args: readonly string[]): Promise<boolean> {
  const compiled = fileURLToPath(new URL(`./${name}.js`, import.meta.url));
  const plain = `test/bench/${name}.js`;
  const path = existsSync(compiled) ? compiled : plain;
  if (!existsSync(path)) {
    console.log(`\n${name}: no such script`);
    return Promise.resolve(false);
  }
  console.log(`\n${name}`);
  return new Promise((resolve) => {
    spawn(process.execPath, [path, ...args], { stdio: 'inherit' }).on('exit', (code) => resolve(code === 0));
  });
}

async function main(): Promise<void> {
  const args = process.argv.slice(2);
  const [word = '', ...others] = args;
  if (scripts.includes(word)) {
    process.exitCode = (await benchScript(word, others)) ? 0 : 1;
    return;
  }
  const options = readOptions(args);
  if (typeof options === 'string') {
    console.error(options);
    process.exitCode = 2;
    return;
  }
  console.log(`node ${process.version}, load ${loadavg()[0]?.toFixed(1)} at the start`);
  const tables: string[] = [];
  let faults = 0;
  for (const family of options.families) {
    const outcomes = await benchFamily(family, options);
    faults += outcomes.filter((outcome) => faultsOf(outcome).length > 0).length;
    tables.push(markdown(family.title, outcomes));
    if (options.markdown !== null) writeFileSync(options.markdown, tables.join('\n'));
  }
  for (const name of options.scripts) {
    if (!(await benchScript(name, []))) faults += 1;
  }
  if (faults > 0) console.log(`\n${faults} with faults`);
  process.exitCode = faults > 0 ? 1 : 0;
}

void main();
