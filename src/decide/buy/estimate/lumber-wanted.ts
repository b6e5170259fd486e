import { gathered } from '../../../base/lists/gathered.ts';
import { ticks, ticksPerInch } from '../../../base/units/tick.ts';
import type { Steps } from '../../../flow/choice/progress.ts';
import { breakWays } from '../../../flow/choice/runs/break-way.ts';
import { isAskedFor } from '../../../flow/parts/match.ts';
import { nameText } from '../../../flow/sheet/words/named.ts';
import type { Part } from '../../../flow/parts/part.ts';
import type { Job } from '../../../flow/stock/job.ts';
import { speciesKey } from '../../../trade/species.ts';
import { surfacedThickness } from '../../../trade/thickness.ts';
import type { DrawnGrade } from '../lumber/population.ts';
import type { ComesOut } from '../comes-out/completer.ts';
import { usualSpecies, woodToMatch } from '../wood-to-buy.ts';
import type { Lumber } from './draw.ts';

/** Lumber of one species and thickness as sold rough, and the part of the job that it is for. */
export interface LumberWanted {
  /** As the parts name it; empty: not said. */
  readonly species: string;
  /** As written at the yard: `4/4`. */
  readonly nominalThickness: string;
  readonly nominalInches: number;
  readonly dressedThickness: Job['boards'][number]['dressedThickness'];
  /** The parts of that thickness, and the owned boards set aside for them. */
  readonly job: Job;
  /** Board feet of the finished parts alone, at the nominal thickness. */
  readonly netBoardFeet: number;
}

/** `4/4 red oak` */
export function lumberName({ nominalThickness, species }: LumberWanted): string {
  return species === '' ? nominalThickness : `${nominalThickness} ${nameText(species, 40)}`;
}

/** Parts to be cut from one species in one thickness. */
interface Group {
  readonly rough: number;
  readonly species: string;
  readonly parts: Part[];
}

/**
 * The species and thicknesses to buy: each part needs its species, or the usual one of the job where it names none, in the
 * thinnest standard rough thickness that dresses to it, 4/4 at least. An owned board is set aside for the thickest parts
 * that it can serve, of its own species first; for thinner ones it is not counted.
 * @returns thinnest first; parts thicker than the thickest standard stock in `tooThick`
 */
export function lumberWanted(job: Job): { readonly wanted: LumberWanted[]; readonly tooThick: Part[] } {
  const standard = surfacedThickness.filter(({ rough }) => rough >= 1);
  const usual = usualSpecies(
    job.parts.filter(({ quantity }) => quantity > 0),
    job.boards,
  );
  const roughFor = ({ thickness }: Part): number | null =>
    standard.find(({ s2s }) => s2s * ticksPerInch >= thickness)?.rough ?? null;
  const speciesOf = ({ species }: Part): string => (species === '' ? usual : species);
  const all = gathered(
    job.parts.filter(({ quantity }) => quantity > 0),
    (part) => (roughFor(part) === null ? null : `${roughFor(part)} ${speciesKey(speciesOf(part))}`),
  );
  const tooThick = all.get(null) ?? [];
  const sorted = [...all]
    .flatMap(([key, parts]): Group[] =>
      key === null ? [] : [{ rough: roughFor(parts[0]!)!, species: speciesOf(parts[0]!), parts }],
    )
    .sort((a, b) => a.rough - b.rough);
  const wanted = sorted.map((group) => {
    const { rough, species, parts } = group;
    const boards = job.boards.filter((board) => homeOf(board, sorted) === group);
    const area = parts.reduce((sum, { quantity, length, width }) => sum + quantity * length * width, 0);
    return {
      species,
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

/** The parts that an owned board is set aside for; none where it is too thin or of another species. @param groups thinnest first */
function homeOf(
  { dressedThickness, species }: Job['boards'][number],
  groups: readonly Group[],
): Group | null {
  const thick = groups.filter(({ parts }) => parts.every(({ thickness }) => thickness <= dressedThickness));
  const own = thick.findLast((group) => isAskedFor(species, group.species));
  return own ?? thick.findLast(({ parts }) => parts.some((part) => part.species === '')) ?? null;
}

/**
 * Whether the job comes out of the owned boards set aside for it, its runs broken where they must be, so that none of this
 * lumber has to be bought.
 */
export function ownedSuffices({ job }: LumberWanted, comesOut: ComesOut): boolean {
  return job.boards.length > 0 && breakWays(job).some((way) => comesOut(way.job) !== null);
}

/**
 * What is drawn for one grade: rough boards of the thickness that match the owned ones in species and tone, and the job
 * with its parts that show bound to both, unless the shop leaves them open.
 */
export function toDraw(
  { job, species, nominalThickness, nominalInches, dressedThickness }: LumberWanted,
  grade: DrawnGrade,
): { readonly job: Job; readonly lumber: Lumber } {
  const wood = woodToMatch(job.boards, species);
  const size = { nominalThickness, nominalInches, dressedThickness };
  const { showTone, showSpecies } = job.shop;
  const bound = (part: Part): Part => {
    const isOpen = part.species === '' && showSpecies === 'any';
    const match = {
      species: isOpen ? null : [wood.species],
      tone: showTone === 'any' ? null : wood.tone,
    };
    return part.show > 0 && (match.species !== null || match.tone !== null) ? { ...part, match } : part;
  };
  return {
    job: { ...job, parts: job.parts.map(bound) },
    lumber: { grade, ...size, surface: 'rough', ...wood },
  };
}
