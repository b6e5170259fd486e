import { type Shop, type Tick, defaultShop, formatLength, inches } from '../../index.ts';
import { plausible, type Plausible } from './implausible.ts';
import { numberField, numberText, wordField } from './field.ts';
import { type Field, type NamedTable, folded } from './named-table.ts';
import { type Setting, lengthSetting } from './settings.ts';

/** One setting of `shop.csv`, as `--help`, the README and the reader share it. */
export interface ShopSetting extends Setting<Shop> {
  /** The kind of value: `length`, `money per board foot`, `share 0 to 1`, or the words allowed. */
  readonly unit: string;
  /** The value when the file does not say, as one would write it. */
  readonly default: string;
}

/** Every setting of `shop.csv`, in the order of `--help`. */
export const shopSettings: readonly ShopSetting[] = [
  {
    name: 'units',
    unit: 'in | mm',
    default: defaultShop.units,
    meaning: 'unit of a bare number in the files, and of what is printed',
    read: (named, field) => ({ units: wordField(named, field, ['in', 'mm']) }),
  },
  length(
    'rip kerf',
    defaultShop.ripKerf,
    'width of the cut along the grain',
    (ripKerf) => ({ ripKerf }),
    plausible.kerf,
  ),
  length(
    'crosscut kerf',
    defaultShop.crosscutKerf,
    'width of the cut across the grain',
    (crosscutKerf) => ({
      crosscutKerf,
    }),
    plausible.kerf,
  ),
  length('end trim', defaultShop.endTrim, 'cut off each end of a board first, kerf included', (endTrim) => ({
    endTrim,
  })),
  length('edge trim', defaultShop.edgeTrim, 'cut off each rough edge first, kerf included', (edgeTrim) => ({
    edgeTrim,
  })),
  length('shortest rip', defaultShop.shortestRip, 'nothing shorter than this is ripped', (shortestRip) => ({
    shortestRip,
  })),
  length(
    'shortest piece',
    defaultShop.shortestPiece,
    'a piece shorter than this gets a caution',
    (shortestPiece) => ({
      shortestPiece,
    }),
  ),
  length(
    'length allowance',
    defaultShop.lengthAllowance,
    'added to the length of every part',
    (lengthAllowance) => ({
      lengthAllowance,
    }),
  ),
  length(
    'width allowance',
    defaultShop.widthAllowance,
    'added to the width of every part',
    (widthAllowance) => ({
      widthAllowance,
    }),
  ),
  length(
    'fit gap',
    defaultShop.fitGap,
    'left free along each side of the breast, so that the mantel slips over it',
    (fitGap) => ({ fitGap }),
  ),
  length(
    'scribe allowance',
    defaultShop.scribeAllowance,
    'left on a planned blank where an end or a back meets a wall',
    (scribeAllowance) => ({ scribeAllowance }),
  ),
  length(
    'miter allowance',
    defaultShop.miterAllowance,
    'added for each end off square of a blank that is cut outside a run',
    (miterAllowance) => ({ miterAllowance }),
  ),
  length(
    'glued length allowance',
    defaultShop.gluedLengthAllowance,
    'a panel is glued up this much longer, and trimmed after',
    (gluedLengthAllowance) => ({ gluedLengthAllowance }),
  ),
  length(
    'glued width allowance',
    defaultShop.gluedWidthAllowance,
    'a panel is glued up this much wider, and trimmed after',
    (gluedWidthAllowance) => ({ gluedWidthAllowance }),
  ),
  {
    name: 'price',
    unit: 'money per board foot',
    default: String(defaultShop.pricePerBoardFoot),
    meaning: 'for boards without a price of their own',
    read: (named, field) => ({
      pricePerBoardFoot: numberText(named, field, field.text.replace(/\/\s*bf$|\p{Currency_Symbol}/giu, ''), {
        wanted: 'price',
        range: { least: 0 },
      }),
    }),
  },
  share(
    'offcut credit',
    defaultShop.offcutCredit,
    'share of its cost that a keepable offcut earns back',
    (credit) => ({
      offcutCredit: credit,
    }),
  ),
  length(
    'least offcut length',
    defaultShop.leastOffcutLength,
    'shorter offcuts are scrap',
    (leastOffcutLength) => ({
      leastOffcutLength,
    }),
  ),
  length(
    'least offcut width',
    defaultShop.leastOffcutWidth,
    'narrower offcuts are scrap',
    (leastOffcutWidth) => ({
      leastOffcutWidth,
    }),
  ),
  share(
    'face premium',
    defaultShop.facePremium,
    'share of extra cost accepted for a better show face',
    (premium) => ({
      facePremium: premium,
    }),
  ),
  {
    name: 'show species',
    unit: 'one | any',
    default: defaultShop.showSpecies,
    meaning: 'whether all that shows and names no species is of one species',
    read: (named, field) => ({ showSpecies: wordField(named, field, ['one', 'any']) }),
  },
  {
    name: 'show tone',
    unit: 'one | any',
    default: defaultShop.showTone,
    meaning: 'whether all that shows of one species comes from boards of one tone',
    read: (named, field) => ({ showTone: wordField(named, field, ['one', 'any']) }),
  },
  {
    name: 'break grain',
    unit: 'never | money | percent',
    default: 'never',
    meaning: 'from which saving on grain that runs on from part to part may be broken for money',
    read: (named, field) => ({ breakGrain: savingOf(named, field) }),
  },
  {
    name: 'own runs',
    unit: 'whole | may break',
    default: defaultShop.ownRuns,
    meaning: "whether runs of your own may be broken like the facing's, where no layout holds them whole",
    read: (named, field) => ({ ownRuns: wordField(named, field, ['whole', 'may break']) }),
  },
  {
    name: 'goal',
    unit: 'least cost | most value',
    default: defaultShop.goal,
    meaning: 'lay out every part for the least money, or the most valuable parts that fit',
    read: (named, field) => ({ goal: wordField(named, field, ['least cost', 'most value']) }),
  },
  {
    name: 'stages',
    unit: `1 to ${mostStages()} | any`,
    default: String(defaultShop.stages),
    meaning: 'how deep crosscuts and rips may nest',
    read: (named, field) => ({ stages: stagesOf(named, field) }),
  },
  {
    name: 'rack',
    unit: 'path from the job folder',
    default: 'rack.csv beside the job',
    meaning: 'the journal of kept offcuts',
    read: (named, field) => ({ rack: pathOf(named, field) }),
  },
  {
    name: 'print fraction',
    unit: printFractions().join(' | '),
    default: String(defaultShop.printFraction),
    meaning: 'inches are printed to the nearest one part in so many',
    read: (named, field) => ({ printFraction: Number(wordField(named, field, printFractions())) }),
  },
  length(
    'knot margin',
    defaultShop.knotMargin,
    'every knot is taken as this much larger on each side',
    (knotMargin) => ({
      knotMargin,
    }),
  ),
];

function length(
  name: string,
  byDefault: Tick,
  meaning: string,
  put: (length: Tick) => Partial<Shop>,
  limits?: Plausible,
): ShopSetting {
  const inInches = formatLength(byDefault, { units: 'in', printFraction: 64 });
  return {
    name,
    unit: 'length',
    default: byDefault === inches(0) ? '0' : `${inInches} in`,
    meaning,
    read: (named, field) => put(lengthSetting(named, field, limits)),
  };
}

function share(
  name: string,
  byDefault: number,
  meaning: string,
  put: (share: number) => Partial<Shop>,
): ShopSetting {
  return {
    name,
    unit: 'share 0 to 1',
    default: String(byDefault),
    meaning,
    read: (named, field) => put(numberField(named, field, { wanted: 'share', range: { least: 0, most: 1 } })),
  };
}

/** `never`, `25` or `$25`, `5 %`. */
function savingOf(named: NamedTable, field: Field): Shop['breakGrain'] {
  if (folded(field.text) === 'never') return null;
  if (field.text.endsWith('%')) {
    const text = field.text.replace(/\s*%$/, '%');
    return {
      of: 'share',
      least: numberText(named, field, text, { wanted: 'share', range: { least: 0, most: 1 } }),
    };
  }
  const text = field.text.replace(/\p{Currency_Symbol}/giu, '').trim();
  return { of: 'money', least: numberText(named, field, text, { wanted: 'saving', range: { least: 0 } }) };
}

function stagesOf(named: NamedTable, field: Field): number | 'any' {
  if (folded(field.text) === 'any') return 'any';
  const value = numberField(named, field, { wanted: 'stages', range: { least: 1, most: mostStages() } });
  if (Number.isInteger(value)) return value;
  named.problems.push({
    kind: 'no number',
    at: field.at(),
    label: field.label,
    text: field.text,
    wanted: 'stages',
  });
  return 1;
}

/** A path as it is written. */
function pathOf(named: NamedTable, field: Field): string {
  const { text, label } = field;
  if (text.includes('\0')) named.problems.push({ kind: 'no path', at: field.at(), label, text });
  return text;
}

/**
 * More stages are no number but `any`. A layout that needs so many has some 34 pieces or more on one board, each nested in
 * what is left of the one before: a cut that leaves pieces on either side takes a stage, and at most two more trim what it
 * leaves, so that m pieces nest no deeper than 3 m. The solver keeps its positions once for each stage: with a million of
 * them it would keep next to none. (A function, as below.)
 */
function mostStages(): number {
  return 100;
}

/** A function, since the table above is made while the file is read and would meet a constant too early. */
function printFractions(): ['1', '2', '4', '8', '16', '32', '64'] {
  return ['1', '2', '4', '8', '16', '32', '64'];
}
