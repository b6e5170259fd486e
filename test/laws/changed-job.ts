import { ticks } from '../../src/base/units/tick.ts';
import type { Part } from '../../src/flow/parts/part.ts';
import type { Shop } from '../../src/flow/shop/shop.ts';
import type { Board } from '../../src/flow/stock/board.ts';
import type { Defect } from '../../src/flow/stock/defect.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { type Seeded, seeded } from './seeded.ts';

/** A change of a job of which it is known what it does to the best layout there is. */
export interface Change {
  readonly name: string;
  /** The best of the changed job is as good as before, or at least as good. */
  readonly effect: 'as good' | 'no worse';
  /** Must not change its job. May return it as it is where there is nothing to change. */
  readonly apply: (job: Job, random: Seeded) => Job;
}

function withBoards(job: Job, change: (board: Board) => Board): Job {
  return { ...job, boards: job.boards.map(change) };
}

function withDefects(job: Job, change: (defect: Defect, board: Board) => Defect): Job {
  return withBoards(job, (board) => ({
    ...board,
    defects: board.defects.map((defect) => change(defect, board)),
  }));
}

function shuffled<T>(random: Seeded, list: readonly T[]): T[] {
  const left = [...list];
  return list.flatMap(() => left.splice(random.whole(0, left.length - 1), 1));
}

/** All boards turned over: near edge stays near. */
function turnedOver(job: Job): Job {
  const other = { A: 'B', B: 'A', through: 'through' } as const;
  const turned = withDefects(job, (defect) => ({ ...defect, face: other[defect.face] }));
  const looks = withBoards(turned, (board) => ({ ...board, lookA: board.lookB, lookB: board.lookA }));
  const pinned = (part: Part): Part =>
    part.pin === null || part.pin.face === null
      ? part
      : { ...part, pin: { ...part.pin, face: other[part.pin.face] } };
  return { ...looks, parts: looks.parts.map(pinned) };
}

/** Every length of the job `times` as long; money stays. */
function scaled({ name, shop, parts, boards }: Job, times: number): Job {
  const by = <T extends object>(of: T, ...fields: readonly (keyof T)[]): T => ({
    ...of,
    ...Object.fromEntries(fields.map((field) => [field, (of[field] as number) * times])),
  });
  return {
    name,
    shop: by<Shop>(
      shop,
      ...(['ripKerf', 'crosscutKerf', 'endTrim', 'edgeTrim', 'shortestRip', 'shortestPiece'] as const),
      ...([
        'lengthAllowance',
        'widthAllowance',
        'leastOffcutLength',
        'leastOffcutWidth',
        'knotMargin',
      ] as const),
    ),
    parts: parts.map((part) => ({
      ...by(part, 'length', 'width', 'thickness'),
      accept: part.accept.map(({ kind, atMost }) => ({
        kind,
        atMost: atMost === null ? null : ticks(atMost * times),
      })),
    })),
    boards: boards.map((board) => ({
      ...by(board, 'length', 'width', 'dressedThickness'),
      defects: board.defects.map((defect) => by(defect, 'x', 'y', 'length', 'width')),
    })),
  };
}

/** Each row of several as rows of one. A run is left as it is, since its rows belong together. */
function splitRows(job: Job): Job {
  const boards = job.boards.flatMap((board) =>
    Array.from({ length: board.quantity }, (_, copy) => ({
      ...board,
      quantity: 1,
      name: copy === 0 ? board.name : `${board.name} (${copy + 1})`,
    })),
  );
  const isPinned = job.parts.some((part) => part.pin !== null);
  const parts = job.parts.flatMap((part) =>
    part.run !== null
      ? [part]
      : Array.from({ length: part.quantity }, (_, copy) => ({
          ...part,
          quantity: 1,
          name: `${part.name} (${copy + 1})`,
        })),
  );
  return { ...job, parts, boards: isPinned ? job.boards : boards };
}

function withoutOneDefect(job: Job, random: Seeded): Job {
  const flawed = job.boards.filter(({ defects }) => defects.length > 0);
  if (flawed.length === 0) return job;
  const from = random.pick(flawed);
  const dropped = random.pick(from.defects);
  return withBoards(job, (board) =>
    board === from ? { ...board, defects: board.defects.filter((defect) => defect !== dropped) } : board,
  );
}

/** The job with boards that have no defects at all. */
export function clearJob(job: Job): Job {
  return withBoards(job, (board) => ({ ...board, defects: [] }));
}

/** Changes that hold for every job. */
export const changes: readonly Change[] = [
  {
    name: 'the boards turned end for end',
    effect: 'as good',
    apply: (job) => withDefects(job, (d, board) => ({ ...d, x: board.length - d.x - d.length })),
  },
  {
    // S3S boards have one rough edge, and no surface says that it is the near one.
    name: 'the boards turned edge for edge',
    effect: 'as good',
    apply: (job) =>
      withDefects(job, (d, board) =>
        board.surface === 'S3S' ? d : { ...d, y: board.width - d.y - d.width },
      ),
  },
  { name: 'the boards turned over', effect: 'as good', apply: turnedOver },
  {
    name: 'the boards in another order',
    effect: 'as good',
    apply: (job, random) => ({ ...job, boards: shuffled(random, job.boards) }),
  },
  {
    name: 'the parts in another order',
    effect: 'as good',
    apply: (job, random) =>
      job.parts.some(({ run }) => run !== null) ? job : { ...job, parts: shuffled(random, job.parts) },
  },
  { name: 'every length three times as long', effect: 'as good', apply: (job) => scaled(job, 3) },
  { name: 'rows of several split into rows of one', effect: 'as good', apply: splitRows },
  {
    name: 'one more board',
    effect: 'no worse',
    apply: (job, random) => ({
      ...job,
      boards: [...job.boards, { ...random.pick(job.boards), name: 'one more', cost: random.whole(0, 60) }],
    }),
  },
  { name: 'one defect less', effect: 'no worse', apply: withoutOneDefect },
  {
    name: 'one stage more',
    effect: 'no worse',
    apply: (job) => ({
      ...job,
      shop: { ...job.shop, stages: job.shop.stages === 'any' ? 'any' : job.shop.stages + 1 },
    }),
  },
  {
    name: 'shorter wood may be ripped',
    effect: 'no worse',
    apply: (job) => ({
      ...job,
      shop: { ...job.shop, shortestRip: ticks(Math.floor(job.shop.shortestRip / 2)) },
    }),
  },
  {
    name: 'any quality will do for one part',
    effect: 'no worse',
    apply: (job, random) => {
      const easier = random.pick(job.parts);
      return { ...job, parts: job.parts.map((p) => (p === easier ? { ...p, quality: 'any' } : p)) };
    },
  },
];

/** A change of jobs whose boards are clear: where there are defects, pieces may be held in place by them. */
export const thinnerKerf: Change = {
  name: 'a thinner kerf',
  effect: 'no worse',
  apply: (job, random) => {
    const thinner = (kerf: number): Shop['ripKerf'] => ticks(Math.floor(kerf * random.pick([0, 0.5, 0.75])));
    const { ripKerf, crosscutKerf } = job.shop;
    return { ...job, shop: { ...job.shop, ripKerf: thinner(ripKerf), crosscutKerf: thinner(crosscutKerf) } };
  },
};

/**
 * The job with some of its parts and settings made odder: grain, what is accepted, pins, a run, two of a board, the goal.
 * Deterministic in the seed. Every part has a value of its own, so that lengths can be scaled under `most value`.
 */
export function oddJob(seed: number, job: Job): Job {
  const random = seeded(seed ^ 0x51ab3c);
  const run = random.chance(0.4);
  const parts = job.parts.map((part, index): Part => {
    const value = Math.max(1, Math.round((part.length * part.width) / 8128 ** 2));
    if (run && index > job.parts.length - 3) {
      // At 60° the blade takes two kerfs exactly, whatever the scale.
      return { ...part, value, run: 'round', quantity: 1, leftEnd: 60, rightEnd: random.pick([0, 60]) };
    }
    return {
      ...part,
      value,
      grain: random.pick(['along', 'along', 'along', 'any'] as const),
      accept: random.chance(0.3) ? [{ kind: 'sound knot', atMost: random.pick([null, ticks(8128)]) }] : [],
      pin: random.chance(0.08) ? { board: random.pick(job.boards).name, face: null } : null,
    };
  });
  const boards = job.boards.map((board) => ({ ...board, quantity: random.pick([1, 1, 1, 2]) }));
  const shop: Shop = {
    ...job.shop,
    goal: random.pick(['least cost', 'least cost', 'most value'] as const),
    stages: random.pick([3, 4, 4]),
    knotMargin: ticks(random.pick([0, 0, 2032])),
  };
  return { ...job, parts, boards, shop };
}
