import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { appendBooking, type Appended } from '../../src/shell/rack/append-booking.ts';
import { disk, type Disk } from '../../src/shell/rack/disk.ts';
import type { BookingDraft } from '../../src/flow/rack/booking-draft.ts';
import { journalAt } from './children.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'rack-disk-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function draft(note: string): BookingDraft {
  const deed = { action: 'discard', name: 'C234X', piece: null } as const;
  return { occasion: { time: 'T', job: '', layout: '' }, deeds: [1, 2, 3].map(() => ({ deed, note })) };
}

function book(file: string, note: string, given: Disk = disk): Promise<Appended<null, never>> {
  return appendBooking(file, () => ({ ok: true, value: { draft: draft(note), result: null } }), {
    unit: 'in',
    disk: given,
  });
}

/** A failure as the system reports it. */
function failure(code: string): Error {
  return Object.assign(new Error(code), { code, syscall: 'write' });
}

describe('a write that fails', () => {
  // What each disk does wrong, and how many bytes of the booking stay when even the taking back fails.
  const wrongs: readonly (readonly [what: string, wrong: () => Partial<Disk>])[] = [
    [
      'at once',
      () => ({
        write: () => {
          throw failure('ENOSPC');
        },
      }),
    ],
    [
      'half way',
      () => {
        let room = 100;
        return {
          write: (handle, bytes) => {
            if (room <= 0) throw failure('ENOSPC');
            const took = disk.write(handle, bytes.subarray(0, room));
            room -= took;
            return took;
          },
        };
      },
    ],
    ['taking nothing', () => ({ write: () => 0 })],
    [
      'when flushed',
      () => {
        let flushes = 0;
        return {
          flush: (handle) => {
            flushes += 1;
            if (flushes === 1) throw failure('EIO');
            disk.flush(handle);
          },
        };
      },
    ],
    [
      'when the file is opened',
      () => ({
        openToAppend: () => {
          throw failure('EACCES');
        },
      }),
    ],
  ];

  it.each(wrongs)(
    '%s: the journal is as it was, to the byte, and the next booking goes through',
    async (what, wrong) => {
      const file = join(folder, `${what}.csv`);
      await book(file, 'first');
      const before = readFileSync(file);
      await expect(book(file, 'second', { ...disk, ...wrong() })).rejects.toThrow();
      expect(readFileSync(file).equals(before)).toBe(true);
      expect(await book(file, 'third')).toMatchObject({ kind: 'booked', booking: 2 });
      expect(journalAt(file).notices).toEqual([]);
    },
  );

  it('half way, and cannot be taken back either: the end is torn, told, kept aside, and nothing else is lost', async () => {
    const file = join(folder, 'stuck.csv');
    await book(file, 'first');
    const wrong = wrongs[1]?.[1]() ?? {};
    const stuck: Disk = {
      ...disk,
      ...wrong,
      truncate: () => {
        throw failure('EIO');
      },
    };
    await expect(book(file, 'second', stuck)).rejects.toThrow('ENOSPC');
    const torn = journalAt(file);
    expect(torn.notices).toMatchObject([{ kind: 'torn tail', line: 5 }]);
    expect(torn.entries).toHaveLength(3);
    const tail = readFileSync(file, 'utf8').split('\n').slice(4).join('\n');
    expect(await book(file, 'third')).toMatchObject({ kind: 'booked', booking: 2, setAside: `${file}.torn` });
    expect(readFileSync(`${file}.torn`, 'utf8')).toBe(`${tail}\n`);
    expect(journalAt(file).entries).toHaveLength(6);
  });

  it('while the torn end is kept aside: the journal stays as it was', async () => {
    const file = join(folder, 'aside.csv');
    await book(file, 'first');
    writeFileSync(file, `${readFileSync(file, 'utf8')}4,2,1,3,disc`);
    const before = readFileSync(file);
    await expect(
      book(file, 'second', {
        ...disk,
        write: () => {
          throw failure('ENOSPC');
        },
      }),
    ).rejects.toThrow();
    expect(readFileSync(file).equals(before)).toBe(true);
  });

  it('a file that another program saves meanwhile is read anew, not written over', async () => {
    const file = join(folder, 'meanwhile.csv');
    await book(file, 'first');
    let saved = false;
    const racing: Disk = {
      ...disk,
      size: (handle) => {
        if (!saved) writeFileSync(file, readFileSync(file, 'utf8').replaceAll('first', 'first seen'));
        saved = true;
        return disk.size(handle);
      },
    };
    expect(await book(file, 'second', racing)).toMatchObject({ kind: 'booked', booking: 2 });
    expect(journalAt(file).entries.map(({ note }) => note)).toEqual([
      ...Array(3).fill('first seen'),
      ...Array(3).fill('second'),
    ]);
  });
});

describe('a disk that is really full', () => {
  it('loses nothing', async (context) => {
    const mount = mkdtempSync(join(tmpdir(), 'rack-full-'));
    try {
      execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=64k', 'rack-full', mount], { stdio: 'pipe' });
    } catch {
      rmSync(mount, { recursive: true });
      context.skip('mounting a small tmpfs is not permitted here; the injected failures above stand in');
      return;
    }
    try {
      const file = join(mount, 'rack.csv');
      let booked = 0;
      let refused: unknown = null;
      while (refused === null && booked < 1000) {
        const before = booked === 0 ? Buffer.alloc(0) : readFileSync(file);
        try {
          await book(file, 'n'.repeat(300));
          booked += 1;
        } catch (error) {
          refused = error;
          expect(readFileSync(file).equals(before)).toBe(true);
        }
      }
      expect(refused).toMatchObject({ code: 'ENOSPC' });
      expect(booked).toBeGreaterThan(10);
      expect(statfsSync(mount).bavail).toBeLessThan(2);
      expect(journalAt(file).entries).toHaveLength(3 * booked);
      expect(journalAt(file).notices).toEqual([]);
    } finally {
      execFileSync('umount', [mount]);
      rmSync(mount, { recursive: true });
    }
  });
});
