import { type LengthUnit, type Part, type Shop, type Tick, writeLength } from '../../index.ts';
import { partColumns } from '../read/parts.ts';
import { tableText } from './table-text.ts';

/**
 * The text of `parts.csv`. Read with the same shop (and boards that know the pins) it gives back the same parts.
 * One pin cannot be told apart in this format: face A of board `X` when there is also a board named `X:A`.
 */
export function writePartsCsv(parts: readonly Part[], shop: Shop): string {
  const size = (length: Tick): string => writeLength(length, shop.units, 'up');
  return tableText(partColumns, parts, {
    part: (part) => part.name,
    quantity: (part) => String(part.quantity),
    length: (part) => size(part.length),
    width: (part) => size(part.width),
    thickness: (part) => size(part.thickness),
    species: (part) => part.species,
    grain: (part) => (part.grain === 'along' ? '' : part.grain),
    quality: (part) => part.quality,
    show: (part) => (part.show === 0 ? '' : part.show === 1 ? 'yes' : String(part.show)),
    accept: (part) => acceptText(part.accept, shop.units),
    run: (part) => part.run ?? '',
    'left end': (part) => (part.leftEnd === 0 ? '' : String(part.leftEnd)),
    'right end': (part) => (part.rightEnd === 0 ? '' : String(part.rightEnd)),
    'glue-up': (part) => (part.glueUp === 1 ? '' : String(part.glueUp)),
    value: (part) => (part.value === null ? '' : String(part.value)),
    board: ({ pin }) => (pin === null ? '' : pin.face === null ? pin.board : `${pin.board}:${pin.face}`),
    note: (part) => part.note,
  });
}

/** `sound knot <= 1/2 in; stain`. */
function acceptText(accept: Part['accept'], unit: LengthUnit): string {
  return accept
    .map(({ kind, atMost }) => (atMost === null ? kind : `${kind} <= ${writeLength(atMost, unit, 'down')}`))
    .join('; ');
}
