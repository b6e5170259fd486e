import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { setTimeout } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { seeded, type Seeded } from '../laws/seeded.ts';
import { journalAt, leanBuild, startChild, wholeBookings } from './children.ts';

let folder = '';
let lean = '';
beforeAll(() => {
  const scratch = mkdtempSync(join(tmpdir(), 'rack-crash-'));
  lean = leanBuild(scratch);
  folder = join(scratch, 'racks');
  mkdirSync(folder);
});
afterAll(() => rmSync(dirname(folder), { recursive: true, force: true }));

const rounds = 6;
/** Lanes run at once. The last two share a journal, so that one's death falls into the other's bookings. */
const lanes = 5;
const killsPerLane = 10;
/** A busy machine may need many times what two idle cores take. */
const patience = 400_000;

describe('a journal under kill -9', () => {
  it(
    `holds each booking whole or not at all after each of ${rounds * lanes * killsPerLane} kills, and all that were told`,
    async () => {
      const random = seeded(20_260_101);
      const score = { kills: 0, midway: 0, told: 0 };
      for (let round = 0; round < rounds; round += 1)
        await Promise.all(
          Array.from({ length: lanes }, (_, at) =>
            lane(`rack-${round}-${Math.min(at, lanes - 2)}.csv`, `r${round}l${at}`, random, score),
          ),
        );
      expect(score.kills).toBe(rounds * lanes * killsPerLane);
      // The kills did fall into bookings, and bookings were made between them: else the test would show nothing.
      expect(score.midway).toBeGreaterThan(10);
      expect(score.told).toBeGreaterThan(100);
      // The dead have left nothing but torn ends, kept aside, and at most the lock of the last one to die.
      const names = readdirSync(folder).map((name) => name.replace(/^rack-\d+-\d+\.csv/, ''));
      expect(
        names.filter((name) => !['', '.torn', '.lock'].includes(name) && !name.startsWith('.lock-')),
      ).toEqual([]);
      for (let round = 0; round < rounds; round += 1) await survivor(join(folder, `rack-${round}-0.csv`));
    },
    patience,
  );
});

/** One process after another books on the journal and is killed at a random moment. */
async function lane(
  name: string,
  called: string,
  random: Seeded,
  score: { kills: number; midway: number; told: number },
): Promise<void> {
  const file = join(folder, name);
  const told: string[] = [];
  for (let turn = 0; turn < killsPerLane; turn += 1) {
    const child = startChild(lean, file, `${called}t${turn}`, 1000, random.chance(0.8) ? 'crumbs' : 'whole');
    // Every other one is left to make a booking first; the others die in their first one or before.
    await (turn % 2 === 0 ? child.ready : child.booked);
    await setTimeout(random.next() * 30);
    child.process.kill('SIGKILL');
    expect(await child.ended).toBeNull();
    told.push(...child.made());
    const journal = journalAt(file);
    const whole = wholeBookings(journal);
    expect(told.filter((booking) => !whole.has(booking))).toEqual([]);
    score.kills += 1;
    if (journal.keepLines !== Infinity) score.midway += 1;
  }
  score.told += told.length;
}

/** A process that comes after all the dead books at once, mends the end and leaves no litter. */
async function survivor(file: string): Promise<void> {
  const before = wholeBookings(journalAt(file));
  expect(await startChild(lean, file, 'survivor', 1, 'whole').ended).toBe(0);
  const journal = journalAt(file);
  expect(journal.notices).toEqual([]);
  expect(wholeBookings(journal)).toEqual(new Set([...before, 'survivor.1']));
  const left = readdirSync(folder).filter((name) => name.startsWith(basename(file)));
  expect(left.filter((name) => name.includes('.lock'))).toEqual([]);
}

describe('eight processes booking at once', () => {
  it(
    '200 bookings: none lost, none doubled',
    async () => {
      const file = join(folder, 'busy.csv');
      const children = Array.from({ length: 8 }, (_, at) =>
        startChild(lean, file, `p${at}`, 25, at % 2 === 0 ? 'whole' : 'crumbs'),
      );
      expect(await Promise.all(children.map(({ ended }) => ended))).toEqual(Array(8).fill(0));
      const journal = journalAt(file);
      expect(journal.notices).toEqual([]);
      const whole = wholeBookings(journal);
      expect(whole.size).toBe(200);
      expect(children.flatMap((child) => child.made()).filter((name) => !whole.has(name))).toEqual([]);
      expect(journal.lastBooking).toBe(200);
      expect(readdirSync(folder).filter((name) => name.startsWith('busy.csv'))).toEqual(['busy.csv']);
    },
    patience,
  );
});

describe('one offcut and many who want it', () => {
  it(
    'goes to one of four commands at once; the others are told, and nothing is booked for them',
    async () => {
      const file = join(folder, 'wanted.csv');
      await startChild(lean, file, 'w', 1, 'whole').ended;
      const [wanted = ''] = [...wholeBookings(journalAt(file))].map((name) => `${name}.1`);
      const bin = fileURLToPath(new URL('../../bin/mantelwright.js', import.meta.url));
      const takes = [1, 2, 3, 4].map(
        () =>
          new Promise<number | null>((resolve) => {
            const taker = spawn(process.execPath, [bin, 'rack', 'take', wanted, '--rack', file], {
              stdio: 'ignore',
            });
            taker.on('close', resolve);
          }),
      );
      expect((await Promise.all(takes)).sort()).toEqual([0, 2, 2, 2]);
      const taken = journalAt(file).entries.filter(({ deed }) => deed.action === 'take');
      expect(taken).toHaveLength(1);
    },
    patience,
  );
});
