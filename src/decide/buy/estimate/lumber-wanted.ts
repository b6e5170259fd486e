import { gathered } from '../../../base/lists/gathered.ts';
import { ticks, ticksPerInch } from '../../../base/units/tick.ts';
import type { Steps } from '../../../flow/choice/progress.ts';
import { breakWays } from '../../../flow/choice/runs/break-way.ts';
import type { Part } from '../../../flow/parts/part.ts';
import type { Job } from '../../../flow/stock/job.ts';
import { surfacedThickness } from '../../../trade/thickness.ts';
import type { DrawnGrade } from '../lumber/population.ts';
import type { ComesOut } from '../comes-out/completer.ts';
import { inTone, toneToMatch } from '../tones.ts';
import type { Lumber } from './draw.ts';

/** Lumber of one thickness as sold rough, and the part of the job that it is for. */
export interface LumberWanted {
  /** As written at the yard: `4/4`. */
  readonly nominalThickness: string;
  readonly nominalInches: number;
  readonly dressedThickness: Job['boards'][number]['dressedThickness'];
  /** The parts of that thickness, and the owned boards set aside for them. */
  readonly job: Job;
  /** Board feet of the finished parts alone, at the nominal thickness. */
  readonly netBoardFeet: number;
}

/**
 * The thicknesses to buy: each part needs the thinnest standard rough thickness that dresses to it, 4/4 at least. An
 * owned board is set aside for the thickest parts that it can serve; for thinner ones it is not counted.
 * @returns thinnest first; parts thicker than the thickest standard stock in `tooThick`
 */
export function lumberWanted(job: Job): { readonly wanted: LumberWanted[]; readonly tooThick: Part[] } {
  const standard = surfacedThickness.filter(({ rough }) => rough >= 1);
  const roughFor = ({ thickness }: Part): number | null =>
    standard.find(({ s2s }) => s2s * ticksPerInch >= thickness)?.rough ?? null;
  const all = gathered(
    job.parts.filter(({ quantity }) => quantity > 0),
    roughFor,
  );
  const tooThick = all.get(null) ?? [];
  const groups = new Map(
    [...all].flatMap(([rough, parts]) => (rough === null ? [] : [[rough, parts] as const])),
  );
  const sizes = [...groups.keys()].sort((a, b) => a - b);
  const thickest = (rough: number): number =>
    Math.max(...groups.get(rough)!.map(({ thickness }) => thickness));
  const home = (dressed: number): number | undefined => sizes.findLast((rough) => thickest(rough) <= dressed);
  const wanted = sizes.map((rough) => {
    const parts = groups.get(rough)!;
    const boards = job.boards.filter(({ dressedThickness }) => home(dressedThickness) === rough);
    const area = parts.reduce((sum, { quantity, length, width }) => sum + quantity * length * width, 0);
    return {
      nominalThickness: `${rough * 4}/4`,
      nominalInches: rough,
      dressedThickness: ticks(standard.find((row) => row.rough === rough)!.s2s * ticksPerInch),
      job: { ...job, parts, boards },
      netBoardFeet: (area / (12 * ticksPerInch) ** 2) * rough,
    };
  });
  return { wanted, tooThick };
}

/** For each lumber whether what is owned suffices, in steps. */
export function* ownedSuffice(wanted: readonly LumberWanted[], comesOut: ComesOut): Steps<boolean[]> {
  const answers: boolean[] = [];
  for (const lumber of wanted) {
    yield { doing: `looking at what is owned of ${lumber.nominalThickness}`, value: null, bound: null };
    answers.push(ownedSuffices(lumber, comesOut));
  }
  return answers;
}

/**
 * Whether the job comes out of the owned boards set aside for it, its runs broken where they must be, so that none of this
 * lumber has to be bought.
 */
export function ownedSuffices({ job }: LumberWanted, comesOut: ComesOut): boolean {
  return job.boards.length > 0 && breakWays(job).some((way) => comesOut(way.job) !== null);
}

/**
 * What is drawn for one grade: rough boards of the thickness that match the owned ones in tone, and the job with its
 * parts that show bound to that tone, unless the shop mixes tones.
 */
export function toDraw(
  { job, nominalThickness, nominalInches, dressedThickness }: LumberWanted,
  grade: DrawnGrade,
): { readonly job: Job; readonly lumber: Lumber } {
  const tone = toneToMatch(job);
  const size = { nominalThickness, nominalInches, dressedThickness };
  return {
    job: job.shop.showTone === 'any' ? job : inTone(job, tone),
    lumber: { grade, ...size, surface: 'rough', tone },
  };
}
