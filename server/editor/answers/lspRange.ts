import type { Range } from 'vscode-languageserver-types';
import { positionAt, type Span } from '../../core/text/reading/lines.ts';
import type { Syntax } from '../../core/text/reading/syntax.ts';

/** Characters of the text as the editor counts them: lines from 0, UTF-16 units from 0. */
export const lspRange = ({ lineStarts }: Syntax, [start, end]: Span): Range => ({
  start: positionAt(lineStarts, start),
  end: positionAt(lineStarts, end),
});
