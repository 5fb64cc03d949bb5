import { isFileKey } from '../../../../schema/fileKeys.ts';
import type { Mend } from '../../findings/finding.ts';
import { explainIndent } from './explainIndent.ts';
import {
  type Fault,
  fault,
  partnerOf,
  quotedBefore,
  replacing,
  restOfLine,
  type Situation,
  unclosedBracket,
} from './faults.ts';
import { lineEnd, lineStart, type Span } from './lines.ts';
import { doubleQuoted } from './quoteScalar.ts';

/** A quote that is opened and never closed: the text ends with the value, which is read without it. */
export function explainQuote(situation: Situation, errorAt: number): Fault {
  const { text } = situation;
  const opened = quotedBefore(situation, errorAt)?.[0] ?? errorAt;
  const mark = text[opened] === "'" ? "'" : '"';
  const [, lineIs] = restOfLine(text, opened);
  const isInBraces = isWithinBraces(text.slice(lineStart(text, opened), opened));
  const comma = isInBraces ? itemLength(text.slice(opened, lineIs)) : -1;
  const end = comma < 0 ? lineIs : opened + comma;
  const said = text.slice(opened + 1, end);
  const isFigure = /^[-+.\d]/.test(said);
  const isPlain = said !== '' && !/: |:$| #|[[\]{}]/.test(said) && /^[-+.\w]/.test(said);
  const message = isFigure
    ? `The quote opened here is not closed. A figure needs none: ${said}.`
    : `The quote opened here is not closed. End the text with ${mark}.`;
  return fault('unclosed-quote', [opened, end], message, {
    ...(isPlain ? { put: [[opened, ' ']] as const } : { blanked: [opened, lineEnd(text, opened)] as const }),
    mend: isFigure
      ? replacing('Remove the quote', [[opened, opened + 1], ''])
      : replacing(`Close the quote with ${mark}`, [[end, end], mark]),
  });
}

/** A bracket is open where a piece of a line ends. */
function isWithinBraces(before: string): boolean {
  const last = (a: string, b: string): number => Math.max(before.lastIndexOf(a), before.lastIndexOf(b));
  return last('{', '[') > last('}', ']');
}

/** How long what stands first between brackets is; -1 where nothing follows that ends it. */
function itemLength(said: string): number {
  const end = said.search(/[,}\]]/);
  return end < 0 ? -1 : said.slice(0, end).trimEnd().length;
}

/** A `{` or `[` without its partner, or with lines inside that are not indented. */
export function explainBracket(situation: Situation, errorAt: number): Fault {
  return openBracket(situation.text, unclosedBracket(situation, errorAt) ?? errorAt);
}

/** The same, where the bracket is known. */
export function openBracket(text: string, opened: number): Fault {
  const opener = text[opened] ?? '{';
  const closer = opener === '[' ? ']' : '}';
  const closedAt = partnerOf(text, opened);
  if (closedAt !== null)
    return fault(
      'bad-indent',
      [opened, opened + 1],
      `The lines between this ${opener} and its ${closer} must all be indented further than the line it stands on.`,
      { blanked: [opened, lineEnd(text, closedAt)] },
    );
  const [, end] = restOfLine(text, opened);
  const said = text.slice(opened, end);
  const example = opener === '[' ? '[5 g, 10 g]' : '{ name: keel, takes: lead }';
  return fault(
    'unclosed-bracket',
    [opened, opened + 1],
    `The ${opener} opened here is not closed. End it with ${closer}, for example “${example}”; if it goes over several lines, indent them all.`,
    {
      ...(said.endsWith(')') && !said.includes('(')
        ? { put: [[end - 1, closer]] as const }
        : { blanked: [opened, lineEnd(text, opened)] as const }),
      mend: closing(text, opened, end),
    },
  );
}

/** The brackets that are open at the end of a piece of a line, the last first; null where one is closed by another's kind. */
function openIn(said: string): readonly string[] | null {
  const open: string[] = [];
  for (const char of said) {
    if (char === '{' || char === '[') open.unshift(char);
    else if ((char === '}' || char === ']') && open.shift() !== (char === '}' ? '{' : '[')) return null;
  }
  return open;
}

/**
 * Puts the closing bracket at the end of what stands on the opener's line, where that ends with a value; and with it those
 * of the brackets before it on the line, where nothing that follows belongs to them.
 */
function closing(text: string, opened: number, end: number): Mend | null {
  const said = text.slice(opened, end);
  const [closer, other] = said[0] === '[' ? [']', '}'] : ['}', ']'];
  const last = said.at(-1) ?? '';
  if (last === ')' && !said.includes('(')) return replacing(`Change ) to ${closer}`, [[end - 1, end], closer]);
  if (last === other && !said.includes(other === ']' ? '[' : '{'))
    return replacing(`Change ${last} to ${closer}`, [[end - 1, end], closer]);
  if (said.length < 2 || /[,:{[]/.test(last) || openIn(said)?.length !== 1) return null;
  const start = lineStart(text, opened);
  const around = goesOnBelow(text, start) ? [] : (openIn(text.slice(start, opened)) ?? []);
  const closers = [said[0]!, ...around].map(bracket => (bracket === '[' ? ']' : ' }')).join('');
  return replacing(`Close it with ${closers.trim()}`, [[end, end], closers]);
}

/** Whether the next line with anything on it stands further in than the line that starts here. */
function goesOnBelow(text: string, start: number): boolean {
  const [own, next] = text
    .slice(start)
    .split(/\r\n|\n|\r/, 1000)
    .filter(line => line.trim() !== '')
    .map(line => line.search(/\S/));
  return next !== undefined && next > own!;
}

/** A `}` or `]` that closes nothing. */
export const explainStrayBracket = (text: string, at: number): Fault =>
  fault('stray-bracket', [at, at + 1], `This ${text[at]} closes nothing: no bracket is open before it. Remove it.`, {
    blanked: [at, at + 1],
    mend: replacing(`Remove the ${text[at]}`, [[at, at + 1], '']),
  });

/** Values between brackets, or after a closed quote, that run into each other. */
export function explainComma(situation: Situation, at: number, message: string): Fault {
  const { text } = situation;
  const rest: Span = [at, lineEnd(text, at)];
  if (message.includes('Unexpected ,'))
    return fault(
      'missing-comma',
      [at, at + 1],
      'A value is missing before this comma, or there is one comma too many.',
      {
        blanked: [at, at + 1],
        mend: replacing('Remove the comma', [[at, at + 1], '']),
      },
    );
  if (!message.includes('flow') && text.slice(lineStart(text, at), at).trim() === '') return explainIndent(text, at);
  const before = text.slice(0, at).trimEnd();
  const quoted = quotedBefore(situation, at);
  if (quoted && quoted[1] === before.length && !message.includes('flow-')) return explainAfterQuote(text, quoted, at);
  const dash = /^-[ \t]+(?=[^\s,}\]])/.exec(text.slice(...rest))?.[0];
  if (message.includes('Block collections') && dash !== undefined) return dashWithin(at, dash.length);
  const inner = /^(\S+(?:[ \t]+[^\s:,]+)*?)[ \t]+([^\s:,{}[\]]+):(?=\s|$)/.exec(text.slice(...rest));
  if (message.includes('Block collections') && inner && !isFileKey(inner[2]!)) {
    const [, valueEnd] = restOfLine(text, at);
    const close = itemLength(text.slice(at, valueEnd));
    return quoteValue(
      text,
      [at, close < 0 ? valueEnd : at + close],
      'A colon and a space inside a value read like a key.',
    );
  }
  if (message.includes('Block collections') && inner) {
    const end = at + inner[1]!.length;
    const next = at + inner[0].length - inner[2]!.length - 1;
    return missingComma(text, [next, next + inner[2]!.length], end);
  }
  if (/[}\]]$/.test(before) && /^[{["'\w]/.test(text.slice(at, at + 1))) {
    if (before.length > 0 && !/[\r\n]/.test(text.slice(before.length, at)))
      return missingComma(text, [at, at + 1], before.length);
  }
  const said = text.slice(...restOfLine(text, at));
  return fault(
    'yaml-syntax',
    [at, at + Math.max(1, said.length)],
    `“${said}” is not expected here. Is a comma, a bracket or a “key: ” missing before it?`,
    {
      blanked: rest,
    },
  );
}

/** A dash before what stands between brackets. */
const dashWithin = (at: number, length: number): Fault =>
  fault('yaml-syntax', [at, at + 1], 'Between brackets, commas part the entries, and no dash begins one. Remove it.', {
    put: [[at, ' ']],
    mend: replacing('Remove the dash', [[at, at + length], '']),
  });

/** A comma that is missing behind `end`, or stands there as another sign; it is read where there is room for it. */
function missingComma(text: string, span: Span, end: number): Fault {
  const isOther = /[;.]/.test(text[end - 1] ?? '');
  const at: Span = isOther ? [end - 1, end] : [end, end];
  const room = isOther ? end - 1 : end;
  const isRoom = isOther || /[ \t]/.test(text[end] ?? '');
  return fault(
    'missing-comma',
    span,
    `A comma is missing before “${text.slice(...span)}”. Between brackets, values are separated by commas.`,
    {
      ...(isRoom ? { put: [[room, ',']] as const } : { blanked: [span[0], lineEnd(text, span[0])] as const }),
      mend: replacing('Put a comma in', [at, ',']),
    },
  );
}

/** `'it's'` or `"5" 3/4"`: text goes on after the closing quote. */
function explainAfterQuote(text: string, quoted: Span, at: number): Fault {
  const [, end] = restOfLine(text, at);
  const mark = text[quoted[0]] === "'" ? "'" : '"';
  const inside = text.slice(quoted[0] + 1, end).replace(new RegExp(`${mark}$`), '');
  return fault(
    'yaml-syntax',
    [at, end],
    `The quoted text ends before “${text.slice(at, end)}”. Quote the whole value once.`,
    {
      blanked: [at, lineEnd(text, at)],
      mend: replacing('Quote the whole value', [[quoted[0], end], doubleQuoted(inside)]),
    },
  );
}

/** A value that only stands as text when it is quoted. */
export function quoteValue(text: string, span: Span, reason: string): Fault {
  const quoted = doubleQuoted(text.slice(...span));
  const isInBraces = isWithinBraces(text.slice(lineStart(text, span[0]), span[0]));
  return fault('needs-quotes', span, `${reason} Put it in quotes: ${quoted}.`, {
    blanked: isInBraces ? span : [span[0], lineEnd(text, span[0])],
    mend: replacing('Put it in quotes', [span, quoted]),
  });
}
