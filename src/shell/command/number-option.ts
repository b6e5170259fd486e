import { InvalidArgumentError } from 'commander';

/**
 * Reads the number of an option.
 * @param least the smallest number allowed   @param kind whole numbers only, or any
 */
export function numberOption(least: number, kind: 'whole' | 'any'): (text: string) => number {
  return (text) => {
    const value = /^\d+(?:\.\d+)?$/.test(text) ? Number(text) : NaN;
    const fits = kind === 'whole' ? Number.isSafeInteger(value) : Number.isFinite(value);
    if (fits && value >= least) return value;
    throw new InvalidArgumentError(`Give a ${kind === 'whole' ? 'whole ' : ''}number, ${least} or more.`);
  };
}
