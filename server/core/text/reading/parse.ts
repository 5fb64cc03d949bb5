import type { Document } from 'yaml';
import type { Steps } from '../../steps/steps.ts';
import { explainLocal, explainStructural, isStructural } from './explain.ts';
import { openBracket } from './explainPunctuation.ts';
import type { Fault, ParserError } from './faults.ts';
import { blank, lineEnd, lineStart } from './lines.ts';
import { toNode } from './nodes.ts';
import { evenDashes } from './oddDashes.ts';
import { evenQuotes } from './oddQuotes.ts';
import { evenSpaces } from './oddSpaces.ts';
import { isRefused, parseYaml, type Refused } from './parseYaml.ts';
import { gluedKey } from './quietFaults.ts';
import { withoutTabs } from './tabs.ts';

export interface Parsed {
  readonly doc: Document.Parsed;
  readonly faults: readonly Fault[];
  /** The text as it was read in the end: slips blanked out, every offset kept. */
  readonly readText: string;
  /** True when the rest of the text stayed out of shape. */
  readonly isGivenUp: boolean;
}

/**
 * Parses a text; where it slips, says the first slip, blanks it out and parses again, until the text holds together.
 * So one slip makes one complaint, and what is right elsewhere is still read. `rounds`: slips that are blanked out at most.
 */
export function* parse(text: string, rounds = MOST_ROUNDS): Steps<Parsed | Refused> {
  const even = evenSpaces(text.replace(/\r(?!\n)/g, '\n'));
  const quotes = evenQuotes(even.text);
  const dashes = evenDashes(quotes.text);
  const faults = [...even.faults, ...quotes.faults, ...dashes.faults];
  let readText = dashes.text;
  let doc = yield* parseYaml(readText);
  let isGivenUp = false;
  let work = 0;
  // Ends: after `rounds` at the latest.
  for (let round = 0; ; round += 1) {
    if (isRefused(doc) && (doc.bracket === null || round >= rounds)) return doc;
    yield;
    const error = isRefused(doc) ? undefined : doc.errors.find(isStructural);
    const found = isRefused(doc) ? openBracket(readText, doc.bracket!) : slipIn(readText, doc, error);
    if (!found) break;
    yield;
    if (!isSaid(text, found, faults)) faults.push(found);
    if (!isRefused(doc) && isRecovered(doc, found)) break;
    const next = error?.code === 'TAB_AS_INDENT' ? withoutTabs(readText) : blankOut(readText, found, error?.pos[0]);
    work += workOf(readText, doc);
    isGivenUp = next === readText || round >= rounds || work >= (round < 2 ? 10 : 1) * MOST_WORK;
    if (isGivenUp) break;
    readText = next;
    doc = yield* parseYaml(readText);
  }
  if (isRefused(doc)) return doc;
  const local = [...doc.errors, ...doc.warnings].filter(error => !isStructural(error));
  const said = local.slice(0, MOST_SAID).map(error => explainLocal(error, { text: readText, doc }));
  return { doc, faults: [...faults, ...said], readText, isGivenUp };
}

/** The first slip that pulls the text out of shape. */
const slipIn = (text: string, doc: Document.Parsed, error: ParserError | undefined): Fault | null =>
  error ? explainStructural(error, { text, doc }) : gluedKey(toNode(doc.contents), text);

/** What is said of a text that is out of shape all through: nobody reads more, and each takes a look at all of it. */
const MOST_SAID = 101;

/** A dozen slips in a boat file; fewer in a huge text, or in one with thousands of them, where each round takes long. */
const MOST_ROUNDS = 12;
const MOST_WORK = 300_000;

/** What parsing a text took, in characters: a complaint takes as long as some dozens of them. */
const workOf = (text: string, doc: Document.Parsed | Refused): number =>
  text.length + (isRefused(doc) ? 0 : 30 * doc.errors.length);

/** On a line already complained of, or perhaps out of line only because of the tabs that were. */
function isSaid(text: string, found: Fault, faults: readonly Fault[]): boolean {
  const line = lineStart(text, found.span[0]);
  if (faults.some(each => lineStart(text, each.span[0]) === line)) return true;
  return found.finding.code === 'bad-indent' && faults.some(isAboutTabs);
}

const isAboutTabs = ({ finding }: Fault): boolean => finding.code === 'tab-indent';

/** The parser got over an unclosed bracket by itself: nothing else in the text is out of shape. */
const isRecovered = (doc: Document.Parsed, { finding }: Fault): boolean =>
  finding.code === 'unclosed-bracket' && doc.errors.filter(isStructural).length === 1;

/** The text without a slip; where that changes nothing, without the line that the parser stumbles over. */
function blankOut(text: string, { blanked, dash, put = [] }: Fault, errorAt: number | undefined): string {
  const blanks = blanked ? blank(text, ...blanked) : text;
  const without = put.reduce((read, [at, piece]) => read.slice(0, at) + piece + read.slice(at + piece.length), blanks);
  const next = dash === null ? without : `${without.slice(0, dash)}-${without.slice(dash + 1)}`;
  if (next !== text || errorAt === undefined) return next;
  const at = Math.min(errorAt, text.length);
  return blank(text, lineStart(text, at), lineEnd(text, at));
}
