import { plainAscii } from './plain-ascii.ts';

const improper = /^(\d+) ?\/ ?(\d+)(?![\d/])/;

/**
 * What a fraction was likely meant to be whose whole number has run into its numerator: `581/4` for `58 1/4`.
 * @returns the whole number and a proper fraction, where the numerator ends in one; else null
 * @example runTogether('581/4') // '58 1/4'
 * @example runTogether('5/4') // null
 */
export function runTogether(text: string): string | null {
  const [, over = '', under = ''] = improper.exec(plainAscii(text)) ?? [];
  if (over.length < 2 || Number(over) <= Number(under)) return null;
  // The longest numerator that makes a proper fraction: 5811/16 is 58 11/16 rather than 581 1/16.
  for (let split = 1; split < over.length; split += 1) {
    const numerator = over.slice(split);
    if (!numerator.startsWith('0') && Number(numerator) < Number(under))
      return `${over.slice(0, split)} ${numerator}/${under}`;
  }
  return null;
}
