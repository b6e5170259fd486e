import { existsSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { type Problem, printProblems } from '../../../src/shell/print-problem.ts';
import { readJob, readMantel } from '../../../src/shell/read/job.ts';

const folder = fileURLToPath(new URL('../../../fixtures/broken/', import.meta.url));
const cases = readdirSync(folder, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map((entry) => entry.name);

describe('each broken job gets its exact words', () => {
  it('from every fixture', () => {
    expect(cases.length).toBeGreaterThan(45);
  });

  it.each(cases)('%s', async (name) => {
    const job = join(folder, name);
    const problems = await problemsOf(job);
    expect(problems.length).toBeGreaterThan(0);
    expectGolden(join(job, 'message'), `${printProblems(problems)}\n`);
  });
});

async function problemsOf(job: string): Promise<readonly Problem[]> {
  const isMantel = existsSync(join(job, 'mantel.csv')) || existsSync(join(job, 'legs.csv'));
  const read = isMantel ? await readMantel(job) : await readJob(job);
  return read.ok ? [] : read.problems;
}

/** Missing or changed is a failure; the new text is written beside the golden, to be looked at. */
function expectGolden(path: string, text: string): void {
  const [golden, changed] = [`${path}.txt`, `${path}.changed.txt`];
  if (process.env['ACCEPT_GOLDEN'] === '1') writeFileSync(golden, text);
  const before = existsSync(golden) ? readFileSync(golden, 'utf8') : null;
  if (before === text) rmSync(changed, { force: true });
  else writeFileSync(changed, text);
  expect(text, `look at ${changed}`).toBe(before);
}
