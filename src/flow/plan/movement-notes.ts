import { type LengthStyle, formatLengthWithUnit } from '../../base/units/format-length.ts';
import { type Tick, ticks } from '../../base/units/tick.ts';
import { dimensionChange, interiorMoisture } from '../../trade/movement.ts';
import { type Species, speciesCalled } from '../../trade/species.ts';
import { panelShape } from './panel-pieces.ts';
import type { MantelPlan } from './plan-mantel.ts';

/** A joint in which wood that moves meets wood that does not. */
export interface MovementNote {
  readonly leg: string;
  /** What it is joined to: the leg of another panel, or a facing or cap. */
  readonly neighbour: string;
  /** Width that moves, ticks. */
  readonly width: Tick;
  /** How much over the year, flatsawn, from 6 to 10 % moisture content, ticks; the most of the species it may be; null: unknown. */
  readonly change: Tick | null;
  /** Panel to panel, or the end grain of a panel along a facing or cap. */
  readonly joint: 'butt' | 'miter' | 'face';
}

/** Every joint of the panels with crossed grain: with each other at the corners, then with the facings and caps. */
export function movementNotes(plan: MantelPlan): MovementNote[] {
  return [...panelNotes(plan), ...faceNotes(plan)];
}

/**
 * Corners whose panels meet with crossed grain: a longer return butted against its neighbour, and every mitered corner.
 * Short returns, edge-joined with all grain parallel, have none.
 */
function panelNotes({ legs, mantel }: MantelPlan): MovementNote[] {
  const species = speciesCalled(mantel.species);
  return legs.slice(1).flatMap((after, index): MovementNote[] => {
    const before = legs[index]!;
    if (after.left.panelEnd === 'miter') {
      const width = ticks(Math.max(before.depth - before.gap, after.depth - after.gap));
      const change = yearly(width, species);
      return [{ leg: before.name, neighbour: after.name, width, change, joint: 'miter' }];
    }
    // The butted panel's end grain meets the long grain of the one that runs on.
    const moving = before.right.panelEnd === 'butts' ? index : index + 1;
    if (panelShape(legs, moving).grain === 'edge-joined') return [];
    const leg = legs[moving]!;
    const neighbour = moving === index ? after : before;
    const width = ticks(leg.depth - leg.gap);
    return [
      { leg: leg.name, neighbour: neighbour.name, width, change: yearly(width, species), joint: 'butt' },
    ];
  });
}

/**
 * Where the end grain of a panel lies along a facing or cap, which does not move that way: an edge-joined return along its own
 * facing, any other panel along a cap, and along the facing of a leg that it runs on to.
 */
function faceNotes({ legs, mantel }: MantelPlan): MovementNote[] {
  const species = speciesCalled(mantel.species);
  return legs.flatMap((leg, index): MovementNote[] => {
    const shape = panelShape(legs, index);
    const note = (neighbour: string): MovementNote => {
      const { width } = shape;
      return { leg: leg.name, neighbour, width, change: yearly(width, species), joint: 'face' };
    };
    if (shape.grain === 'edge-joined') return [note(`${leg.name} facing`)];
    return (['left', 'right'] as const).flatMap((side): MovementNote[] => {
      const { kind, panelEnd, turn } = leg[side];
      const beside = legs[side === 'left' ? index - 1 : index + 1];
      if (kind === 'capped') return [note(`${side} cap`)];
      return panelEnd === 'runs on' && turn > 0 && beside !== undefined
        ? [note(`${beside.name} facing`)]
        : [];
    });
  });
}

function yearly(width: Tick, species: readonly Species[]): Tick | null {
  if (species.length === 0) return null;
  const { least, most } = interiorMoisture;
  const changes = species.map(({ tangentialChange }) =>
    dimensionChange(width, tangentialChange, least, most),
  );
  return ticks(Math.ceil(Math.max(...changes)));
}

/** The notes in words, corners of one kind and width together. @param wood what the species is called */
export function movementLines(notes: readonly MovementNote[], wood: string, style: LengthStyle): string[] {
  const alike = new Map<string, MovementNote[]>();
  for (const note of notes) {
    const kind = `${note.joint} ${note.width}`;
    alike.set(kind, [...(alike.get(kind) ?? []), note]);
  }
  return [...alike.values()].map((group) => movementLine(group, wood, style));
}

function movementLine(group: readonly MovementNote[], wood: string, style: LengthStyle): string {
  const { joint, width, change } = group[0]!;
  const across = `across its ${formatLengthWithUnit(width, style)} of width`;
  const moves =
    change === null
      ? `moves with the seasons ${across}`
      : `moves by about ${formatLengthWithUnit(roundedTo(change, style), style)} ${across} over a year of indoor air ` +
        `(flatsawn ${wood}, 6 to 10 % moisture; Wood Handbook, equation 13-2)`;
  if (joint === 'miter') {
    const where = group.map(({ leg, neighbour }) => `${leg} and ${neighbour}`).join('; ');
    return (
      `${where}: in a miter the grain of both panels crosses. A panel ${moves}, which opens a wide miter at one end. ` +
      'Spline it, and finish both faces alike. (With panel joint "butt" a short return is edge-joined, its grain along ' +
      'the front, and all moves as one.)'
    );
  }
  const where = group.map(({ leg, neighbour }) => `${leg} against ${neighbour}`).join('; ');
  if (joint === 'face')
    return (
      `${where}: the grain of these panels ends against the face boards, crossed. A panel ${moves}, along that joint, the face ` +
      'board does not. Glue it for an inch or two next to the front (a cap: at its miter) and hold the rest with a loose ' +
      'tongue or with screws in slotted holes, so that it slides.'
    );
  return (
    `${where}: the grain of this leg's panels ends against that of its neighbour. Its panel ${moves}, the ` +
    'neighbour there does not. Glue that joint near the front only, and let the rest slide.'
  );
}

/** To the nearest step that is printed, at least one, so that no `~` stands before an estimate. */
function roundedTo(length: Tick, style: LengthStyle): Tick {
  const step = style.units === 'mm' ? 32 : 8128 / style.printFraction;
  return ticks(Math.round(Math.max(1, Math.round(length / step)) * step));
}
