import { shortestWorkpieces } from '../../../trade/saw.ts';
import { inches } from '../../../base/units/tick.ts';
import type { Job } from '../../stock/job.ts';
import type { Layout } from '../../cuts/layout.ts';
import { nameText } from './named.ts';
import { withUnit } from './size-text.ts';

/** A caution or a note under its heading; a caution without one stands by itself. */
export interface Said {
  readonly heading: string;
  readonly lines: readonly string[];
}

/**
 * The usual cautions for the wood and the saw that this layout touches: short and narrow stock, wood under stress,
 * dust and finish. Usual shop practice, without a claim that a piece, a saw or a method is safe.
 */
export function sawCautions(job: Job, layout: Layout): Said[] {
  return [
    ...shortStock(job, layout),
    ...narrowStock(job, layout),
    {
      heading: 'Wood under stress',
      lines: [
        'Case-hardened or reaction wood can close on the blade or spring open while it is ripped: use a riving knife, stop and wedge the kerf when it moves, and let the board go if it keeps moving.',
      ],
    },
    {
      heading: 'Dust and finish',
      lines: [
        'Collect dust at the tool and wear a respirator made for it; some woods irritate skin and lungs. Rags wet with drying oil can catch fire by themselves: dry them flat outdoors or drown them in water in a closed metal can, as the finish’s label says.',
      ],
    },
  ];
}

/** What to say of fire and hanging when no plan has said it better: the parts may not be for a mantel at all. */
export function mantelCautions(): Said[] {
  return [
    {
      heading: 'Near a fire, on a wall',
      lines: [
        'If these parts hang near a fireplace or stove: how far combustible trim must stay from the opening is set by the appliance’s listing and by local code, which come first. Ask the building department or a licensed installer before you cut. Hang weight from fasteners driven into framing; where in doubt, ask a licensed professional.',
      ],
    },
  ];
}

function shortStock(job: Job, layout: Layout): Said[] {
  const { shortestPiece } = job.shop;
  const short = new Set(
    layout.boards
      .flatMap(({ pieces }) => pieces)
      .filter(({ length }) => length < shortestPiece)
      .map(({ part }) => part),
  );
  if (short.size === 0) return [];
  const names = [...short].slice(0, 8).map((name) => nameText(name, 40));
  const more = short.size > 8 ? ` and ${short.size - 8} more` : '';
  return [
    {
      heading: 'Short pieces',
      lines: [
        `Shorter than ${withUnit(shortestPiece, job.shop)}: ${names.join(', ')}${more}. Work such a piece while it is still part of a longer one, or hold it in a jig or clamp, never by hand near the blade.`,
      ],
    },
  ];
}

/** The width below which a push stick is asked for: a school shop's rule (see `trade/saw.ts`). */
const pushStick = inches(shortestWorkpieces.find(({ rule }) => rule.startsWith('table saw'))?.inches ?? 6);

function narrowStock(job: Job, layout: Layout): Said[] {
  const isNarrow = layout.boards.some(
    ({ cuts, pieces }) =>
      cuts.some(({ kind }) => kind === 'rip') && pieces.some(({ width }) => width <= pushStick),
  );
  if (!isNarrow) return [];
  return [
    {
      heading: 'Narrow rips',
      lines: [
        `Use a push stick for rips of ${withUnit(pushStick, job.shop)} and narrower (a school shop’s rule), guard and riving knife in place. Never crosscut against the rip fence: a stop block ahead of the blade.`,
      ],
    },
  ];
}
