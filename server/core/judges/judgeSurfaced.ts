import type { Boat } from '../boat/boat.ts';
import type { Surfaced, SurfacedAfloat } from '../conditions/surfaced.ts';
import { offWaterline } from '../figures/offWaterline.ts';
import type { FindingCode } from '../findings/catalogue/catalogue.ts';
import type { Finding, Severity } from '../findings/finding.ts';
import { beyondLimit } from '../wording/beyondLimit.ts';
import { angleText, heelWords, lengthText, massText, trimWords } from '../wording/numbers.ts';
import { limitPlace } from './places.ts';

/** What the floating boat does outside its limits, or that it does not float. */
export function judgeSurfaced(boat: Boat, surfaced: Surfaced): readonly Finding[] {
  switch (surfaced.status) {
    case 'empty':
      return [];
    case 'sinks':
      return [
        say(
          'sinks',
          'error',
          boat,
          [],
          `On the surface the boat sinks: it weighs ${massText(surfaced.excess, boat.units)} more than all the water it can push aside. Take that much out, or add foam or a larger compartment.`,
        ),
      ];
    case 'overturns':
      return [
        say(
          'overturns',
          'error',
          boat,
          [],
          `On the surface the boat does not stay upright: let go, it ${rollsTo(surfaced)}. Upright its ${uprightWords(surfaced.gmUpright, boat)}. Put weight lower or buoyancy higher.`,
        ),
      ];
    case 'unsettled':
      return [
        say(
          'unsettled',
          'error',
          boat,
          [],
          `No attitude was found in which the boat rests on the surface: ${lengthText(surfaced.lever, boat.units)} stay between its centres of mass and buoyancy. Check sizes and masses for a slip; until then there are no surfaced figures.`,
        ),
      ];
    case 'afloat':
      return judgeAfloat(boat, surfaced);
  }
}

/** Heel past which draft and trim against the painted waterline mean nothing, rad. */
const LIES_OVER = Math.PI / 6;

function judgeAfloat(boat: Boat, surfaced: SurfacedAfloat): readonly Finding[] {
  const { units } = boat;
  const limits = boat.limits.surfaced;
  const off = offWaterline(boat, surfaced);
  if (Math.abs(off.heel) > LIES_OVER) {
    const gm = lengthText(limits.gm, units);
    return [
      say(
        'surfaced-lies-over',
        'error',
        boat,
        [],
        `Surfaced, the boat lies over ${heelWords(off.heel)}, limit ${angleText(limits.heel)}: upright it is not stable, or its weight is far off the centreline. Weight lower down, and on the centreline, until its metacentric height is ${gm} or more.`,
      ),
    ];
  }
  const findings: Finding[] = [];
  const out = (code: FindingCode, key: string, message: string) =>
    findings.push(say(code, 'warning', boat, [key], message));
  if (off.draft !== null && Math.abs(off.draft) > limits.draft) {
    const way = off.draft > 0 ? 'deep' : 'high';
    const grams = massText(Math.abs(off.draft) * surfaced.massPerImmersion, units);
    const cure = off.draft > 0 ? `about ${grams} too heavy` : `about ${grams} too light`;
    const limit = lengthText(limits.draft, units);
    const size = beyondLimit(finer => lengthText(Math.abs(off.draft ?? 0), units, finer), limit);
    out(
      'surfaced-draft',
      'draft',
      `Surfaced, the boat floats ${size} ${way} at half length, ${cure}: draft ${lengthText(surfaced.attitude.draft, units)}, limit ${limit} from the painted waterline.`,
    );
  }
  if (Math.abs(off.trim) > limits.trim) {
    const rides = endWords(off.trim, off.bowUp, off.sternUp, boat);
    const limit = angleText(limits.trim);
    const trim = beyondLimit(finer => trimWords(off.trim, finer), limit);
    out('surfaced-trim', 'trim', `Surfaced, ${rides}: trim ${trim}, limit ${limit}.`);
  }
  if (Math.abs(off.heel) > limits.heel) {
    const side = off.heel > 0 ? 'starboard' : 'port';
    const limit = angleText(limits.heel);
    const heel = beyondLimit(finer => heelWords(off.heel, finer), limit);
    out('surfaced-heel', 'heel', `Surfaced, the boat lists to ${side}: heel ${heel}, limit ${limit}.`);
  }
  if (surfaced.gm < limits.gm) {
    const loss =
      surfaced.freeSurfaceLoss > 0
        ? ` after ${lengthText(surfaced.freeSurfaceLoss, units)} for the free surface in the tank`
        : '';
    const limit = lengthText(limits.gm, units);
    const gm = beyondLimit(finer => lengthText(surfaced.gm, units, finer), limit, 'under');
    out(
      'surfaced-gm',
      'gm',
      `Surfaced, the boat is tender: metacentric height ${gm}${loss}, limit ${limit}. Weight lower down cures it.`,
    );
  }
  return findings;
}

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

const say = (
  code: FindingCode,
  severity: Severity,
  boat: Boat,
  limit: readonly string[],
  message: string,
): Finding => ({
  code,
  severity,
  message,
  place: limitPlace(boat, limit[0] ?? null),
});
