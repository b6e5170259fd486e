import { parseArgs } from 'node:util';
import { type Family, families, scripts } from './families.ts';

export interface Options {
  readonly families: readonly Family[];
  readonly scripts: readonly string[];
  /** First and last seed; null: the family's own. */
  readonly seeds: readonly [number, number] | null;
  /** Wall seconds after which a solve is told to stop; null: the family's own. */
  readonly seconds: number | null;
  readonly clock: 'wall' | 'cpu';
  readonly effort: number;
  /** Threads of a solve. */
  readonly threads: 1 | 2;
  /** The solver's own seed. */
  readonly solverSeed: number;
  /** Seconds for the independent MIP solver; 0 leaves it out. */
  readonly mipSeconds: number;
  /** Most solves of one job that takes under a second. */
  readonly runs: number;
  /** File for a Markdown table; null: none. */
  readonly markdown: string | null;
}

export const usage = `npm run bench -- [FAMILY ...] [--seeds 1-20] [--seconds 60] [--effort 1] [--solver-seed 1]
                  [--clock wall|cpu] [--threads 2]
                  [--mip 10] [--runs 3] [--markdown FILE]

       npm run bench -- SCRIPT [its own arguments]

FAMILY   ${families.map(({ name }) => name).join(', ')};
         perfect, growth: all of these; all (the default): these and the scripts
SCRIPT   ${scripts.join(', ')}: published problems, the rack, buying, random jobs of all rules
--seeds  one or a range        --seconds  limit of one solve (else each family's own)
--clock  which seconds these are: of the clock, or of the process (on a busy machine)
--threads  2: price boards on two threads, as the command does; 1: on one (the answer is the same)
--mip    seconds for the independent MIP solver on the generated columns, 0 for none
--runs   solves of a job that takes under a second (times are the median)`;

/** Reads the arguments; a string is what is wrong with them. */
export function readOptions(args: readonly string[]): Options | string {
  const { values, positionals } = parseArgs({
    args: [...args],
    allowPositionals: true,
    options: {
      seeds: { type: 'string' },
      seconds: { type: 'string' },
      clock: { type: 'string', default: 'wall' },
      effort: { type: 'string', default: '1' },
      threads: { type: 'string', default: '2' },
      'solver-seed': { type: 'string', default: '1' },
      mip: { type: 'string', default: '10' },
      runs: { type: 'string', default: '3' },
      markdown: { type: 'string' },
      help: { type: 'boolean', default: false },
    },
  });
  if (values.help) return usage;
  const all = positionals.length === 0 || positionals.includes('all');
  const unknown = positionals.filter((word) => word !== 'all' && !isKnown(word));
  if (unknown.length > 0) return `unknown: ${unknown.join(', ')}\n${usage}`;
  const seeds = /^(\d+)(?:-(\d+))?$/.exec(values.seeds ?? '');
  if (values.seeds !== undefined && seeds === null) return `--seeds ${values.seeds}: say 7 or 1-20`;
  const numbers = [values.seconds ?? '1', values.effort, values['solver-seed'], values.mip, values.runs];
  if (numbers.some((text) => !/^\d+(\.\d+)?$/.test(text))) return `not a number among the options\n${usage}`;
  return {
    families: families.filter(
      (family) => all || [family.name, ...family.groups].some((n) => positionals.includes(n)),
    ),
    scripts: scripts.filter((name) => all || positionals.includes(name)),
    seeds: seeds === null ? null : [Number(seeds[1]), Number(seeds[2] ?? seeds[1])],
    seconds: values.seconds === undefined ? null : Number(values.seconds),
    clock: values.clock === 'cpu' ? 'cpu' : 'wall',
    effort: Number(values.effort),
    threads: values.threads === '1' ? 1 : 2,
    solverSeed: Number(values['solver-seed']),
    mipSeconds: Number(values.mip),
    runs: Math.max(1, Number(values.runs)),
    markdown: values.markdown ?? null,
  };
}

function isKnown(word: string): boolean {
  return scripts.includes(word) || families.some(({ name, groups }) => [name, ...groups].includes(word));
}
