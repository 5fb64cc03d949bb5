import type { Range } from 'vscode-languageserver-types';
import { positionAt, type Span } from '../text/lines.ts';
import type { Syntax } from '../text/syntax.ts';

/** Characters of the text as the editor counts them: lines from 0, UTF-16 units from 0. */
export const lspRange = ({ lineStarts }: Syntax, [start, end]: Span): Range => ({
  start: positionAt(lineStarts, start),
  end: positionAt(lineStarts, end),
});
