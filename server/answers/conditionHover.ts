import type { Analysis } from '../analysis.ts';
import { offWaterline } from '../findings/trim.ts';
import {
  angleText,
  heelWords,
  lengthText,
  massText,
  percentText,
  tapeStep,
  tapeText,
  trimWords,
} from '../wording/numbers.ts';
import { table } from './markdown.ts';

/** The painted waterline against where the water really stands. */
export function waterlineHover({ boat, surfaced }: Analysis): string | null {
  if (surfaced.status !== 'afloat') return null;
  const { units } = boat;
  const off = offWaterline(boat, surfaced);
  const ends = (up: number | null) => {
    if (up === null) return '';
    const size = lengthText(Math.abs(up), units);
    return Number.parseFloat(size) === 0 ? 'as painted' : `rides ${size} ${up > 0 ? 'high' : 'low'}`;
  };
  return [
    `Surfaced, the boat floats ${trimWords(off.trim)} and ${heelWords(off.heel)}.`,
    table([
      ['', 'Water above the baseline', 'Against the painted line'],
      ['Bow', lengthText(surfaced.draftBow, units), ends(off.bowUp)],
      ['Half length', lengthText(surfaced.attitude.draft, units), ends(off.draft === null ? null : -off.draft)],
      ['Stern', lengthText(surfaced.draftStern, units), ends(off.sternUp)],
    ]),
    `${massText(surfaced.massPerImmersion * tapeStep(units), units)} sink her by ${tapeText(tapeStep(units), units)}; reserve buoyancy ${massText(surfaced.reserveBuoyancy, units)}.`,
  ].join('\n\n');
}

/** Every limit with the figure that it is about. */
export function limitsHover({ boat, surfaced, submerged }: Analysis): string {
  const { units, limits } = boat;
  const rows: string[][] = [['Limit', 'Surfaced', 'Submerged']];
  const afloat = surfaced.status === 'afloat' ? surfaced : null;
  const neutral = submerged.status === 'neutral' ? submerged : null;
  const off = afloat ? offWaterline(boat, afloat) : null;
  const of = (now: string | null, limit: string) => `${now ?? 'not known'} (limit ${limit})`;
  rows.push([
    'Trim',
    of(off && trimWords(off.trim), angleText(limits.surfaced.trim)),
    of(neutral && trimWords(neutral.trim), angleText(limits.submerged.trim)),
  ]);
  rows.push([
    'Heel',
    of(off && heelWords(off.heel), angleText(limits.surfaced.heel)),
    of(neutral && heelWords(neutral.heel), angleText(limits.submerged.heel)),
  ]);
  const draft =
    off && off.draft !== null ? `${lengthText(Math.abs(off.draft), units)} ${off.draft > 0 ? 'deep' : 'high'}` : null;
  rows.push(['Draft', of(draft, lengthText(limits.surfaced.draft, units)), '']);
  rows.push([
    'Metacentric height',
    of(afloat && lengthText(afloat.gm, units), `${lengthText(limits.surfaced.gm, units)} at least`),
    '',
  ]);
  const left = neutral && Math.min(neutral.bgEffective, neutral.bgEffectiveLongitudinal);
  rows.push([
    'B above G',
    '',
    of(left === null ? null : lengthText(left, units), `${lengthText(limits.submerged.bg, units)} at least`),
  ]);
  const [least, most] = limits.submerged.fill;
  rows.push([
    'Neutral fill',
    '',
    of(neutral && percentText(neutral.fill), `${percentText(least)} to ${percentText(most)}`),
  ]);
  return table(rows);
}
