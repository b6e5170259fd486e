import { describe, expect, it } from 'vitest';
import { inches, ticks } from '../../src/base/units/tick.ts';
import { clearanceCaution, clearanceLines } from '../../src/flow/plan/clearance-caution.ts';
import { grainLines } from '../../src/flow/plan/panel-grain.ts';
import { movementNotes } from '../../src/flow/plan/movement-notes.ts';
import { planReport, planSections, runLength } from '../../src/flow/plan/plan-report.ts';
import { planWeight } from '../../src/flow/plan/plan-weight.ts';
import { facingRun } from '../../src/flow/plan/run-break.ts';
import { sawAngles } from '../../src/flow/plan/saw-angles.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';
import { leg, planned } from './mantels.ts';

const style = { units: 'in', printFraction: 32 } as const;
const breast = [leg('left', 14, 5.75), leg('front', 60, 8.25), leg('right', 6, 5.75)];

describe('weight', () => {
  it('board feet of the finished parts times the species, by hand', () => {
    // A beam 72 × 8 of 3/4 boards: facing 72 × 6 1/2, top and bottom 72 × 8 each: 1620 square inches, 8.4375 board feet.
    const weight = planWeight(planned({ ledger: null }, [leg('beam', 72, 8.75)]));
    expect(weight.boxBoardFeet).toBeCloseTo((72 * (6.5 + 8 + 8) * 0.75) / 144, 9);
    // Black cherry 2.91 lb a board foot (Wood Handbook: G 0.50, 62.4 × 0.50 × 1.12 / 12).
    expect(weight.box.most).toBeCloseTo(8.4375 * 2.912, 2);
    expect(weight.box.least).toBe(weight.box.most);
    expect(weight.ledgerBoardFeet).toBe(0);
  });
  it('is a range where the word means several species, or none', () => {
    const oak = planWeight(planned({ species: 'oak' }, breast));
    expect(oak.species).toHaveLength(4);
    expect(oak.box.most).toBeGreaterThan(oak.box.least);
    const unknown = planWeight(planned({ species: '' }, breast));
    expect(unknown.box.most / unknown.box.least).toBeCloseTo(0.75 / 0.32, 6);
    expect(planReport(planned({ species: 'xyz' }, breast), defaultShop)).toContain('not in the table');
  });
});

describe('saw angles', () => {
  it('corner by corner, facings and panels', () => {
    const angles = sawAngles(planned({ panelJoint: 'miter', leftEnd: 'capped' }, breast));
    expect(angles.map(({ where }) => where)).toEqual(['left cap to left', 'left to front', 'front to right']);
    expect(angles[1]!.bevels.map(({ piece, side, degrees }) => [piece, side, degrees])).toEqual([
      ['left facing', 'right', 45],
      ['front facing', 'left', 45],
    ]);
    // The miter from wall corner to carcass corner: 7 1/2 past over a width of 5, and 5 over 7 1/2.
    expect(angles[1]!.panels.map(({ degrees }) => Math.round(degrees * 10) / 10)).toEqual([56.3, 33.7]);
  });
  it('a turn of 135 is steeper than common saws tilt; an inside corner has its long points on the back', () => {
    const [sharp] = sawAngles(planned({}, [leg('a', 60, 5.75, 135), leg('b', 40, 5.75)]));
    expect(sharp).toMatchObject({ steep: true, turn: 135 });
    expect(sharp!.bevels[0]).toMatchObject({ degrees: 67.5, longPoint: 'show face' });
    const [inside] = sawAngles(planned({}, [leg('a', 60, 5.75, -90), leg('b', 40, 5.75)]));
    expect(inside!.bevels.map(({ longPoint, degrees }) => [longPoint, degrees])).toEqual([
      ['back', 45],
      ['back', 45],
    ]);
  });
});

describe('the clearance caution', () => {
  const caution = (height: number | null, projection: number) =>
    clearanceCaution(
      planned({ heightAboveOpening: height === null ? null : inches(height) }, [
        leg('front', 60, projection + 0.75),
      ]),
    );

  it('puts the rule’s figures beside the plan’s', () => {
    expect(caution(13.5, 7.5)).toMatchObject({
      projection: inches(8.25),
      height: inches(13.5),
      ircAsks: { inches: 12, beyond: true },
      ircLets: null,
      nfpaAsks: 12,
      nearerThanAsked: false,
    });
    expect(caution(12, 7.5).nearerThanAsked).toBe(true);
    expect(caution(9, 7.5)).toMatchObject({ ircLets: 1.125, nearerThanAsked: true });
    expect(caution(5, 7.5)).toMatchObject({ ircLets: 0, nearerThanAsked: true });
    expect(caution(null, 7.5)).toMatchObject({ ircLets: null, nearerThanAsked: null });
  });

  it('takes the deepest leg, facing included', () => {
    expect(clearanceCaution(planned({}, breast)).projection).toBe(inches(8.25));
  });

  it('says who decides, and never that a plan is safe', () => {
    for (const height of [null, 5, 9, 12, 13.5, 40]) {
      const words = clearanceLines(caution(height, 7.5), style).join(' ');
      expect(words).toContain('listing of its own, which comes first, as does local code');
      expect(words).toContain('building department or a licensed installer');
      expect(words).not.toMatch(/\bsafe\b|compl(?:y|ies)|meets the/i);
      expect(/NEARER THAN/.test(words)).toBe(height !== null && height <= 12);
    }
  });
});

describe('movement', () => {
  // Black cherry, flatsawn, 6 to 10 %: 0.00248 × 4 of the width (Wood Handbook 13-2, Table 13-5).
  const moved = (width: number) => ticks(Math.ceil(width * 0.00248 * 4 * 8128));

  it('a long return is noted with what its panel moves, and so is each end of a panel along a face board', () => {
    // 14 and 6 deep: the left return keeps its own grain, the right one is edge-joined, its end grain along its own facing.
    expect(movementNotes(planned({ leftEnd: 'capped' }, breast))).toEqual([
      { leg: 'left', neighbour: 'front', width: inches(5), change: moved(5), joint: 'butt' },
      { leg: 'left', neighbour: 'left cap', width: inches(5), change: moved(5), joint: 'face' },
      { leg: 'front', neighbour: 'left facing', width: inches(7.5), change: moved(7.5), joint: 'face' },
      { leg: 'front', neighbour: 'right facing', width: inches(7.5), change: moved(7.5), joint: 'face' },
      { leg: 'right', neighbour: 'right facing', width: inches(6), change: moved(6), joint: 'face' },
    ]);
    const report = planReport(planned({ leftEnd: 'capped' }, breast), defaultShop);
    expect(report).toContain('right against right facing: the grain of these panels ends against the');
    expect(report).toContain('slotted holes');
  });

  it('mitered panels cross their grain at every corner', () => {
    const notes = movementNotes(planned({ panelJoint: 'miter', species: '' }, breast));
    expect(notes.map(({ leg: at, joint, change }) => [at, joint, change])).toEqual([
      ['left', 'miter', null],
      ['front', 'miter', null],
    ]);
  });

  it('says why the grain of panels beside each other differs, and only there', () => {
    const style = { units: 'in', printFraction: 32 } as const;
    expect(grainLines(planned({}, breast), style)).toEqual([
      'left: the grain of its panels runs along it, not as in front: it is 14" long, and no return of more than 10" is ' +
        'edge-joined with its grain across it.',
    ]);
    const both = [leg('left', 8, 5.75), leg('front', 60, 8.25), leg('right', 6, 5.75)];
    expect(grainLines(planned({}, both), style)).toEqual([]);
    expect(grainLines(planned({ panelJoint: 'miter' }, both), style).join()).toContain(
      'mitered to each other',
    );
    const inside = grainLines(planned({}, [leg('front', 60, 8, -90), leg('side', 30, 8)]), style);
    expect(inside.join()).toContain('inside corner');
    const blunt = grainLines(planned({}, [leg('front', 60, 8, 45), leg('cheek', 9, 8)]), style);
    expect(blunt.join()).toContain('a wall corner of 135° is too far from square');
  });
});

describe('mitered long edges', () => {
  it('say how they are cut and glued', () => {
    const report = planReport(planned({ faceJoint: 'miter' }, breast), defaultShop);
    expect(report).toContain('Long edges of facing and top and bottom: saw 45°');
    expect(report).toContain('tape along the joint');
    expect(planReport(planned({}, breast), defaultShop)).not.toContain('Long edges');
  });
});

describe('the report', () => {
  it('the run takes its pieces and one bevel kerf between two', () => {
    const plan = planned({}, breast);
    // 22 1/4 + 71 1/2 + 14 1/4, and two kerfs of 1016 / cos 45 = 1437 ticks.
    expect(runLength(facingRun(plan), inches(1 / 8))).toBe(inches(22.25 + 71.5 + 14.25) + 2 * 1437);
  });

  it('has its sections, in both units, with no line left ragged', () => {
    const plan = planned({ leftEnd: 'capped' }, breast);
    expect(planSections(plan, defaultShop).map(({ heading }) => heading)).toEqual([
      'Mantel',
      'Finished sizes',
      'At the walls',
      'Parts, finished, from long point to long point, and their blanks',
      'Blanks',
      'Angles: the wall as a bevel gauge reads it, the saw off square',
      'Grain round the corners',
      'Weight',
      'Caution: distance from the fire',
      'Caution: hanging',
      'Caution: short pieces',
      'Grain of the panels',
      'Wood movement',
    ]);
    const metric = planReport(plan, { ...defaultShop, units: 'mm' });
    expect(metric).toContain('165.1 mm high');
    expect(metric).toMatch(/weighs about \d+ kg/);
    expect(metric).not.toMatch(/\d lb\b/);
    for (const line of metric.split('\n')) expect(line).toBe(line.trimEnd());
  });

  it('names what is too short for the saw, and what a woodworker must ask others', () => {
    const report = planReport(planned({}, breast), defaultShop);
    expect(report).toContain('right top (5"), right bottom (5")');
    expect(report).toContain('licensed professional');
    expect(report).not.toMatch(/undefined|NaN|\[object/);
  });
});
