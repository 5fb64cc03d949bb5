import type { Analysis } from '../../core/analysis/analysis.ts';
import { type LimitName, type Standing, standingsOf } from '../../core/judges/standings.ts';
import { offWaterline } from '../../core/judges/trim.ts';
import {
  angleText,
  heelWords,
  lengthText,
  massText,
  percentText,
  tapeStep,
  tapeText,
  trimWords,
} from '../../core/wording/numbers.ts';
import { plusMinus } from '../../core/wording/withUncertainty.ts';
import { table } from './markdown.ts';

/** The painted waterline against where the water really stands. */
export function waterlineHover(analysis: Analysis): string | null {
  const { boat, surfaced } = analysis;
  if (surfaced.status !== 'afloat') return null;
  const uncertainties = analysis.uncertainties()?.surfaced ?? null;
  const { units } = boat;
  const off = offWaterline(boat, surfaced);
  const ends = (up: number | null) => {
    if (up === null) return '';
    const size = lengthText(Math.abs(up), units);
    return Number.parseFloat(size) === 0 ? 'as painted' : `rides ${size} ${up > 0 ? 'high' : 'low'}`;
  };
  const water = (figure: 'draftBow' | 'draft' | 'draftStern', height: number) =>
    plusMinus(lengthText(height, units), lengthText(uncertainties?.[figure].sigma ?? 0, units));
  return [
    `Surfaced, the boat floats ${trimWords(off.trim)} and ${heelWords(off.heel)}.`,
    table([
      ['', 'Water above the baseline', 'Against the painted line'],
      ['Bow', water('draftBow', surfaced.draftBow), ends(off.bowUp)],
      ['Half length', water('draft', surfaced.attitude.draft), ends(off.draft === null ? null : -off.draft)],
      ['Stern', water('draftStern', surfaced.draftStern), ends(off.sternUp)],
    ]),
    `${massText(surfaced.massPerImmersion * tapeStep(units), units)} sink her by ${tapeText(tapeStep(units), units)}; reserve buoyancy ${massText(surfaced.reserveBuoyancy, units)}.`,
  ].join('\n\n');
}

/** Every limit with the figure that it is about, its uncertainty, and whether the limit can be told for that. */
export function limitsHover(analysis: Analysis): string {
  const { boat, surfaced, submerged } = analysis;
  const { units, limits } = boat;
  const afloat = surfaced.status === 'afloat' ? surfaced : null;
  const neutral = submerged.status === 'neutral' ? submerged : null;
  const off = afloat ? offWaterline(boat, afloat) : null;
  const standings = standingsOf(boat, surfaced, submerged, analysis.uncertainties());
  const of = (condition: Standing['condition'], name: LimitName, plain: string | null, limit: string) => {
    const standing = standings.find(one => one.condition === condition && one.name === name);
    const open = standing?.verdict === 'cannot-tell' ? ', cannot be told yet' : '';
    return `${standing?.figure ?? plain ?? 'not known'} (limit ${limit}${open})`;
  };
  const draft =
    off && off.draft !== null ? `${lengthText(Math.abs(off.draft), units)} ${off.draft > 0 ? 'deep' : 'high'}` : null;
  const left = neutral && Math.min(neutral.bgEffective, neutral.bgEffectiveLongitudinal);
  const [least, most] = limits.submerged.fill;
  return table([
    ['Limit', 'Surfaced', 'Submerged'],
    [
      'Trim',
      of('surfaced', 'trim', off && trimWords(off.trim), angleText(limits.surfaced.trim)),
      of('submerged', 'trim', neutral && trimWords(neutral.trim), angleText(limits.submerged.trim)),
    ],
    [
      'Heel',
      of('surfaced', 'heel', off && heelWords(off.heel), angleText(limits.surfaced.heel)),
      of('submerged', 'heel', neutral && heelWords(neutral.heel), angleText(limits.submerged.heel)),
    ],
    ['Draft', of('surfaced', 'draft', draft, lengthText(limits.surfaced.draft, units)), ''],
    [
      'Metacentric height',
      of(
        'surfaced',
        'metacentric height',
        afloat && lengthText(afloat.gm, units),
        `${lengthText(limits.surfaced.gm, units)} at least`,
      ),
      '',
    ],
    [
      'B above G',
      '',
      of(
        'submerged',
        'B above G',
        left === null ? null : lengthText(left, units),
        `${lengthText(limits.submerged.bg, units)} at least`,
      ),
    ],
    [
      'Neutral fill',
      '',
      of(
        'submerged',
        'neutral fill',
        neutral && percentText(neutral.fill),
        `${percentText(least)} to ${percentText(most)}`,
      ),
    ],
  ]);
}
