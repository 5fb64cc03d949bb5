import type { Analysis } from '../analysis/analysis.ts';
import type { Boat } from '../boat/boat.ts';
import type { SubmergedNeutral } from '../conditions/submerged.ts';
import type { SurfacedAfloat } from '../conditions/surfaced.ts';
import type { Vec3 } from '../geometry/form/vector.ts';
import { offWaterline } from '../judges/trim.ts';
import { beyondLimit } from '../wording/beyondLimit.ts';
import {
  angleText,
  heelWords,
  lengthText,
  massText,
  momentText,
  offsetWords,
  percentText,
  tapeStep,
  tapeText,
  trimWords,
  volumeText,
} from '../wording/numbers.ts';
import { plusMinus } from '../wording/withUncertainty.ts';
import { limitRow, type Row } from './rows.ts';
import { type RowUncertainties, rowUncertainties, withUncertainty } from './rowUncertainties.ts';

/** The surfaced figures against their limits, each with its uncertainty. */
export function surfacedRows(analysis: Analysis): readonly Row[] {
  const { boat, surfaced } = analysis;
  switch (surfaced.status) {
    case 'afloat':
      return afloatRows(boat, surfaced, rowUncertainties(analysis));
    case 'sinks':
      return [{ name: 'Sinks', value: `${massText(surfaced.excess, boat.units)} too heavy` }];
    case 'overturns':
      return [{ name: 'Overturns', value: 'does not stay upright on the surface' }];
    case 'unsettled':
      return [{ name: 'Unsettled', value: 'no attitude at rest was found' }];
    case 'empty':
      return [{ name: 'Unknown', value: 'nothing that floats is in the file yet' }];
  }
}

function afloatRows(boat: Boat, surfaced: SurfacedAfloat, uncertainties: RowUncertainties): readonly Row[] {
  const { units } = boat;
  const limits = boat.limits.surfaced;
  const off = offWaterline(boat, surfaced);
  const length = (metres: number) => lengthText(metres, units);
  const ofDraft = uncertainties.ofLimit('surfaced', 'draft');
  const own = uncertainties.all?.surfaced ?? null;
  const draft = withUncertainty(length(surfaced.attitude.draft), own?.draft, length);
  const step = tapeStep(units);
  return [
    off.draft === null
      ? { name: 'Draft', value: draft }
      : {
          name: 'Draft',
          value: `${draft} (${offWords(off.draft, boat)})`,
          limit: `${length(limits.draft)} from the painted waterline`,
          isKept: Math.abs(off.draft) <= limits.draft,
          isOpen: ofDraft?.isOpen ?? false,
        },
    limitRow('Trim', finer => trimWords(off.trim, finer), {
      text: angleText(limits.trim),
      isKept: Math.abs(off.trim) <= limits.trim,
      uncertainty: uncertainties.ofLimit('surfaced', 'trim'),
    }),
    limitRow('Heel', finer => heelWords(off.heel, finer), {
      text: angleText(limits.heel),
      isKept: Math.abs(off.heel) <= limits.heel,
      uncertainty: uncertainties.ofLimit('surfaced', 'heel'),
    }),
    limitRow('Metacentric height', finer => lengthText(surfaced.gm, units, finer), {
      text: `${length(limits.gm)} at least`,
      isKept: surfaced.gm >= limits.gm,
      way: 'under',
      uncertainty: uncertainties.ofLimit('surfaced', 'metacentric height'),
    }),
    {
      name: 'Draft at bow, stern',
      value: `${withUncertainty(length(surfaced.draftBow), own?.draftBow, length)}, ${withUncertainty(length(surfaced.draftStern), own?.draftStern, length)}`,
    },
    { name: 'Displacement', value: massText(surfaced.displacement, units) },
    { name: 'Centre of buoyancy', value: pointWords(surfaced.centreOfBuoyancy, boat) },
    { name: 'Sinks by', value: `${tapeText(step, units)} for ${massText(surfaced.massPerImmersion * step, units)}` },
    { name: 'To trim by 1°', value: momentText(surfaced.momentToTrimOneDegree, units) },
    {
      name: 'Reserve buoyancy',
      value: withUncertainty(massText(surfaced.reserveBuoyancy, units), own?.reserveBuoyancy, sigma =>
        massText(sigma, units),
      ),
    },
  ];
}

function offWords(draft: number, { units, limits }: Boat): string {
  const limit = limits.surfaced.draft;
  const show = (finer: number) => lengthText(Math.abs(draft), units, finer);
  const size = Math.abs(draft) <= limit ? show(0) : beyondLimit(show, lengthText(limit, units));
  return Number.parseFloat(size) === 0 ? 'on the painted waterline' : `${size} ${draft > 0 ? 'deep' : 'high'}`;
}

/** The submerged figures against their limits, each with its uncertainty. */
export function submergedRows(analysis: Analysis): readonly Row[] {
  const { boat, submerged } = analysis;
  switch (submerged.status) {
    case 'neutral':
      return neutralRows(boat, submerged, rowUncertainties(analysis));
    case 'heavy':
      return [{ name: 'Too heavy', value: `by ${massText(submerged.excess, boat.units)}, tanks empty` }];
    case 'light':
      return [
        {
          name: 'Too light',
          value: `by ${massText(submerged.lack, boat.units)}${submerged.hasTank ? ', tanks full' : '; there is no tank'}`,
        },
      ];
    case 'unsettled':
      return [{ name: 'Unsettled', value: 'no attitude at rest was found' }];
    case 'empty':
      return [{ name: 'Unknown', value: 'nothing that floats is in the file yet' }];
  }
}

function neutralRows(boat: Boat, submerged: SubmergedNeutral, uncertainties: RowUncertainties): readonly Row[] {
  const { units } = boat;
  const limits = boat.limits.submerged;
  const length = (metres: number) => lengthText(metres, units);
  const [least, most] = limits.fill;
  const left = Math.min(submerged.bgEffective, submerged.bgEffectiveLongitudinal);
  const ofFill = uncertainties.ofLimit('submerged', 'neutral fill');
  const own = uncertainties.all?.submerged ?? null;
  const fill = fillWords(submerged.fill, limits.fill);
  const water = volumeText(submerged.ballast / boat.water.density, units);
  return [
    {
      name: 'Neutral fill',
      value: `${ofFill ? plusMinus(fill, ofFill.text) : fill} (${water} of water)`,
      limit: `${percentText(least)} to ${percentText(most)}`,
      isKept: submerged.fill >= least && submerged.fill <= most,
      isOpen: ofFill?.isOpen ?? false,
    },
    limitRow('Trim', finer => trimWords(submerged.trim, finer), {
      text: angleText(limits.trim),
      isKept: submerged.stable && Math.abs(submerged.trim) <= limits.trim,
      uncertainty: uncertainties.ofLimit('submerged', 'trim'),
    }),
    limitRow('Heel', finer => heelWords(submerged.heel, finer), {
      text: angleText(limits.heel),
      isKept: Math.abs(submerged.heel) <= limits.heel,
      uncertainty: uncertainties.ofLimit('submerged', 'heel'),
    }),
    limitRow('B above G, water moving', finer => heightWords(left, units, finer), {
      text: `${length(limits.bg)} at least`,
      isKept: left >= limits.bg,
      way: 'under',
      uncertainty: uncertainties.ofLimit('submerged', 'B above G'),
    }),
    { name: 'B above G, water still', value: withUncertainty(heightWords(submerged.bg, units), own?.bg, length) },
    { name: 'Stays level', value: submerged.stable ? 'yes' : 'no' },
    {
      name: 'To trim by 1°',
      value: submerged.stable ? momentText(submerged.momentToTrimOneDegree, units) : 'nothing holds it',
    },
    { name: 'Centre of buoyancy', value: pointWords(submerged.centreOfBuoyancy, boat) },
    { name: 'Centre of mass', value: pointWords(submerged.centreOfMass, boat) },
  ];
}

/** A height that may fall the other way, in words instead of a sign. */
const heightWords = (height: number, units: Boat['units'], finer = 0): string =>
  height < 0 ? `below by ${lengthText(-height, units)}` : lengthText(height, units, finer);

function fillWords(fill: number, [least, most]: readonly [number, number]): string {
  const show = (finer: number) => percentText(fill, finer);
  if (fill < least) return beyondLimit(show, percentText(least), 'under');
  return fill > most ? beyondLimit(show, percentText(most)) : show(0);
}

export const pointWords = (point: Vec3, boat: Boat): string =>
  `station ${lengthText(point[0], boat.units)}, ${offsetWords(point[1], boat.units)}, height ${lengthText(point[2], boat.units)}`;
