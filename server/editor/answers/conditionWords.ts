import type { ToTell } from '../../core/analysis/meanwhile.ts';
import { byFileWords } from '../../core/analysis/withTrials.ts';
import { figuredIn, offText, plainText } from '../../core/figures/figured.ts';
import { whyNoRest } from '../../core/judges/whyNoRest.ts';

/** How the boat floats in a condition, in words to choose from; or what keeps it from floating so. */
export type StateWords =
  | {
      readonly title: string;
      readonly rests: true;
      readonly trim: string;
      readonly heel: string;
      readonly water: string;
    }
  | { readonly title: string; readonly rests: false; readonly why: string };

/** In every condition; trim and heel off the painted waterline, `water` the draft at half length or how full the tank is. */
export const stateWords = (analysis: ToTell): readonly StateWords[] =>
  analysis.conditions.map((inCondition): StateWords => {
    const { title } = inCondition.condition;
    const all = figuredIn(analysis.boat, inCondition, analysis.scheme.figures);
    if (all.length === 0) return { title, rests: false, why: whyNoRest(inCondition, analysis.boat.units) };
    const said = (id: string, show: typeof offText) =>
      all
        .filter(({ figure }) => figure.id === id)
        .map(one => {
          const byFile = byFileWords(analysis, one, show);
          return byFile === null ? show(one) : `${show(one)} (${byFile})`;
        })
        .join('');
    const isAfloat = inCondition.where === 'afloat';
    return {
      title,
      rests: true,
      trim: all.every(({ stays }) => stays) ? said('trim', offText) : 'does not stay level',
      heel: said('heel', offText),
      water: isAfloat
        ? `draft ${said('draft', plainText)}`
        : all.some(({ figure }) => figure.id === 'reserve')
          ? `${said('reserve', plainText)} to hold down`
          : `tank ${said('fill', plainText)}`,
    };
  });

/** Said before them where the trials are in them. */
export const trialWords = ({ withTrials }: ToTell): readonly string[] => (withTrials ? ['With the trials'] : []);

export const inFull = (state: StateWords): string =>
  state.rests ? `${state.water}, ${state.trim}, ${state.heel}` : state.why;
