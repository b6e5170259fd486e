import type { JobTexts } from '../../../src/shell/read/job-texts.ts';
import { defectKinds } from '../../../src/flow/stock/defect.ts';
import { type Seeded, seeded } from '../seeded.ts';

/** One row of a file, by column. */
type Row = Readonly<Record<string, string>>;

/** Writes lengths in the job's unit: inches in quarters, mostly, or whole millimetres. */
type Write = (inches: number) => string;

function csvOf(rows: readonly Row[]): string {
  const columns = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  const lines = rows.map((row) => columns.map((column) => row[column] ?? '').join(','));
  return [columns.join(','), ...lines].map((line) => `${line}\n`).join('');
}

function shopRows(random: Seeded, units: 'in' | 'mm', write: Write): Row[] {
  const goal = random.pick(['least cost', 'least cost', 'most value']);
  const settings: readonly (readonly [string, readonly string[]])[] = [
    ['rip kerf', [0, 1 / 16, 1 / 8, 1 / 8, 1 / 4].map(write)],
    ['crosscut kerf', [0, 1 / 16, 1 / 8, 1 / 8, 1 / 4].map(write)],
    ['end trim', [0, 1 / 16, 1, 1, 2].map(write)],
    ['edge trim', [0, 1 / 16, 1 / 4, 1 / 4].map(write)],
    ['shortest rip', [0, 5, 12, 12, 30].map(write)],
    ['length allowance', [0, 0, 1 / 4].map(write)],
    ['width allowance', [0, 0, 1 / 8].map(write)],
    ['least offcut length', [0, 6, 12, 40].map(write)],
    ['least offcut width', [0, 1, 2].map(write)],
    ['knot margin', [0, 0, 1 / 2].map(write)],
    ['price', ['0', '8.5', '10']],
    ['offcut credit', ['0', '0', '0.5', '1']],
    ['face premium', ['0', '0', '0', '0', '0', '0.1', '1']],
    ['show tone', ['one', 'any']],
    ['show species', ['one', 'any']],
    ['own runs', ['whole', 'may break', 'may break']],
    ['break grain', ['never', '0', '5%', '20']],
    ['stages', ['1', '2', '2', '2', '3', '3', '3', '4', '6', 'any']],
  ];
  // What is left out has its default, mostly that of a usual shop.
  const given = settings.filter(([name]) => random.chance(name === 'stages' ? 0.55 : 0.45));
  return [
    { setting: 'units', value: units },
    { setting: 'goal', value: goal },
    // The replay knows finished sizes and the allowances above.
    { setting: 'miter allowance', value: '0' },
    { setting: 'glued length allowance', value: '0' },
    { setting: 'glued width allowance', value: '0' },
    ...given.map(([setting, values]) => ({ setting, value: random.pick(values) })),
  ];
}

/** A name that no file format should trip over, now and then. */
function nameOf(random: Seeded, kind: string, index: number): string {
  return random.chance(0.04) ? `=${kind} <${index}> é` : `${kind}${index}`;
}

function boardRows(random: Seeded, write: Write): Row[] {
  const isAlike = random.chance(0.2);
  const isMixed = random.chance(0.3);
  return Array.from({ length: random.pick([1, 2, 2, 3, 3, 4]) }, (_, index): Row => {
    const length = isAlike ? 60 : random.whole(4 * 24, 4 * 110) / 4;
    const width = isAlike ? 8 : random.whole(4 * 4, 4 * 12) / 4;
    return {
      board: nameOf(random, 'b', index + 1),
      quantity: random.pick(['', '1', '1', '2', '2', '3', '0']),
      length: write(length),
      width: write(width),
      thickness: random.pick(['4/4', '4/4', '5/4', '8/4']),
      surface: random.pick(['', 'rough', 'S2S', 'S3S', 'S4S', 'S4S']),
      price: random.pick(['', '', '0', '30', '9/bf']),
      'look A': random.pick(['', '0', '4', '9.5']),
      'look B': random.pick(['', '0', '6']),
      tone: random.pick(['', '', 'red', 'pale']),
      species: isMixed ? random.pick(['', 'red oak', 'white oak', 'cherry']) : '',
    };
  });
}

/** Square ends mostly: bevels either way, slight and steep. */
function endOf(random: Seeded): string {
  return random.chance(0.5) ? '' : random.pick(['45', '-45', '22.5', '67.5', '80']);
}

function partRows(random: Seeded, boards: readonly Row[], write: Write): Row[] {
  const runs = random.pick([[], ['r'], ['facing'], ['r', 's'], ['facing', 'r']]);
  const widths = Array.from({ length: 3 }, () => random.whole(4, 4 * 5) / 4);
  const isEven = random.chance(0.4);
  return Array.from({ length: random.whole(1, 7) }, (_, index): Row => {
    const run = runs.length > 0 && random.chance(0.6) ? random.pick(runs) : '';
    // Most runs are such as a person would ask for: else few of them would fit on a board.
    const isUsual = run !== '' && random.chance(0.9);
    const kept = boards.filter(({ quantity }) => quantity !== '0');
    const pinned =
      random.chance(isUsual ? 0.03 : 0.1) && kept.length > 0 ? (random.pick(kept)['board'] ?? '') : '';
    const face = pinned === '' ? '' : random.pick(['', ':A', ':B']);
    const short = random.whole(4 * (isUsual && random.chance(0.7) ? 12 : 2), 4 * 18) / 4;
    return {
      part: nameOf(random, 'p', index + 1),
      quantity: random.pick(['1', '1', '1', '1', '2', '2', '3', '0']),
      length: write(isUsual || random.chance(0.5) ? short : random.whole(4 * 8, 4 * 44) / 4),
      width: write(
        isUsual && isEven
          ? widths[0]!
          : isUsual || random.chance(0.6)
            ? random.pick(widths)
            : random.whole(4, 4 * 8) / 4,
      ),
      thickness: write(isUsual ? 3 / 4 : random.pick([1 / 2, 3 / 4, 3 / 4, 3 / 4, 5 / 4])),
      grain: isUsual || random.chance(0.8) ? '' : random.pick(['across', 'any', 'along']),
      quality: random.pick(isUsual ? ['', 'sound', 'any'] : ['', 'clear-2', 'sound', 'any']),
      show: random.chance(0.6) ? '' : random.pick(['yes', '2', '0.5']),
      accept: random.chance(0.8) ? '' : random.pick(['sound knot', 'stain; check', 'sound knot; sapwood']),
      run,
      'left end': endOf(random),
      'right end': endOf(random),
      'glue-up': random.chance(0.75) ? '' : random.pick(['2', '3', '5']),
      value: random.chance(0.7) ? '' : random.pick(['0', '7', '120.5']),
      board: pinned + face,
      species: random.chance(0.85) ? '' : random.pick(['oak', 'red oak', 'cherry']),
    };
  });
}

function defectRows(random: Seeded, boards: readonly Row[], units: 'in' | 'mm', write: Write): Row[] {
  const inches = (text: string | undefined): number => Number(text) / (units === 'mm' ? 25.4 : 1);
  return Array.from({ length: random.pick([0, 0, 1, 3, 6]) }, (): Row => {
    const board = random.pick(boards);
    const [long, wide] = [inches(board['length']), inches(board['width'])];
    const from = random.next() * (long - 1);
    const low = random.next() * (wide - 1);
    const down = (value: number): number => Math.floor(4 * value) / 4;
    return {
      board: board['board'] ?? '',
      kind: random.pick(defectKinds),
      face: random.pick(['A', 'B', 'through']),
      from: write(down(from)),
      to: write(down(from + 0.5 + random.next() * Math.min(10, long - 0.5 - from))),
      low: write(down(low)),
      high: write(down(low + 0.5 + random.next() * Math.min(2, wide - 0.5 - low))),
    };
  });
}

/**
 * The files of a random small job in which any rules may meet: runs of any quantities, widths and bevels, glue-ups, tones, pins,
 * turned grain, both goals, any stages, both units, margins, allowances, credit, premium, boards with and without flaws
 * and prices, boards used up, and parts that no board holds. Deterministic in its seed.
 */
export function anyJobTexts(seed: number): JobTexts {
  const random = seeded(seed ^ 0x3c6ef35);
  const units = random.pick(['in', 'in', 'mm'] as const);
  // Most lengths in millimetres are round ones: odd ones take the solver much longer.
  const roundTo = random.chance(0.75) ? 5 : 1;
  const write: Write = (inches) => {
    const step = inches < 1 ? 1 : roundTo;
    return String(units === 'in' ? inches : step * Math.round((inches * 25.4) / step));
  };
  const shop = shopRows(random, units, write);
  const boards = boardRows(random, write);
  const defects = defectRows(random, boards, units, write).filter(
    ({ from, to, low, high }) => Number(from) < Number(to) && Number(low) < Number(high),
  );
  const parts = partRows(random, boards, write);
  const text = (file: string, rows: readonly Row[]): { file: string; text: string | null } => ({
    file,
    text: rows.length === 0 ? null : csvOf(rows),
  });
  return {
    shop: text('shop.csv', shop),
    parts: text('parts.csv', parts),
    boards: text('boards.csv', boards),
    defects: text('defects.csv', defects),
    yard: { file: 'yard.csv', text: null },
  };
}
