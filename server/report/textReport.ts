import type { Analysis } from '../analysis.ts';
import type { Boat } from '../boat/boat.ts';
import type { SubmergedNeutral } from '../conditions/submerged.ts';
import type { SurfacedAfloat } from '../conditions/surfaced.ts';
import { judgeSurfaced } from '../findings/judgeSurfaced.ts';
import { offWaterline } from '../findings/trim.ts';
import type { Vec3 } from '../geometry/vector.ts';
import { scale } from '../geometry/vector.ts';
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
import { otherWaterRows } from './otherWaterRows.ts';
import { rangeRows, tankRows, transitRows } from './passageRows.ts';
import { limitRow, type Paint, plainPaint, type Row, section } from './rows.ts';

/** The report that a builder reads: both conditions against their limits, what is wrong, and what would mend it. */
export function textReport(analysis: Analysis, paint: Paint = plainPaint): string {
  const blocks = [
    [paint.heading(boatTitle(analysis.boat)), waterWords(analysis.boat)].join('\n'),
    massWords(analysis),
    section('Surfaced', surfacedRows(analysis), paint),
    section('Submerged', submergedRows(analysis), paint),
    section('On the way down', transitRows(analysis), paint),
    section('Comes back upright', rangeRows(analysis), paint),
    section('Tanks', tankRows(analysis), paint),
    section('In other water', otherWaterRows(analysis), paint),
    findingsBlock(analysis, paint),
    correctionsBlock(analysis, paint),
  ];
  return `${blocks.filter(block => block !== '').join('\n\n')}\n`;
}

export function boatTitle(boat: Boat): string {
  const name = boat.name || 'Boat without a name';
  if (boat.scale === null) return `${name}, ${lengthText(boat.length, boat.units)} long`;
  const metres = boat.length / boat.scale;
  return `${name}, ${lengthText(boat.length, boat.units)} long (1:${Number((1 / boat.scale).toFixed(2))}, full size ${metres.toFixed(1)} m)`;
}

export const waterWords = ({ water }: Boat): string => `Water: ${water.words}, ${water.density.toFixed(1)} kg/m³`;

function massWords({ boat, bodies }: Analysis): string {
  const mass =
    bodies.mass > 0
      ? `Mass without ballast water ${massText(bodies.mass, boat.units)}, centre of mass at ${pointWords(scale(bodies.massMoment, 1 / bodies.mass), boat)}`
      : 'Nothing in the file weighs anything yet.';
  const missing = boat.leftOut.map(name => `“${name}”`).join(', ');
  return missing === '' ? mass : `${mass}\nFigured without ${missing}: see the errors below.`;
}

export function surfacedRows({ boat, surfaced }: Analysis): readonly Row[] {
  switch (surfaced.status) {
    case 'afloat':
      return afloatRows(boat, surfaced);
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

function afloatRows(boat: Boat, surfaced: SurfacedAfloat): readonly Row[] {
  const { units } = boat;
  const limits = boat.limits.surfaced;
  const off = offWaterline(boat, surfaced);
  const length = (metres: number) => lengthText(metres, units);
  const draft = length(surfaced.attitude.draft);
  const step = tapeStep(units);
  return [
    off.draft === null
      ? { name: 'Draft', value: draft }
      : {
          name: 'Draft',
          value: `${draft} (${offWords(off.draft, boat)})`,
          limit: `${length(limits.draft)} from the painted waterline`,
          isKept: Math.abs(off.draft) <= limits.draft,
        },
    limitRow('Trim', finer => trimWords(off.trim, finer), {
      text: angleText(limits.trim),
      isKept: Math.abs(off.trim) <= limits.trim,
    }),
    limitRow('Heel', finer => heelWords(off.heel, finer), {
      text: angleText(limits.heel),
      isKept: Math.abs(off.heel) <= limits.heel,
    }),
    limitRow('Metacentric height', finer => lengthText(surfaced.gm, units, finer), {
      text: `${length(limits.gm)} at least`,
      isKept: surfaced.gm >= limits.gm,
      way: 'under',
    }),
    { name: 'Draft at bow, stern', value: `${length(surfaced.draftBow)}, ${length(surfaced.draftStern)}` },
    { name: 'Displacement', value: massText(surfaced.displacement, units) },
    { name: 'Centre of buoyancy', value: pointWords(surfaced.centreOfBuoyancy, boat) },
    { name: 'Sinks by', value: `${tapeText(step, units)} for ${massText(surfaced.massPerImmersion * step, units)}` },
    { name: 'To trim by 1°', value: momentText(surfaced.momentToTrimOneDegree, units) },
    { name: 'Reserve buoyancy', value: massText(surfaced.reserveBuoyancy, units) },
  ];
}

function offWords(draft: number, { units, limits }: Boat): string {
  const limit = limits.surfaced.draft;
  const show = (finer: number) => lengthText(Math.abs(draft), units, finer);
  const size = Math.abs(draft) <= limit ? show(0) : beyondLimit(show, lengthText(limit, units));
  return Number.parseFloat(size) === 0 ? 'on the painted waterline' : `${size} ${draft > 0 ? 'deep' : 'high'}`;
}

export function submergedRows({ boat, submerged }: Analysis): readonly Row[] {
  switch (submerged.status) {
    case 'neutral':
      return neutralRows(boat, submerged);
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

function neutralRows(boat: Boat, submerged: SubmergedNeutral): readonly Row[] {
  const { units } = boat;
  const limits = boat.limits.submerged;
  const length = (metres: number) => lengthText(metres, units);
  const [least, most] = limits.fill;
  const left = Math.min(submerged.bgEffective, submerged.bgEffectiveLongitudinal);
  const water = volumeText(submerged.ballast / boat.water.density, units);
  return [
    {
      name: 'Neutral fill',
      value: `${fillWords(submerged.fill, limits.fill)} (${water} of water)`,
      limit: `${percentText(least)} to ${percentText(most)}`,
      isKept: submerged.fill >= least && submerged.fill <= most,
    },
    limitRow('Trim', finer => trimWords(submerged.trim, finer), {
      text: angleText(limits.trim),
      isKept: submerged.stable && Math.abs(submerged.trim) <= limits.trim,
    }),
    limitRow('Heel', finer => heelWords(submerged.heel, finer), {
      text: angleText(limits.heel),
      isKept: Math.abs(submerged.heel) <= limits.heel,
    }),
    limitRow('B above G, water moving', finer => heightWords(left, units, finer), {
      text: `${length(limits.bg)} at least`,
      isKept: left >= limits.bg,
      way: 'under',
    }),
    { name: 'B above G, water still', value: heightWords(submerged.bg, units) },
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

function findingsBlock({ findings }: Analysis, paint: Paint): string {
  if (findings.length === 0) return paint.good('Within all limits.');
  const lines = findings.map(({ severity, message }) => {
    const mark = `  ${severity}: `;
    return `${severity === 'error' ? paint.bad(mark) : mark}${message}`;
  });
  return [paint.heading('Findings'), ...lines].join('\n');
}

function correctionsBlock(analysis: Analysis, paint: Paint): string {
  const corrections = analysis.corrections();
  if (corrections.length === 0) return whyNone(analysis);
  const lines = corrections.map((correction, i) => `  ${i + 1}. ${correction.title}`);
  return [paint.heading('Corrections, the best first'), ...lines].join('\n');
}

/** Why nothing is offered for a boat that is out of its surfaced limits. */
function whyNone({ boat, surfaced, isFaulty }: Analysis): string {
  if (surfaced.status !== 'afloat' || judgeSurfaced(boat, surfaced).length === 0) return '';
  if (isFaulty) return 'Corrections are computed once the errors in the file are mended.';
  if (boat.bays.length === 0) return 'For computed corrections, say under “bays:” where lead or foam can still go in.';
  return 'No one or two pieces in the bays bring the boat inside its surfaced limits.';
}
