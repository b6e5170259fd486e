import type { Part } from './part.ts';
import type { PartRow } from './part-row.ts';

/** What a plan says of a part; its name tells it from others, and a match is set while a layout is sought. */
export type PartField = Exclude<keyof Part, 'name' | 'match'>;

/**
 * Who decides a field of a planned row.
 * - `measured`: the measurements, always. What was written there by hand gives way to a new plan.
 * - `person`: the person where they changed what the plan wrote, else the plan.
 * - `making`: as `person`, but it says how a part may be made, not what it is. It may follow from the boards at hand, so
 *   a plan that says something else here stops nobody.
 */
const decidedBy: Readonly<Record<PartField, 'measured' | 'person' | 'making'>> = {
  length: 'measured',
  width: 'measured',
  thickness: 'measured',
  leftEnd: 'measured',
  rightEnd: 'measured',
  extraLength: 'measured',
  extraWidth: 'measured',
  quantity: 'person',
  species: 'person',
  grain: 'person',
  quality: 'person',
  show: 'person',
  accept: 'person',
  value: 'person',
  pin: 'person',
  run: 'making',
  glueUp: 'making',
  note: 'making',
};
// Keys of an object literal of ours, never of a user's text.
const fields = Object.keys(decidedBy) as PartField[];

/** How a row of the parts differs from what the plan says now. */
export type RowChange =
  /** What it is would change in these fields; `byHand` are those of them that the person had changed. */
  | {
      readonly kind: 'changed';
      readonly name: string;
      readonly before: Part;
      readonly now: Part;
      readonly fields: readonly PartField[];
      readonly byHand: readonly PartField[];
    }
  /** The plan has a part that the rows lack. */
  | { readonly kind: 'new'; readonly name: string; readonly now: Part }
  /** A planned row whose part the plan no longer has; `byHand`: what the person had changed in it. */
  | {
      readonly kind: 'gone';
      readonly name: string;
      readonly before: Part;
      readonly byHand: readonly PartField[];
    };

/** In how many strips a part may be made has changed with the boards at hand. */
export interface MadeOtherwise {
  readonly name: string;
  readonly before: Part;
  readonly now: Part;
}

/** Rows brought up to a plan: `rows` take it, `changes` are what stops a command until the person has taken it. */
export interface Replanned {
  readonly rows: readonly PartRow[];
  readonly changes: readonly RowChange[];
  readonly madeOtherwise: readonly MadeOtherwise[];
}

/**
 * Merges what a plan wrote, what the person changed, and what the plan says now. The person's own rows stay where and as
 * they are; one with the name of a planned part stands in for it. Planned rows stand in the plan's order, in the places of
 * planned rows, since a run is cut in the order of its rows. A planned row whose part only goes by another name now (a leg
 * was renamed) is that part: what the person changed in it stays.
 * @param rows names are unique   @param plan names are unique
 */
export function replan(rows: readonly PartRow[], plan: readonly Part[]): Replanned {
  const planOf = new Map(plan.map((part) => [part.name, part]));
  const taken = new Set(rows.map(({ part }) => part.name));
  const unheld = plan.filter(({ name }) => !taken.has(name));
  const heirs = new Map<PartRow, Part>();
  for (const row of rows) {
    if (row.planned === null) continue;
    const heir = planOf.get(row.part.name) ?? takeFirst(unheld, (part) => isSameButNamed(part, row.planned!));
    if (heir !== undefined) heirs.set(row, heir);
  }
  const rowOf = new Map([...heirs].map(([row, heir]) => [heir.name, row]));
  const own = new Set(rows.filter(({ planned }) => planned === null).map(({ part }) => part.name));
  const merged = plan.filter(({ name }) => !own.has(name)).map((now) => mergedRow(rowOf.get(now.name), now));
  return {
    rows: inPlaces(rows, merged),
    changes: [
      ...plan.flatMap((now) => changeOf(rowOf.get(now.name), now, own.has(now.name))),
      ...rows.flatMap((row) =>
        row.planned === null || heirs.has(row) ? [] : [goneRow(row.part, row.planned)],
      ),
    ],
    madeOtherwise: plan.flatMap((now) => madeOtherwise(rowOf.get(now.name), now)),
  };
}

/** Whether taking the plan would lose what a person wrote. */
export function losesWork({ changes }: Replanned): boolean {
  return changes.some((change) => change.kind !== 'new' && change.byHand.length > 0);
}

/**
 * Rows of a file from before plans marked theirs: a row with the name of a planned part is taken for the plan's, its sizes as
 * they stand, and wherever else it differs from the plan for changed by the person.
 */
export function adopted(rows: readonly PartRow[], plan: readonly Part[]): PartRow[] {
  const planOf = new Map(plan.map((part) => [part.name, part]));
  return rows.map((row) => {
    const now = planOf.get(row.part.name);
    return now === undefined ? row : { part: row.part, planned: withFields(now, row.part, isMeasured) };
  });
}

function mergedRow(row: PartRow | undefined, now: Part): PartRow {
  if (row === undefined || row.planned === null) return { part: now, planned: now };
  const { part, planned } = row;
  const isKept = (field: PartField): boolean => !isMeasured(field) && !isSame(part, planned, field);
  return { part: withFields(now, part, isKept), planned: now };
}

function changeOf(row: PartRow | undefined, now: Part, isOwn: boolean): RowChange[] {
  if (isOwn) return [];
  if (row === undefined || row.planned === null) return [{ kind: 'new', name: now.name, now }];
  const { part, planned } = row;
  const merged = mergedRow(row, now).part;
  const changed = fields.filter((field) => decidedBy[field] !== 'making' && !isSame(part, merged, field));
  if (changed.length === 0 && part.name === now.name) return [];
  const byHand = changed.filter((field) => !isSame(part, planned, field));
  return [{ kind: 'changed', name: part.name, before: part, now: merged, fields: changed, byHand }];
}

function madeOtherwise(row: PartRow | undefined, now: Part): MadeOtherwise[] {
  if (row === undefined) return [];
  const merged = mergedRow(row, now).part;
  if (isSame(row.part, merged, 'glueUp')) return [];
  return [{ name: row.part.name, before: row.part, now: merged }];
}

function goneRow(part: Part, planned: Part): RowChange {
  return {
    kind: 'gone',
    name: part.name,
    before: part,
    byHand: fields.filter((field) => !isSame(part, planned, field)),
  };
}

/** Planned rows in the places of planned rows; those that are more after the last of them, or at the head where none was. */
function inPlaces(rows: readonly PartRow[], merged: readonly PartRow[]): PartRow[] {
  const last = rows.findLastIndex(({ planned }) => planned !== null);
  let next = 0;
  const placed = rows.flatMap((row, index) => {
    if (row.planned === null) return [row];
    const until = index === last ? merged.length : Math.min(merged.length, next + 1);
    const here = merged.slice(next, until);
    next = until;
    return here;
  });
  return last < 0 ? [...merged, ...placed] : placed;
}

/** A part with the fields of another where they are kept. */
function withFields(part: Part, from: Part, isKept: (field: PartField) => boolean): Part {
  const kept = fields.filter(isKept).map((field) => [field, from[field]] as const);
  return { ...part, ...(Object.fromEntries(kept) as Partial<Part>) };
}

function isMeasured(field: PartField): boolean {
  return decidedBy[field] === 'measured';
}

function isSame(a: Part, b: Part, field: PartField): boolean {
  return JSON.stringify(a[field]) === JSON.stringify(b[field]);
}

/** The same part in all that is decided by measurements, under another name. */
function isSameButNamed(a: Part, b: Part): boolean {
  return fields.every((field) => !isMeasured(field) || isSame(a, b, field));
}

function takeFirst<T>(list: T[], isIt: (item: T) => boolean): T | undefined {
  const index = list.findIndex(isIt);
  return index < 0 ? undefined : list.splice(index, 1)[0];
}
