import type { Analysis } from '../../server/core/analysis/analysis.ts';
import type { BoatService } from '../../server/service/service.ts';
import { MACHINE_WORDS, strayNumbers } from '../helpers/finite.ts';

export const URI = 'file:///fuzz.boat.yaml';

/** Where a surface may lie infinitely high: submerged there is none. */
const ENDLESS = new Set(['level']);

/** Everything that is said of a boat at once, to be compared. */
export const said = (service: BoatService, analysis: Analysis): string =>
  JSON.stringify([
    analysis.file.findings,
    strip(analysis.surfaced),
    strip(analysis.submerged),
    service.summary(analysis).text,
    service.symbols(analysis),
  ]);

/** Figures, without the functions that figure others. */
const strip = (figures: object): unknown => JSON.parse(JSON.stringify(figures));

/** Numbers and words that are none. */
export function* wrongIn({ boat, surfaced, submerged, transit, findings }: Analysis): Generator<string> {
  for (const stray of strayNumbers({ boat, surfaced, submerged, transit }, ENDLESS)) yield `no number: ${stray}`;
  for (const { message } of findings) {
    // What the file itself says is quoted.
    const found = MACHINE_WORDS.exec(message.replace(/“[^”]*”/g, ''));
    if (found) yield `a machine’s word: ${message}`;
  }
}

/** Asks for everything that an editor asks for while someone types; what is wrong with the answers. */
export function* askAll(service: BoatService, analysis: Analysis, offset: number): Generator<string> {
  yield* askQuick(service, analysis, offset);
  const { pictures } = service
    .sheet(analysis, {
      proposal: null,
      width: 880,
      names: 'few',
      seen: ['surfaced-side', 'submerged-side'],
    })
    .all();
  if (pictures.some(({ svg }) => /NaN|Infinity/.test(svg))) yield 'a picture with no numbers';
}

/** The same without the pictures. */
export function* askQuick(service: BoatService, analysis: Analysis, offset: number): Generator<string> {
  for (const { range, message } of service.diagnostics(analysis, null)) {
    const { start, end } = range;
    if (start.line > end.line || (start.line === end.line && start.character > end.character)) {
      yield `a range that ends before it begins: ${message}`;
    }
  }
  const { text } = analysis.syntax;
  const told: Readonly<Record<string, unknown>> = {
    hover: service.hover(analysis, offset),
    completions: service.completions(analysis, offset),
    summary: service.summary(analysis),
    hints: service.inlayHints(analysis, [0, text.length]),
    symbols: service.symbols(analysis),
    highlights: service.highlights(analysis, offset),
    trial: service.newTrial(analysis),
  };
  for (const [what, answer] of Object.entries(told))
    for (const words of wordsIn(answer))
      if (MACHINE_WORDS.test(words) && !text.includes(words.trim())) yield `a machine’s word in ${what}: ${words}`;
  service.definition(analysis, offset, URI);
  service.references(analysis, offset, { uri: URI, withDefinition: true });
  service.renaming(analysis, offset);
  service.rename(analysis, offset, 'new name', { uri: URI, version: null });
  service.codeLenses(analysis, URI);
  service.foldingRanges(analysis);
}

/** Every text in an answer, without what it quotes of the file. */
function wordsIn(answer: unknown): readonly string[] {
  if (typeof answer === 'string') return answer.replace(/“[^”]*”|`[^`]*`/gs, '').split('\n');
  return typeof answer === 'object' && answer !== null ? Object.values(answer).flatMap(wordsIn) : [];
}
