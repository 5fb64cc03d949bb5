import type { Boat } from '../boat/boat.ts';
import type { Submerged, SubmergedNeutral } from '../conditions/submerged.ts';
import type { FindingCode } from '../findings/catalogue/catalogue.ts';
import type { Finding, Severity } from '../findings/finding.ts';
import { beyondLimit } from '../wording/beyondLimit.ts';
import { angleText, heelWords, lengthText, massText, percentText, trimWords } from '../wording/numbers.ts';
import { tankPlace } from './places.ts';

/** What the submerged boat does outside its limits, or that it cannot hang neutral. */
export function judgeSubmerged(boat: Boat, submerged: Submerged): readonly Finding[] {
  const say = (code: FindingCode, severity: Severity, message: string): Finding => ({
    code,
    severity,
    message,
    place: tankPlace(boat),
  });
  switch (submerged.status) {
    case 'empty':
      return [];
    case 'heavy':
      return [
        say(
          'submerged-heavy',
          'error',
          `Submerged, the boat is ${massText(submerged.excess, boat.units)} too heavy even with its tanks empty: it goes down and stays down. Add that much buoyancy: foam anywhere in the flooded hull.`,
        ),
      ];
    case 'light': {
      const lack = massText(submerged.lack, boat.units);
      const message = submerged.hasTank
        ? `The boat cannot submerge: with its tanks full it is still ${lack} too light. Add ${lack} of weight in water, take foam away, or fit a larger tank.`
        : `Without a ballast tank the boat is ${lack} too light to hang neutral under water.${boat.leftOut.length === 0 ? ' Add the tank under “hull: tanks:”.' : ''}`;
      return [say('submerged-light', submerged.hasTank ? 'error' : 'information', message)];
    }
    case 'unsettled':
      return [
        say(
          'unsettled',
          'error',
          `No attitude was found in which the submerged boat rests: ${lengthText(submerged.lever, boat.units)} stay between its centres of mass and buoyancy. Until that is mended there are no submerged figures.`,
        ),
      ];
    case 'neutral':
      return judgeNeutral(boat, submerged, say);
  }
}

type Say = (code: FindingCode, severity: Severity, message: string) => Finding;

function judgeNeutral(boat: Boat, submerged: SubmergedNeutral, say: Say): readonly Finding[] {
  const { units } = boat;
  const limits = boat.limits.submerged;
  if (submerged.bg <= 0) {
    return [
      say(
        'submerged-overturns',
        'error',
        `Submerged, the boat does not stay upright: its centre of mass lies ${lengthText(-submerged.bg, units)} above its centre of buoyancy. Lead lower and foam higher cure it.`,
      ),
    ];
  }
  if (!submerged.stable) {
    const axis = submerged.bgEffectiveLongitudinal <= submerged.bgEffective ? 'trim' : 'heel';
    const left = axis === 'trim' ? submerged.bgEffectiveLongitudinal : submerged.bgEffective;
    const [runs, cure] =
      axis === 'trim'
        ? ['along', 'a shorter tank, one in cells or with a piston']
        : ['across', 'a narrower tank or one with a piston'];
    const rest = axis === 'trim' ? trimWords(submerged.trim) : heelWords(submerged.heel);
    return [
      say(
        'submerged-unstable',
        'error',
        `Submerged, the boat does not stay level but runs off to ${rest}: its centre of mass hangs ${lengthText(submerged.bg, units)} below its centre of buoyancy, and the water running ${runs} the tank takes ${lengthText(-left, units)} more than that. Lead lower, foam higher, ${cure} cures it.`,
      ),
    ];
  }
  const findings: Finding[] = [];
  if (Math.abs(submerged.trim) > limits.trim) {
    const end = submerged.trim > 0 ? 'bow-light' : 'stern-light';
    const limit = angleText(limits.trim);
    const trim = beyondLimit(finer => trimWords(submerged.trim, finer), limit);
    findings.push(
      say(
        'submerged-trim',
        'warning',
        `Submerged, the boat hangs ${end}: trim ${trim}, limit ${limit}.${levelling(boat, submerged)}`,
      ),
    );
  }
  if (Math.abs(submerged.heel) > limits.heel) {
    const side = submerged.heel > 0 ? 'starboard' : 'port';
    const limit = angleText(limits.heel);
    const heel = beyondLimit(finer => heelWords(submerged.heel, finer), limit);
    findings.push(
      say('submerged-heel', 'warning', `Submerged, the boat lists to ${side}: heel ${heel}, limit ${limit}.`),
    );
  }
  const least = Math.min(submerged.bgEffective, submerged.bgEffectiveLongitudinal);
  if (least < limits.bg) {
    const limit = lengthText(limits.bg, units);
    const height = beyondLimit(finer => lengthText(least, units, finer), limit, 'under');
    const why = submerged.bg >= limits.bg ? ` (${lengthText(submerged.bg, units)} before the tank’s free surface)` : '';
    findings.push(
      say(
        'submerged-bg',
        'warning',
        `Submerged, the boat is touchy: its centre of mass hangs ${height} below its centre of buoyancy${why}, limit ${limit}. Lead lower and foam higher stiffen it.`,
      ),
    );
  }
  const needed = stiffnessToTrim(boat, submerged);
  if (findings.length === 0 && submerged.bgEffectiveLongitudinal < needed) {
    const half = massText(UNWEIGHED, units);
    const swing = Math.atan((UNWEIGHED * boat.length) / 2 / (submerged.bgEffectiveLongitudinal * displaced(submerged)));
    findings.push(
      say(
        'submerged-touchy',
        'information',
        `Submerged, ${half} at one end, less than a kitchen scale tells, trims the boat by ${angleText(swing)}: trimming to ${angleText(limits.trim)} by weight is a matter of luck. Lead low and foam high as a pair, or a tank in cells, stiffen it; slide the last piece rather than trim its mass.`,
      ),
    );
  }
  const [low, high] = limits.fill;
  if (boat.tanks.length > 0 && (submerged.fill < low || submerged.fill > high)) {
    const isLow = submerged.fill < low;
    const fill = beyondLimit(
      finer => percentText(submerged.fill, finer),
      percentText(isLow ? low : high),
      isLow ? 'under' : 'over',
    );
    const size = isLow
      ? 'larger than the boat needs, or the boat is too heavy'
      : 'too small, or the boat too light: no margin is left';
    findings.push(
      say(
        'neutral-fill',
        'warning',
        `Submerged, the boat hangs neutral with its tanks ${fill} full (${massText(submerged.ballast, units)} of water), limits ${percentText(low)} to ${percentText(high)}: the tank is ${size}.`,
      ),
    );
  }
  return findings;
}

/** What a kitchen scale leaves open, kg (common practice, no source). */
const UNWEIGHED = 0.0005;

const displaced = (submerged: SubmergedNeutral): number =>
  submerged.momentToTrimOneDegree / (submerged.bgEffectiveLongitudinal * Math.sin(Math.PI / 180));

/**
 * The B above G lengthwise (m) at which what the scale leaves open, at an end of the boat, is half the limit of trim: with
 * less, trimming by weight is luck.
 */
export function stiffnessToTrim(boat: Boat, submerged: SubmergedNeutral): number {
  return (UNWEIGHED * boat.length) / 2 / (displaced(submerged) * Math.tan(boat.limits.submerged.trim / 2));
}

/** How touchy it is: the weight in water that one degree asks at an end of the hull. */
function levelling(boat: Boat, submerged: SubmergedNeutral): string {
  const arm = boat.length / 2;
  const perDegree = submerged.momentToTrimOneDegree / arm;
  if (!(perDegree > 0)) return '';
  return ` ${massText(perDegree, boat.units)} of weight in water at one end trims it by 1°.`;
}
