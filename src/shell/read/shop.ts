import { type LengthUnit, type Shop, defaultShop } from '../../index.ts';
import { openTable } from './named-table.ts';
import type { Reading } from './problem.ts';
import { settingColumns, settingFields, settingValues } from './settings.ts';
import { shopSettings } from './shop-settings.ts';

/**
 * Reads `shop.csv`; a setting that is not given has its default.
 * @param text null when the folder has no such file: all defaults
 */
export function readShop(file: string, text: string | null): Reading<Shop> {
  if (text === null) return { value: defaultShop, problems: [] };
  const { named, problems } = openTable(file, text, settingColumns, defaultShop.units);
  if (named === null) return { value: defaultShop, problems };
  const fields = settingFields(named, shopSettings);
  // The unit first, wherever it stands: the lengths above it are in it too.
  const inUnit = { ...named, unit: unitOf(fields.get('units')?.text) };
  const values = settingValues(inUnit, shopSettings, fields);
  return { value: { ...defaultShop, ...values }, problems: inUnit.problems, cautions: inUnit.cautions };
}

/** A misspelt unit is reported where its setting is read. */
function unitOf(text: string | undefined): LengthUnit {
  return text?.toLowerCase() === 'mm' ? 'mm' : 'in';
}
