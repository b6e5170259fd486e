import type { Job } from '../../src/flow/stock/job.ts';
import { type BillSize, billJob } from '../laws/bills/bill.ts';
import { perfectJob } from '../laws/perfect-job.ts';
import { mantelJob, yardJob } from '../laws/random-job.ts';

/** A job to solve, and its least cost where its making tells. */
export interface Instance {
  readonly job: Job;
  readonly known: number | null;
}

/** Jobs of one size, one for each seed. */
export interface Family {
  readonly name: string;
  /** Other words that call it, together with others. */
  readonly groups: readonly string[];
  readonly title: string;
  /** Seeds of a full bench, first and last. */
  readonly seeds: readonly [number, number];
  /** Time limit of one solve in a full bench. */
  readonly seconds: number;
  readonly make: (seed: number) => Instance;
}

function mantels(
  name: string,
  title: string,
  size: { readonly kinds: number; readonly boards: number; readonly pieces: number },
  full: {
    readonly seeds: readonly [number, number];
    readonly seconds: number;
    readonly groups?: readonly string[];
  },
): Family {
  return {
    name,
    groups: full.groups ?? [],
    title: `${title}: ${size.kinds} part kinds, ${size.pieces} pieces, ${size.boards} boards`,
    seeds: full.seeds,
    seconds: full.seconds,
    make: (seed) => ({ job: mantelJob(seed, size), known: null }),
  };
}

function perfects(sources: number, pieces: number, decoys: number): Family {
  return {
    name: `perfect-${sources}`,
    groups: ['perfect'],
    title: `perfect by construction: about ${pieces} pieces fill ${sources} boards, ${decoys} dearer boards beside them`,
    seeds: [1, 10],
    seconds: 60,
    make: (seed) => {
      const { job, sourceCost } = perfectJob({ seed, sources, pieces, decoys });
      return { job, known: sourceCost };
    },
  };
}

function yards(sizes: number, kinds: number, pieces: number): Family {
  return {
    name: `yard-${sizes}-${kinds}`,
    groups: ['yard'],
    title: `clear boards by quantity: ${kinds} part kinds, ${pieces} pieces, boards of ${sizes} sizes`,
    seeds: [1, 5],
    seconds: 60,
    make: (seed) => ({ job: yardJob(seed, { kinds, pieces, sizes }), known: null }),
  };
}

function bills(name: string, title: string, seconds: number, size: BillSize): Family {
  return {
    name,
    groups: ['bills'],
    title: `${title}, offcut credit ${size.credit}`,
    seeds: [1, 12],
    seconds,
    make: (seed) => ({ job: billJob(seed, size), known: null }),
  };
}

/** What people make, on graded boards at the shop's defaults. */
const bill: readonly Family[] = [0, 0.3].flatMap((credit) => {
  const plus = credit === 0 ? '' : '-credit';
  return [
    bills(`mantel-1${plus}`, 'one planned mantel', 60, { of: 'mantel', count: 1, credit }),
    bills(`mantel-3${plus}`, 'three planned mantels', 60, { of: 'mantel', count: 3, credit }),
    bills(`mantel-6${plus}`, 'six planned mantels', 120, { of: 'mantel', count: 6, credit }),
    bills(`furniture-1${plus}`, 'one piece of furniture', 60, { of: 'furniture', count: 1, credit }),
    bills(`furniture-3${plus}`, 'three pieces of furniture', 60, { of: 'furniture', count: 3, credit }),
    bills(`furniture-8${plus}`, 'eight pieces of furniture', 120, { of: 'furniture', count: 8, credit }),
    bills(`casing${plus}`, 'casings of three rooms', 60, { of: 'casing', count: 3, credit }),
  ];
});

/** The same mix of parts and boards, doubled from a mantel's size on. */
const growth: readonly Family[] = [1, 2, 4, 8, 16].map((times) =>
  mantels(
    `growth-${times}`,
    `growth, ${times} ×`,
    { kinds: 8 * times, boards: 12 * times, pieces: 24 * times },
    { seeds: [1, 1], seconds: 120, groups: ['growth'] },
  ),
);

export const families: readonly Family[] = [
  mantels('mantel', 'mantel', { kinds: 10, boards: 14, pieces: 18 }, { seeds: [1, 100], seconds: 60 }),
  mantels('pair', 'pair', { kinds: 20, boards: 30, pieces: 36 }, { seeds: [1, 10], seconds: 60 }),
  mantels('week', 'shop week', { kinds: 60, boards: 100, pieces: 200 }, { seeds: [1, 5], seconds: 120 }),
  mantels('mill', 'rough mill', { kinds: 200, boards: 600, pieces: 2000 }, { seeds: [1, 1], seconds: 300 }),
  perfects(3, 25, 5),
  perfects(4, 30, 6),
  perfects(6, 40, 8),
  perfects(10, 70, 12),
  ...growth,
  ...bill,
  yards(1, 20, 40),
  yards(3, 20, 40),
  yards(1, 40, 120),
  yards(3, 40, 120),
];

/** Benches with a script of their own, which takes the rest of the arguments and prints its own table. */
export const scripts: readonly string[] = ['published', 'rack', 'buy', 'any-job'];
