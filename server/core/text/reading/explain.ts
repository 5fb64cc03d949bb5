import { quoted } from '../../../../schema/quoted.ts';
import { explainIndent, explainOverIndent, explainStrayDash } from './explainIndent.ts';
import { explainBracket, explainComma, explainQuote, explainStrayBracket, quoteValue } from './explainPunctuation.ts';
import {
  type Fault,
  fault,
  firstOnLine,
  firstTwin,
  isBlankLine,
  lineNumber,
  type ParserError,
  partnerOf,
  replacing,
  restOfLine,
  type Situation,
  skipBlankLines,
} from './faults.ts';
import { columnAt, lineEnd, lineStart, nextLineStart, type Span } from './lines.ts';
import { dashlessBraces, strayBullet } from './oddDashes.ts';
import { wrongColon } from './oddSigns.ts';
import { explainTabs } from './tabs.ts';

/** Errors that pull the text around them out of shape; the others leave the rest of the file as it was meant. */
const structural = new Set([
  'BAD_INDENT',
  'BLOCK_AS_IMPLICIT_KEY',
  'BLOCK_IN_FLOW',
  'KEY_OVER_1024_CHARS',
  'MISSING_CHAR',
  'MULTILINE_IMPLICIT_KEY',
  'TAB_AS_INDENT',
  'UNEXPECTED_TOKEN',
]);

export const isStructural = (error: ParserError): boolean => structural.has(error.code);

/** Says a structural error in a modeller's words, and what to blank out so that the rest of the file can be read. */
export function explainStructural(error: ParserError, situation: Situation): Fault {
  const { text } = situation;
  const [start] = error.pos;
  const { message } = error;
  if (error.code === 'TAB_AS_INDENT') return explainTabs(text, start);
  const glued =
    gluedBracket(text, keyStart(text, start)) ??
    wrongColon(text, keyStart(text, start)) ??
    dashlessBraces(text, start) ??
    strayBullet(text, start);
  if (glued) return glued;
  if (message.startsWith('Missing closing')) return explainQuote(situation, start);
  if (message.startsWith('Missing directives-end')) return explainDirective(text, start);
  if (message.startsWith('Flow ')) return explainBracket(situation, start);
  if (/flow-(map|seq)-end token in YAML stream/.test(message)) return explainStrayBracket(text, start);
  if (error.code === 'BAD_INDENT' || message.includes('without - indicator')) {
    const first = firstOnLine(text, skipBlankLines(text, start));
    if (/^-(?:[A-Za-z][\w-]*:|[{[])/.test(text.slice(first, lineEnd(text, first))))
      return missingDashSpace(text, first);
    const above = lineWithoutColon(text, start);
    return above === null ? explainIndent(text, start) : explainKey(text, above);
  }
  if (message.includes('block-seq-ind on same line')) return explainStrayDash(text, start);
  if (error.code === 'BLOCK_IN_FLOW' || /^Unexpected (?:, in flow|\S+ at node end)/.test(message))
    return explainComma(situation, start, message);
  if (error.code === 'BLOCK_AS_IMPLICIT_KEY' || error.code === 'MULTILINE_IMPLICIT_KEY' || isLoneKey(message))
    return explainKey(text, start);
  const span: Span = [start, Math.max(start + 1, restOfLine(text, start)[1])];
  return fault('yaml-syntax', span, `The file cannot be read here: ${excerpt(text, span)} is not expected.`, {
    blanked: [lineStart(text, start), lineEnd(text, start)],
  });
}

const isLoneKey = (message: string): boolean => message.startsWith('Implicit map keys need');

/**
 * After `length:900 mm # note` the line below is the first that the parser cannot place: where the line above starts,
 * when it stands in the same column and has no colon.
 */
function lineWithoutColon(text: string, at: number): number | null {
  const first = firstOnLine(text, skipBlankLines(text, at));
  let line = lineStart(text, first);
  // Ends: each round is a line further up.
  do {
    if (line === 0) return null;
    line = lineStart(text, line - (text.startsWith('\r\n', line - 2) ? 2 : 1));
  } while (isBlankLine(text, line));
  const start = keyStart(text, line);
  const said = text.slice(...restOfLine(text, start));
  return start - line === columnAt(text, first) && !/:(?:\s|$)/.test(said) ? start : null;
}

/** A line that should be `key: value` and is not. */
function explainKey(text: string, at: number): Fault {
  const start = at + /^\s*/.exec(text.slice(at))![0].length;
  const span = restOfLine(text, start);
  const said = text.slice(...span);
  const before = text.slice(lineStart(text, start), start);
  const blanked: Span = [start, lineEnd(text, start)];

  if (said === '?')
    return fault('yaml-syntax', span, '“?” is no figure. Weigh or measure it, or leave the line out until then.', {
      blanked,
    });
  if (/^\?(\s|$)/.test(said)) return quoteValue(text, span, 'A value cannot start with “?” and a space.');
  if (/^-(\s|$)/.test(said)) return before.trim() === '' ? explainIndent(text, start) : explainStrayDash(text, start);
  const dash = /^\s*(-)[^\s-][^:]*:\s+$/.exec(before);
  if (dash) return missingDashSpace(text, lineStart(text, start) + before.indexOf('-'));
  if (/[^\s:]:\s+$/.test(before)) {
    if (!/^[^:]*:(\s|$)/.test(said)) return explainOverIndent(text, start);
    if (/^[^:]*:$/.test(said)) {
      const end = span[1] - 1;
      return fault('yaml-syntax', span, `The colon behind “${said.slice(0, -1)}” is one too many.`, {
        put: [[end, ' ']],
        mend: replacing('Remove the colon', [[end, end + 1], '']),
      });
    }
    return quoteValue(
      text,
      span,
      `“${said}” has a colon and a space in it, so it reads like a key with its own value.`,
    );
  }
  const signed = wrongColon(text, start);
  if (signed) return signed;
  const glued = missingColonSpace(text, start);
  if (glued) return { ...glued, blanked };
  const [name = '', ...rest] = said.split(/[ \t]+/);
  const isName = /^[A-Za-z][\w-]*$/.test(name);
  const advice = 'Write the key, a colon, a space and the value';
  if (!isName || rest.length === 0)
    return fault('missing-colon', span, `“${said}” has no colon and no value. ${advice}, for example “mass: 240 g”.`, {
      blanked,
    });
  const mended = `${name}: ${rest.join(' ')}`;
  return fault('missing-colon', span, `“${said}” has no colon. ${advice}: “${mended}”.`, {
    blanked,
    mend: replacing(`Change to “${mended}”`, [[start, start + name.length], `${name}:`]),
  });
}

function explainDirective(text: string, before: number): Fault {
  const at = text.search(/^%/m);
  const start = at < 0 ? Math.max(0, before - 1) : at;
  const span: Span = [start, Math.max(start + 1, restOfLine(text, start)[1])];
  return fault(
    'yaml-syntax',
    span,
    'A line that starts with % is an instruction to YAML, and boat files have none. Put # before it to make it a note.',
    { blanked: [start, lineEnd(text, start)], mend: replacing('Make it a note', [[start, start], '# ']) },
  );
}

/** `name:x`: a key whose colon has no space after it; null when that is not what stands at `start`. */
export function missingColonSpace(text: string, start: number): Fault | null {
  const said = text.slice(...restOfLine(text, start));
  const glued = /^([A-Za-z][\w-]*:)(?=[^\s,}\]])([^,}\]]*)/.exec(said);
  if (!glued) return null;
  const [whole, key = '', value = ''] = glued;
  const mended = `${key} ${value.trimEnd()}`;
  const colon = start + key.length - 1;
  return fault(
    'missing-space',
    [start, colon + 1],
    `“${whole.trimEnd()}” needs a space after the colon: “${mended}”.`,
    {
      mend: replacing(`Change to “${mended}”`, [[colon, colon + 1], ': ']),
    },
  );
}

/** `water:{ kind: sea }` and `water { kind: sea }`: a key that runs into the bracket of its value; else null. */
export function gluedBracket(text: string, start: number): Fault | null {
  const match = /^([A-Za-z][\w-]*)(:?[ \t]*)(?=[{[])/.exec(text.slice(start, lineEnd(text, start)));
  if (!match || /:[ \t]/.test(match[2]!)) return null;
  const [whole, key = '', between = ''] = match;
  const hasColon = between.startsWith(':');
  const mended = `${key}: ${text[start + whole.length]}`;
  const colon: Span = [start + key.length, start + whole.length];
  const code = hasColon ? 'missing-space' : 'missing-colon';
  const lacks = hasColon ? 'a space after the colon' : 'a colon';
  const bracket = start + whole.length;
  return fault(code, [start, start + key.length + (hasColon ? 1 : 0)], `“${key}” needs ${lacks}: “${mended} …”.`, {
    blanked: [start, lineEnd(text, partnerOf(text, bracket) ?? bracket)],
    mend: replacing(`Change to “${mended}”`, [colon, ': ']),
  });
}

/** Where the key of a line stands, after any dashes. */
function keyStart(text: string, offset: number): number {
  const line = lineStart(text, offset);
  return line + /^[ \t]*(?:-[ \t]+)*/.exec(text.slice(line, lineEnd(text, line)))![0].length;
}

/** `-name: x`: a list entry whose dash has no space after it. */
export function missingDashSpace(text: string, dash: number): Fault {
  const said = text.slice(...restOfLine(text, dash));
  const mended = `- ${said.slice(1)}`;
  return fault('missing-space', [dash, dash + said.length], `“${said}” needs a space after the dash: “${mended}”.`, {
    blanked: [dash, lineEnd(text, dash)],
    dash,
    mend: replacing(`Change to “${mended}”`, [[dash, dash + 1], '- ']),
  });
}

/** Says an error that leaves the rest of the file in shape. */
export function explainLocal(error: ParserError, situation: Situation): Fault {
  const { text } = situation;
  const span: Span = [error.pos[0], Math.max(error.pos[1], error.pos[0] + 1)];
  const said = excerpt(text, span);
  switch (error.code) {
    case 'DUPLICATE_KEY':
      return explainDuplicate(situation, span);
    case 'MULTIPLE_DOCS':
      return fault(
        'several-documents',
        [span[0], restOfLine(text, span[0])[1]],
        `A second document starts here; only the part of the file above this line is read. Remove the line “---” or “...”, or put the second boat in its own file.`,
      );
    case 'BAD_SCALAR_START':
      return quoteValue(text, restOfLine(text, span[0]), `A value cannot start with ${said}.`);
    case 'BAD_DQ_ESCAPE':
      return fault('yaml-syntax', span, `In double quotes a backslash must be written twice: “\\\\”.`, {
        mend: replacing('Write the backslash twice', [[span[0], span[0] + 1], '\\\\']),
      });
    case 'TAG_RESOLVE_FAILED':
      return fault('yaml-syntax', span, `${said} is a YAML tag, and boat files have none. Put the text in quotes.`);
    default:
      return fault('yaml-syntax', span, `The file cannot be read here: ${said} is not expected (${error.message}).`);
  }
}

function explainDuplicate(situation: Situation, [start]: Span): Fault {
  const { text } = situation;
  const twin = firstTwin(situation, start);
  const name = text.slice(...restOfLine(text, start)).split(':')[0] ?? '';
  const span: Span = [start, start + name.length];
  const where = twin ? `, first on line ${lineNumber(text, twin.first[0])}` : '';
  const shown = quoted(name);
  const message = `${shown} is given twice here${where}; this one is not used. Keep one of the two.`;
  if (!twin || text.slice(lineStart(text, start), start).trim() !== '') return fault('duplicate-key', span, message);
  const last = Math.max(start, twin.secondEnd - 1);
  const lines: Span = [lineStart(text, start), nextLineStart(text, last)];
  const said = (at: number): string => text.slice(...restOfLine(text, at));
  const isOneLine = lineEnd(text, start) >= twin.secondEnd;
  // A figure that is given nowhere else is kept, as a note.
  const mend =
    isOneLine && said(start) !== said(twin.first[0])
      ? replacing(`Make this ${shown} a note`, [[start, start], '# '])
      : replacing(`Remove this ${shown}`, [lines, '']);
  return fault('duplicate-key', span, message, { mend });
}

/** A few characters of the file for a message. */
function excerpt(text: string, [start, end]: Span): string {
  const said = text.slice(start, Math.min(end, lineEnd(text, start))).trim();
  if (said === '') return start >= text.length ? 'the end of the file' : 'the end of the line';
  return quoted(said);
}
