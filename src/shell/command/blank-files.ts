import { writeCsv } from '../../index.ts';
import { boardColumns } from '../read/boards.ts';
import { defectColumns } from '../read/defects.ts';
import { legColumns, mantelSettings } from '../read/mantel.ts';
import { settingColumns } from '../read/settings.ts';
import { shopSettings } from '../read/shop-settings.ts';
import type { TextFile } from './write-together.ts';

/**
 * The files of a job with nothing in them yet: column headings, and every setting by name with what it means. An empty
 * setting has its default. There is no `parts.csv`: an empty one would mean a job without parts.
 */
export function blankFiles(): TextFile[] {
  return [
    { name: 'shop.csv', text: settingsFile(shopSettings) },
    { name: 'mantel.csv', text: settingsFile(mantelSettings) },
    { name: 'legs.csv', text: heading(legColumns) },
    { name: 'boards.csv', text: heading(boardColumns) },
    { name: 'defects.csv', text: heading(defectColumns) },
  ];
}

function heading(columns: readonly { readonly name: string }[]): string {
  return writeCsv([columns.map(({ name }) => name)]);
}

function settingsFile(
  settings: readonly {
    readonly name: string;
    readonly meaning: string;
    readonly unit: string;
    readonly default: string | null;
  }[],
): string {
  const rows = settings.map(({ name, meaning, unit, default: byDefault }) => {
    const otherwise = byDefault === null ? 'must be given' : `${byDefault} when empty`;
    return [name, '', `${meaning}; ${unit}; ${otherwise}`];
  });
  return writeCsv([settingColumns.map(({ name }) => name), ...rows]);
}
