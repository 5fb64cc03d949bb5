import type { Analysis } from '../../server/core/analysis/analysis.ts';
import type { Change, EntryText } from '../../server/core/findings/finding.ts';
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import { createBoatService } from '../../server/editor/service.ts';
import type { Figure } from './figures.ts';

/*
 * What the builder does at the desk, through the same door as the editor: this file alone knows how a lesson and a
 * correction are offered, and where figures with their uncertainties stand.
 */

const service = createBoatService();

export const analyse = (text: string, previous?: Analysis): Analysis => service.analyse(text, previous);

/** The text after some changes; null where they cannot be written. */
export function edited({ syntax }: Analysis, changes: readonly Change[]): string | null {
  const splices = applyChanges(syntax, changes);
  return splices && splice(syntax.text, splices);
}

export const withTrials = (analysis: Analysis, entries: readonly EntryText[]): string =>
  edited(
    analysis,
    entries.map(entry => ({ kind: 'append', path: ['trials'], entry })),
  )!;

export interface Step {
  readonly title: string;
  readonly text: string;
}

/** The lesson that is offered first: it stands for the best hypothesis. */
export const firstLesson = (analysis: Analysis): Step | null =>
  firstOf(analysis, analysis.learned!.verdict?.offers ?? []);

export const firstCorrection = (analysis: Analysis): Step | null => firstOf(analysis, analysis.corrections.all());

function firstOf(
  analysis: Analysis,
  offers: readonly { readonly title: string; readonly changes: readonly Change[] }[],
): Step | null {
  const [first] = offers;
  const text = first ? edited(analysis, first.changes) : null;
  return first && text !== null ? { title: first.title, text } : null;
}

/** A figure as it is told, SI. */
export interface Told {
  readonly value: number;
  readonly sigma: number;
}

/** The headline figures with their uncertainties, as people are told them; those that can be had. */
export function toldBy(analysis: Analysis): ReadonlyMap<Figure, Told> {
  const uncertainties = analysis.uncertainties;
  const { surfaced, submerged } = analysis;
  const told = new Map<Figure, Told>();
  const tell = (figure: Figure, value: number, uncertainty: { readonly sigma: number } | undefined | null) => {
    if (uncertainty) told.set(figure, { value, sigma: uncertainty.sigma });
  };
  if (surfaced.status === 'afloat') {
    const { draft, trim, heel } = surfaced.attitude;
    tell('draft', draft, uncertainties?.conditions.surfaced?.draft);
    tell('trim', trim, uncertainties?.conditions.surfaced?.trim);
    tell('heel', heel, uncertainties?.conditions.surfaced?.heel);
    tell('gm', surfaced.gm, uncertainties?.conditions.surfaced?.gm);
  }
  if (submerged.status === 'neutral') {
    tell('fill', submerged.fill, uncertainties?.conditions.submerged?.fill);
    tell('underTrim', submerged.trim, uncertainties?.conditions.submerged?.trim);
    tell('underHeel', submerged.heel, uncertainties?.conditions.submerged?.heel);
    tell('bg', submerged.bg, uncertainties?.conditions.submerged?.bg);
  }
  return told;
}

/** Whether the file can hold the whole boat on two scales. */
export const knowsBench: boolean = (() => {
  const text = `boat: Any
hull:
  length: 300 mm
  compartments:
    - { name: tube, mass: 100 g, round: 40 mm, station: 0 to 300 mm, height: 20 mm }
trials:
  - { condition: bench, scales: [{ station: 75 mm, reads: 50 g ± 1 g }, { station: 225 mm, reads: 50 g ± 1 g }] }
`;
  return !analyse(text).findings.some(({ severity }) => severity === 'error');
})();
