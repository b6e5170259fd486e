import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Outline, backPath, outerPath, panelOutline } from '../../src/flow/plan/outline.ts';
import { inches } from '../../src/base/units/tick.ts';
import { type MantelPlan, planMantel } from '../../src/flow/plan/plan-mantel.ts';
import { outerLength } from '../../src/flow/plan/planned-leg.ts';
import { planParts } from '../../src/flow/parts/plan-parts.ts';
import { anyLegs, anyMantel, mirrored } from './arbitrary-mantel.ts';

/** Signed area by the shoelace formula. */
function areaOf(outline: Outline): number {
  return outline.reduce((sum, { x, y }, index) => {
    const next = outline[(index + 1) % outline.length]!;
    return sum + (x * next.y - next.x * y) / 2;
  }, 0);
}

function lengthOf(path: Outline): number {
  return path.slice(1).reduce((sum, point, index) => {
    const before = path[index]!;
    return sum + Math.hypot(point.x - before.x, point.y - before.y);
  }, 0);
}

const anyGap = fc.constantFrom(inches(0), inches(1 / 8), inches(1 / 2));
const squareInch = 8128 * 8128;

/** Runs a law over random mantels that can be built; fails when too few can. */
function forPlans(law: (plan: MantelPlan) => void): void {
  let built = 0;
  fc.assert(
    fc.property(anyMantel, anyLegs, anyGap, (mantel, legs, fitGap) => {
      const result = planMantel(mantel, legs, { room: { fitGap, scribe: inches(1 / 4) } });
      if (!result.ok) return;
      built += 1;
      law(result.value);
    }),
    { numRuns: 400 },
  );
  expect(built).toBeGreaterThan(100);
}

describe('laws of the plan', () => {
  it('seen from above, panels, facings and caps cover the drawn outline, no more and no less', () => {
    forPlans(({ mantel, legs, pieces }) => {
      const whole = [...backPath(legs), ...[...outerPath(legs)].reverse()];
      const panels = legs.reduce((sum, leg) => sum + Math.abs(areaOf(panelOutline(leg))), 0);
      // With mitered long edges the top reaches the outer face by itself.
      const faces =
        mantel.faceJoint === 'miter' ? [] : pieces.filter(({ kind }) => kind === 'facing' || kind === 'cap');
      const covered = faces.reduce((sum, { outline }) => sum + Math.abs(areaOf(outline)), panels);
      expect(Math.abs(covered - Math.abs(areaOf(whole)))).toBeLessThan(squareInch / 1e6);
    });
  });

  it('the faces that show add up to the drawn outer line', () => {
    forPlans(({ legs, pieces }) => {
      const caps = pieces.filter(({ kind }) => kind === 'cap').reduce((sum, { length }) => sum + length, 0);
      const shown = legs.reduce((sum, leg) => sum + outerLength(leg), caps);
      expect(Math.abs(shown - lengthOf(outerPath(legs)))).toBeLessThan(0.01);
    });
  });

  it('each blank holds its piece as drawn, to a tick', () => {
    forPlans(({ pieces }) => {
      for (const { kind, outline, length, width, thickness } of pieces) {
        if (kind !== 'top') continue;
        const drawn = Math.abs(areaOf(outline));
        expect(drawn).toBeLessThanOrEqual(length * width + 1);
        expect(thickness).toBeGreaterThan(0);
      }
    });
  });

  it('a mirrored mantel has the mirrored parts', () => {
    let compared = 0;
    fc.assert(
      fc.property(anyMantel, anyLegs, (mantel, legs) => {
        const one = planMantel(mantel, legs);
        const other = planMantel(...mirrored(mantel, legs));
        expect(other.ok).toBe(one.ok);
        if (!one.ok || !other.ok) return;
        compared += 1;
        const seen = new Map(planParts(other.value).map((part) => [part.name, part]));
        const swapped = (name: string): string =>
          name === 'left cap' ? 'right cap' : name === 'right cap' ? 'left cap' : name;
        for (const part of planParts(one.value)) {
          const twin = seen.get(swapped(part.name))!;
          expect([twin.length, twin.width, twin.thickness]).toEqual([
            part.length,
            part.width,
            part.thickness,
          ]);
          expect([twin.rightEnd, twin.leftEnd]).toEqual([part.leftEnd, part.rightEnd]);
          expect([twin.show, twin.quality, twin.glueUp, twin.run]).toEqual([
            part.show,
            part.quality,
            part.glueUp,
            part.run,
          ]);
        }
        expect(seen.size).toBe(one.value.pieces.length);
      }),
      { numRuns: 400 },
    );
    expect(compared).toBeGreaterThan(100);
  });

  it('never throws, whatever the sizes and corners', () => {
    const anyNumber = fc.oneof(fc.integer({ min: -100, max: 90_000_000 }), fc.constantFrom(0, 1, 81_280_000));
    const anyLeg = fc.record({
      name: fc.string(),
      alongWall: anyNumber,
      projection: anyNumber,
      turn: fc.oneof(fc.double(), fc.constantFrom(0, 180, -180, 90, 360, 1e-9, 174.9)),
    });
    fc.assert(
      fc.property(anyMantel, fc.array(anyLeg, { maxLength: 6 }), (mantel, legs) => {
        const result = planMantel(mantel, legs as never);
        if (result.ok)
          for (const { length, width } of result.value.pieces) expect(length * width).toBeGreaterThan(0);
        else expect(result.problems.length).toBeGreaterThan(0);
      }),
      { numRuns: 800 },
    );
  });
});
