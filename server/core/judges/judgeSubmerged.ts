import type { Boat } from '../boat/boat.ts';
import { asksNothing, type InCondition, type LoadingCondition, SUBMERGED } from '../conditions/loadingCondition.ts';
import type { Submerged, SubmergedNeutral } from '../conditions/submerged.ts';
import { allowedIn } from '../figures/allowed.ts';
import type { Figure } from '../figures/figure.ts';
import { limitWords } from '../figures/figured.ts';
import { boundOf, marginOf } from '../figures/limit.ts';
import { FIGURES } from '../figures/table.ts';
import type { FindingCode } from '../findings/catalogue/catalogue.ts';
import type { Finding, Severity } from '../findings/finding.ts';
import { angleText, heelWords, lengthText, massText, trimWords, volumeText } from '../wording/numbers.ts';
import { type OutOfLimit, outOfLimits, type Sentences } from './judgeLimits.ts';
import { conditionPlace } from './places.ts';

/** What the submerged boat does outside its limits, or that it cannot hang neutral. */
export function judgeSubmerged(
  boat: Boat,
  submerged: Submerged,
  condition: LoadingCondition = SUBMERGED,
  figures: readonly Figure[] = FIGURES,
): readonly Finding[] {
  const say = (code: FindingCode, severity: Severity, message: string): Finding => ({
    code,
    // Where nothing is asked there is nothing to mend.
    severity: asksNothing(condition, boat) ? 'information' : severity,
    about: { condition: condition.id },
    message,
    place: conditionPlace(boat, condition),
  });
  const isOwn = condition.id !== SUBMERGED.id;
  const whose = isOwn ? `${condition.title}, the` : 'The';
  switch (submerged.status) {
    case 'empty':
      return [];
    case 'heavy':
      return [
        say(
          'submerged-heavy',
          'error',
          `${condition.title}, the boat is ${massText(submerged.excess, boat.units)} too heavy even with its tanks empty: it goes down and stays down. Add that much buoyancy: foam anywhere in the flooded hull.`,
        ),
      ];
    case 'light': {
      const lack = massText(submerged.lack, boat.units);
      const message = submerged.hasTank
        ? `${whose} boat cannot submerge: with its tanks full it is still ${lack} too light. Add ${lack} of weight in water, take foam away, or fit a larger tank.`
        : `${isOwn ? `${condition.title}, without` : 'Without'} a ballast tank the boat is ${lack} too light to hang neutral under water.`;
      return [say('submerged-light', submerged.hasTank ? 'error' : 'information', message)];
    }
    case 'unsettled':
      return [
        say(
          'unsettled',
          'error',
          `${isOwn ? `${condition.title}, no attitude was found in which the boat rests` : 'No attitude was found in which the submerged boat rests'}: ${lengthText(submerged.lever, boat.units)} stay between its centres of mass and buoyancy. Until that is put right there are no ${isOwn ? 'figures of this condition' : 'submerged figures'}.`,
        ),
      ];
    case 'neutral':
      return judgeNeutral(boat, { condition, where: 'submerged', state: submerged }, figures, say);
  }
}

type Say = (code: FindingCode, severity: Severity, message: string) => Finding;

function judgeNeutral(
  boat: Boat,
  inCondition: InCondition & { readonly state: SubmergedNeutral },
  figures: readonly Figure[],
  say: Say,
): readonly Finding[] {
  const { state: submerged, condition } = inCondition;
  const fallen = fallenWords(boat, submerged, condition);
  if (fallen) return [say(fallen.code, 'error', fallen.message)];
  const told = outOfLimits(boat, inCondition, figures, sentencesFor(boat, submerged));
  const warned = (those: readonly OutOfLimit[]) => those.map(({ code, message }) => say(code, 'warning', message));
  const ofTank = told.filter(({ figured }) => figured.figure.id === 'fill');
  const ofBoat = told.filter(out => !ofTank.includes(out));
  const touchy = ofBoat.length === 0 ? touchyWords(boat, submerged, condition) : null;
  return [
    ...warned(ofBoat),
    ...(touchy === null ? [] : [say('submerged-touchy', 'information', touchy)]),
    ...warned(ofTank),
  ];
}

/** A boat that does not stay as it is set: G over B, or more taken by the tank water than there is; null for one that does. */
function fallenWords(
  { units }: Boat,
  submerged: SubmergedNeutral,
  { title }: LoadingCondition,
): { readonly code: FindingCode; readonly message: string } | null {
  if (submerged.bg <= 0) {
    return {
      code: 'submerged-overturns',
      message: `${title}, the boat does not stay upright: its centre of mass lies ${lengthText(-submerged.bg, units)} above its centre of buoyancy. Lead lower and foam higher cure it.`,
    };
  }
  if (submerged.stable) return null;
  const axis = submerged.bgEffectiveLongitudinal <= submerged.bgEffective ? 'trim' : 'heel';
  const left = axis === 'trim' ? submerged.bgEffectiveLongitudinal : submerged.bgEffective;
  const [runs, cure] =
    axis === 'trim'
      ? ['along', 'a shorter tank, one in cells or with a piston']
      : ['across', 'a narrower tank or one with a piston'];
  const rest = axis === 'trim' ? trimWords(submerged.trim) : heelWords(submerged.heel);
  return {
    code: 'submerged-unstable',
    message: `${title}, the boat does not stay level but runs off to ${rest}: its centre of mass hangs ${lengthText(submerged.bg, units)} below its centre of buoyancy, and the water running ${runs} the tank takes ${lengthText(-left, units)} more than that. Lead lower, foam higher, ${cure} cures it.`,
  };
}

/** Light or heavy with its tanks full, of a boat that is held under. */
function reserveWords(boat: Boat, { heldDown, fill }: SubmergedNeutral, figured: OutOfLimit['figured']): string {
  const size = massText(Math.abs(heldDown ?? 0), boat.units);
  const full = fill > 0 ? 'with its tanks full the boat' : 'the boat';
  const limits = `limits ${limitWords(figured)}`;
  if (heldDown !== null && heldDown <= 0)
    return `${figured.condition.title}, ${full} is ${size} too heavy and goes down by itself, ${limits}. Take that much weight in water out, or add foam.`;
  const isLight = figured.limit && boundOf(figured.limit, figured.value).way === 'over';
  return `${figured.condition.title}, ${full} is still ${size} light, ${limits}: ${isLight ? 'more than its planes may have to hold down. Add weight, or take foam away' : 'little is left to bring it up when it stops. Add foam, or take weight out'}.`;
}

const sentencesFor = (boat: Boat, submerged: SubmergedNeutral): Sentences => ({
  trim: ({ figured: { condition, value }, shown, bound }) =>
    `${condition.title}, the boat ${submerged.heldDown === null ? 'hangs' : 'lies, held under,'} ${value > 0 ? 'bow-light' : 'stern-light'}: trim ${shown}, limit ${bound}.${levelling(boat, submerged)}`,
  heel: ({ figured: { condition, value }, shown, bound }) =>
    `${condition.title}, the boat lists to ${value > 0 ? 'starboard' : 'port'}: heel ${shown}, limit ${bound}.`,
  bgLeast: ({ figured: { condition, limit }, shown, bound }) => {
    const isForWater = limit && marginOf(limit, submerged.bg) >= 0;
    const why = isForWater ? ` (${lengthText(submerged.bg, boat.units)} before the tank’s free surface)` : '';
    return `${condition.title}, the boat is touchy: its centre of mass hangs ${shown} below its centre of buoyancy${why}, limit ${bound}. Lead lower and foam higher stiffen it.`;
  },
  reserve: ({ figured }) => reserveWords(boat, submerged, figured),
  fill: ({ figured, shown }) => {
    const size =
      figured.limit && boundOf(figured.limit, figured.value).way === 'under'
        ? 'larger than the boat needs, or the boat is too heavy'
        : 'too small, or the boat too light: no margin is left';
    return `${figured.condition.title}, the boat hangs neutral with its tanks ${shown} full (${volumeText(submerged.ballast / boat.water.density, boat.units)} of water), limits ${limitWords(figured)}: the tank is ${size}.`;
  },
});

/** What a kitchen scale leaves open, kg (common practice, no source). */
const UNWEIGHED = 0.0005;

/**
 * The B above G lengthwise (m) at which what the scale leaves open, at an end of the boat, is half the limit of trim: with
 * less, trimming by weight is luck.
 */
export function stiffnessToTrim(boat: Boat, submerged: SubmergedNeutral, condition = SUBMERGED): number {
  const { most } = allowedIn('trim', condition, boat);
  return (UNWEIGHED * boat.length) / 2 / (submerged.displacement * Math.tan(most / 2));
}

/** A boat within its limits that no scale can trim; null for one that is stiff enough. */
function touchyWords(boat: Boat, submerged: SubmergedNeutral, condition: LoadingCondition): string | null {
  // Where no trim is asked there is none to be missed.
  if (!Number.isFinite(allowedIn('trim', condition, boat).most)) return null;
  if (submerged.bgEffectiveLongitudinal >= stiffnessToTrim(boat, submerged, condition)) return null;
  const moment = submerged.bgEffectiveLongitudinal * submerged.displacement;
  const swing = Math.atan((UNWEIGHED * boat.length) / 2 / moment);
  const { most } = allowedIn('trim', condition, boat);
  return `${condition.title}, ${massText(UNWEIGHED, boat.units)} at one end, less than a kitchen scale tells, trims the boat by ${angleText(swing)}, limit ${angleText(most)}. Lead low and foam high as a pair, or a tank in cells, stiffen it; slide the last piece rather than file it.`;
}

/** How touchy it is: the weight in water that one degree asks at an end of the hull. */
function levelling(boat: Boat, submerged: SubmergedNeutral): string {
  const arm = boat.length / 2;
  const perDegree = submerged.momentToTrimOneDegree / arm;
  if (!(perDegree > 0)) return '';
  return ` ${massText(perDegree, boat.units)} of weight in water at one end trims it by 1°.`;
}
