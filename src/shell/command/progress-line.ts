import type { Progress } from '../../index.ts';
import type { World } from './world.ts';

/** Between two redraws, so that the terminal costs nothing. */
const millisecondsBetween = 100;
const widest = 78;

/** One line on a terminal that is drawn over and over; where nobody watches, a line of its own every ten seconds. */
export interface ProgressLine {
  show(progress: Progress): void;
  say(words: string): void;
  clear(): void;
}

/** Starts a progress line on the world's stderr. Cost values are shown as money without a currency, as in the files. */
export function progressLine(world: World): ProgressLine {
  let last = world.isTerminal ? -Infinity : world.now();
  let drawn = false;
  const draw = (words: string): void => {
    drawn = true;
    world.stderr.write(`\r\u001b[2K${words.slice(0, widest)}`);
  };
  return {
    show: (progress) => {
      const between = world.isTerminal ? millisecondsBetween : world.millisecondsBetweenLines;
      if (world.now() - last < between) return;
      last = world.now();
      if (world.isTerminal) draw(progressWords(progress));
      else world.stderr.write(`${progressWords(progress)}\n`);
    },
    say: (words) => {
      if (!world.isTerminal) return;
      last = world.now() + 20 * millisecondsBetween;
      draw(words);
    },
    clear: () => {
      if (drawn) world.stderr.write('\r\u001b[2K');
      drawn = false;
    },
  };
}

/** `trying boards: best 143.20, bound 140.11 (2.2 % apart)` */
export function progressWords({ doing, value, bound }: Progress): string {
  const parts: string[] = [];
  if (value !== null) parts.push(`best ${value.toFixed(2)}`);
  if (bound !== null) parts.push(`bound ${bound.toFixed(2)}`);
  if (value !== null && bound !== null && value !== 0)
    parts.push(`${((100 * Math.abs(value - bound)) / Math.abs(value)).toFixed(1)} % apart`);
  return parts.length === 0 ? doing : `${doing}: ${parts.join(', ')}`;
}
