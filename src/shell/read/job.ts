import { basename, join, resolve } from 'node:path';
import { type Leg, type Mantel, type Result, type Shop, failure, success } from '../../index.ts';
import { type JobAndYard, type JobNeeds, type JobText, inFileOrder, readJobTexts } from './job-texts.ts';
import { readLegs, readMantelSettings } from './mantel.ts';
import { type Implausible, type JobFile, type ReadProblem, type Reading, missing } from './problem.ts';
import { readShop } from './shop.ts';
import { folderFault, readTextFile } from './text-file.ts';

/** The usual names of a job's files. */
export const jobFileNames: Readonly<Record<JobFile, string>> = {
  shop: 'shop.csv',
  parts: 'parts.csv',
  boards: 'boards.csv',
  defects: 'defects.csv',
  yard: 'yard.csv',
  mantel: 'mantel.csv',
  legs: 'legs.csv',
};

/** What a caller may say about the reading of a job. */
export interface JobOptions extends JobNeeds {
  /** Other names for some of the files, from the job folder. */
  readonly files?: Partial<Readonly<Record<JobFile, string>>>;
}

/**
 * Reads a job folder: `shop.csv` (defaults without), `boards.csv`, `parts.csv`, `defects.csv` (none without) and
 * `yard.csv` (none without).
 * @param folder as the user gave it, relative to the working folder
 * @returns the job, or all that is wrong with its files, in file order
 */
export async function readJob(
  folder: string,
  options: JobOptions = {},
): Promise<Result<JobAndYard, ReadProblem>> {
  const fault = await folderFault(folder);
  if (fault !== null) return failure([fault]);
  const open = (role: JobFile): Promise<Opened> => openFile(folder, role, options);
  const [shop, parts, boards, defects, yard] = await Promise.all([
    open('shop'),
    options.parts === undefined ? open('parts') : unopened('parts'),
    open('boards'),
    open('defects'),
    open('yard'),
  ]);
  const unreadable = [shop, boards, yard, parts, defects].flatMap(({ problems }) => problems);
  // A file that could not be opened would only raise complaints about what other files name in it.
  if (unreadable.length > 0) return failure(unreadable);
  const texts = {
    shop: shop.value,
    parts: parts.value,
    boards: boards.value,
    defects: defects.value,
    yard: yard.value,
  };
  return asResult(readJobTexts(basename(resolve(folder)), texts, options));
}

/** The measured mantel of a job, with the shop whose units it is in. */
export interface MeasuredMantel {
  readonly shop: Shop;
  readonly mantel: Mantel;
  readonly legs: readonly Leg[];
  /** What of mantel.csv and legs.csv is to be questioned. */
  readonly cautions: readonly Implausible[];
}

/** Reads `mantel.csv` and `legs.csv` of a job folder (and `shop.csv`, for the unit). */
export async function readMantel(
  folder: string,
  options: Pick<JobOptions, 'files'> = {},
): Promise<Result<MeasuredMantel, ReadProblem>> {
  const fault = await folderFault(folder);
  if (fault !== null) return failure([fault]);
  const open = (role: JobFile): Promise<Opened> => openFile(folder, role, options);
  const [shopFile, mantelFile, legsFile] = await Promise.all([open('shop'), open('mantel'), open('legs')]);
  const unreadable = [shopFile, mantelFile, legsFile].flatMap(({ problems }) => problems);
  if (unreadable.length > 0) return failure(unreadable);
  const shop = readShop(shopFile.value.file, shopFile.value.text);
  const mantel = orMissing(mantelFile.value, 'mantel', (file, text) =>
    readMantelSettings(file, text, shop.value),
  );
  const legs = orMissing(legsFile.value, 'legs', (file, text) => readLegs(file, text, shop.value));
  const problems = [shop, mantel, legs].flatMap((reading) => reading.problems);
  const cautions = [mantel, legs].flatMap((reading) => reading.cautions ?? []);
  if (mantel.value === null || legs.value === null || problems.length > 0)
    return failure(inFileOrder(problems));
  return success({ shop: shop.value, mantel: mantel.value, legs: legs.value, cautions });
}

/** Reads the shop's settings alone. */
export async function readShopOf(
  folder: string,
  options: Pick<JobOptions, 'files'> = {},
): Promise<Result<Shop, ReadProblem>> {
  const fault = await folderFault(folder);
  if (fault !== null) return failure([fault]);
  const { value, problems } = await openFile(folder, 'shop', options);
  return problems.length > 0 ? failure(problems) : asResult(readShop(value.file, value.text));
}

type Opened = Reading<JobText>;

async function openFile(
  folder: string,
  role: JobFile,
  { files }: Pick<JobOptions, 'files'>,
): Promise<Opened> {
  const file = files?.[role] ?? jobFileNames[role];
  const text = await readTextFile(join(folder, file), file);
  return text.ok
    ? { value: { file, text: text.value }, problems: [] }
    : { value: { file, text: null }, problems: text.problems };
}

function unopened(role: JobFile): Opened {
  return { value: { file: jobFileNames[role], text: null }, problems: [] };
}

function orMissing<T>(
  { file, text }: JobText,
  role: JobFile,
  read: (file: string, text: string) => Reading<T>,
): Reading<T | null> {
  return text === null ? { value: null, problems: [missing(file, role)] } : read(file, text);
}

function asResult<T>({ value, problems }: Reading<T>): Result<T, ReadProblem> {
  return problems.length > 0 ? failure(inFileOrder(problems)) : success(value);
}
