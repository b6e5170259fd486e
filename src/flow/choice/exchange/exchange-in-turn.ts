import type { Exchange, Exchanged } from './exchange.ts';
import { exchangeColumns } from './exchange-columns.ts';

/** One annealing after another. Yields as each of them does. */
export function* exchangeInTurn(tasks: readonly Exchange[]): Generator<void, Exchanged[], void> {
  const answers: Exchanged[] = [];
  for (const task of tasks) answers.push(yield* exchangeColumns(task));
  return answers;
}
