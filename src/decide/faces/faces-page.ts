import { type Child, type Markup, html } from '../../base/markup/element.ts';
import { table as tableOf } from '../../flow/sheet/page/table.ts';
import { decimal } from '../../flow/sheet/words/number-text.ts';
import { unitWord } from '../../flow/sheet/words/size-text.ts';
import { answerPage, section } from '../buy/page/answer-page.ts';
import { commonRatio, drawFace } from './draw-face.ts';
import type { FaceTable, ImpossibleFace, PossibleFace } from './face-table.ts';
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
  wrapWords,
} from './face-words.ts';
import { sorted, unnamedAmong, untriedWords, verdict } from './faces-text.ts';
import { measureWords } from './measure.ts';

/** The choices as a page: a table, then every candidate drawn to one scale, one below the other so that corners line up. */
export function facesPage(table: FaceTable): string {
  const { possible, impossible } = sorted(table);
  const untried = untriedWords(table);
  const unnamed = unnamedAmong(table);
  return answerPage(table.job.name, 'which board becomes the front', [
    html(
      'p',
      { class: 'by' },
      `Faces for ${focusWords(table)}, by mantelwright. Lengths in ${unitWord(table.job.shop)}.`,
    ),
    html('p', { class: 'verdict' }, verdict(table)),
    untried !== null && html('p', {}, untried),
    unnamed !== null && html('p', {}, unnamed),
    possible.length > 0 && section('choices', 'The choices', choices(table, possible), note(possible)),
    possible.length > 0 && section('drawn', 'As it will stand, unrolled', drawings(table, possible)),
    impossible.length > 0 && section('impossible', 'Not possible', reasons(table, impossible)),
    html('footer', {}, html('p', {}, measureWords), html('p', {}, legend)),
  ]);
}

const legend =
  'Each drawing shows the side that faces the room, walked from left to right, the wrap unrolled: dash-dotted lines are corners, heavy ones where the grain does not run on. A defect is drawn where the defects file has it; face B is shown as it looks once the board is turned over about its length.';

function note(possible: readonly PossibleFace[]): Child {
  return html(
    'p',
    {},
    '★ nobody beats it on both look and cost.',
    possible.some(({ proven }) => !proven) &&
      ' Costs are of the best layouts found; where one is not proven, the bound says how little it could be. A larger effort looks longer.',
  );
}

function choices(table: FaceTable, possible: readonly PossibleFace[]): Markup {
  return tableOf(
    'choices of the show face',
    [
      { head: '' },
      { head: 'face' },
      { head: 'look', kind: 'figures' },
      { head: 'beyond the cheapest', kind: 'figures' },
      { head: 'in all', kind: 'figures' },
      { head: 'BF more', kind: 'figures' },
      { head: 'how sure' },
      { head: 'grain wraps' },
    ],
    possible.map((one, index) => [
      one.isUnbeaten ? '★' : '',
      html('a', { href: `#face-${index + 1}` }, faceName(one)),
      decimal(one.measure, 1),
      html('strong', {}, extraWords(one, table)),
      valueWords(one.value, table),
      feetWords(one),
      sureWords(one, table),
      wrapWords(one, table),
    ]),
  );
}

function drawings(table: FaceTable, possible: readonly PossibleFace[]): Child[] {
  const { shop } = table.job;
  const ratio = commonRatio(possible.map(({ unrolled }) => unrolled));
  return [
    html('p', { class: 'facts' }, `All to one scale, 1 : ${ratio} when printed 184 mm wide.`),
    ...possible.map((one, index) =>
      html(
        'section',
        { class: 'choice', id: `face-${index + 1}` },
        html(
          'h3',
          {},
          `${one.isUnbeaten ? '★ ' : ''}${faceName(one)}: look ${decimal(one.measure, 1)}, ${extraWords(one, table)}`,
        ),
        html('p', { class: 'facts' }, facts(one, table)),
        html(
          'div',
          { class: 'diagram scroll' },
          drawFace(one.unrolled, ratio, shop, `${faceName(one)} as it will stand`),
        ),
      ),
    ),
  ];
}

function facts(one: PossibleFace, table: FaceTable): string {
  const wraps = wrapWords(one, table);
  return [
    `in view: ${seenWords(one, table.job.shop)}`,
    `on the board ${whereWords(one, table)}`,
    ...(wraps === '' ? [] : [`grain wraps ${wraps}`]),
    ...(one.measure === one.look ? [] : [`look ${decimal(one.look, 1)} of the face itself`]),
    ...[glueWords(one)].filter((words) => words !== null),
  ].join(' · ');
}

function reasons({ job }: FaceTable, impossible: readonly ImpossibleFace[]): Markup {
  return tableOf(
    'faces that cannot carry it',
    [{ head: 'face' }, { head: 'look', kind: 'figures' }, { head: 'why not' }],
    impossible.map((one) => [faceName(one), decimal(one.look, 1), hindranceWords(one.why, job.shop)]),
  );
}
