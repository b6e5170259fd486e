import { describe, expect, it } from 'vitest';
import { inches } from '../../src/base/units/tick.ts';
import { breakWays } from '../../src/flow/choice/runs/break-way.ts';
import { breakRun, waysToBreakAll } from '../../src/flow/plan/run-break.ts';
import type { Part } from '../../src/flow/parts/part.ts';
import { planParts } from '../../src/flow/parts/plan-parts.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';
import { leg, planned } from './mantels.ts';

const breast = [leg('left', 12, 8.75), leg('front', 60, 8.75), leg('right', 12, 8.75)];
const short = (groups: readonly (readonly string[])[]): string =>
  groups
    .map((group) => group.map((name) => name.replace(' facing', '').replace(' cap', 'C')).join('+'))
    .join(' | ');

describe('breaking the run of the facing', () => {
  it('caps come off first, a front corner last, both front corners only at the very end', () => {
    const ways = breakRun(planned({ leftEnd: 'capped', rightEnd: 'capped' }, breast)).map(short);
    expect(ways).toEqual([
      'leftC+left+front+right+rightC',
      'leftC | left+front+right+rightC',
      'leftC+left+front+right | rightC',
      'leftC | left+front+right | rightC',
      'leftC+left | front+right+rightC',
      'leftC+left+front | right+rightC',
      'leftC | left | front+right+rightC',
      'leftC | left+front | right+rightC',
      'leftC+left | front+right | rightC',
      'leftC+left+front | right | rightC',
      'leftC | left | front+right | rightC',
      'leftC | left+front | right | rightC',
      'leftC+left | front | right+rightC',
      'leftC | left | front | right+rightC',
      'leftC+left | front | right | rightC',
      'leftC | left | front | right | rightC',
    ]);
  });

  it('a beam with two caps has only front corners to break', () => {
    const ways = breakRun(planned({ leftEnd: 'capped', rightEnd: 'capped' }, [leg('front', 60, 8.75)])).map(
      short,
    );
    expect(ways).toEqual([
      'leftC+front+rightC',
      'leftC | front+rightC',
      'leftC+front | rightC',
      'leftC | front | rightC',
    ]);
  });

  it('one facing alone, or glued-up ones, are no run', () => {
    expect(breakRun(planned({}, [leg('front', 60, 8.75)]))).toEqual([]);
    const glued = planned({}, breast, { widestBoard: inches(5) });
    expect(breakRun(glued)).toEqual([]);
    expect(planParts(glued).every(({ run }) => run === null)).toBe(true);
  });

  it('with many corners only the breaks from the ends inwards are listed, each finer than the last', () => {
    const legs = Array.from({ length: 9 }, (_, index) =>
      leg(`${index}`, index === 4 ? 60 : 20, 4, index % 2 === 0 ? 30 : -30),
    );
    const ways = breakRun(planned({}, legs));
    expect(ways.map(({ length }) => length)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
    expect(short(ways[1]!)).toBe('0 | 1+2+3+4+5+6+7+8');
    expect(short(ways[6]!)).toContain('3+4+5');
  });

  it('the parts say the run whole; a way gives each stretch a run of its own, and a piece alone none', () => {
    const plan = planned({ leftEnd: 'capped', rightEnd: 'wall' }, breast);
    const parts = planParts(plan);
    const runs = (list: readonly Part[]): string[] =>
      list.map(({ name, run }) => `${name}: ${run}`).filter((text) => !text.endsWith('null'));
    const ways = breakWays({ name: '', shop: defaultShop, parts, boards: [] });
    expect(ways.map(({ runs: [run] }) => run!.stretches)).toEqual(breakRun(plan));
    expect(runs(parts)).toEqual(parts.slice(0, 4).map(({ name }) => `${name}: facing`));
    expect(runs(ways[0]!.job.parts)).toEqual(runs(parts));
    expect(runs(ways[1]!.job.parts)).toEqual([
      'left facing: facing 2',
      'front facing: facing 2',
      'right facing: facing 2',
    ]);
    expect(runs(ways[2]!.job.parts)).toEqual([
      'left cap: facing 1',
      'left facing: facing 1',
      'front facing: facing 2',
      'right facing: facing 2',
    ]);
    expect(runs(ways.at(-1)!.job.parts)).toEqual([]);
  });

  it('several runs are ranked together, fewest breaks at a front first, fewest in all, the earlier runs better kept', () => {
    const ways = waysToBreakAll([
      { names: ['a', 'A', 'b'], front: 1 },
      { names: ['c', 'd', 'C'], front: 2 },
    ]).map((groups) => groups.map(short).join('; '));
    expect(ways.slice(0, 4)).toEqual(['a+A+b; c+d+C', 'a+A+b; c | d+C', 'a+A+b; c+d | C', 'a | A+b; c+d+C']);
    expect(ways).toHaveLength(16);
    expect(ways.at(-1)).toBe('a | A | b; c | d | C');
  });
});
