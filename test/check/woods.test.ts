import { describe, expect, it } from 'vitest';
import { inches } from '../../src/base/units/tick.ts';
import { verify } from '../../src/flow/check/verify.ts';
import { finish } from '../../src/flow/choice/progress.ts';
import type { Part } from '../../src/flow/parts/part.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { layOutJob } from '../../src/pipeline.ts';
import { plainBoard, plainPart } from '../laws/random-board.ts';

describe('tones where what shows may be of any species', () => {
  const size = { length: inches(60), width: inches(6) };
  const boards = [
    plainBoard({ name: 'bare', ...size, species: '', tone: '' }),
    plainBoard({ name: 'pale', ...size, species: 'white oak', tone: 'pale' }),
  ];
  const partOn = (board: string, species: string): Part => ({
    ...plainPart({ name: `for ${board}`, length: inches(40), width: inches(4), show: 1, species }),
    pin: { board, face: null },
  });
  const jobOf = (parts: readonly Part[]): Job => ({
    name: 'woods',
    shop: { ...defaultShop, showSpecies: 'any' },
    parts,
    boards,
  });
  const named = jobOf([partOn('bare', 'red oak'), partOn('pale', '')]);
  const { layout } = finish(layOutJob(named, { seed: 1, effort: 0 }));

  it('wood without a species, taken for the one asked for, is no match for what may be of any', () => {
    expect(layout.short).toEqual([]);
    expect(verify(named, layout)).toEqual([]);
  });

  it('all that may be of any is of one tone', () => {
    const open = jobOf([partOn('bare', ''), partOn('pale', '')]);
    expect(verify(open, layout)).toMatchObject([{ kind: 'mixed tones', tones: ['', 'pale'] }]);
  });
});
