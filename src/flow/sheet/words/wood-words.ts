import { speciesKey } from '../../../trade/species.ts';
import type { Layout } from '../../cuts/layout.ts';
import type { Part } from '../../parts/part.ts';
import type { Board } from '../../stock/board.ts';
import type { Job } from '../../stock/job.ts';
import { named, nameText } from './named.ts';
import { counted } from './number-text.ts';

/** Names said of a list before the rest is counted. */
const mostNamed = 6;

/**
 * Of what species and tone the parts that show were chosen to be, where their parts left that open and the boards differ.
 * One sentence for each species that such parts ask for.
 */
export function shownWoodLines(job: Job, layout: Layout): string[] {
  const { parts, boards } = named(job);
  const laid = new Map<string, { readonly asked: string; readonly wood: Board }>();
  for (const on of layout.boards)
    for (const { part } of on.pieces) {
      const asked = parts.get(part);
      const wood = boards.get(on.board);
      if (asked !== undefined && wood !== undefined && asked.show > 0) {
        const key = speciesKey(asked.species);
        if (!laid.has(key)) laid.set(key, { asked: asked.species, wood });
      }
    }
  return [...laid.values()].flatMap(({ asked, wood }) => {
    const words = chosen(job, asked, wood);
    if (words.length === 0) return [];
    const what =
      asked === ''
        ? laid.size > 1
          ? 'All that shows and names no species'
          : 'All that shows'
        : `All ${nameText(asked, 40)} that shows`;
    return [`${what} comes from boards ${words.join(' and ')}.`];
  });
}

function chosen({ shop, boards }: Job, asked: string, { species, tone }: Board): string[] {
  const keys = new Set(boards.map((board) => speciesKey(board.species)));
  const alike = boards.filter((board) => speciesKey(board.species) === speciesKey(species));
  const tones = new Set(alike.map((board) => board.tone));
  const isNew = asked === '' || speciesKey(asked) !== speciesKey(species);
  return [
    ...(isNew && keys.size > 1 && !(asked === '' && shop.showSpecies === 'any')
      ? [species === '' ? 'without a species' : `of ${nameText(species, 40)}`]
      : []),
    ...(shop.showTone === 'one' && tones.size > 1
      ? [tone === '' ? 'without a tone' : `of the tone ${nameText(tone, 40)}`]
      : []),
  ];
}

/**
 * That boards without a species were taken; null where none was, or where no part and no other board names one, so that
 * nothing could be mixed up.
 * @param used names of the boards that parts come from
 */
export function unnamedWood({ parts, boards }: Job, used: Iterable<string>): string | null {
  const taken = new Set(used);
  const unnamed = boards.filter(({ name, species }) => species === '' && taken.has(name));
  const isAsked = (list: readonly (Part | Board)[]): boolean => list.some(({ species }) => species !== '');
  if (unnamed.length === 0 || !(isAsked(parts) || isAsked(boards))) return null;
  const names = unnamed.slice(0, mostNamed).map(({ name }) => nameText(name, 40));
  const more = unnamed.length > mostNamed ? ` and ${unnamed.length - mostNamed} more` : '';
  return `${counted(unnamed.length, 'board')} without a species (${names.join(', ')}${more}): taken for the wood that its parts ask for, and glued up with its like only. Write what it is into the species column.`;
}
