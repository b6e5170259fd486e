import { writeCsv } from '../../base/csv/write-csv.ts';
import { cellText, textColumns } from '../../flow/sheet/text/columns.ts';
import { unnamedWood } from '../../flow/sheet/words/wood-words.ts';
import { decimal } from '../../flow/sheet/words/number-text.ts';
import type { FaceTable, ImpossibleFace, PossibleFace, UntriedFace } from './face-table.ts';
import {
  extraWords,
  faceName,
  feetWords,
  focusWords,
  glueWords,
  hindranceWords,
  seenWords,
  sureWords,
  valueWords,
  whereWords,
  wrapText,
  wrapWords,
} from './face-words.ts';
import { measureWords } from './measure.ts';

/** The choices by their kind. */
interface Sorted {
  readonly possible: PossibleFace[];
  readonly impossible: ImpossibleFace[];
  readonly untried: UntriedFace[];
}

/** Splits the choices, the best measure first, then the cheaper; the others in the order of the boards. */
export function sorted({ choices }: FaceTable): Sorted {
  const possible = choices.filter((choice) => choice.kind === 'possible');
  return {
    possible: possible.sort((a, b) => b.measure - a.measure || a.extra - b.extra),
    impossible: choices.filter((choice) => choice.kind === 'impossible'),
    untried: choices.filter((choice) => choice.kind === 'untried'),
  };
}

/** What the cheapest plan costs, and how many faces could do. */
export function verdict(table: FaceTable): string {
  const { possible, untried } = sorted(table);
  const whole = table.focus.members.length > 1 ? ` with the run ${wrapText(table.plan.groups)}` : '';
  const sure = table.plan.proven ? ' (proven)' : ' that was found';
  const plan = `The cheapest plan${whole}${sure}: ${valueWords(table.plan.value, table)}.`;
  if (possible.length === 0)
    return `${untried.length > 0 ? 'None of the faces looked at' : 'No face'} can carry it. ${plan}`;
  const best = possible.filter(({ isUnbeaten }) => isUnbeaten);
  const words = best.map(
    (one) => `${faceName(one)} (look ${decimal(one.measure, 1)}, ${extraWords(one, table)})`,
  );
  const among = untried.length > 0 ? ', of those looked at,' : '';
  return `${plan} Nobody${among} beats these on both look and cost: ${words.join('; ')}.`;
}

/** The faces that were not looked at; null where all were. */
export function untriedWords(table: FaceTable): string | null {
  const { untried } = sorted(table);
  if (untried.length === 0) return null;
  return `Not looked at, since it was stopped before: ${untried.map((one) => faceName(one)).join(', ')}.`;
}

/** What is to be said of boards without a species among those of the choices; null for nothing. */
export function unnamedAmong({ job, choices }: FaceTable): string | null {
  const layouts = choices.flatMap((choice) => (choice.kind === 'possible' ? [choice.layout] : []));
  return unnamedWood(
    job,
    layouts.flatMap(({ boards }) => boards.map(({ board }) => board)),
  );
}

/** The table for a terminal. No line end at the end. */
export function facesText(table: FaceTable): string {
  const { possible, impossible } = sorted(table);
  const unnamed = unnamedAmong(table);
  const { shop } = table.job;
  const untried = untriedWords(table);
  const rows = possible.map((one) => [
    one.isUnbeaten ? '*' : '',
    faceName(one),
    decimal(one.measure, 1),
    extraWords(one, table),
    feetWords(one),
    sureWords(one, table),
    wrapWords(one, table),
    seenWords(one, shop),
    whereWords(one, table),
  ]);
  const columns = [
    { head: '', most: 1 },
    { head: 'face', most: 44 },
    { head: 'look', most: 6, right: true },
    { head: 'cost', most: 30, right: true },
    { head: 'BF', most: 10, right: true },
    { head: 'how sure', most: 24 },
    { head: 'grain wraps', most: 120 },
    { head: 'in view', most: 80 },
    { head: 'where on the board', most: 80 },
  ];
  const glue = possible.flatMap((one) => {
    const words = glueWords(one);
    return words === null ? [] : [`  ${faceName(one)}: ${words}`];
  });
  const blocks = [
    [`Faces for ${focusWords(table)}`],
    [verdict(table), ...(unnamed === null ? [] : [unnamed])],
    possible.length === 0 ? [] : textColumns(columns, rows),
    glue.length === 0 ? [] : ['Glue lines:', ...glue],
    impossible.length === 0
      ? []
      : [
          'Not possible:',
          ...impossible.map(
            (one) => `  ${cellText(faceName(one), 44)}: ${cellText(hindranceWords(one.why, shop), 300)}`,
          ),
        ],
    untried === null ? [] : [untried],
    [`* nobody beats it on both look and cost. ${measureWords}`],
  ];
  return blocks
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n');
}

/** The table for a spreadsheet: one row for each face. */
export function facesCsv(table: FaceTable): string {
  const { shop } = table.job;
  const head = [
    ...['board', 'face', 'possible', 'unbeaten', 'look', 'look with favour', 'value', 'bound', 'extra'],
    ...['board feet more', 'grain wraps', 'in view', 'where', 'why not'],
  ];
  const rows = table.choices.map((one) =>
    one.kind !== 'possible'
      ? [
          one.board,
          one.face,
          one.kind === 'impossible' ? 'no' : '',
          '',
          String(one.look),
          ...Array.from({ length: 8 }, () => ''),
          one.kind === 'impossible' ? hindranceWords(one.why, shop) : 'not looked at',
        ]
      : [
          ...[
            one.board,
            one.face,
            'yes',
            one.isUnbeaten ? 'yes' : 'no',
            String(one.look),
            String(one.measure),
          ],
          ...[
            one.value.toFixed(2),
            one.bound?.toFixed(2) ?? '',
            one.extra.toFixed(2),
            one.moreFeet.toFixed(2),
          ],
          ...[wrapWords(one, table), [seenWords(one, shop), glueWords(one)].filter(Boolean).join('; ')],
          ...[whereWords(one, table), ''],
        ],
  );
  return writeCsv([head, ...rows]);
}
