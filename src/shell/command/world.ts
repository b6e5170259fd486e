import { isatty } from 'node:tty';
import { mutedSink, standardError, standardOutput, waitingSink } from './standard-stream.ts';

/** Where text goes: a terminal, a pipe, or a test's string. */
export interface Sink {
  /**
   * Has written all of the text when it returns.
   * @throws the system's error where it could not
   */
  write(text: string): void;
}

/**
 * All that a command takes from the process it runs in. `bin` fills it from the real one, tests from their own, so
 * that every command runs in-process and only `bin` ends a process. Files are the real ones in both.
 */
export interface World {
  readonly stdout: Sink;
  readonly stderr: Sink;
  /** Folder that relative paths start from. */
  readonly cwd: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Milliseconds since some fixed moment. */
  now(): number;
  /** Whether a person watches stderr: progress and colour only then. */
  readonly isTerminal: boolean;
  /** How often a long command writes a line of progress where nobody watches, so that a log shows that it lives. */
  readonly millisecondsBetweenLines: number;
  /** Calls `stop` at the first Ctrl-C instead of ending the process; returns how to take that back. */
  onInterrupt(stop: () => void): () => void;
}

/** The world of a running process. */
export function worldOf(process: NodeJS.Process): World {
  return {
    stdout: waitingSink(standardOutput),
    stderr: mutedSink(standardError),
    cwd: process.cwd(),
    env: process.env,
    now: () => performance.now(),
    isTerminal: isatty(standardError),
    millisecondsBetweenLines: 10_000,
    onInterrupt: (stop) => {
      // Once: the second Ctrl-C finds no listener, and ends the process as it would any other.
      process.once('SIGINT', stop);
      return () => void process.removeListener('SIGINT', stop);
    },
  };
}
