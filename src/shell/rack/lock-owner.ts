import { randomBytes } from 'node:crypto';
import fs from 'node:fs';
import { hostname } from 'node:os';
import { processStart } from './process-start.ts';

/** Who holds a lock. */
export interface Owner {
  readonly pid: number;
  /** As `processStart` tells it. */
  readonly start: string;
  /** Sets apart two locks of one process. */
  readonly token: string;
  /** Where the number means that process: this machine, this set of process numbers (a container has its own). */
  readonly machine: string;
}

/** This process as an owner, with a new token. */
export function ownOwner(): Owner {
  const start = processStart(process.pid) ?? '';
  return { pid: process.pid, start, token: randomBytes(6).toString('hex'), machine: machine() };
}

/** An owner as a file name. */
export function nameOf({ pid, start, token, machine: where }: Owner): string {
  return `${pid}-${start}-${token}-${where}`;
}

/** Reads `nameOf`; null for a name that is no owner's. */
export function ownerOf(name: string): Owner | null {
  const match = /^(\d+)-(\w*)-(\w+)-([\w.]+)$/.exec(name);
  if (match === null) return null;
  const [, pid = '', start = '', token = '', where = ''] = match;
  return { pid: Number(pid), start, token, machine: where };
}

/** Whether the owner surely runs no more. One on another machine cannot be asked, so it counts as alive. */
export function isDead(owner: Owner | null): boolean {
  if (owner === null || owner.machine !== machine()) return false;
  const start = processStart(owner.pid);
  return start === null || (start !== '' && owner.start !== '' && start !== owner.start);
}

/** Whether the owner is on this machine. */
export function isHere(owner: Owner): boolean {
  return owner.machine === machine();
}

function machine(): string {
  return `${hostname()}.${processNumbers()}`.replace(/[^\w.]+/g, '_').slice(-80);
}

function processNumbers(): string {
  try {
    return fs.readlinkSync('/proc/self/ns/pid');
  } catch {
    return '';
  }
}
