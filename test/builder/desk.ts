import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { chanceOfAll, type Floating, limitsKept } from '../../server/core/corrections/balance/sureness.ts';
import { openIn } from '../../server/core/corrections/search/balances.ts';
import type { Change, EntryText } from '../../server/core/findings/finding.ts';
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import { createBoatService } from '../../server/service/service.ts';
import { FIGURES, type Figure } from './figures.ts';

/*
 * What the builder does at the desk, through the same door as the editor: this file alone knows how a lesson and a
 * correction are offered, and where figures with their uncertainties stand.
 */

const service = createBoatService();

export const analyse = (text: string, previous?: Analysis): Analysis => service.analyse(text, previous);

/** The text after some changes; null where they cannot be written. */
function edited({ syntax }: Analysis, changes: readonly Change[]): string | null {
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

/** The lesson that is offered first: it stands for the best hypothesis. Corrections heed the trials without it. */
export const firstLesson = (analysis: Analysis): Step | null => firstOf(analysis, analysis.offers.all());

/** The correction that is offered first; null where its word is to float the boat as it is before that. */
export function firstCorrection(analysis: Analysis): (Step & { readonly chance: number | null }) | null {
  const corrections = analysis.corrections.all();
  if (corrections[0]?.floatFirst) return null;
  const step = firstOf(analysis, corrections);
  return step && { ...step, chance: chanceOf(corrections[0]!, analysis) };
}

/** How likely all limits are kept with nothing done, as the program has it; null where it has no figures. */
export function chanceAsItIs(analysis: Analysis): number | null {
  const { boatToTrim } = analysis.settled.all();
  return boatToTrim && chanceOf(boatToTrim, analysis);
}

function chanceOf(floating: Floating, analysis: Analysis): number | null {
  const { boatToTrim } = analysis.settled.all();
  const isWell = floating.surfaced.status === 'afloat' && floating.submerged.status === 'neutral';
  return boatToTrim && isWell ? chanceOfAll(limitsKept(floating, 'both', openIn(boatToTrim))) : null;
}

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

/** Each headline figure as the program knows it: the loading condition and its name there. */
const KNOWN_AS: Readonly<Record<Figure, readonly [condition: string, figure: string]>> = {
  draft: ['surfaced', 'draft'],
  trim: ['surfaced', 'trim'],
  heel: ['surfaced', 'heel'],
  gm: ['surfaced', 'gm'],
  fill: ['submerged', 'fill'],
  underTrim: ['submerged', 'trim'],
  underHeel: ['submerged', 'heel'],
  bg: ['submerged', 'bg'],
};

/** The headline figures with their uncertainties, trials heard, as people are told them; those that can be had. */
export function toldBy(analysis: Analysis): ReadonlyMap<Figure, Told> {
  const conditions = analysis.settled.all().uncertainties?.conditions ?? {};
  return new Map(
    FIGURES.flatMap(figure => {
      const [condition, id] = KNOWN_AS[figure];
      const told = conditions[condition]?.[id];
      return told ? [[figure, { value: told.value, sigma: told.sigma }] as const] : [];
    }),
  );
}
