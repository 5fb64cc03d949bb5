import type { Analysis } from '../../core/analysis/analysis.ts';
import { applyChanges } from '../../core/text/editing/edit.ts';
import type { TextSplice } from '../../core/text/reading/layout.ts';
import { tapeStep, tapeText } from '../../core/wording/numbers.ts';

/** Words that stand where something is to be filled in, until the text is an editor's snippet. */
const stopsOf = ([fore, aft]: readonly [string, string]): Readonly<Record<string, string>> => ({
  xdatex: `\${1:$CURRENT_YEAR-$CURRENT_MONTH-$CURRENT_DATE}`,
  xconditionx: `\${2|surfaced,submerged,inclining,bench,hung|}`,
  xforex: `\${3:${fore}}`,
  xforeheightx: '$4',
  xaftx: `\${5:${aft}}`,
  xaftheightx: '$6',
});

/** Part of the length from either end at which a first reading is likely to be taken (common practice, no source). */
const FROM_THE_END = 0.08;

/** Where the water is likely to be read, near each end: where it was the last time, or else by the boat's length. */
function stationsOf({ boat, trials }: Analysis): readonly [fore: string, aft: string] {
  const { length, units } = boat;
  const read = trials.map(({ readings }) =>
    readings.flatMap(reading => (reading.of === 'mark' ? [reading.station] : [])),
  );
  const last = read.findLast(stations => stations.length > 1);
  if (last) return [tapeText(Math.min(...last), units), tapeText(Math.max(...last), units)];
  if (!(length > 0)) return ['', ''];
  const step = 8 * tapeStep(units);
  const fore = Math.max(1, Math.round((FROM_THE_END * length) / step)) * step;
  return [tapeText(fore, units), tapeText(length - fore, units)];
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
