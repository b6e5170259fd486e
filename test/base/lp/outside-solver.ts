import highs, { type Highs } from 'highs';

/**
 * HiGHS, an independent solver of linear and mixed-integer programs (a dev dependency, MIT): the judge of ours.
 * Its types describe another module format than the one that is loaded, hence the cast.
 */
export function outsideSolver(): Promise<Highs> {
  return (highs as unknown as () => Promise<Highs>)();
}
