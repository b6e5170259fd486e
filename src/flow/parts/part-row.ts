import type { Part } from './part.ts';

/** A row of `parts.csv`: the part as it stands there, and where a plan wrote the row, the part as the plan wrote it. */
export interface PartRow {
  readonly part: Part;
  /** null: the person's own row. */
  readonly planned: Part | null;
}
