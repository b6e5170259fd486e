import { type Job, type Layout, boardSvg, cutsCsv, layoutCsv, sheetHtml } from '../../index.ts';
import { boardFileNames } from './file-names.ts';
import type { TextFile } from './write-together.ts';

/** The layout as one line of JSON: what `--json` prints and `layout.json` holds. */
export function layoutJson(layout: Layout): string {
  return `${JSON.stringify(layout)}\n`;
}

/** Everything a layout is written to: the sheet, the tables, the answer for programs, and a drawing for each board. */
export function resultFiles(job: Job, layout: Layout): TextFile[] {
  const names = boardFileNames(layout.boards);
  return [
    { name: 'sheet.html', text: sheetHtml(job, layout) },
    { name: 'layout.csv', text: layoutCsv(job, layout) },
    { name: 'cuts.csv', text: cutsCsv(job, layout) },
    { name: 'layout.json', text: layoutJson(layout) },
    ...layout.boards.map((board, index) => ({ name: names[index] ?? '', text: boardSvg(job, board) })),
  ];
}
