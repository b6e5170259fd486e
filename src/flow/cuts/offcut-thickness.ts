import type { Rectangle } from '../../base/geometry/rectangle.ts';
import type { Tick } from '../../base/units/tick.ts';
import type { LaidBoard } from './layout.ts';

/**
 * How thick an offcut is once the board's parts are made. A board is planed before it is ripped, whole, to the thickest
 * of the parts it gives; a section of thinner parts is then planed on to the thickest of its own. So an offcut is as
 * thick as the thickest part of its section, or where its section gives none, of its board; never thicker than the
 * board dresses to.
 * @param thickness of each part, by name
 * @param dressed what the board dresses to
 * @example a 4/4 board that gives 3/4 in parts leaves offcuts of 3/4 in
 */
export function offcutThickness(
  { cuts, pieces }: Pick<LaidBoard, 'cuts' | 'pieces'>,
  offcut: Rectangle,
  thickness: ReadonlyMap<string, Tick>,
  dressed: Tick,
): Tick {
  const between = cuts.filter(({ purpose }) => purpose === 'section').map(({ at }) => at);
  const sectionOf = ({ x }: Rectangle): number => between.filter((at) => at < x).length;
  const own = pieces.filter((piece) => sectionOf(piece) === sectionOf(offcut));
  const parts = (own.length > 0 ? own : pieces).flatMap(({ part }) => thickness.get(part) ?? []);
  const thickest = parts.reduce<Tick | null>((most, one) => (most === null || one > most ? one : most), null);
  return thickest === null || thickest > dressed ? dressed : thickest;
}
