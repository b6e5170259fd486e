import { type Markup, trusted } from '../../../base/markup/element.ts';

/**
 * The page with no line broken inside a mixed number or before a `%`: `1` at the end of one line and `1/8` at the start
 * of the next would be read as two sizes. Drawings, which break no lines, and attributes stay as they are.
 * @param page HTML that `html` made, so that a `<` or `>` always belongs to a tag
 */
export function wholeFractions({ markup }: Markup): Markup {
  const parts = markup.split(/(<svg\b[\s\S]*?<\/svg>)/);
  return trusted(parts.map((part, index) => (index % 2 === 1 ? part : kept(part))).join(''));
}

function kept(part: string): string {
  return part.replace(/(<[^>]*>)([^<]+)/g, (whole, tag: string, text: string) => {
    if (/class="(?:keep|figures|setting)"/.test(tag)) return whole;
    return (
      tag +
      text.replace(
        /~?\d+ \d+\/\d+(?:&quot;)?|\d+(?:\.\d+)? %/g,
        (number) => `<span class="keep">${number}</span>`,
      )
    );
  });
}
