import type { Analysis } from '../analysis/analysis.ts';
import type { Change } from '../findings/finding.ts';
import { applyChanges } from '../text/editing/edit.ts';
import { positionAt } from '../text/reading/lines.ts';
import type { Told } from '../trials/pool/told.ts';
import type { FACTS } from '../trials/pool/weights.ts';
import { type FactFigure, factOf, itemOf, toldWords } from '../trials/pool/words.ts';

/** What the trials say together: what may be wrong with the boat, with its odds, the likeliest first, and what can be written down. */
export function learnedJson(analysis: Analysis) {
  const verdict = analysis.learned?.verdict;
  if (!verdict) return { explanations: [], offers: [] };
  const { units } = analysis.boat;
  return {
    explanations: verdict.told.map(told => ({
      words: toldWords(told, units),
      odds: told.odds,
      causes: told.causes.map(cause => causeJson(cause, told)),
    })),
    offers: analysis.offers.all().map(({ title, details, odds, changes }) => ({
      title,
      details,
      odds,
      edits: editsJson(analysis, changes),
    })),
  };
}

function causeJson(cause: Told['causes'][number], { explanation }: Told) {
  const fact = (name: (typeof FACTS)[number], factor: number) => figureJson(factOf(explanation, name), factor);
  switch (cause.kind) {
    case 'elsewhere': {
      const n = explanation.items.findIndex(item => item.cause === cause);
      const { entryName, path } = cause.input;
      return { kind: cause.kind, part: entryName, path, axis: cause.axis, by: figureJson(itemOf(explanation, n), 1e3) };
    }
    case 'displaces': {
      const n = explanation.items.findIndex(item => item.cause === cause);
      return { kind: cause.kind, what: cause.what, path: cause.path, percent: figureJson(itemOf(explanation, n), 100) };
    }
    case 'unlisted':
      return {
        kind: cause.kind,
        inside: cause.inside,
        mass: fact('mass', 1e3),
        volume: fact('volume', 1e9),
        station: fact('station', 1e3),
        offset: fact('offset', 1e3),
        height: fact('height', 1e3),
      };
    case 'soaked':
    case 'held':
      return { kind: cause.kind, shell: cause.shell, mass: fact('mass', 1e3) };
    case 'several':
      return { kind: cause.kind };
  }
}

const figureJson = ({ value, sigma }: FactFigure, factor: number) => ({
  value: value * factor,
  uncertainty: sigma * factor,
});

/** What makes the file say so: put in from the last to the first. Null where it cannot be written into this file. */
export const editsJson = ({ syntax }: Analysis, changes: readonly Change[]) =>
  applyChanges(syntax, changes)?.map(({ start, end, text }) => ({
    range: { start: positionAt(syntax.lineStarts, start), end: positionAt(syntax.lineStarts, end) },
    text,
  })) ?? null;
