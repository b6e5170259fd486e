import { ticks } from '../../../src/base/units/tick.ts';
import type { Part, Quality } from '../../../src/flow/parts/part.ts';
import { type Shop, defaultShop } from '../../../src/flow/shop/shop.ts';
import type { Board } from '../../../src/flow/stock/board.ts';
import type { Defect } from '../../../src/flow/stock/defect.ts';
import type { Job } from '../../../src/flow/stock/job.ts';
import { plainBoard, plainPart } from '../../laws/random-board.ts';
import { type Seeded, seeded } from '../../laws/seeded.ts';

/** A job small enough to try everything: all its lengths are whole multiples of `cell`. */
export interface TinyJob {
  readonly job: Job;
  /** Ticks. */
  readonly cell: number;
}

/** What a tiny job may hold beside boards and parts. */
export interface TinyRules {
  readonly goal: 'least cost' | 'most value';
  readonly credit: boolean;
  /** Stages to pick from. */
  readonly stages: readonly (number | 'any')[];
  /** What the job is about: nothing but boards and parts, or a run, boards of several tones, parts glued up of strips, or many copies of few boards. */
  readonly about?: 'run' | 'tones' | 'glue-ups' | 'copies';
}

function tinyShop(random: Seeded, cell: number, rules: TinyRules): Shop {
  const cells = (values: readonly number[]): Shop['endTrim'] => ticks(random.pick(values) * cell);
  return {
    ...defaultShop,
    ripKerf: cells([0, 0, 1]),
    crosscutKerf: cells([0, 0, 1]),
    endTrim: cells([0, 0, 0, 1]),
    edgeTrim: cells([0, 0, 1]),
    shortestRip: cells([0, 0, 0, 2, 3, 4]),
    shortestPiece: ticks(0),
    lengthAllowance: cells([0, 0, 0, 1]),
    widthAllowance: cells([0, 0, 0, 1]),
    miterAllowance: cells([0, 0, 1]),
    gluedLengthAllowance: cells([0, 0, 1]),
    gluedWidthAllowance: ticks(0),
    knotMargin: cells([0, 0, 0, 1]),
    leastOffcutLength: cells([1, 2, 3]),
    leastOffcutWidth: cells([1, 1, 2]),
    offcutCredit: rules.credit ? random.pick([0.25, 0.5, 1]) : 0,
    goal: rules.goal,
    stages: random.pick(rules.stages),
    ...(rules.about === 'glue-ups' ? { widthAllowance: ticks(0) } : {}),
  };
}

function tinyDefect(random: Seeded, length: number, width: number, cell: number): Defect {
  const long = random.whole(1, Math.min(3, length));
  const wide = random.whole(1, Math.min(2, width));
  return {
    kind: random.pick(['sound knot', 'loose knot', 'stain', 'check', 'rot', 'sapwood'] as const),
    face: random.pick(['A', 'B', 'through'] as const),
    x: random.whole(0, length - long) * cell,
    y: random.whole(0, width - wide) * cell,
    length: long * cell,
    width: wide * cell,
  };
}

function tinyBoard(random: Seeded, index: number, cell: number): Board {
  const length = random.whole(2, 8);
  const width = random.whole(1, 5);
  return {
    ...plainBoard({ name: `board ${index + 1}`, length: length * cell, width: width * cell }),
    quantity: random.pick([1, 1, 1, 2]),
    surface: random.pick(['rough', 'S2S', 'S3S', 'S4S', 'S4S', 'S4S'] as const),
    dressedThickness: ticks(random.chance(0.15) ? 3000 : 6604),
    origin: random.chance(0.2) ? 'rack' : 'job',
    cost: random.pick([
      random.whole(1, 40),
      length * width,
      length * width,
      random.whole(100, 2000) / 100,
      0,
    ]),
    defects: Array.from({ length: random.pick([0, 0, 1, 2]) }, () => tinyDefect(random, length, width, cell)),
  };
}

function tinyPart(random: Seeded, index: number, cell: number, boards: readonly Board[]): Part {
  const board = random.pick(boards);
  const side = (most: number): number =>
    random.chance(0.85) ? random.whole(1, Math.max(1, Math.ceil(most / 2))) : random.whole(1, most);
  const quality: Quality = random.pick(['clear-2', 'clear-1', 'clear-1', 'sound', 'sound', 'any']);
  return {
    ...plainPart({
      name: `part ${index + 1}`,
      length: side(board.length / cell) * cell,
      width: side(board.width / cell) * cell,
    }),
    thickness: ticks(random.chance(0.2) ? 2000 : 6096),
    grain: random.pick(['along', 'along', 'along', 'across', 'any'] as const),
    quality,
    accept: random.chance(0.2) ? [{ kind: 'sound knot', atMost: random.pick([null, ticks(cell)]) }] : [],
    value: random.chance(0.3) ? random.whole(0, 12) : null,
    pin: random.chance(0.08) ? { board: board.name, face: random.pick([null, 'A', 'B'] as const) } : null,
  };
}

/** Makes two or three of the parts a run, each small, so that the boards may hold it; the ends that meet are square or tilted. */
function withRun(random: Seeded, parts: readonly Part[], cell: number): Part[] {
  const members = random.whole(2, Math.min(3, parts.length));
  // At 60° the blade takes two kerfs, a whole number of cells.
  const end = (): number => random.pick([0, 0, 60, -60]);
  return parts.map((part, index) => {
    if (index >= members) return part;
    const length = ticks(random.whole(1, 2) * cell);
    const width = ticks(random.whole(1, 3) * cell);
    return {
      ...part,
      length,
      width,
      run: 'round',
      grain: 'along',
      value: null,
      leftEnd: end(),
      rightEnd: end(),
    };
  });
}

/** Makes one or two of the parts such as may be glued up of two or three strips of whole cells. */
function withGlueUps(random: Seeded, parts: readonly Part[], cell: number): Part[] {
  const many = random.whole(1, 2);
  return parts.map((part, index) => {
    if (index >= many) return { ...part, grain: part.grain === 'across' ? 'along' : part.grain };
    const [width, glueUp] = random.pick([
      [4, 2],
      [6, 2],
      [6, 3],
      [6, 3],
    ] as const);
    return {
      ...part,
      length: ticks(random.whole(1, 4) * cell),
      width: ticks(width * cell),
      glueUp,
      grain: random.chance(0.8) ? 'along' : 'any',
    };
  });
}

/** Deterministic in its arguments: 1 to 4 boards of at most 8 × 5 cells, 1 to 5 parts, at most 8 pieces. */
export function tinyJob(seed: number, rules: TinyRules): TinyJob {
  const random = seeded(seed);
  const { about } = rules;
  // A strip of a glue-up is wider by 1/8 in, which must be whole cells too.
  const cell = about === 'glue-ups' ? 1016 : random.pick([8128, 508, 320]);
  const least = about === 'run' ? 2 : about === 'tones' ? 2 : 1;
  const most = about === 'run' || about === 'copies' ? 2 : 4;
  const boards = Array.from({ length: random.whole(least, most) }, (_, index) => {
    const board = tinyBoard(random, index, cell);
    if (about === 'copies') return { ...board, quantity: random.whole(2, 6) };
    return about === undefined || about === 'run'
      ? board
      : { ...board, tone: random.pick(['', 'red', 'red', 'pale']) };
  });
  const plain = Array.from(
    { length: random.whole(about === 'run' ? 2 : 1, about === undefined ? 5 : 4) },
    (_, index) => {
      const part = tinyPart(random, index, cell, boards);
      return about === 'tones' ? { ...part, show: random.whole(0, 2) } : part;
    },
  );
  const parts =
    about === 'run'
      ? withRun(random, plain, cell)
      : about === 'glue-ups'
        ? withGlueUps(random, plain, cell)
        : plain;
  const quantities = parts.map(() => 1);
  for (let spare = random.whole(0, random.whole(0, 8 - parts.length)); spare > 0; spare -= 1) {
    const index = random.whole(0, parts.length - 1);
    if (parts[index]!.run === null) quantities[index] = (quantities[index] ?? 0) + 1;
  }
  const shop = tinyShop(random, cell, rules);
  return {
    job: {
      name: `tiny ${seed}`,
      shop,
      boards,
      parts: parts.map((part, index) => ({ ...part, quantity: quantities[index] ?? 1 })),
    },
    cell,
  };
}

/** The job in short, in cells, for the message of a failing test. */
export function printedJob({ job, cell }: TinyJob): string {
  const { shop } = job;
  const c = (value: number): number => value / cell;
  const rules = {
    kerf: `${c(shop.crosscutKerf)} across, ${c(shop.ripKerf)} along`,
    trims: `${c(shop.endTrim)} ends, ${c(shop.edgeTrim)} edges`,
    shortestRip: c(shop.shortestRip),
    allowance: `${c(shop.lengthAllowance)} x ${c(shop.widthAllowance)}`,
    knotMargin: c(shop.knotMargin),
    stages: shop.stages,
    goal: shop.goal,
    credit: shop.offcutCredit,
    offcut: `${c(shop.leastOffcutLength)} x ${c(shop.leastOffcutWidth)}`,
    cell,
  };
  const boards = job.boards.map(
    (b) =>
      `${b.name}: ${b.quantity} of ${c(b.length)} x ${c(b.width)} ${b.surface} ${b.origin} $${b.cost} thick ${b.dressedThickness} tone '${b.tone}' [${b.defects
        .map((d) => `${d.kind} ${d.face} ${c(d.x)},${c(d.y)} ${c(d.length)} x ${c(d.width)}`)
        .join('; ')}]`,
  );
  const parts = job.parts.map(
    (p) =>
      `${p.name}: ${p.quantity} of ${c(p.length)} x ${c(p.width)} ${p.grain} ${p.quality} thick ${p.thickness}` +
      ` value ${p.value} accept ${p.accept.map((a) => `${a.kind}<=${a.atMost}`).join()} pin ${JSON.stringify(p.pin)}` +
      ` show ${p.show} run ${p.run} ends ${p.leftEnd},${p.rightEnd} glue-up ${p.glueUp}`,
  );
  return [JSON.stringify(rules), ...boards, ...parts].join('\n');
}
