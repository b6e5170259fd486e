import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { run } from '../../src/shell/command/run.ts';
import type { World } from '../../src/shell/command/world.ts';

/** A world whose words are kept, whose clock the test moves, and whose Ctrl-C the test presses. */
export interface TestWorld extends World {
  /** What was written so far. */
  out(): string;
  err(): string;
  /** Presses Ctrl-C: calls whoever listens. */
  interrupt(): void;
  /** How many listen for Ctrl-C: must be 0 again after a command. */
  listeners(): number;
}

/** Makes a world in a fresh folder. */
export function testWorld(given: Partial<World> = {}): TestWorld {
  const out: string[] = [];
  const err: string[] = [];
  const stops = new Set<() => void>();
  return {
    stdout: { write: (text) => void out.push(text) },
    stderr: { write: (text) => void err.push(text) },
    cwd: given.cwd ?? scratchFolder(),
    env: {},
    now: () => performance.now(),
    isTerminal: false,
    millisecondsBetweenLines: Infinity,
    onInterrupt: (stop) => {
      stops.add(stop);
      return () => void stops.delete(stop);
    },
    ...given,
    out: () => out.join(''),
    err: () => err.join(''),
    interrupt: () => {
      for (const stop of stops) stop();
    },
    listeners: () => stops.size,
  };
}

/** A folder of its own for one test. */
export function scratchFolder(): string {
  return mkdtempSync(join(tmpdir(), 'mantelwright-test-'));
}

/** What a command said and how it ended. */
export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs a command line in a fresh or given world. */
export async function runIn(world: TestWorld, ...args: string[]): Promise<Ran> {
  const code = await run(args, world);
  return { code, out: world.out(), err: world.err() };
}
