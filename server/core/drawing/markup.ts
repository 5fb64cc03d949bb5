declare const made: unique symbol;

/** Markup that is safe to put into a document: only the functions here make it. */
export type Markup = string & { readonly [made]: true };

export type Attributes = Readonly<Record<string, string | number | null | undefined>>;

/** An element; attributes that are null or undefined are left out, numbers are written short. */
export function element(name: string, attributes: Attributes, ...children: readonly (Markup | null)[]): Markup {
  let written = `<${name}`;
  for (const key in attributes) {
    const value = attributes[key];
    if (value === null || value === undefined) continue;
    written += ` ${key}="${typeof value === 'number' ? short(value) : escaped(value)}"`;
  }
  let inside = '';
  for (const child of children) if (child !== null) inside += child;
  return (inside === '' ? `${written}/>` : `${written}>${inside}</${name}>`) as Markup;
}

/** HTML that has no end tag. */
const VOID: readonly string[] = ['meta', 'br'];

/** An element of an HTML page: unlike `element`, one with nothing in it has its end tag. */
export function htmlElement(name: string, attributes: Attributes, ...children: readonly (Markup | null)[]): Markup {
  const start = element(name, attributes).replace(/\/>$/, '>');
  return (VOID.includes(name) ? start : `${start}${together(children)}</${name}>`) as Markup;
}

/** Text from anywhere, the boat file included. */
export const svgText = (words: string): Markup => escaped(words) as Markup;

export const together = (parts: readonly (Markup | null)[]): Markup =>
  parts.filter(part => part !== null).join('') as Markup;

/** A number in two decimals at most, never "-0". */
export function short(value: number): string {
  const rounded = Math.round(value * 100) / 100;
  return Number.isFinite(rounded) ? String(rounded === 0 ? 0 : rounded) : '0';
}

const NAMES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for.
const UNWRITABLE = /[\p{Cs}\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/gu;
/** Most of what is written is plain ASCII without any of these: one look tells. */
const PLAIN = /^[ !#-%(-;=?-~]*$/;

/**
 * Text as it may stand in XML and HTML, between tags and in quotes. Characters that XML 1.0 (production 2, Char; seen in
 * saxes) has no way to write are shown by the replacement character.
 */
export const escaped = (words: string): string =>
  PLAIN.test(words) ? words : words.replace(UNWRITABLE, '\ufffd').replace(/[&<>"']/g, character => NAMES[character]!);
