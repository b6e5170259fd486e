/** A version as its three numbers. */
type Version = readonly [major: number, minor: number, patch: number];

/**
 * Whether a Node version lies in an `engines` range: comparators (`>=`, `>`, `<`, `<=`, `=`), `^`, `~`, `x`, `*`,
 * spaces for "and", `||` for "or". Enough for the ranges that packages write; throws on a form it does not know.
 */
export function inRange(version: string, range: string): boolean {
  const wanted = parse(version);
  return range.split('||').some((all) => {
    const terms = all
      .trim()
      .replace(/([<>=^~]+)\s+/g, '$1')
      .split(/\s+/)
      .filter((term) => term !== '');
    return terms.every((term) => meets(wanted, term));
  });
}

function meets(version: Version, term: string): boolean {
  const match = /^(>=|<=|>|<|=|\^|~)?v?(\d+|x|\*)(?:\.(\d+|x|\*))?(?:\.(\d+|x|\*))?(?:-[\w.]+)?$/.exec(term);
  if (match === null) throw new Error(`a range this test cannot read: ${term}`);
  const [, sign = '', ...parts] = match;
  const given = parts.filter((part) => part !== undefined && part !== 'x' && part !== '*').map(Number);
  const low: Version = [given[0] ?? 0, given[1] ?? 0, given[2] ?? 0];
  const compared = compare(version, low);
  switch (sign) {
    case '>=':
      return compared >= 0;
    case '<':
      return compared < 0;
    case '>':
      return given.length === 3 ? compared > 0 : !samePrefix(version, given) && compared > 0;
    case '<=':
      return compared <= 0 || samePrefix(version, given);
    case '^':
      return compared >= 0 && samePrefix(version, given.slice(0, 1));
    case '~':
      return compared >= 0 && samePrefix(version, given.slice(0, 2));
    default:
      return samePrefix(version, given);
  }
}

function parse(version: string): Version {
  const [major = 0, minor = 0, patch = 0] = version.split('.').map(Number);
  return [major, minor, patch];
}

function compare(a: Version, b: Version): number {
  return a[0] - b[0] || a[1] - b[1] || a[2] - b[2];
}

function samePrefix(version: Version, given: readonly number[]): boolean {
  return given.every((part, index) => version[index] === part);
}
