import type { Boat } from '../boat/boat.ts';
import { type TransitStep, worstStep } from '../conditions/transit.ts';
import { boundOf, marginOf } from '../figures/limit.ts';
import { TRANSIT_FIGURES, type TransitFigure, transitLimit } from '../figures/transitTable.ts';
import type { Finding } from '../findings/finding.ts';
import { percentText } from '../wording/numbers.ts';
import { tankPlace } from './places.ts';

/** What is out of its limits on the way down and shows at neither end: a boat that is bad at an end is told so there. */
export function judgeTransit(boat: Boat, steps: readonly TransitStep[]): readonly Finding[] {
  const [first, last] = [steps[0], steps.at(-1)];
  if (!first || !last) return [];
  const between = steps.slice(1, -1);
  return TRANSIT_FIGURES.flatMap((figure): readonly Finding[] => {
    const { of, badness, finding, kind } = figure;
    const limit = transitLimit(figure, boat);
    const worst = worstStep(between, step => badness(of(step)));
    const sentence = SENTENCES[figure.id];
    if (!limit || !finding || !worst || !sentence) return [];
    const isKept = (step: TransitStep) => marginOf(limit, of(step)) >= 0;
    if (between.every(isKept) || ![first, last].every(isKept)) return [];
    const shown = kind.show(of(worst), boat.units);
    const bound = kind.size(boundOf(limit, of(worst)).bound, boat.units);
    const message = `On the way down, with the tanks ${percentText(worst.fill)} full, the boat ${sentence(shown, bound)}`;
    return [{ code: finding, severity: 'warning', about: 'transit', message, place: tankPlace(boat) }];
  });
}

const SENTENCES: Readonly<Partial<Record<TransitFigure['id'], (shown: string, bound: string) => string>>> = {
  trim: (shown, bound) => `trims ${shown}, limit on the way ${bound}, though both ends are well.`,
  heel: (shown, bound) => `heels ${shown}, limit on the way ${bound}, though both ends are well.`,
  gm: (shown, bound) =>
    `is tender: metacentric height ${shown}, limit ${bound}, though both ends are well. Weight lower down cures it, and a tank with less free surface.`,
};
