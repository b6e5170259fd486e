import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { platform } from 'node:os';
import { isCode } from './disk.ts';

/**
 * When a process started, as a short text that no later process of the same number has: a number is given again once
 * its process is gone, so the number alone does not tell an owner from a stranger.
 * @returns null when there is no such process; '' when the system does not tell
 */
export function processStart(pid: number): string | null {
  if (platform() === 'linux') return linuxStart(pid);
  if (!isAlive(pid)) return null;
  if (platform() === 'win32') return '';
  try {
    // ps prints the start to the second, the same text each time for one process.
    const told = execFileSync('ps', ['-o', 'lstart=', '-p', String(pid)], { encoding: 'utf8' }).trim();
    return told === '' ? null : told.replace(/[^A-Za-z0-9]+/g, '');
  } catch {
    return '';
  }
}

/** Clock ticks since the machine started (field 22 of the process's own record), and which start of the machine. */
function linuxStart(pid: number): string | null {
  try {
    const record = readFileSync(`/proc/${pid}/stat`, 'utf8');
    // The second field is the program's name in brackets and may hold anything, blanks and brackets too.
    const fields = record.slice(record.lastIndexOf(')') + 2).split(' ');
    // A zombie holds no lock: it has ended, only its parent has not noticed.
    if (fields[0] === 'Z' || fields[0] === 'X') return null;
    const boot = readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').slice(0, 8);
    return `${fields[19] ?? ''}x${boot}`;
  } catch (error) {
    return isCode(error, 'ENOENT', 'ESRCH') ? null : '';
  }
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return isCode(error, 'EPERM');
  }
}
