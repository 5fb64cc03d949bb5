import type { Document } from 'yaml';
import { explainLocal, explainStructural, isStructural } from './explain.ts';
import type { Fault } from './faults.ts';
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
 * So one slip makes one complaint, and what is right elsewhere is still read.
 */
export function parse(text: string): Parsed | Refused {
  const even = evenSpaces(text.replace(/\r(?!\n)/g, '\n'));
  const quotes = evenQuotes(even.text);
  const dashes = evenDashes(quotes.text);
  const faults = [...even.faults, ...quotes.faults, ...dashes.faults];
  let readText = dashes.text;
  let doc = parseYaml(readText);
  let isGivenUp = false;
  // Ends: after `mostRounds` at the latest.
  for (let round = 0; ; round += 1) {
    if (isRefused(doc)) return doc;
    const error = doc.errors.find(isStructural);
    const found = error ? explainStructural(error, { text: readText, doc }) : gluedKey(toNode(doc.contents), readText);
    if (!found) break;
    if (!isSaid(text, found, faults)) faults.push(found);
    if (isRecovered(doc, found)) break;
    const next = error?.code === 'TAB_AS_INDENT' ? withoutTabs(readText) : blankOut(readText, found, error?.pos[0]);
    isGivenUp = next === readText || round >= mostRounds(text);
    if (isGivenUp) break;
    readText = next;
    doc = parseYaml(readText);
  }
  if (isRefused(doc)) return doc;
  const local = [...doc.errors, ...doc.warnings].filter(error => !isStructural(error));
  const said = local.slice(0, MOST_SAID).map(error => explainLocal(error, { text: readText, doc }));
  return { doc, faults: [...faults, ...said], readText, isGivenUp };
}

/** What is said of a text that is out of shape all through: nobody reads more, and each takes a look at all of it. */
const MOST_SAID = 101;

/** A dozen slips in a boat file; fewer in a huge text, where each round takes long. */
const mostRounds = (text: string): number => Math.max(2, Math.min(12, Math.floor(3_000_000 / (text.length + 1))));

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
