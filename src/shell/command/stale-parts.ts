import { type Command, Option } from 'commander';
import {
  type Part,
  type PartField,
  type Replanned,
  type RowChange,
  type Shop,
  losesWork,
  seenCharacters,
} from '../../index.ts';
import { quoted, short } from '../wording.ts';
import { partTexts } from '../write/parts-csv.ts';
import { exitCodes, exitWith } from './end.ts';
import type { IfStale } from './follow-plan.ts';
import { shownPath } from './shown-path.ts';
import type { World } from './world.ts';

/** What the options make of the argument reader's. */
export interface PartsOptions {
  readonly replan?: true;
  readonly keepParts?: true;
}

/** Gives a command its options for parts that no longer follow from the measurements. */
export function withPartsOptions(command: Command, both = true): Command {
  const keep = new Option('--keep-parts', 'work with parts.csv as it stands, whatever the measurements say');
  if (!both) return command.addOption(keep);
  return command
    .addOption(
      new Option(
        '--replan',
        'take the new plan into parts.csv first, where the measurements have changed',
      ).conflicts('keepParts'),
    )
    .addOption(keep);
}

/** What the options say. */
export function ifStale({ replan, keepParts }: PartsOptions): IfStale {
  if (keepParts === true) return 'keep';
  return replan === true ? 'replan' : 'stop';
}

interface Stale {
  /** `parts.csv` as the reader would type it. */
  readonly shown: string;
  readonly folder: string;
  readonly shop: Shop;
}

/** Ends the command: planned rows would change. Lists old and new, and two mends. */
export function refuseStale(replanned: Replanned, { shown, folder, shop }: Stale, world: World): never {
  const isByHand = losesWork(replanned);
  world.stderr.write(
    `${shown}: these parts no longer follow from the measurements; nothing was done with them\n` +
      changesText(replanned, shop) +
      `  mend: take the new plan: ${planCommand(folder, world)}${isByHand ? ' --overwrite' : ''}\n` +
      `        ${keptWords}\n` +
      '  or work with the parts as they stand: the same command with --keep-parts\n',
  );
  return exitWith(exitCodes.badInput);
}

/** Ends `plan`: what the person wrote would be lost. Lists it. */
export function refuseOverwrite(replanned: Replanned, { shown, folder, shop }: Stale, world: World): never {
  world.stderr.write(
    `${shown}: sizes in it were changed by hand; it stays as it is\n` +
      changesText(replanned, shop) +
      `  mend: replace them: ${planCommand(folder, world)} --overwrite\n` +
      `        ${keptWords}\n` +
      '  or make a row your own: empty its cell "planned", and no plan changes it\n',
  );
  return exitWith(exitCodes.badInput);
}

/** Ends the command: a `parts.csv` beside measurements does not say which rows are the plan's. */
export function refuseUnmarked(shown: string, folder: string, world: World): never {
  world.stderr.write(
    `${shown}: the column "planned" is missing, so nobody can tell whether these parts follow from the measurements\n` +
      `  mend: let the plan mark its rows: ${planCommand(folder, world)} --overwrite\n` +
      `        ${keptWords}\n` +
      '  or, where all rows are your own, add a column "planned" and leave it empty\n' +
      '  or work with the parts as they stand: the same command with --keep-parts\n',
  );
  return exitWith(exitCodes.badInput);
}

/** What taking a plan leaves alone. */
const keptWords =
  '(rows of your own stay, and what you changed in quantity, species, grain, quality, show, accept, run, glue-up, value, board, note)';

/** The command that takes a new plan, as the reader would type it. */
function planCommand(folder: string, world: World): string {
  const shown = shownPath(folder, world);
  return `mantelwright plan ${/\s/.test(shown) ? `"${shown}"` : shown}`;
}

/** One line for each part that would change, old and new; empty where none would. */
export function changesText({ changes }: Replanned, shop: Shop): string {
  const lines = changes.flatMap((change) =>
    wordsOf(change, shop).map((words) => [short(change.name), words] as const),
  );
  const widest = Math.max(0, ...lines.map(([name]) => columnsOf(name)));
  return lines
    .map(([name, words]) => `  ${name}${' '.repeat(widest - columnsOf(name))}  ${words}\n`)
    .join('');
}

/** Columns that a name takes on a terminal. */
function columnsOf(name: string): number {
  return seenCharacters(name).reduce((sum, { columns }) => sum + columns, 0);
}

function wordsOf(change: RowChange, shop: Shop): string[] {
  if (change.kind === 'new')
    return [`is missing; the plan has it, ${sizeOf(change.now, shop)} (to leave it out, give it quantity 0)`];
  if (change.kind === 'gone') {
    const lost = change.byHand.map((field) => columnOf[field]);
    const words = lost.length === 0 ? '' : `, and with it what you changed in ${lost.join(', ')}`;
    return [`is no longer in the plan, and goes${words}`];
  }
  const { before, now, fields, byHand } = change;
  const renamed = before.name === now.name ? [] : [`is now called ${quoted(now.name)}`];
  const texts = fields.map((field) => {
    const hand = byHand.includes(field) ? ', changed by hand' : '';
    return `${columnOf[field]} ${textOf(before, field, shop)}${hand}, now ${textOf(now, field, shop)}`;
  });
  return [...renamed, ...texts];
}

/** Says in how many strips parts may be made, other than `parts.csv` has it, with the boards at hand. */
export function madeOtherwiseText({ madeOtherwise }: Replanned, shown: string): string {
  return madeOtherwise
    .map(({ name, before, now }) => {
      const strips = now.glueUp === 1 ? 'in one strip' : `in ${now.glueUp} strips or fewer`;
      return `${shown}: with the boards at hand ${quoted(name)} may be made ${strips}, not ${before.glueUp}\n`;
    })
    .join('');
}

const columnOf: Readonly<Record<PartField, keyof ReturnType<typeof partTexts>>> = {
  quantity: 'quantity',
  species: 'species',
  length: 'length',
  width: 'width',
  thickness: 'thickness',
  grain: 'grain',
  quality: 'quality',
  show: 'show',
  accept: 'accept',
  run: 'run',
  leftEnd: 'left end',
  rightEnd: 'right end',
  extraLength: 'extra length',
  extraWidth: 'extra width',
  glueUp: 'glue-up',
  value: 'value',
  pin: 'board',
  note: 'note',
};

function textOf(part: Part, field: PartField, shop: Shop): string {
  const text = short(partTexts(shop)[columnOf[field]](part));
  if (text !== '') return text;
  if (field === 'leftEnd' || field === 'rightEnd') return 'square';
  return field === 'glueUp' ? '1' : 'empty';
}

function sizeOf(part: Part, shop: Shop): string {
  return (['length', 'width', 'thickness'] as const).map((field) => textOf(part, field, shop)).join(' x ');
}
