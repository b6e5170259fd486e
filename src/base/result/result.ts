/** Where in a file a problem lies; line and column count from 1, in characters as editors show them. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  /** The line as it stands in the file, and how many of its characters from `column` on are meant: for the underline. */
  readonly excerpt?: { readonly line: string; readonly length: number };
}

/** What every problem has: a kind to switch on, and a place when it came from a file. */
export interface ProblemBase {
  readonly kind: string;
  readonly at?: Place;
}

/** What a user can cause is a value, not an exception: all problems found, not just the first. */
export type Result<T, P extends ProblemBase = ProblemBase> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: readonly P[] };

/** A result that succeeded with this value. */
export function success<T>(value: T): { readonly ok: true; readonly value: T } {
  return { ok: true, value };
}

/** A result that failed for these reasons, at least one. */
export function failure<P extends ProblemBase>(
  problems: readonly P[],
): { readonly ok: false; readonly problems: readonly P[] } {
  return { ok: false, problems };
}
