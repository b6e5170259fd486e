#!/usr/bin/env node
const { run, worldOf } = await import('../dist/shell/command/main.js').catch((error) => {
  if (error.code !== 'ERR_MODULE_NOT_FOUND') throw error;
  process.stderr.write(`mantelwright is not built or not installed: run npm ci (${error.message})\n`);
  process.exit(70);
});

process.exitCode = await run(process.argv.slice(2), worldOf(process));
