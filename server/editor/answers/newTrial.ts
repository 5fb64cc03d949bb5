import type { Analysis } from '../../core/analysis/analysis.ts';
import { applyChanges } from '../../core/text/editing/edit.ts';
import type { TextSplice } from '../../core/text/reading/layout.ts';
import { markStations } from '../../core/trials/markStations.ts';
import { stationTape } from '../../core/wording/places.ts';

/** Words that stand where something is to be filled in, until the text is an editor's snippet. */
const stopsOf = ([fore, aft]: readonly [string, string]): Readonly<Record<string, string>> => ({
  xdatex: `\${1:$CURRENT_YEAR-$CURRENT_MONTH-$CURRENT_DATE}`,
  xconditionx: `\${2|surfaced,submerged,inclining,bench,hung|}`,
  xforex: `\${3:${fore}}`,
  xforeheightx: '$4',
  xaftx: `\${5:${aft}}`,
  xaftheightx: '$6',
});

/** The tape's marks of those stations; nothing while the boat has no length. */
function stationsOf({ boat, trials }: Analysis): readonly [fore: string, aft: string] {
  const [fore, aft] = markStations(boat, trials) ?? [];
  const text = (station?: number) => (station === undefined ? '' : stationTape(station, boat.units));
  return [text(fore), text(aft)];
}

/**
 * A new trial to fill in, below those that there are or in a section of its own: the text to put in, in the syntax of
 * editor snippets. Its readings are left blank, and stations can be typed over. Null where the file's trials are no list.
 */
export function newTrial(analysis: Analysis): TextSplice | null {
  const { syntax } = analysis;
  const stops = stopsOf(stationsOf(analysis));
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
  return { ...splice, text: escaped.replace(/x[a-z]+x/g, word => stops[word] ?? word) };
}
