import { describe, expect, it } from 'vitest';
import { allSpecies, speciesCalled } from '../../src/trade/species.ts';
import {
  coefficientFromShrinkage,
  dimensionChange,
  dimensionChangeFromGreen,
  shrinkageAt,
} from '../../src/trade/movement.ts';
import { equilibriumMoisture } from '../../src/trade/moisture.ts';
import {
  gravityFromBasic,
  gravityFromShrinkage,
  kilogramsPerPound,
  poundsPerBoardFoot,
  poundsPerCubicFoot,
  weightPerBoardFoot,
} from '../../src/trade/weight.ts';
import { casesOf, numberIn, textIn } from './published.ts';

const named = (name: string) => {
  const found = allSpecies.find((species) => species.name === name);
  if (found === undefined) throw new Error(`no species ${name}`);
  return found;
};
/** A toBeCloseTo whose tolerance is the case's own (plus the last bits of a float). */
const near = (got: number, asked: number, tolerance: number): void =>
  expect(Math.abs(got - asked)).toBeLessThanOrEqual(tolerance + 1e-9);

describe('species table', () => {
  it.each(casesOf('shrinkage_table'))('%s', (_title, { given, expect: asked, status }) => {
    const species = named(textIn(given, 'species'));
    expect(species.radial).toBe(asked['radial_pct']);
    expect(species.tangential).toBe(asked['tangential_pct']);
    expect(species.volumetric).toBe(asked['volumetric_pct']);
    expect(species.shrinkageFrom === 'P').toBe(status === 'found');
  });

  it.each(casesOf('coefficient_table'))('%s', (_title, { given, expect: asked }) => {
    const species = named(textIn(given, 'species'));
    expect(species.radialChange).toBe(asked['CR']);
    expect(species.tangentialChange).toBe(asked['CT']);
    expect(species.changeFrom).toBe('P');
  });

  it.each(casesOf('specific_gravity_table'))('%s', (_title, { given, expect: asked, tolerance }) => {
    near(named(textIn(given, 'species')).gravity ?? NaN, numberIn(asked, 'G12'), tolerance);
  });

  it('each change coefficient follows from its shrinkage, but where the handbook prints a group’s', () => {
    const ofTheirGroup = ['Ash, green', 'Birch, sweet', 'Sycamore, American'];
    for (const { name, radial, tangential, radialChange, tangentialChange } of allSpecies) {
      if (ofTheirGroup.includes(name)) continue;
      near(coefficientFromShrinkage(radial), radialChange, 0.0000051);
      near(coefficientFromShrinkage(tangential), tangentialChange, 0.0000051);
    }
  });

  const asked: [text: string, found: string[]][] = [
    ['cherry', ['Cherry, black']],
    ['Black Walnut', ['Walnut, black']],
    ['white oak', ['Oak, white']],
    ['red oak', ['Oak, northern red', 'Oak, southern red']],
    ['hard maple', ['Maple, sugar']],
    ['Poplar', ['Yellow-poplar']],
    ['Butternut', ['Butternut']],
    ['purpleheart', []],
    ['', []],
    ['__proto__', []],
  ];
  it.each(asked)('%j may mean %j', (text, found) => {
    expect(speciesCalled(text).map(({ name }) => name)).toEqual(found);
  });
});

describe('movement', () => {
  it.each(casesOf('dimension_change_coefficient'))('%s', (_title, { given, expect: asked, tolerance }) => {
    const size = numberIn(given, 'D_in' in given ? 'D_in' : 'D_mm');
    const change = dimensionChange(size, numberIn(given, 'C'), numberIn(given, 'MI'), numberIn(given, 'MF'));
    near(change, numberIn(asked, 'delta_in' in asked ? 'delta_in' : 'delta_mm'), tolerance);
    const final = asked['final_in'] ?? asked['final_mm'];
    if (typeof final === 'number') near(size + change, final, tolerance);
  });

  it.each(casesOf('dimension_change_green'))('%s', (_title, { given, expect: asked, tolerance }) => {
    const [size, shrinkage] = [numberIn(given, 'D_in'), numberIn(given, 'S_pct')];
    const [from, to] = [numberIn(given, 'MI'), numberIn(given, 'MF')];
    near(dimensionChangeFromGreen(size, shrinkage, from, to), numberIn(asked, 'delta_in'), tolerance);
    const green = size / (1 - shrinkageAt(shrinkage, from) / 100);
    near(green * (1 - shrinkageAt(shrinkage, to) / 100) - size, numberIn(asked, 'delta_in'), tolerance);
  });

  it.each(casesOf('coefficient_from_shrinkage'))('%s', (_title, { given, expect: asked, tolerance }) => {
    near(coefficientFromShrinkage(numberIn(given, 'shrinkage_pct')), numberIn(asked, 'C'), tolerance);
  });

  it.each(casesOf('shrinkage_at_mc'))('%s', (_title, { given, expect: asked, tolerance }) => {
    near(
      shrinkageAt(numberIn(given, 'S0_pct'), numberIn(given, 'mc_pct')),
      numberIn(asked, 'shrinkage_pct'),
      tolerance,
    );
  });

  it.each(casesOf('shrinkage_simple_site_rule'))('%s', (_title, { given, expect: asked, tolerance }) => {
    const [depth, rate] = [numberIn(given, 'depth_in'), numberIn(given, 'rate_per_pct')];
    const change = dimensionChange(depth, rate, numberIn(given, 'MI'), numberIn(given, 'MF'));
    near(-change, numberIn(asked, 'shrinkage_in'), tolerance);
  });
});

describe('moisture and weight', () => {
  for (const topic of ['emc', 'emc_table_4_2']) {
    it.each(casesOf(topic))('%s', (_title, { given, expect: asked, tolerance }) => {
      const celsius =
        'temp_c' in given ? numberIn(given, 'temp_c') : ((numberIn(given, 'temp_f') - 32) * 5) / 9;
      const moisture = equilibriumMoisture(celsius, numberIn(given, 'rh_pct'));
      near(moisture, numberIn(asked, 'emc_pct' in asked ? 'emc_pct' : 'emc_pct_printed'), tolerance);
    });
  }

  it.each(casesOf('density'))('%s', (_title, { given, expect: asked, tolerance }) => {
    const water = numberIn(given, 'rho_w_lb_ft3');
    const density = poundsPerCubicFoot(numberIn(given, 'G'), numberIn(given, 'mc_pct'), water);
    near(density, numberIn(asked, 'lb_per_ft3'), tolerance);
    near(1000 * numberIn(given, 'G') * 1.12, numberIn(asked, 'kg_per_m3'), tolerance);
  });

  it.each(casesOf('weight'))('%s', (_title, { given, expect: asked, tolerance }) => {
    const species = speciesCalled(textIn(given, 'species'));
    expect(species.map(({ gravity }) => gravity)).toEqual([given['G12']]);
    near(weightPerBoardFoot(species).most, numberIn(asked, 'lb_per_board_foot'), tolerance);
    near(poundsPerBoardFoot(numberIn(given, 'G12')) * 12, numberIn(asked, 'lb_per_ft3'), tolerance);
  });

  it('an unknown wood weighs between the lightest and the heaviest of the table', () => {
    const range = weightPerBoardFoot(speciesCalled('no such wood'));
    near(range.least, 1.86, 0.01);
    near(range.most, 4.37, 0.01);
    near(range.most * kilogramsPerPound, 1.98, 0.01);
  });

  it.each(casesOf('specific_gravity_conversion'))('%s', (_title, { given, expect: asked, tolerance }) => {
    const [basic, moisture, volumetric] = [
      numberIn(given, 'Gb'),
      numberIn(given, 'mc_pct'),
      given['S0_vol_pct'],
    ];
    const got =
      typeof volumetric === 'number'
        ? gravityFromShrinkage(basic, moisture, volumetric)
        : gravityFromBasic(basic, moisture);
    near(got, numberIn(asked, 'Gx'), tolerance);
  });
});
