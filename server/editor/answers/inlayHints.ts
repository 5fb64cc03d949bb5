import type { InlayHint } from 'vscode-languageserver-types';
import type { Path } from '../../../schema/path.ts';
import type { Analysis } from '../../core/analysis/analysis.ts';
import type { Weighed } from '../../core/boat/boat.ts';
import { extentOf } from '../../core/text/reading/extent.ts';
import { lineEnd, positionAt, type Span } from '../../core/text/reading/lines.ts';
import { rangeOf } from '../../core/text/reading/rangeOf.ts';
import { massText } from '../../core/wording/numbers.ts';
import { contributionSubmerged, sidedMoment } from './contribution.ts';

/** Behind every entry that weighs, in a span of the text: what it does to the submerged boat. */
export function inlayHintsIn(analysis: Analysis, [start, end]: Span): readonly InlayHint[] {
  const { syntax, boat } = analysis;
  const weighed: readonly Weighed[] = [...boat.shells, ...boat.compartments, ...boat.payload];
  // An entry that stands in two lists through an alias is written once.
  const said = new Set<number>();
  return weighed.flatMap(entry => {
    const at = placeBehind(analysis, entry.path);
    if (at === null || at < start || at > end || said.has(at)) return [];
    said.add(at);
    return [
      {
        position: positionAt(syntax.lineStarts, at),
        label: shortWords(analysis, entry),
        tooltip: longWords(analysis, entry),
        paddingLeft: true,
      },
    ];
  });
}

/** Behind an entry on one line, else behind its name. */
function placeBehind({ syntax }: Analysis, path: Path): number | null {
  const extent = extentOf(syntax, path);
  if (!extent) return null;
  if (lineEnd(syntax.text, extent[0]) >= extent[1]) return extent[1];
  return rangeOf(syntax, { on: 'entry', path })[1];
}

function shortWords(analysis: Analysis, entry: Weighed): string {
  const { net, aft } = contributionSubmerged(analysis, entry);
  const weight = massText(Math.abs(net), analysis.boat.units);
  const moment = sidedMoment(aft, analysis, ['bow up', 'bow down']);
  return `${net < 0 ? `lifts ${weight}` : `${weight} in water`}${moment === null ? '' : `, ${moment}`}`;
}

function longWords(analysis: Analysis, entry: Weighed): string {
  const { net, aft, starboard } = contributionSubmerged(analysis, entry);
  const weight = massText(Math.abs(net), analysis.boat.units);
  const along = sidedMoment(aft, analysis, ['stern down, bow up', 'bow down']) ?? 'none';
  const across = sidedMoment(starboard, analysis, ['to starboard', 'to port']) ?? 'none';
  const what = net < 0 ? `lifts ${weight}` : `weighs ${weight}`;
  return `Submerged, “${entry.name}” ${what} in the water. Its moment about midships: ${along}; about the centreline: ${across}.`;
}
