import { describe, expect, it } from 'vitest';
import { defaultShop } from '../../../src/index.ts';
import { shopSettings } from '../../../src/shell/read/shop-settings.ts';
import { readShop } from '../../../src/shell/read/shop.ts';

describe('the list of settings', () => {
  it('names each setting once', () => {
    expect(shopSettings.map(({ name }) => name)).toEqual([
      'units',
      'rip kerf',
      'crosscut kerf',
      'end trim',
      'edge trim',
      'shortest rip',
      'shortest piece',
      'length allowance',
      'width allowance',
      'fit gap',
      'scribe allowance',
      'miter allowance',
      'glued length allowance',
      'glued width allowance',
      'price',
      'offcut credit',
      'least offcut length',
      'least offcut width',
      'face premium',
      'show species',
      'show tone',
      'break grain',
      'own runs',
      'goal',
      'stages',
      'rack',
      'print fraction',
      'knot margin',
    ]);
  });

  it('gives defaults that read back as the defaults', () => {
    const rows = shopSettings
      .filter(({ name }) => name !== 'rack')
      .map((setting) => `${setting.name},${setting.default}`);
    const read = readShop('shop.csv', `setting,value\n${rows.join('\n')}\n`);
    expect(read).toEqual({ value: defaultShop, problems: [], cautions: [] });
  });

  it('sets every field of a shop, each by its own setting', () => {
    // A value unlike its default for each setting; only its own field may change.
    const other: Readonly<Record<string, string>> = {
      units: 'mm',
      'show species': 'any',
      'show tone': 'any',
      'own runs': 'may break',
      goal: 'most value',
      stages: 'any',
      rack: 'r.csv',
    };
    const changed = shopSettings.map(({ name, unit }) => {
      const value =
        other[name] ?? (unit.startsWith('share') ? '0.5' : name === 'print fraction' ? '16' : '7');
      const { value: shop } = readShop('shop.csv', `setting,value\n${name},${value}\n`);
      return (Object.keys(defaultShop) as (keyof typeof defaultShop)[]).filter(
        (key) => shop[key] !== defaultShop[key],
      );
    });
    expect(changed.every((keys) => keys.length === 1)).toBe(true);
    expect(changed.flat().sort()).toEqual(Object.keys(defaultShop).sort());
  });

  it('refuses a path that no file can have, and says where', () => {
    const { problems } = readShop('shop.csv', 'setting,value\nrack,off\0cuts.csv\n');
    expect(problems).toMatchObject([{ kind: 'no path', label: 'rack', at: { line: 2, column: 6 } }]);
  });

  it('takes a hundred stages and no more', () => {
    const read = (stages: string) => readShop('shop.csv', `setting,value\nstages,${stages}\n`);
    expect(read('100')).toMatchObject({ value: { stages: 100 }, problems: [] });
    for (const stages of ['101', '1000000', '1e300'])
      expect(read(stages).problems).toMatchObject([{ kind: 'out of range', range: { least: 1, most: 100 } }]);
  });
});
