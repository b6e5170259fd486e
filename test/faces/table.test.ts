import { describe, expect, it } from 'vitest';
import { inches } from '../../src/base/units/tick.ts';
import {
  type FaceTable,
  faceTable,
  type LayOutSteps,
  type PossibleFace,
} from '../../src/decide/faces/face-table.ts';
import { focusOf } from '../../src/decide/faces/focus.ts';
import { pickFace } from '../../src/decide/faces/pick-face.ts';
import { chooseMatching } from '../../src/flow/choice/choose-matching.ts';
import { finish } from '../../src/flow/choice/progress.ts';
import { layOut } from '../../src/flow/cuts/lay-out.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { layOutJob } from '../../src/pipeline.ts';
import { plainBoard } from '../laws/random-board.ts';
import { smallJob } from './small-job.ts';

const options = { seed: 1, effort: 0.01 };
const solve: LayOutSteps = (job) => layOutJob(job, options);

function tableOf(job: Job): FaceTable {
  const focus = focusOf(job, null);
  if (!focus.ok) throw new Error('nothing to look at');
  return finish(faceTable(job, focus.value, solve));
}

function possible({ choices }: FaceTable): PossibleFace[] {
  return choices.filter((choice) => choice.kind === 'possible');
}

/** A layout of the job with the front pinned, made without any of the table's code. */
function fresh(job: Job, board: string, face: 'A' | 'B') {
  const parts = job.parts.map((part) => (part.name === 'front' ? { ...part, pin: { board, face } } : part));
  const pinned = { ...job, parts };
  return layOut(pinned, finish(chooseMatching(pinned, options)));
}

/** The unbeaten choices by another way than the product's: from the cheapest up, each that looks better than all so far. */
function byHand(choices: readonly PossibleFace[]): string[] {
  const cents = (one: PossibleFace): number => Math.round(100 * one.extra);
  const order = [...choices].sort((a, b) => cents(a) - cents(b) || b.measure - a.measure);
  let best = -Infinity;
  let bestCents = NaN;
  const kept: string[] = [];
  for (const one of order) {
    const isEqual = one.measure === best && cents(one) === bestCents;
    if (one.measure <= best && !isEqual) continue;
    best = one.measure;
    bestCents = cents(one);
    kept.push(`${one.board} ${one.face}`);
  }
  return kept.sort();
}

const seeds = Array.from({ length: 100 }, (_, index) => index + 1);
const jobs = seeds.map((seed) => smallJob(seed));
const tables = jobs.map(tableOf);

describe('the choice table', () => {
  it('costs exactly what a fresh layout with that pin costs, and what is impossible is so', () => {
    let compared = 0;
    let proven = 0;
    let impossible = 0;
    for (const [index, table] of tables.entries()) {
      const job = jobs[index]!;
      for (const choice of table.choices) {
        const { proof, short } = fresh(job, choice.board, choice.face);
        if (choice.kind === 'impossible') {
          expect(short.length, `${job.name} ${choice.board} ${choice.face}`).toBeGreaterThan(0);
          impossible += 1;
          continue;
        }
        if (choice.kind === 'untried') throw new Error('every face is to be looked at');
        expect(choice.value).toBeCloseTo(proof.value, 8);
        expect(choice.extra).toBeCloseTo(proof.value - table.plan.value, 8);
        expect(choice.extra).toBeGreaterThan(-1e-9);
        compared += 1;
        if (choice.proven) proven += 1;
      }
    }
    expect(compared).toBeGreaterThan(250);
    expect(proven / compared).toBeGreaterThan(0.8);
    expect(impossible).toBeGreaterThan(100);
  });

  it('has a choice that costs nothing more wherever all is laid out, and no bound above a value', () => {
    for (const table of tables) {
      const list = possible(table);
      for (const { bound, value } of list) expect(bound ?? -Infinity).toBeLessThanOrEqual(value + 1e-9);
      if (list.length > 0 && table.plan.proven && list.every(({ proven }) => proven))
        expect(Math.min(...list.map(({ extra }) => extra))).toBeCloseTo(0, 8);
      // No pinned layout beats the bound of the free one.
      for (const { value } of list)
        expect(value).toBeGreaterThanOrEqual((table.plan.layout.proof.bound ?? -Infinity) - 1e-6);
    }
  });

  it('marks the choices that nobody beats', () => {
    let several = 0;
    for (const table of tables) {
      const list = possible(table);
      const marked = list.filter(({ isUnbeaten }) => isUnbeaten).map(({ board, face }) => `${board} ${face}`);
      expect(marked.sort()).toEqual(byHand(list));
      if (marked.length > 1) several += 1;
    }
    expect(several).toBeGreaterThan(10);
  });

  it('keeps every candidate when a worse board comes', () => {
    for (const [index, table] of tables.entries()) {
      const job = jobs[index]!;
      const worse = plainBoard({
        name: 'worse',
        length: inches(60),
        width: inches(5),
        cost: 500,
        lookA: 0,
        lookB: 0,
      });
      const more = tableOf({ ...job, boards: [...job.boards, worse] });
      const names = (list: readonly PossibleFace[]) => list.map(({ board, face }) => `${board} ${face}`);
      expect(names(possible(more))).toEqual(expect.arrayContaining(names(possible(table))));
      if (possible(table).length === 0 || table.plan.layout.short.length > 0) continue;
      if (![...possible(table), ...possible(more)].every(({ proven }) => proven)) continue;
      const best = (list: readonly PossibleFace[]) => names(list.filter(({ isUnbeaten }) => isUnbeaten));
      expect(best(possible(more))).toEqual(expect.arrayContaining(best(possible(table))));
    }
  });

  it('the premium buys the best look within it', () => {
    let dearer = 0;
    for (const table of tables) {
      for (const premium of [0, 0.3, 1]) {
        const picked = pickFace(table, premium);
        const within = possible(table).filter(({ extra }) => extra <= premium * table.plan.value + 0.005);
        expect(picked?.measure ?? null).toBe(
          within.length === 0 ? null : Math.max(...within.map((one) => one.measure)),
        );
        if (picked !== null && picked.extra > 0.01) dearer += 1;
      }
    }
    expect(dearer).toBeGreaterThan(10);
  });
});
