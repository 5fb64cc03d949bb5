import { type Alias, type Document, isMap, isScalar, isSeq, type Node } from 'yaml';
import type { Finding } from '../../findings/finding.ts';
import { readAliases } from './aliasFaults.ts';
import { refuse } from './bound.ts';
import type { Fault } from './faults.ts';
import { lineStartsOf, type Span } from './lines.ts';
import { parse } from './parse.ts';
import { quietFaults } from './quietFaults.ts';
import type { Aliases } from './tree.ts';

/**
 * A text read as YAML, with the place of everything in it. Where the writing slips, the slip is a finding and its line
 * is left out, so that the rest can be read; offsets always count in the text as it stands.
 */
export interface Syntax {
  readonly text: string;
  readonly lineStarts: readonly number[];
  /** Null when the text was refused. */
  readonly doc: Document.Parsed | null;
  readonly root: Node | null;
  readonly aliases: Aliases;
  readonly findings: readonly Finding[];
  /** Where slips leave in uncertainty what is read, in the order of the text. */
  readonly slips: readonly Span[];
  /** True when the text was given up on part of the way, so that nothing missing in it means anything. */
  readonly isGivenUp: boolean;
  /** The text as it was read: slips blanked out, every offset kept. */
  readonly readText: string;
}

/** Slips that leave no doubt about what is read. */
const harmless = new Set(['duplicate-key', 'odd-space', 'several-documents']);

/** Reads any text at all; it never throws. */
export function readSyntax(text: string): Syntax {
  const lineStarts = lineStartsOf(text);
  const refusal = refuse(text);
  if (refusal) {
    const aliases = new Map<Alias, Node | null>();
    return {
      text,
      lineStarts,
      doc: null,
      root: null,
      aliases,
      findings: [refusal],
      slips: [],
      isGivenUp: true,
      readText: '',
    };
  }
  const { doc, faults, readText, isGivenUp } = parse(text);
  const root = isMap(doc.contents) || isSeq(doc.contents) || isScalar(doc.contents) ? doc.contents : null;
  const { aliases, faults: aliasFaults } = readAliases(text.includes('*') ? root : null);
  const all = eachOnce([...faults, ...quietFaults(root, text), ...aliasFaults]);
  const findings = all.map(each => each.finding);
  const slips = all.filter(each => !harmless.has(each.finding.code)).map(each => each.span);
  return { text, lineStarts, doc, root, aliases, findings, slips, isGivenUp, readText };
}

/** In the order of the text; the parser may say one thing twice. */
function eachOnce(faults: readonly Fault[]): readonly Fault[] {
  const bySaying = new Map(faults.map(each => [`${each.finding.code} ${each.span[0]}`, each]));
  return [...bySaying.values()].sort((a, b) => a.span[0] - b.span[0]);
}
