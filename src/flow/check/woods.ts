import { speciesCalled } from '../../trade/species.ts';
import type { Layout } from '../cuts/layout.ts';
import type { Part } from '../parts/part.ts';
import type { Board } from '../stock/board.ts';
import type { Job } from '../stock/job.ts';
import type { PieceFault } from './fault.ts';

/** The species that a word means, whatever it is called: by the handbook's names where it has them, else by the word. */
export function woodCalled(word: string): string {
  const meant = speciesCalled(word).map(({ name }) => name);
  return meant.length === 0 ? word.trim().toLowerCase().split(/\s+/).join(' ') : meant.sort().join(' or ');
}

/** Whether all woods that a board's word can mean are among those that the part's can; wood without a word passes. */
function answers(board: string, part: string): boolean {
  if (part === '' || board === '' || woodCalled(board) === woodCalled(part)) return true;
  const asked = new Set(speciesCalled(part).map(({ name }) => name));
  const meant = speciesCalled(board).map(({ name }) => name);
  return meant.length > 0 && meant.every((name) => asked.has(name));
}

/**
 * Each piece is of the species that its part names. What shows and names none is all of one species, what shows and names
 * one all of the same wood, and what shows of one species of one tone; unless the shop says `any`.
 */
export function woodFaults(
  job: Job,
  layout: Layout,
  parts: ReadonlyMap<string, Part>,
  boards: ReadonlyMap<string, Board>,
): PieceFault[] {
  const faults: PieceFault[] = [];
  const speciesOf = new Map<string, Set<string>>();
  // What names no species and may be of any is one group, wood without a species another.
  const tonesOf = new Map<string | null, Set<string>>();
  for (const { board, copy, pieces } of layout.boards) {
    const wood = boards.get(board);
    if (wood === undefined) continue;
    for (const piece of pieces) {
      const part = parts.get(piece.part);
      if (part === undefined) continue;
      const named = { part: piece.part, copy: piece.copy, on: { board, copy } };
      if (!answers(wood.species, part.species))
        faults.push({ kind: 'wrong species', piece: named, asked: part.species, has: wood.species });
      if (part.show <= 0) continue;
      const asked = woodCalled(part.species);
      const species = woodCalled(wood.species);
      speciesOf.set(asked, (speciesOf.get(asked) ?? new Set()).add(species));
      const kept = job.shop.showSpecies === 'any' && asked === '' ? null : species;
      tonesOf.set(kept, (tonesOf.get(kept) ?? new Set()).add(wood.tone));
    }
  }
  for (const [asked, species] of speciesOf) {
    const isOpen = job.shop.showSpecies === 'any' && asked === '';
    if (species.size > 1 && !isOpen) faults.push({ kind: 'mixed species', asked, species: [...species] });
  }
  if (job.shop.showTone === 'any') return faults;
  for (const [species, tones] of tonesOf)
    if (tones.size > 1) faults.push({ kind: 'mixed tones', species: species ?? '', tones: [...tones] });
  return faults;
}
