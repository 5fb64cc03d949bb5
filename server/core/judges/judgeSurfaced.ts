import type { Boat } from '../boat/boat.ts';
import { asksNothing, type LoadingCondition, SURFACED } from '../conditions/loadingCondition.ts';
import type { Surfaced, SurfacedAfloat } from '../conditions/surfaced.ts';
import { allowedIn } from '../figures/allowed.ts';
import type { Figure } from '../figures/figure.ts';
import { boundText, figuredIn, mainText } from '../figures/figured.ts';
import { offWaterline } from '../figures/offWaterline.ts';
import { FIGURES } from '../figures/table.ts';
import type { FindingCode } from '../findings/catalogue/catalogue.ts';
import type { Finding } from '../findings/finding.ts';
import { angleText, heelWords, lengthText, massText } from '../wording/numbers.ts';
import { outOfLimits, type Sentences } from './judgeLimits.ts';
import { conditionPlace } from './places.ts';

/** What the floating boat does outside its limits, or that it does not float. */
export function judgeSurfaced(
  boat: Boat,
  surfaced: Surfaced,
  condition: LoadingCondition = SURFACED,
  figures: readonly Figure[] = FIGURES,
): readonly Finding[] {
  const { units } = boat;
  const said = (code: FindingCode, message: string): readonly Finding[] => [
    {
      code,
      // Where nothing is asked there is nothing to mend.
      severity: asksNothing(condition, boat) ? 'information' : 'error',
      about: { condition: condition.id },
      message,
      place: conditionPlace(boat, condition, false),
    },
  ];
  const isOwn = condition !== SURFACED;
  const there = isOwn ? `${condition.title},` : 'On the surface';
  switch (surfaced.status) {
    case 'empty':
      return [];
    case 'sinks':
      return said(
        'sinks',
        `${there} the boat sinks: it weighs ${massText(surfaced.excess, units)} more than all the water it can push aside. Take that much out, or add foam or a larger compartment.`,
      );
    case 'overturns':
      return said(
        'overturns',
        `${there} the boat does not stay upright: let go, it ${rollsTo(surfaced)}. Upright its ${uprightWords(surfaced.gmUpright, boat)}. Put weight lower or buoyancy higher.`,
      );
    case 'unsettled':
      return said(
        'unsettled',
        `${isOwn ? `${there} no attitude was found in which the boat rests` : 'No attitude was found in which the boat rests on the surface'}: ${lengthText(surfaced.lever, units)} stay between its centres of mass and buoyancy. Check sizes and masses for a slip; until then there are no ${isOwn ? 'figures of this condition' : 'surfaced figures'}.`,
      );
    case 'afloat':
      return Math.abs(surfaced.attitude.heel) > LIES_OVER
        ? said('surfaced-lies-over', lyingOver(boat, surfaced, condition))
        : outOfLimits(boat, { condition, where: 'afloat', state: surfaced }, figures, sentencesFor(boat, surfaced)).map(
            ({ code, message }): Finding => ({
              code,
              severity: 'warning',
              about: { condition: condition.id },
              message,
              place: conditionPlace(boat, condition),
            }),
          );
  }
}

/** Heel past which draft and trim against the painted waterline mean nothing, rad. */
const LIES_OVER = Math.PI / 6;

function lyingOver(boat: Boat, surfaced: SurfacedAfloat, condition: LoadingCondition): string {
  const all = figuredIn(boat, { condition, where: 'afloat', state: surfaced }, FIGURES);
  const bound = (id: string) =>
    all
      .filter(({ figure }) => figure.id === id)
      .map(boundText)
      .join('');
  const [most, least] = [bound('heel'), bound('gm')];
  const limit = most === '' ? '' : `, limit ${most}`;
  const until = least === '' ? ', brings it upright' : `, until its metacentric height is ${least} or more`;
  return `${condition.title}, the boat lies over ${heelWords(surfaced.attitude.heel)}${limit}: upright it is not stable, or its weight is far off the centreline. Weight lower down, and on the centreline${until}.`;
}

const sentencesFor = (boat: Boat, surfaced: SurfacedAfloat): Sentences => ({
  draft: ({ figured, shown, bound }) => {
    const off = figured.off ?? 0;
    const grams = massText(Math.abs(off) * surfaced.massPerImmersion, boat.units);
    const cure = off > 0 ? `about ${grams} too heavy` : `about ${grams} too light`;
    return `${figured.condition.title}, the boat floats ${shown} at half length, ${cure}: draft ${mainText(figured)}, limit ${bound} from the painted waterline.`;
  },
  trim: ({ figured: { condition, off }, shown, bound }) => {
    // Of a boat that is not asked to be on its painted waterline the ends are not held against that.
    const isOnLine = Number.isFinite(allowedIn('draft', condition, boat).most);
    const { bowUp, sternUp } = isOnLine ? offWaterline(boat, surfaced) : { bowUp: null, sternUp: null };
    return `${condition.title}, ${endWords(off ?? 0, bowUp, sternUp, boat)}: trim ${shown}, limit ${bound}.`;
  },
  heel: ({ figured: { condition, value }, shown, bound }) =>
    `${condition.title}, the boat lists to ${value > 0 ? 'starboard' : 'port'}: heel ${shown}, limit ${bound}.`,
  gm: ({ figured: { condition }, shown, bound }) => {
    const loss =
      surfaced.freeSurfaceLoss > 0
        ? ` after ${lengthText(surfaced.freeSurfaceLoss, boat.units)} for the free surface in the tank`
        : '';
    return `${condition.title}, the boat is tender: metacentric height ${shown}${loss}, limit ${bound}. Weight lower down cures it.`;
  },
});

/** Ends that are off alike to a tenth of a millimetre: the bow is named. */
const SAME_HEIGHT = 1e-4;

/** The end that is off the most, in the words of somebody looking at the painted line. */
function endWords(trim: number, bowUp: number | null, sternUp: number | null, boat: Boat): string {
  if (bowUp === null || sternUp === null)
    return `the boat floats ${trim > 0 ? 'down by the stern' : 'down by the bow'}`;
  const [end, up] = Math.abs(bowUp) > Math.abs(sternUp) - SAME_HEIGHT ? ['bow', bowUp] : ['stern', sternUp];
  return `the ${end} rides ${lengthText(Math.abs(up), boat.units)} ${up > 0 ? 'high' : 'low'}`;
}

/** Why it does not stay: G over M, in words instead of a negative height; else it pitches over. */
const uprightWords = (gm: number, { units }: Boat): string =>
  gm < 0
    ? `centre of mass lies ${lengthText(-gm, units)} above its metacentre`
    : `metacentric height is only ${lengthText(gm, units)}`;

function rollsTo({ trim, heel }: { readonly trim: number; readonly heel: number }): string {
  const over = Math.abs(heel);
  const side = heel > 0 ? 'starboard' : 'port';
  if (over > (135 / 180) * Math.PI) return 'rolls over and floats keel up';
  if (over > (30 / 180) * Math.PI) return `lies over to ${side} by ${angleText(over)}`;
  return `stands on its ${trim > 0 ? 'stern' : 'bow'} at ${angleText(Math.abs(trim))}`;
}
