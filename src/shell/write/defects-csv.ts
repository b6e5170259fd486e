import { type Board, type Shop, ticks, writeLength } from '../../index.ts';
import { defectColumns } from '../read/defects.ts';
import { tableText } from './table-text.ts';

/** The text of `defects.csv`: the defects of all boards, board by board. */
export function writeDefectsCsv(boards: readonly Board[], shop: Shop): string {
  const low = (length: number): string => writeLength(ticks(length), shop.units, 'down');
  const high = (length: number): string => writeLength(ticks(length), shop.units, 'up');
  const rows = boards.flatMap(({ name, defects }) => defects.map((defect) => ({ name, defect })));
  return tableText(defectColumns, rows, {
    board: ({ name }) => name,
    kind: ({ defect }) => defect.kind,
    face: ({ defect }) => defect.face,
    from: ({ defect }) => low(defect.x),
    to: ({ defect }) => high(defect.x + defect.length),
    low: ({ defect }) => low(defect.y),
    high: ({ defect }) => high(defect.y + defect.width),
    note: () => '',
  });
}
