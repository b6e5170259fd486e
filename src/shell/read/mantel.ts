import {
  type CsvRow,
  type EndKind,
  type Leg,
  type Mantel,
  type Shop,
  type Tick,
  type WallCorner,
  readLength,
  turnOf,
} from '../../index.ts';
import { lengthField, numberText, uniqueName, wordField } from './field.ts';
import { type Plausible, plausible } from './implausible.ts';
import { type Field, type NamedTable, fieldOf, folded, openTable } from './named-table.ts';
import type { Reading } from './problem.ts';
import { type Setting, settingColumns, settingFields, settingValues } from './settings.ts';

/** One setting of `mantel.csv`, for `--help` and the README too. */
export interface MantelSetting extends Setting<Mantel> {
  readonly unit: string;
  /** The value when the file does not say; null: it must say. */
  readonly default: string | null;
  readonly example: string;
}

const endKinds: [EndKind, EndKind, EndKind] = ['capped', 'wall', 'open'];

/** Every setting of `mantel.csv`. */
export const mantelSettings: readonly MantelSetting[] = [
  {
    name: 'face height',
    unit: 'length',
    default: null,
    example: '6',
    meaning: 'height of the facing, the board everyone looks at',
    read: (named, field) => ({ faceHeight: size(named, field, plausible.faceHeight) }),
  },
  {
    name: 'thickness',
    unit: 'length',
    default: null,
    example: '3/4',
    meaning: 'finished thickness of every board of the box',
    read: (named, field) => ({ thickness: size(named, field, plausible.finishedThickness) }),
  },
  {
    name: 'bottom',
    unit: 'closed | open',
    default: 'closed',
    example: 'closed',
    meaning: 'whether a panel closes the box from below',
    read: (named, field) => ({ bottom: wordField(named, field, ['closed', 'open']) }),
  },
  {
    name: 'left end',
    unit: endKinds.join(' | '),
    default: 'capped',
    example: 'capped',
    meaning: 'how the left end is closed: by a cap board, by a wall, not at all',
    read: (named, field) => ({ leftEnd: wordField(named, field, endKinds) }),
  },
  {
    name: 'right end',
    unit: endKinds.join(' | '),
    default: 'capped',
    example: 'capped',
    meaning: 'how the right end is closed',
    read: (named, field) => ({ rightEnd: wordField(named, field, endKinds) }),
  },
  {
    name: 'left wall angle',
    unit: 'degrees',
    default: '90',
    example: '92',
    meaning: 'what a bevel gauge reads in the corner with the side wall, where the left end is a wall',
    read: (named, field) => ({ leftWallAngle: sideWallField(named, field) }),
  },
  {
    name: 'right wall angle',
    unit: 'degrees',
    default: '90',
    example: '92',
    meaning: 'the same where the right end is a wall',
    read: (named, field) => ({ rightWallAngle: sideWallField(named, field) }),
  },
  {
    name: 'panel joint',
    unit: 'butt | miter',
    default: 'butt',
    example: 'butt',
    meaning: 'how the top and bottom panels of two legs meet at a corner',
    read: (named, field) => ({ panelJoint: wordField(named, field, ['butt', 'miter']) }),
  },
  {
    name: 'face joint',
    unit: 'butt | miter',
    default: 'butt',
    example: 'miter',
    meaning: 'how the long edges of facing, top and bottom meet: mitered, no edge shows',
    read: (named, field) => ({ faceJoint: wordField(named, field, ['butt', 'miter']) }),
  },
  {
    name: 'height above opening',
    aliases: ['height above the opening', 'height above firebox opening', 'height above the firebox opening'],
    unit: 'length',
    default: 'not given',
    example: '14',
    meaning: 'from the top of the firebox opening to the lowest part of the mantel',
    // The cautious side for a clearance is the smaller one.
    read: (named, field) => ({
      heightAboveOpening: lengthField(named, field, { side: 'down', range: 'more than 0' }),
    }),
  },
  {
    name: 'ledger section',
    unit: 'thickness x width | none',
    default: 'none',
    example: '1 1/2 x 3 1/2',
    meaning: 'section of the strip that the mantel hangs on',
    read: (named, field) => ({ ledger: ledgerField(named, field) }),
  },
  {
    name: 'species',
    unit: 'name',
    default: 'not given',
    example: 'white oak',
    meaning: 'what the parts that show are made of; for the weight and for how the wood moves',
    read: (_named, field) => ({ species: field.text }),
  },
];

const byDefault: Omit<Mantel, 'faceHeight' | 'thickness'> = {
  bottom: 'closed',
  leftEnd: 'capped',
  rightEnd: 'capped',
  leftWallAngle: 90,
  rightWallAngle: 90,
  panelJoint: 'butt',
  faceJoint: 'butt',
  heightAboveOpening: null,
  ledger: null,
  species: '',
};

/** Reads `mantel.csv`; null when a setting that must be given is missing. Sizes are rounded up. */
export function readMantelSettings(file: string, text: string, shop: Shop): Reading<Mantel | null> {
  const { named, problems } = openTable(file, text, settingColumns, shop.units);
  if (named === null) return { value: null, problems };
  const values = settingValues(named, mantelSettings, settingFields(named, mantelSettings));
  const { faceHeight, thickness, ...others } = values;
  for (const { name, example } of mantelSettings.filter((setting) => setting.default === null)) {
    const isGiven = name === 'face height' ? faceHeight !== undefined : thickness !== undefined;
    if (!isGiven) named.problems.push({ kind: 'missing setting', file, name, example });
  }
  if (faceHeight === undefined || thickness === undefined)
    return { value: null, problems: named.problems, cautions: named.cautions };
  return {
    value: { ...byDefault, faceHeight, thickness, ...others },
    problems: named.problems,
    cautions: named.cautions,
  };
}

/** Columns of `legs.csv`. */
export const legColumns = [
  { name: 'leg', needed: true },
  { name: 'along wall', needed: true },
  { name: 'projection', needed: true },
  {
    name: 'wall corner',
    needed: true,
    changedFrom: { formerly: 'corner', now: 'wall corner' },
  },
  { name: 'note' },
] as const;

/** Reads `legs.csv`: one row for each leg, from left to right. At least one. */
export function readLegs(file: string, text: string, shop: Shop): Reading<readonly Leg[]> {
  const { named, problems } = openTable(file, text, legColumns, shop.units);
  if (named === null) return { value: [], problems };
  const seen = new Map<string, Field>();
  const legs = named.table.rows.map((row) => legOf(named, row, seen));
  if (legs.length === 0) {
    const at = { file, line: 1, column: 1 };
    named.problems.push({ kind: 'no rows', at, what: 'leg' });
  }
  return { value: legs, problems: named.problems, cautions: named.cautions };
}

function legOf(named: NamedTable, row: CsvRow, seen: Map<string, Field>): Leg {
  return {
    name: uniqueName(named, fieldOf(named, row, 'leg'), 'leg', seen),
    alongWall: size(named, fieldOf(named, row, 'along wall'), plausible.alongWall),
    projection: size(named, fieldOf(named, row, 'projection'), plausible.projection),
    turn: turnOf(wallCornerField(named, fieldOf(named, row, 'wall corner'))),
  };
}

/** What a bevel gauge reads: `90`, `92°`, `inside 90`; empty: a square outside corner. */
function wallCornerField(named: NamedTable, field: Field): WallCorner {
  const [, word = '', angle = ''] =
    /^(inside|outside)?\s*(.*?)\s*(?:°|deg(?:rees)?)?$/su.exec(folded(field.text)) ?? [];
  if (field.text === '') return { degrees: 90, inside: false };
  if (/^[-\u2212]/u.test(angle)) {
    named.problems.push({ kind: 'negative corner', at: field.at(), label: field.label, text: field.text });
    return { degrees: 90, inside: false };
  }
  const degrees = numberText(named, field, angle, { wanted: 'corner', range: { above: 0, below: 180 } });
  return { degrees, inside: word === 'inside' };
}

/** What a bevel gauge reads where an end dies into a side wall: an inside corner always, with its word or without. */
function sideWallField(named: NamedTable, field: Field): number {
  return wallCornerField(named, { ...field, text: field.text.replace(/^inside/iu, '') }).degrees;
}

function size(named: NamedTable, field: Field, limits: Plausible): Tick {
  return lengthField(named, field, { side: 'up', range: 'more than 0', plausible: limits });
}

/** `1 1/2 x 3 1/2`: thickness by width; `none` for no ledger. */
function ledgerField(named: NamedTable, field: Field): Mantel['ledger'] {
  if (field.text.toLowerCase() === 'none') return null;
  const [first = '', second = '', ...more] = field.text.split(/[x×*]| by /i);
  const read = (text: string): Tick | null => {
    const { unit, table } = named;
    const length = readLength(text, { unit, decimalComma: table.decimalComma, round: 'up' });
    return length.ok && length.value > 0 ? length.value : null;
  };
  const thickness = read(first);
  const width = read(second);
  if (thickness !== null && width !== null && more.length === 0) return { thickness, width };
  named.problems.push({
    kind: 'no number',
    at: field.at(),
    label: field.label,
    text: field.text,
    wanted: 'section',
  });
  return null;
}
