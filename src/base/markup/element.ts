import { escapeText } from './clean.ts';

/**
 * A finished piece of HTML or SVG. It is an object, so that it cannot be mixed up with a plain string at run
 * time: a string handed to `html` or `svg` as a child is always text, and always escaped.
 */
export interface Markup {
  readonly markup: string;
}

/** Numbers are written as they are, text is escaped; `true` gives the bare attribute, null or false leaves it out. */
export type AttributeValue = string | number | boolean | null | undefined;
export type Attributes = Readonly<Record<string, AttributeValue>>;

/** Strings and numbers are text, escaped; lists are flattened; null and false leave nothing. */
export type Child = Markup | string | number | false | null | undefined | readonly Child[];

/** Takes a string as finished markup. Only for our own constants and for what `html` or `svg` made. */
export function trusted(markup: string): Markup {
  return { markup };
}

const properName = /^[A-Za-z_][A-Za-z0-9_.:-]*$/;

function checkedName(name: string): string {
  if (!properName.test(name))
    throw new Error(`not a name of an element or attribute: ${JSON.stringify(name)}`);
  return name;
}

function writeAttributes(attributes: Attributes): string {
  let written = '';
  for (const [name, value] of Object.entries(attributes)) {
    if (value === null || value === undefined || value === false) continue;
    if (typeof value === 'number' && !Number.isFinite(value))
      throw new Error(`${name} is not a finite number`);
    written += ` ${checkedName(name)}="${value === true ? '' : escapeText(String(value))}"`;
  }
  return written;
}

/** The children one after another, text escaped. */
export function content(...children: readonly Child[]): Markup {
  let written = '';
  for (const child of children) {
    if (child === null || child === undefined || child === false) continue;
    if (typeof child === 'string' || typeof child === 'number') written += escapeText(String(child));
    else if ('markup' in child) written += child.markup;
    else written += content(...child).markup;
  }
  return { markup: written };
}

const htmlWithoutContent: ReadonlySet<string> = new Set(['br', 'col', 'hr', 'img', 'link', 'meta', 'wbr']);

/**
 * One HTML element. Element and attribute names come from our own code and are checked (a bad one throws);
 * attribute values and string children may be anything a user wrote.
 * @example html('p', { class: 'note' }, '5 < 6').markup // '<p class="note">5 &lt; 6</p>'
 */
export function html(name: string, attributes: Attributes, ...children: readonly Child[]): Markup {
  const opening = `<${checkedName(name)}${writeAttributes(attributes)}>`;
  if (htmlWithoutContent.has(name)) return { markup: opening };
  return { markup: `${opening}${content(...children).markup}</${name}>` };
}

/**
 * One SVG (or other XML) element; closed at once when it has no children. Otherwise as `html`.
 * @example svg('rect', { x: 0, width: 4 }).markup // '<rect x="0" width="4"/>'
 */
export function svg(name: string, attributes: Attributes, ...children: readonly Child[]): Markup {
  const opening = `<${checkedName(name)}${writeAttributes(attributes)}`;
  const inner = content(...children).markup;
  return { markup: inner === '' ? `${opening}/>` : `${opening}>${inner}</${name}>` };
}
