import { htmlElement, type Markup } from '../markup.ts';

/** A boat file that travels in a page. */
export interface FileInside {
  readonly name: string;
  readonly text: string;
}

const NAME = 'trimwright-boat-file';

/**
 * The boat file in the head of a page, where it shows nowhere and runs nowhere. As JSON no line end or control character of it
 * is lost when a browser reads the page or saves it.
 */
export const withFile = (file: FileInside): Markup =>
  htmlElement('meta', {
    name: NAME,
    content: JSON.stringify({ name: file.name, text: file.text }).replace(UNWRITABLE, asEscape),
  });

/** What JSON lets stand and no page can write. */
const UNWRITABLE = /[\u007f-\u009f\ufffe\uffff]/g;

const asEscape = (character: string): string => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`;

/** The boat file in a page; null where there is none, or it was damaged. */
export function fileIn(html: string): FileInside | null {
  const found = new RegExp(`<meta name="${NAME}" content="([^"]*)"`).exec(html)?.[1];
  if (found === undefined) return null;
  try {
    const file: unknown = JSON.parse(found.replace(/&(amp|lt|gt|quot|#39|nbsp);/g, (_, name: string) => PLAIN[name]!));
    return isFile(file) ? { name: safeName(file.name), text: file.text } : null;
  } catch {
    return null;
  }
}

const PLAIN: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'", nbsp: '\u00a0' };

const isFile = (file: unknown): file is FileInside =>
  typeof file === 'object' &&
  file !== null &&
  'name' in file &&
  typeof file.name === 'string' &&
  'text' in file &&
  typeof file.text === 'string';

/** A page may come from anyone: its file gets a plain name, in no folder, that ends as boat files do. */
function safeName(name: string): string {
  const plain = name
    .replace(/^.*[/\\]/, '')
    .replace(/\.boat\.ya?ml$/i, '')
    .replace(/[^\p{L}\p{N} ._-]/gu, '_')
    .replace(/^\.+/, '');
  return `${plain === '' ? 'boat' : plain}.boat.yaml`;
}
