import {
  type Job,
  type Layout,
  type ReportSection,
  type SheetExtras,
  boardSvg,
  cutsCsv,
  layoutCsv,
  planSections,
  sheetHtml,
} from '../../index.ts';
import { boardFileNames } from './file-names.ts';
import type { PlannedMantel } from './planned-mantel.ts';
import { mantelDrawings } from './plan.ts';
import type { TextFile } from './write-together.ts';

/** The layout as one line of JSON: what `--json` prints and `layout.json` holds. */
export function layoutJson(layout: Layout): string {
  return `${JSON.stringify(layout)}\n`;
}

/**
 * Everything a layout is written to: the sheet, the tables, the answer for programs, a drawing for each board, and the
 * drawings of the mantel if the parts make one.
 * @param notes what else the sheet is to say
 */
export function resultFiles(
  job: Job,
  layout: Layout,
  mantel: PlannedMantel | null,
  notes: NonNullable<SheetExtras['notes']> = [],
): TextFile[] {
  const names = boardFileNames(layout.boards);
  const extras = mantel === null ? {} : mantelExtras(mantel);
  return [
    {
      name: 'sheet.html',
      text: sheetHtml(job, layout, { ...extras, notes: [...notes, ...(extras.notes ?? [])] }),
    },
    { name: 'layout.csv', text: layoutCsv(job, layout) },
    { name: 'cuts.csv', text: cutsCsv(job, layout) },
    { name: 'layout.json', text: layoutJson(layout) },
    ...layout.boards.map((board, index) => ({ name: names[index] ?? '', text: boardSvg(job, board) })),
    ...(mantel === null ? [] : mantelDrawings(mantel)),
  ];
}

const caution = 'Caution: ';

/** The mantel as the sheet shows it: its drawings, what to mind before the first cut, and the rest of its report. */
function mantelExtras(mantel: PlannedMantel): SheetExtras {
  const [above, section] = mantelDrawings(mantel);
  const sections = planSections(mantel.plan, mantel.shop).filter(({ isTable }) => !isTable);
  const isCaution = ({ heading }: ReportSection): boolean => heading.startsWith(caution);
  return {
    // Short pieces are among the sheet's own cautions, which know every piece of the layout.
    cautions: sections
      .filter(isCaution)
      .map(({ heading, lines }) => ({ heading: capital(heading.slice(caution.length)), lines }))
      .filter(({ heading }) => heading !== 'Short pieces'),
    drawings: [
      { title: 'The mantel from above', svg: above.text },
      { title: 'The mantel in section', svg: section.text },
    ],
    notes: sections.filter((part) => !isCaution(part)),
  };
}

function capital(words: string): string {
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}
