/**
 * `npm run bench`: compiles the sources and the bench into `.bench-out` (each file by itself; types are `npm run types`'
 * business), then runs the bench there. A bench under way is thus not disturbed by edits.
 */
import { spawn } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const root = fileURLToPath(new URL('../..', import.meta.url));
/** A folder of this run alone, so that two runs at a time do not meet. */
const out = join(root, '.bench-out', String(process.pid));

const options = {
  target: ts.ScriptTarget.ES2022,
  module: ts.ModuleKind.ESNext,
  verbatimModuleSyntax: true,
  rewriteRelativeImportExtensions: true,
};

function compile(folder) {
  for (const entry of readdirSync(join(root, folder), { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) compile(path);
    else if (path.endsWith('.ts') && !path.endsWith('.test.ts')) {
      const text = readFileSync(join(root, path), 'utf8');
      const target = join(out, path.replace(/\.ts$/, '.js'));
      mkdirSync(dirname(target), { recursive: true });
      writeFileSync(
        target,
        ts.transpileModule(text, { compilerOptions: options, fileName: path }).outputText,
      );
    }
  }
}

/** Removes what benches that were killed left behind: folders named after processes that are no more. */
function sweep() {
  const folder = join(root, '.bench-out');
  for (const name of existsSync(folder) ? readdirSync(folder) : []) {
    if (/^\d+$/.test(name) && !isAlive(Number(name)))
      rmSync(join(folder, name), { recursive: true, force: true });
  }
}

function isAlive(pid) {
  try {
    return process.kill(pid, 0);
  } catch {
    return false;
  }
}

sweep();
for (const folder of ['src', 'test/bench', 'test/laws', 'test/published'])
  if (existsSync(join(root, folder))) compile(folder);

// Benches of published problems read these, relative to where they stand.
symlinkSync(join(root, 'fixtures'), join(out, 'fixtures'), 'junction');

const main = join(out, 'test/bench/main.js');
const child = spawn(process.execPath, [main, ...process.argv.slice(2)], { stdio: 'inherit', cwd: root });
process.on('SIGTERM', () => child.kill('SIGTERM'));
// A terminal's Ctrl-C reaches the bench by itself; this process stays to sweep up.
process.on('SIGINT', () => undefined);
child.on('exit', (code, signal) => {
  rmSync(out, { recursive: true, force: true });
  process.exitCode = signal === null ? (code ?? 1) : 1;
});
