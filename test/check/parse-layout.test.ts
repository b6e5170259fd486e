import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { describeFault } from '../../src/flow/check/describe-fault.ts';
import { describeShapeProblem, parseLayout } from '../../src/flow/check/parse-layout.ts';
import { verify } from '../../src/flow/check/verify.ts';
import { layOut } from '../../src/flow/cuts/lay-out.ts';
import { cuttableJob } from '../laws/cuttable-job.ts';

const { job, choice } = cuttableJob(5, { boards: 2, pieces: 8 });
const layout = layOut(job, choice);
const text = JSON.stringify(layout);

type Json = null | boolean | number | string | Json[] | { [name: string]: Json };

/** All places in a JSON value, as paths. */
function places(value: Json, path: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (typeof value !== 'object' || value === null) return [path];
  const inner = Array.isArray(value)
    ? value.flatMap((item, index) => places(item, [...path, index]))
    : Object.entries(value).flatMap(([name, item]) => places(item, [...path, name]));
  return [path, ...inner];
}

/** A copy with the value at the path replaced; `undefined` takes it out. */
function replaced(value: Json, path: readonly (string | number)[], by: Json | undefined): Json | undefined {
  const [step, ...rest] = path;
  if (step === undefined) return by;
  const copy = structuredClone(value) as { [name: string]: Json };
  const inner = replaced(copy[step] as Json, rest, by);
  if (inner === undefined) Reflect.deleteProperty(copy, step);
  else copy[step] = inner;
  return copy;
}

const whole = JSON.parse(text) as Json;
const all = places(whole);

const junk = fc.constantFrom<Json | undefined>(
  undefined,
  null,
  true,
  -1,
  0,
  0.5,
  1e300,
  2 ** 53,
  '',
  'A',
  '__proto__',
  [],
  {},
  [[[]]],
  JSON.parse('{"__proto__": {"x": 1}, "constructor": 1}') as Json,
);

describe('parseLayout', () => {
  test('takes what JSON.stringify wrote', () => {
    const read = parseLayout(JSON.parse(text));
    expect(read.ok && JSON.stringify(read.value)).toBe(text);
  });

  test.each([
    [null, 'the layout: expected an object'],
    ['text', 'the layout: expected an object'],
    [[], 'the layout: expected an object'],
    [replaced(whole, ['format'], 'mantelwright layout 2'), 'format: expected "mantelwright layout 1"'],
    [replaced(whole, ['boards', 0, 'copy'], 0), 'boards[0].copy: expected a whole number above 0'],
    [replaced(whole, ['boards', 0, 'cuts', 1, 'at'], 0.5), 'boards[0].cuts[1].at: expected a whole number'],
    [
      replaced(whole, ['boards', 0, 'cuts', 1, 'kind'], 'saw'),
      'boards[0].cuts[1].kind: expected "crosscut" or "rip"',
    ],
    [
      replaced(whole, ['boards', 0, 'pieces', 0, 'showFace'], 'C'),
      'boards[0].pieces[0].showFace: expected "A", "B" or null',
    ],
    [replaced(whole, ['proof', 'gap'], undefined), 'proof.gap: expected a value, it is missing'],
    [replaced(whole, ['totals'], { ...layout.totals, 'x y': 1 }), 'totals.x y: expected no such field'],
  ])('says where the format is broken (%#)', (json, expected) => {
    const read = parseLayout(json);
    expect(read.ok ? [] : read.problems.map(describeShapeProblem)).toEqual([expected]);
  });

  test('takes cuts that do not say why they are made, and checks them none the less', () => {
    const boards = layout.boards.map((board) => ({
      ...board,
      cuts: board.cuts.map(({ step, kind, region, at, kerf }) => ({ step, kind, region, at, kerf })),
    }));
    const read = parseLayout(JSON.parse(JSON.stringify({ ...layout, boards })));
    if (!read.ok) throw new Error(read.problems.map(describeShapeProblem).join());
    expect(verify(job, read.value)).toEqual([]);
    const setups = { ...read.value, totals: { ...read.value.totals, setups: layout.totals.setups + 1 } };
    expect(verify(job, setups).map(({ kind }) => kind)).toEqual(['wrong total']);
  });

  test('names no more than 20 problems', () => {
    const read = parseLayout(
      replaced(
        whole,
        ['boards'],
        Array.from({ length: 50 }, () => null),
      ),
    );
    expect(!read.ok && read.problems.length).toBe(20);
  });

  test('reads nothing from a prototype', () => {
    const inherited = Object.create(JSON.parse(text) as object) as unknown;
    expect(parseLayout(inherited).ok).toBe(false);
  });

  test('never throws, nor does the check of what it lets pass, whatever stands in one place', () => {
    const place = fc.constantFrom(...all);
    fc.assert(
      fc.property(place, junk, (path, value) => {
        const json = replaced(whole, path, value);
        const read = parseLayout(json);
        if (!read.ok) {
          expect(read.problems.length).toBeGreaterThan(0);
          return;
        }
        const faults = verify(job, read.value);
        for (const fault of faults) expect(describeFault(fault)).toMatch(/./);
        // A changed layout that still reads must be found wrong, save where another value is right too.
        const last = String(path.at(-1));
        // Under `most value` parts may be left out unsaid; a cut need not say why it is made.
        const isUnsaid = (last === 'short' && job.shop.goal === 'most value') || last === 'purpose';
        const isFree = ['why', 'id', 'showFace'].includes(last) || isUnsaid;
        // A number changed by less than the check's tolerance for money and shares is the same number to it.
        const old = path.reduce<unknown>((at, key) => (at as Record<string | number, unknown>)[key], whole);
        const isRounding =
          typeof old === 'number' && Math.abs(Number(value) - old) <= 1e-7 * Math.max(1, Math.abs(old));
        if (JSON.stringify(read.value) !== text && !isFree && !isRounding) expect(faults).not.toEqual([]);
      }),
      { numRuns: 1000 },
    );
  });

  test('any JSON at all is read or refused', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (json) => {
        expect(parseLayout(json).ok).toBe(false);
      }),
    );
  });
});
