import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { withLock } from '../../src/shell/rack/lock.ts';
import { isDead, nameOf, ownerOf, ownOwner } from '../../src/shell/rack/lock-owner.ts';
import { processStart } from '../../src/shell/rack/process-start.ts';

let folder = '';
let file = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'rack-lock-'));
  file = join(folder, 'rack.csv');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Leaves a lock behind as its owner would. */
function leaveLock(owner: string): void {
  mkdirSync(`${file}.lock`);
  writeFileSync(join(`${file}.lock`, owner), '');
}

const gone = spawnSync(process.execPath, ['-e', '']).pid;

describe('the lock', () => {
  it('is held by one at a time, and leaves nothing behind', async () => {
    let inside = 0;
    let most = 0;
    const runs = Array.from({ length: 20 }, () =>
      withLock(file, 20_000, () => {
        inside += 1;
        most = Math.max(most, inside);
        expect(readdirSync(`${file}.lock`)).toHaveLength(1);
        inside -= 1;
        return most;
      }),
    );
    expect((await Promise.all(runs)).every(({ held }) => held)).toBe(true);
    expect(most).toBe(1);
    expect(readdirSync(folder)).toEqual([]);
  });

  it('is freed when the work fails', async () => {
    const fails = withLock(file, 0, () => {
      throw new Error('at work');
    });
    await expect(fails).rejects.toThrow('at work');
    expect(readdirSync(folder)).toEqual([]);
  });

  it.each([
    ['whose process is gone', { pid: gone }],
    ['whose number a later process has', { start: '1x00000000' }],
  ])('of an owner %s is broken at once', async (_why, told) => {
    leaveLock(nameOf({ ...ownOwner(), ...told }));
    expect(await withLock(file, 0, () => 'mine')).toEqual({ held: true, value: 'mine' });
    expect(readdirSync(folder)).toEqual([]);
  });

  it('that is an empty folder is free', async () => {
    mkdirSync(`${file}.lock`);
    expect(await withLock(file, 0, () => 'mine')).toEqual({ held: true, value: 'mine' });
  });

  it.each([
    ['a living owner', nameOf(ownOwner())],
    ['an owner on another machine', nameOf({ ...ownOwner(), pid: gone, machine: 'elsewhere' })],
    ['nobody we know', 'something'],
  ])('of %s is respected, and named', async (_who, owner) => {
    leaveLock(owner);
    const tried = await withLock(file, 30, () => 'mine');
    expect(tried).toEqual({
      held: false,
      busy: { kind: 'rack busy', file, lock: `${file}.lock`, owner: ownerOf(owner) },
    });
    expect(readdirSync(folder)).toEqual(['rack.csv.lock']);
    expect(readdirSync(`${file}.lock`)).toEqual([owner]);
  });

  it('sweeps up what others prepared and died over, and only that', async () => {
    const dead = `rack.csv.lock-${nameOf({ ...ownOwner(), pid: gone })}`;
    const living = `rack.csv.lock-${nameOf(ownOwner())}`;
    for (const name of [dead, living, 'rack.csv.lock-notes']) mkdirSync(join(folder, name));
    await withLock(file, 0, () => null);
    expect(readdirSync(folder).sort()).toEqual([living, 'rack.csv.lock-notes'].sort());
  });
});

describe('an owner', () => {
  it('is read back from its name', () => {
    const owner = ownOwner();
    expect(ownerOf(nameOf(owner))).toEqual(owner);
    expect(ownerOf('x')).toBeNull();
    expect(isDead(owner)).toBe(false);
    expect(isDead(null)).toBe(false);
  });

  it('has a start that stays the same and differs from a stranger’s', () => {
    expect(processStart(process.pid)).toBe(processStart(process.pid));
    expect(processStart(process.pid)).not.toBe(processStart(process.ppid));
    expect(processStart(gone)).toBeNull();
  });
});
