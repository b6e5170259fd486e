import { readFileSync } from 'node:fs';
import type { Kind, Plate } from '../../src/flow/patterns/plate.ts';

/** The published problems of one plate; the sources and what is known of each optimum stand in the fixture itself. */
export const plateFamilies = [
  'unconstrained_guillotine_value',
  'constrained_guillotine_value',
  'two_staged_value',
  'defects_derived',
] as const;

export type PlateFamily = (typeof plateFamilies)[number];

/** One problem as the engine takes it. */
export interface PlateProblem {
  readonly name: string;
  readonly plate: Plate;
  readonly kinds: readonly Kind[];
  readonly worth: readonly number[];
  readonly freeTrim: boolean;
  /** The published optimum, or for the derived problems the one computed when they were made. */
  readonly optimum: number;
}

interface Size {
  readonly length: number;
  readonly width: number;
}

interface Published {
  readonly name: string;
  readonly stages?: number;
  readonly firstCut?: string;
  readonly rotation?: boolean;
  readonly stock: readonly (Size & { readonly defects?: readonly (Size & { x: number; y: number })[] })[];
  readonly parts: readonly (Size & { readonly count: number | null; readonly value: number })[];
  readonly known: { readonly value: number };
}

/** All problems of a family. */
export function plateProblems(family: PlateFamily): readonly PlateProblem[] {
  const file = new URL(`../../fixtures/published/2d_${family}.json`, import.meta.url);
  const { instances } = JSON.parse(readFileSync(file, 'utf8')) as { instances: Published[] };
  return instances.map(toProblem);
}

/**
 * No kerf, no shortest rip. Our first cuts are crosscuts, across the length; where the first cuts run along it, the
 * plate and all on it are turned over its diagonal.
 */
function toProblem({ name, stages, firstCut, rotation, stock, parts, known }: Published): PlateProblem {
  const isTurned = firstCut === 'strips run along length';
  const turned = <S extends Size>(size: S): S =>
    isTurned ? { ...size, length: size.width, width: size.length } : size;
  const [sheet] = stock;
  const { length, width } = turned(sheet!);
  const defects = (sheet!.defects ?? []).map((defect) => {
    const { x, y } = defect;
    return isTurned ? { ...turned(defect), x: y, y: x } : defect;
  });
  const plate: Plate = {
    length,
    width,
    crosscutKerf: 0,
    ripKerf: 0,
    shortestRip: 0,
    stages: stages ?? 'any',
    clearances: [defects],
  };
  const kinds = parts.map((part): Kind => {
    const shape = { length: turned(part).length, width: turned(part).width };
    const shapes = rotation === true ? [shape, { length: shape.width, width: shape.length }] : [shape];
    return { shapes, cap: part.count ?? 1e9, clearances: [0] };
  });
  return {
    name,
    plate,
    kinds,
    worth: parts.map((part) => part.value),
    freeTrim: stages !== undefined,
    optimum: known.value,
  };
}
