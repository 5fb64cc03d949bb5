import { type Document, parseDocument } from 'yaml';
import type { Finding } from '../findings/finding.ts';
import { refuseNesting } from './bound.ts';

/** A text that must not be parsed. */
export interface Refused {
  readonly refusal: Finding;
}

/**
 * The only way to the YAML parser: what nests too deep for it, which would end the whole process, does not get there,
 * whatever was done to the text before.
 */
export function parseYaml(text: string): Document.Parsed | Refused {
  const refusal = refuseNesting(text);
  if (refusal) return { refusal };
  return parseDocument(text, { version: '1.2', prettyErrors: false, keepSourceTokens: true, logLevel: 'error' });
}

export const isRefused = (parsed: object): parsed is Refused => 'refusal' in parsed;
