import type { Lanes } from './lanes.ts';

/** What cutting counts down to the caps needs, and what it tells. */
export interface CapCut {
  readonly lanes: Lanes;
  readonly worth: Float64Array;
  readonly gain: Float64Array;
  readonly caps: Float64Array;
  steps: number;
  /** What the last cut to the caps cost. */
  lostGain: number;
  lostWorth: number;
}

/** Brings the counts of a vector that are beyond a cap down to it; `lostGain` and `lostWorth` say what that costs. */
export function cutToCaps(pass: CapCut, vector: Int32Array, base: number): void {
  const { lanes, caps } = pass;
  const { kinds, word, shift, mask, guard, room } = lanes;
  for (let index = 0; index < kinds.length; index++) {
    const kind = kinds[index]!;
    const at = base + word[kind]!;
    const counts = vector[at]!;
    if (((counts + room[word[kind]!]!) & guard[word[kind]!]!) === 0) continue;
    const over = ((counts >>> shift[kind]!) & mask[kind]!) - caps[kind]!;
    if (over <= 0) continue;
    vector[at] = counts - (over << shift[kind]!);
    pass.lostWorth += over * pass.worth[kind]!;
    pass.lostGain += over * pass.gain[kind]!;
  }
  pass.steps += kinds.length;
}
