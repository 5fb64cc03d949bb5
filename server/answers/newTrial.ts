import type { Analysis } from '../analysis.ts';
import { applyChanges } from '../text/edit.ts';
import type { TextSplice } from '../text/layout.ts';

/** Words that stand where something is to be filled in, until the text is an editor's snippet. */
const STOPS = {
  xdatex: `\${1:$CURRENT_YEAR-$CURRENT_MONTH-$CURRENT_DATE}`,
  xconditionx: `\${2|surfaced,submerged,inclining|}`,
  xforex: `\${3:60 mm}`,
  xforeheightx: '$4',
  xaftx: `\${5:840 mm}`,
  xaftheightx: '$6',
} as const;

/**
 * A new trial to fill in, below those that there are or in a section of its own: the text to put in, in the syntax of
 * editor snippets. Its readings are left blank. Null where the file's trials are no list.
 */
export function newTrial({ syntax }: Analysis): TextSplice | null {
  const [splice, ...others] =
    applyChanges(syntax, [
      {
        kind: 'append',
        path: ['trials'],
        entry: {
          fields: [
            ['date', 'xdatex'],
            ['condition', 'xconditionx'],
            ['marks', '[{ station: xforex, height: xforeheightx }, { station: xaftx, height: xaftheightx }]'],
          ],
        },
      },
    ]) ?? [];
  if (!splice || others.length > 0) return null;
  const escaped = splice.text.replace(/[\\$}]/g, '\\$&');
  return { ...splice, text: escaped.replace(/x[a-z]+x/g, word => STOPS[word as keyof typeof STOPS] ?? word) };
}
