import { type Document, isScalar } from 'yaml';
import { finish } from '../../steps/steps.ts';
import { isRefused, parseYaml } from './parseYaml.ts';

/** What YAML 1.2.2 (5.1, c-printable) has no room for but in the escapes of double quotes. */
const UNPRINTABLE = /[^\t\n\r\x20-\x7e\x85\xa0-\ud7ff\ue000-\ufefe\uff00-\ufffd\u{10000}-\u{10ffff}]/gu;

/** Text in double quotes, as YAML reads it back. */
export const doubleQuoted = (text: string): string =>
  JSON.stringify(text).replace(UNPRINTABLE, character => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`);

/** The name of a key as it shall stand before its colon. */
export const keyText = (name: string): string =>
  /^(?!(?:null|true|false)$)[a-z]+$/.test(name) ? name : textScalar(name, true);

/**
 * Text as it shall stand in the file: as it is where YAML reads it back unchanged, else in double quotes. What is
 * already quoted, and a flow collection, stands as given.
 */
export function quoteScalar(text: string, isInFlow: boolean): string {
  if (/^(["'[{])/.test(text) && isWhole(text, isInFlow)) return text;
  return readsBack(text, isInFlow) ? text : doubleQuoted(text);
}

/** Text as a scalar that reads back as this text and nothing else, not as a number or a list: in double quotes where need be. */
export const textScalar = (text: string, isInFlow: boolean): string =>
  readsBack(text, isInFlow) && typeof frame(text, isInFlow)?.get('k') === 'string' ? text : doubleQuoted(text);

/** The text as the value of a key; null where it cannot be one. */
function frame(text: string, isInFlow: boolean): Document.Parsed | null {
  const doc = finish(parseYaml(isInFlow ? `{ k: ${text} }\n` : `k: ${text}\n`));
  return isRefused(doc) ? null : doc;
}

const isWhole = (text: string, isInFlow: boolean): boolean => {
  const doc = frame(text, isInFlow);
  return doc !== null && doc.errors.length === 0 && doc.warnings.length === 0 && isOneEntry(doc.contents);
};

/** Words that cannot be anything else in YAML: most names, and figures with their units. */
const plainWords = /^[\p{L}\p{N}][\p{L}\p{N}._/()%°±-]*(?: [\p{L}\p{N}._/()%°±-]+)*$/u;

/** A plain scalar whose source is all of the text: nothing lost to a comment, nothing read as a key. */
const readsBack = (text: string, isInFlow: boolean): boolean => {
  if (plainWords.test(text)) return true;
  // The quotes of a letter at its beginning would be taken for quotes.
  if (text === '' || /[\r\n]|^[“„«‘‚]/.test(text) || text.search(UNPRINTABLE) >= 0) return false;
  const doc = frame(text, isInFlow);
  if (doc === null || doc.errors.length > 0 || doc.warnings.length > 0 || !isOneEntry(doc.contents)) return false;
  const value = doc.get('k', true);
  return isScalar(value) && value.type === 'PLAIN' && value.source === text;
};

const isOneEntry = (contents: unknown): boolean =>
  typeof contents === 'object' &&
  contents !== null &&
  'items' in contents &&
  (contents.items as unknown[]).length === 1;
