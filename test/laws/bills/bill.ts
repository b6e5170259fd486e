import { inches, ticks } from '../../../src/base/units/tick.ts';
import { type Random, chance, random, whole } from '../../../src/base/random/random.ts';
import type { Part } from '../../../src/flow/parts/part.ts';
import type { Leg, Mantel } from '../../../src/flow/plan/mantel.ts';
import { type Shop, defaultShop } from '../../../src/flow/shop/shop.ts';
import type { Job } from '../../../src/flow/stock/job.ts';
import { planJob } from '../../../src/pipeline.ts';
import { casingParts, furnitureParts } from './furniture.ts';
import { type Pile, drawPile } from './lumber.ts';

/** What is made: so many mantels, pieces of furniture, or rooms of casings. */
export interface BillSize {
  readonly of: 'mantel' | 'furniture' | 'casing';
  readonly count: number;
  /** Runs of facings kept whole as planned; else every piece is free. */
  readonly runs?: boolean;
  readonly credit: number;
}

/**
 * A bill of parts as people make them, on a pile of graded boards, at the shop's defaults: parts by the plan of mantels
 * with sizes drawn, or by the bills of furniture; every third seed has two tones, two of three have offcuts of a rack.
 * Deterministic in its arguments.
 */
export function billJob(seed: number, size: BillSize): Job {
  const stream = random(seed, 7001);
  const shop: Shop = { ...defaultShop, offcutCredit: size.credit };
  const pile: Pile = {
    tones: seed % 3 === 0 ? ['warm', 'pale'] : [],
    offcuts: seed % 3 === 1 ? 0 : whole(stream, 1, 3),
    plenty: seed % 3 === 0 ? 3.2 : 2.1,
  };
  if (size.of !== 'mantel') {
    const make = size.of === 'furniture' ? furnitureParts : casingParts;
    const parts = make(stream, size.count);
    return { name: `bill ${seed}`, shop, parts, boards: drawPile(stream, parts, pile) };
  }
  for (;;) {
    const parts = mantelParts(stream, shop, size);
    if (parts === null) continue;
    const boards = drawPile(stream, parts, pile);
    return { name: `bill ${seed}`, shop, parts, boards };
  }
}

function mantelParts(stream: Random, shop: Shop, { count, runs = true }: BillSize): Part[] | null {
  const parts: Part[] = [];
  for (let i = 1; i <= count; i += 1) {
    const planned = planJob(shop, mantel(stream), legs(stream), []);
    if (!planned.ok) return null;
    const named = (text: string): string => (count === 1 ? text : `${text} ${i}`);
    for (const part of planned.value.parts)
      parts.push({
        ...part,
        name: named(part.name),
        run: !runs || part.run === null ? null : named(part.run),
      });
  }
  return parts;
}

function eighths(stream: Random, least: number, most: number): ReturnType<typeof ticks> {
  return ticks(inches(whole(stream, 8 * least, 8 * most) / 8));
}

function mantel(stream: Random): Mantel {
  const end = (): Mantel['leftEnd'] =>
    chance(stream, 0.6) ? 'capped' : chance(stream, 0.7) ? 'wall' : 'open';
  return {
    faceHeight: eighths(stream, 5, 8),
    thickness: inches(3 / 4),
    bottom: chance(stream, 0.7) ? 'closed' : 'open',
    leftEnd: end(),
    rightEnd: end(),
    leftWallAngle: 90,
    rightWallAngle: 90,
    panelJoint: chance(stream, 0.5) ? 'butt' : 'miter',
    faceJoint: chance(stream, 0.3) ? 'miter' : 'butt',
    heightAboveOpening: null,
    ledger: chance(stream, 0.6) ? { thickness: inches(3 / 4), width: inches(3) } : null,
    species: '',
  };
}

function legs(stream: Random): Leg[] {
  const front = eighths(stream, 44, 68);
  const depth = eighths(stream, 6, 9);
  const side = (name: string, turn: number): Leg => ({
    name,
    alongWall: eighths(stream, 8, 22),
    projection: eighths(stream, 4, 7),
    turn,
  });
  const middle = { name: 'front', alongWall: front, projection: depth, turn: 90 };
  const list = [
    ...(chance(stream, 0.75) ? [side('left return', 90)] : []),
    middle,
    ...(chance(stream, 0.6) ? [side('right return', 90)] : []),
  ];
  return list;
}
