import type { Finding } from '../../findings/finding.ts';
import { finish, type Steps } from '../../steps/steps.ts';
import { readAliases } from './aliasFaults.ts';
import { refuse } from './bound.ts';
import type { Fault } from './faults.ts';
import { lineStartsOf, type Span } from './lines.ts';
import { isAlias, type Node, toNode } from './nodes.ts';
import { parse } from './parse.ts';
import { isRefused } from './parseYaml.ts';
import { noPieces, parsePieces, type TextPieces } from './pieces.ts';
import { quietFaults } from './quietFaults.ts';
import type { Aliases } from './tree.ts';

/**
 * A text read as YAML, with the place of everything in it. Where the writing slips, the slip is a finding and its line
 * is left out, so that the rest can be read; offsets always count in the text as it stands.
 */
export interface Syntax {
  readonly text: string;
  readonly lineStarts: readonly number[];
  /** The text is too long or too deep to be read at all. */
  readonly isRefused: boolean;
  readonly root: Node | null;
  readonly aliases: Aliases;
  readonly findings: readonly Finding[];
  /** Where slips leave in uncertainty what is read, in the order of the text. */
  readonly slips: readonly Span[];
  /** True when the text was given up on part of the way, so that nothing missing in it means anything. */
  readonly isGivenUp: boolean;
  /** The text as it was read: slips blanked out, every offset kept. */
  readonly readText: string;
  /** Pieces that were parsed by themselves, for the next reading of this file. */
  readonly pieces: TextPieces;
  /** Whether this text was put together from such pieces. */
  readonly isPieced: boolean;
}

/** Slips that leave no doubt about what is read. */
const harmless = new Set(['duplicate-key', 'odd-space', 'several-documents', 'odd-quotes']);

/** Slips that are said; of a text with more nothing is sure, and nobody reads on. */
const MOST_SAID = 100;

const noAliases: Aliases = new Map();

/** Reads any text at all; it never throws. What the reading before it left as it was is not parsed again. */
export const readSyntax = (text: string, previous?: Syntax): Syntax => finish(syntaxSteps(text, previous));

/** The same in steps. */
export function* syntaxSteps(text: string, previous?: Syntax): Steps<Syntax> {
  const lineStarts = lineStartsOf(text);
  const before = previous?.pieces ?? noPieces;
  const pieced = yield* parsePieces(text, lineStarts, before);
  if (pieced)
    return {
      text,
      lineStarts,
      isRefused: false,
      root: pieced.root,
      aliases: noAliases,
      findings: [],
      slips: [],
      isGivenUp: false,
      readText: text,
      isPieced: true,
      pieces: pieced.pieces,
    };
  return { ...(yield* wholeSteps(text, lineStarts)), pieces: before };
}

/** A text that is not put together from pieces. */
export function* wholeSteps(text: string, lineStarts: readonly number[]): Steps<Syntax> {
  const refusal = refuse(text);
  const parsed = refusal ? { refusal, bracket: null } : yield* parse(text);
  if (isRefused(parsed)) return refused(text, lineStarts, parsed.refusal);
  const { doc, faults, readText, isGivenUp } = parsed;
  yield;
  const contents = toNode(doc.contents);
  yield;
  const root = isAlias(contents) ? null : contents;
  const { aliases, faults: aliasFaults } = readAliases(text.includes('*') ? root : null);
  yield;
  const all = eachOnce([...faults, ...quietFaults(root, text), ...aliasFaults]);
  const findings = all.slice(0, MOST_SAID).map(each => each.finding);
  const slips = all.filter(each => !harmless.has(each.finding.code)).flatMap(each => [each.span, ...(each.also ?? [])]);
  return {
    text,
    lineStarts,
    isRefused: false,
    root,
    aliases,
    findings,
    slips,
    isGivenUp: isGivenUp || all.length > MOST_SAID,
    readText,
    isPieced: false,
    pieces: noPieces,
  };
}

const refused = (text: string, lineStarts: readonly number[], refusal: Finding): Syntax => ({
  text,
  lineStarts,
  isRefused: true,
  root: null,
  aliases: noAliases,
  findings: [refusal],
  slips: [],
  isGivenUp: true,
  readText: '',
  isPieced: false,
  pieces: noPieces,
});

/** In the order of the text; the parser may say one thing twice. */
function eachOnce(faults: readonly Fault[]): readonly Fault[] {
  const bySaying = new Map(faults.map(each => [`${each.finding.code} ${each.span[0]}`, each]));
  return [...bySaying.values()].sort((a, b) => a.span[0] - b.span[0]);
}
