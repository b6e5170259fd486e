import { type Attributes, type Child, html, type Markup } from '../../../base/markup/element.ts';

/** A column: its heading, whether it holds figures (set flush right), or sizes that stay on one line. */
export interface Column {
  readonly head: string;
  readonly kind?: 'figures' | 'keep';
}

/**
 * A table whose head is repeated on every printed page. On a phone each row becomes a block in which every cell
 * says its own heading, so that nothing scrolls sideways.
 */
export function table(
  label: string,
  columns: readonly Column[],
  rows: readonly (readonly Child[])[],
  narrow = false,
): Markup {
  const kind = (index: number): Attributes => ({ class: columns[index]?.kind ?? null });
  const headCells = columns.map(({ head }, index) => html('th', { scope: 'col', ...kind(index) }, head));
  const bodyRow = (row: readonly Child[]): Markup =>
    html(
      'tr',
      {},
      row.map((cell, index) =>
        html('td', { ...kind(index), 'data-head': columns[index]?.head || null }, cell),
      ),
    );
  return html(
    'div',
    { class: 'scroll' },
    html(
      'table',
      { 'aria-label': label, class: narrow ? null : 'folds' },
      html('thead', {}, html('tr', {}, headCells)),
      html('tbody', {}, rows.map(bodyRow)),
    ),
  );
}

/** An empty square to tick with a pencil. */
export function tickBox(): Markup {
  return html('span', { class: 'tick', 'aria-hidden': 'true' });
}
