/**
 * How long a rack takes to load, and a layout with a full rack to come out. Run alone or by `run.js`:
 *
 *     npm run build && node test/bench/rack.js
 */
import { performance } from 'node:perf_hooks';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  bookingText,
  defaultShop,
  emptyJournal,
  foldJournal,
  layOutJob,
  needsOf,
  readJournal,
  stockedJob,
} from '../../dist/index.js';
import { loadNow } from '../../dist/shell/rack/journal-file.js';

const inch = 8128;

/** A small congruential generator: the same numbers on every machine. */
function chance(seed) {
  let state = seed >>> 0;
  return (most) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * most);
  };
}

function pieceOf(name, random) {
  const length = (12 + random(60)) * inch;
  const width = (2 + random(6)) * inch;
  const defects = Array.from({ length: random(3) }, () => {
    const [x, y] = [random(length / inch - 2) * inch, random(width / inch - 1) * inch];
    return { kind: 'sound knot', face: 'A', x, y, length: inch * 1.5, width: inch };
  });
  return {
    name,
    length,
    width,
    dressedThickness: 6604,
    nominalThickness: '4/4',
    nominalInches: 1,
    species: 'black cherry',
    grade: '1C',
    tone: 'warm',
    lookA: 5,
    lookB: 5,
    cost: ((length * width) / (144 * inch * inch)) * 6.4,
    defects,
    parent: { name: `B${name}`, x: 0, y: 0, turn: 'as cut' },
  };
}

/** A journal of so many entries, five a booking: of every five pieces put one is taken and one corrected. */
function journalText(entries, stays) {
  const random = chance(7);
  let journal = { ...emptyJournal };
  let text = '';
  for (let made = 0; made < entries; made += 5) {
    const pieces = [0, 1, 2].map((index) => pieceOf(`P${made + index}`, random));
    const deeds = [
      ...pieces.map((piece) => ({ deed: { action: 'put', piece }, note: '' })),
      {
        deed: { action: 'correct', piece: { ...pieces[1], width: pieces[1].width - 508, defects: [] } },
        note: '',
      },
      stays
        ? { deed: { action: 'put', piece: pieceOf(`P${made + 3}`, random) }, note: '' }
        : {
            deed: { action: 'take', from: 'rack', name: pieces[0].name, piece: pieces[0], made: [] },
            note: '',
          },
    ];
    const booking = bookingText(
      journal,
      { occasion: { time: '2031-01-02T03:04:05Z', job: 'j', layout: '' }, deeds },
      'in',
    );
    text += booking.text;
    const dialect = journal.dialect;
    journal = {
      ...journal,
      dialect,
      begun: true,
      lastEntry: journal.lastEntry + 5,
      lastBooking: booking.booking,
    };
  }
  return text;
}

function median(values) {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
}

function timesOf(count, work) {
  return Array.from({ length: count }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
}

/** Milliseconds to load 10,000 entries from the disk, median of five; a checksum of what was loaded. */
export function loadBench() {
  const folder = mkdtempSync(join(tmpdir(), 'rack-bench-'));
  try {
    const file = join(folder, 'rack.csv');
    const text = journalText(10_000, false);
    writeFileSync(file, text);
    let loaded = null;
    const times = timesOf(5, () => {
      loaded = loadNow(file);
    });
    const cost = [...loaded.rack.pieces.values()].reduce((sum, { piece }) => sum + piece.cost, 0);
    return {
      entries: loaded.journal.entries.length,
      notices: loaded.journal.notices.length + loaded.rack.notices.length,
      bytes: text.length,
      first: times[0],
      median: median(times),
      checksum: Math.round(cost * 100),
    };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** A mantel's worth of parts laid out from 12 boards and so many rack pieces. */
export function layoutBench(rackPieces, effort) {
  const read = readJournal(journalText((rackPieces / 4) * 5, true));
  const rack = foldJournal(read.value.entries);
  const part = (name, quantity, length, width) => ({
    name,
    quantity,
    length: length * inch,
    width: width * inch,
    thickness: 6096,
    grain: 'along',
    quality: 'clear-1',
    show: 0,
    accept: [],
    run: null,
    leftEnd: 0,
    rightEnd: 0,
    glueUp: 1,
    value: null,
    pin: null,
    note: '',
  });
  const parts = [
    part('front', 1, 70, 6.5),
    part('top', 1, 70, 7.25),
    part('return', 2, 20, 6.5),
    part('return top', 2, 11.5, 5),
    part('ledger', 1, 60, 3),
    part('rail', 6, 24, 2.5),
    part('stile', 4, 30, 2.25),
    part('cleat', 8, 12, 2),
  ];
  const board = (_, index) => ({
    ...pieceOf(`B${index}`, chance(index)),
    quantity: 1,
    length: (72 + 6 * index) * inch,
    width: (6 + (index % 4)) * inch,
    surface: 'rough',
    cost: 40 + 5 * index,
    note: '',
    defects: [],
    origin: 'job',
  });
  const job = { name: 'j', shop: defaultShop, parts, boards: Array.from({ length: 12 }, board) };
  const stocked = stockedJob(job, rack, 'j');
  const forRack = { job: 'j', used: stocked.names, needs: needsOf(rack.made) };
  const start = performance.now();
  const steps = layOutJob(stocked.job, { seed: 1, effort }, forRack);
  let first = null;
  let step = steps.next();
  while (step.done !== true) {
    first ??= performance.now() - start;
    step = steps.next();
  }
  const { layout, faults } = step.value;
  return {
    pieces: stocked.job.boards.length - 12,
    first,
    total: performance.now() - start,
    megabytes: Math.round(process.memoryUsage().rss / 1e6),
    cost: layout.proof.value,
    bound: layout.proof.bound,
    gap: layout.proof.gap,
    faults: faults.length,
  };
}

/** Both, as lines of text. */
export function rackLines() {
  const load = loadBench();
  const lines = [
    `rack: ${load.entries} entries (${(load.bytes / 1e6).toFixed(1)} MB, ${load.notices} notices) load in ${load.median.toFixed(0)} ms, the first time ${load.first.toFixed(0)} ms; checksum ${load.checksum}`,
  ];
  for (const [pieces, effort] of [
    [0, 1],
    [200, 1],
    [2000, 0],
    [2000, 1],
  ]) {
    const run = layoutBench(pieces, effort);
    lines.push(
      `layout with ${run.pieces} rack pieces, effort ${effort}: first ${(run.first / 1000).toFixed(2)} s, all ${(run.total / 1000).toFixed(1)} s, ${run.megabytes} MB; cost ${run.cost.toFixed(2)}, gap ${(100 * run.gap).toFixed(2)} %, ${run.faults} faults`,
    );
  }
  return lines;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  for (const line of rackLines()) console.log(line);
}
