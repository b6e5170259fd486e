import type { Shop } from '../../../flow/shop/shop.ts';
import { decimal, percent } from '../../../flow/sheet/words/number-text.ts';
import { withUnit } from '../../../flow/sheet/words/size-text.ts';
import { cuttingUnits } from '../../../trade/grades/cutting-size.ts';
import type { FaceFinding, WayTried } from '../../../trade/grades/face-finding.ts';
import type { GradeFinding } from '../../../trade/grades/grade-finding.ts';
import { type Limit, isHeld } from '../../../trade/grades/limits.ts';
import { leastBoard } from '../../../trade/grades/rule.ts';

/** Cutting units rounded down to the hundredth: what was found is never printed larger. */
export function unitsFound(area: number): string {
  return decimal(Math.floor(cuttingUnits(area) * 100 + 1e-6) / 100, 2).replace(/\.?0+$/, '');
}

/** Cutting units wanted, two decimals at most. */
export function unitsNeeded(tried: WayTried): string {
  return decimal(cuttingUnits(tried.neededTimes100 / 100), 2).replace(/\.?0+$/, '');
}

/** How many cuttings a way allows, in words: `2 cuttings`, `any number of cuttings`, `2 cuttings of full width`. */
export function wayWords({ way }: WayTried): string {
  if (way.kind === 'clear face') return 'the whole face clear';
  if (way.atMost === Infinity) return 'any number of cuttings';
  const count = `${way.atMost} ${way.atMost === 1 ? 'cutting' : 'cuttings'}`;
  if (way.kind === 'full width') return `${count} of full width (97 % rule)`;
  return way.kind === 'extra cutting' ? `${count} (one extra)` : count;
}

/** `71.25 of 80 units in 2 cuttings`, and how sure that is where it was not settled. */
export function triedWords(tried: WayTried): string {
  if (tried.way.kind === 'clear face') return `${wayWords(tried)}: ${tried.outcome === 'met' ? 'yes' : 'no'}`;
  const found = `${unitsFound(tried.found)} of ${unitsNeeded(tried)} units in ${wayWords(tried)}`;
  if (tried.found === tried.bound) return found;
  if (tried.outcome === 'met') return `at least ${found}`;
  return `at least ${found}, and no more than ${unitsFound(tried.bound + 1)}`;
}

/** Why a grade is not met, or by how much it is: one phrase for each thing that decides. */
export function findingWords(finding: GradeFinding, shop: Shop): string[] {
  if (!finding.largeEnough) {
    const { width, length } = leastBoard.get(finding.grade)!;
    return [`asks for a board at least ${withUnit(width, shop)} wide and ${withUnit(length, shop)} long`];
  }
  const broken = finding.limits.filter((limit) => !isHeld(limit)).map((limit) => limitWords(limit, shop));
  return [...broken, ...finding.faces.map((face) => `face ${face.face}: ${faceWords(face)}`)];
}

function faceWords({ tried, outcome }: FaceFinding): string {
  if (tried.length === 0) return 'too small for the rule';
  const met = tried.find((way) => way.outcome === 'met');
  if (met !== undefined) return triedWords(met);
  const words = tried.map(triedWords).join('; ');
  return outcome === 'not shown' ? `${words} (not settled)` : words;
}

/** `wane on face B 80" long, at most 72"`. */
export function limitWords({ what, face, found, allowed, unit }: Limit, shop: Shop): string {
  if (unit === 'share') {
    return `face ${face}: ${percent(found)} of the first foot at an end unsound, at most ${percent(allowed)}`;
  }
  // Down to whole ticks: what is allowed is never printed larger.
  const most = withUnit(Math.floor(allowed), shop);
  const size = withUnit(Math.ceil(found), shop);
  switch (what) {
    case 'pith':
      return `face ${face}: pith ${size} long, at most ${most}`;
    case 'wane length':
      return `face ${face}: wane ${size} along one edge, at most ${most}`;
    case 'wane width':
      return `face ${face}: wane ${size} wide on both edges together, at most ${most}`;
    case 'knot or hole':
      return `face ${face}: a knot or hole ${size} across, at most ${most}`;
    case 'split':
      return `face ${face}: splits ${size} long together, at most ${most}`;
    case 'unsound end':
      return `face ${face}: an end unsound`;
  }
}
