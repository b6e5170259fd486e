import { mantelSettings } from '../read/mantel.ts';
import { shopSettings } from '../read/shop-settings.ts';

/** What stands under the options in `--help`: examples, every setting with its default, exit codes. */
export function helpText(): string {
  return `
Examples:
  mantelwright new my-mantel            a complete example to change, with a README.txt
  mantelwright plan my-mantel           wall to parts, with drawings and cautions; again when a measurement changes
  mantelwright tally my-mantel          board feet, surface measure and grade of every board
  mantelwright buy my-mantel            what to ask for at the yard, or which of its boards to take
  mantelwright layout my-mantel         parts to cuts: my-mantel/out/sheet.html
  mantelwright faces my-mantel          what each face would cost as the front, drawn as it will stand
  mantelwright rack put my-mantel       books a layout that has been cut: its offcuts serve the next job
  mantelwright layout my-mantel --json > layout.json
  mantelwright check my-mantel layout.json

Settings of shop.csv (setting,value) and their defaults:
${settingLines(shopSettings)}

Settings of mantel.csv:
${settingLines(mantelSettings)}

Exit codes: 0 done; 1 some parts are short, the rest is laid out; 2 bad input, or a file or the output could not be written; 70 a fault of the program.
`;
}

function settingLines(
  settings: readonly { readonly name: string; readonly default: string | null; readonly meaning: string }[],
): string {
  const widest = Math.max(...settings.map(({ name }) => name.length));
  const widestDefault = Math.max(...settings.map((setting) => defaultOf(setting).length));
  return settings
    .map(
      (setting) =>
        `  ${setting.name.padEnd(widest)}  ${defaultOf(setting).padEnd(widestDefault)}  ${setting.meaning}`,
    )
    .join('\n');
}

function defaultOf({ default: byDefault }: { readonly default: string | null }): string {
  return byDefault ?? 'must be given';
}
