import { describe, expect, it } from 'vitest';
import { inches } from '../../src/base/units/tick.ts';
import type { PartRow } from '../../src/flow/parts/part-row.ts';
import type { Part } from '../../src/flow/parts/part.ts';
import { planParts } from '../../src/flow/parts/plan-parts.ts';
import { adopted, losesWork, replan } from '../../src/flow/parts/replan.ts';
import type { PlanOptions } from '../../src/flow/plan/plan-mantel.ts';
import { leg, planned } from '../plan/mantels.ts';

/** The parts of a breast with a front so wide and one return. */
function plan(front = 60, options?: PlanOptions, name = 'front'): Part[] {
  return planParts(planned({}, [leg(name, front, 7), leg('side', 12, 5)], options));
}
const written = (parts: readonly Part[]): PartRow[] => parts.map((part) => ({ part, planned: part }));
const changed = (rows: readonly PartRow[], name: string, change: Partial<Part>): PartRow[] =>
  rows.map((row) => (row.part.name === name ? { ...row, part: { ...row.part, ...change } } : row));
const partOf = (rows: readonly PartRow[], name: string): Part => {
  const found = rows.find(({ part }) => part.name === name);
  if (found === undefined) throw new Error(`no row ${name}`);
  return found.part;
};
const own: Part = { ...plan()[0]!, name: 'shelf', run: null };

describe('a plan taken into parts', () => {
  it('changes nothing where nothing was measured anew', () => {
    const rows = written(plan());
    expect(replan(rows, plan())).toEqual({ rows, changes: [], madeOtherwise: [] });
  });

  it('replaces sizes, and tells old and new', () => {
    const { rows, changes } = replan(written(plan(60)), plan(64));
    expect(rows).toEqual(written(plan(64)));
    const front = changes.find(({ name }) => name === 'front facing');
    expect(front).toMatchObject({ kind: 'changed', fields: ['length'], byHand: [] });
    expect(front?.kind === 'changed' && front.now.length - front.before.length).toBe(inches(4));
  });

  it.each<Partial<Part>>([
    { quantity: 0 },
    { species: 'poplar' },
    { grain: 'any' },
    { quality: 'clear-2' },
    { show: 9 },
    { accept: [{ kind: 'stain', atMost: null }] },
    { run: null },
    { glueUp: 4 },
    { value: 3 },
    { pin: { board: 'C1', face: 'A' } },
    { note: 'mine' },
  ])('keeps what the person changed: %j', (change) => {
    const rows = changed(written(plan(60)), 'front facing', change);
    expect(replan(rows, plan(60)).changes).toEqual([]);
    const taken = replan(rows, plan(64));
    expect(losesWork(taken)).toBe(false);
    const now = plan(64).find(({ name }) => name === 'front facing')!;
    expect(partOf(taken.rows, 'front facing')).toEqual({ ...now, ...change });
    // And after that, too: the plan's own word is on record.
    expect(partOf(replan(taken.rows, plan(70)).rows, 'front facing')).toMatchObject(change);
  });

  it('brings a new default through where the person changed nothing, beside what they changed', () => {
    const before = plan(60);
    const rows = changed(written(before), 'front top', { note: 'mine' });
    const now = plan(60).map((part) =>
      part.name === 'front top' ? { ...part, quality: 'sound' as const } : part,
    );
    const taken = replan(rows, now);
    expect(taken.changes).toMatchObject([{ kind: 'changed', name: 'front top', fields: ['quality'] }]);
    expect(partOf(taken.rows, 'front top')).toMatchObject({ quality: 'sound', note: 'mine' });
  });

  it('tells a size that was changed by hand, whatever the measurements', () => {
    const rows = changed(written(plan()), 'front top', { length: inches(1) });
    const found = replan(rows, plan());
    expect(found.changes).toMatchObject([
      { kind: 'changed', name: 'front top', fields: ['length'], byHand: ['length'] },
    ]);
    expect(losesWork(found)).toBe(true);
    expect(found.rows).toEqual(written(plan()));
  });

  it('leaves rows of one’s own where they are; one named like a planned part stands in for it', () => {
    const [first, ...rest] = written(plan(60));
    const standIn: PartRow = { part: { ...plan(60)[1]!, length: inches(7) }, planned: null };
    const rows = [first!, { part: own, planned: null }, ...rest].map((row) =>
      row.part.name === standIn.part.name ? standIn : row,
    );
    expect(replan(rows, plan(60)).changes).toEqual([]);
    const taken = replan(rows, plan(64)).rows;
    expect(taken[1]).toEqual({ part: own, planned: null });
    expect(taken).toContainEqual(standIn);
    expect(taken.filter(({ part }) => part.name === standIn.part.name)).toHaveLength(1);
  });

  it('adds what is new and takes out what is gone', () => {
    const two = written(plan());
    const one = planParts(planned({}, [leg('front', 60, 7)]));
    const gone = replan([...two, { part: own, planned: null }], one);
    expect(gone.rows).toEqual([...written(one), { part: own, planned: null }]);
    expect(gone.changes.filter(({ kind }) => kind === 'gone').map(({ name }) => name)).toEqual(
      two.map(({ part }) => part.name).filter((name) => name.startsWith('side')),
    );
    const back = replan([...written(one), { part: own, planned: null }], plan());
    expect(back.rows).toEqual([...two, { part: own, planned: null }]);
    const removed = replan(two.slice(1), plan());
    expect(removed.changes).toMatchObject([{ kind: 'new', name: two[0]!.part.name }]);
  });

  it('follows a leg that only changed its name', () => {
    const rows = changed(written(plan()), 'front facing', { show: 9 });
    const taken = replan(rows, plan(60, {}, 'breast'));
    expect(losesWork(taken)).toBe(false);
    expect(taken.changes.length).toBeGreaterThan(0);
    expect(taken.changes.every(({ kind }) => kind === 'changed')).toBe(true);
    expect(partOf(taken.rows, 'breast facing').show).toBe(9);
  });

  it('puts a sorted file back into the order of the walk, in which a run is cut', () => {
    const rows = [...written(plan())].reverse();
    expect(replan(rows, plan())).toMatchObject({ rows: written(plan()), changes: [] });
  });

  it('does not stop for boards: how a part may be made is taken at once, and said', () => {
    const rows = written(plan(60));
    const narrow = plan(60, { widestBoard: inches(5) });
    const found = replan(rows, narrow);
    expect(found.changes).toEqual([]);
    expect(found.madeOtherwise.map(({ name }) => name)).toEqual(['front facing', 'side facing']);
    expect(found.rows.map(({ part }) => part)).toEqual(narrow);
    const held = changed(rows, 'front facing', { glueUp: 3 });
    expect(partOf(replan(held, narrow).rows, 'front facing').glueUp).toBe(3);
  });

  it('takes the rows of an unmarked file for its own, their other cells for the person’s', () => {
    const old = plan(60).map((part): PartRow => ({ part: { ...part, show: part.show + 1 }, planned: null }));
    const rows = adopted([...old, { part: own, planned: null }], plan(64));
    const taken = replan(rows, plan(64));
    expect(losesWork(taken)).toBe(false);
    expect(taken.rows).toEqual([
      ...plan(64).map((part) => ({ part: { ...part, show: part.show + 1 }, planned: part })),
      { part: own, planned: null },
    ]);
  });
});
