import type { Boat } from '../boat/boat.ts';
import { type FloatingState, fillOf } from '../conditions/float.ts';
import type { Where } from '../conditions/loadingCondition.ts';
import {
  bAboveG,
  gmInHeel,
  gmInTrim,
  heelAngle,
  reserve,
  type StateFigure,
  trimAngle,
  waterAt,
} from '../conditions/readings.ts';
import type { FindingCode } from '../findings/catalogue/catalogue.ts';
import { volumeText } from '../wording/numbers.ts';
import type { Figure } from './figure.ts';
import { FILL, HEEL, HEIGHT, LENGTH, MASS, TRIM } from './kind.ts';
import { atLeast, between, within } from './limit.ts';
import { paintedDraft, paintedTrim } from './offWaterline.ts';

/** Every figure of a boat as it lies, in the order in which they are shown. */
export const FIGURES: readonly Figure[] = [
  {
    id: 'fill',
    where: 'submerged',
    kind: FILL,
    of: floating => (floating.heldDown === null ? fillOf(floating) : null),
    readOff: 'level',
    words: 'neutral fill',
    tellsCondition: true,
    heading: 'Neutral fill',
    beside: (_, { units }, { water }) => `${volumeText(water, units)} of water`,
    // A boat without a tank that happens to hang neutral has none to size.
    aim: ({ tanks }) => (tanks.length > 0 ? 0 : null),
    limit: between('fill'),
    finding: 'neutral-fill',
    isTrimmedTo: true,
    effect: FILL.ways,
  },
  {
    id: 'reserve',
    where: 'submerged',
    kind: MASS,
    of: ({ heldDown }) => heldDown,
    readOff: 'level',
    words: 'reserve to hold down',
    tellsCondition: true,
    heading: 'Planes hold down',
    limit: between('reserve'),
    finding: 'submerged-reserve',
    isTrimmedTo: true,
    effect: ['lighter', 'heavier'],
  },
  {
    id: 'draft',
    where: 'afloat',
    kind: LENGTH,
    of: (floating, { length }) => waterAt(length / 2)(floating),
    readOff: 'rest',
    words: 'draft',
    heading: 'Draft',
    aim: paintedDraft,
    difference: { ways: ['deep', 'high'], none: 'on the painted waterline', from: 'from the painted waterline' },
    limit: within('draft'),
    finding: 'surfaced-draft',
    isTrimmedTo: true,
    effect: ['deeper', 'higher'],
  },
  ...tilts('afloat', 'surfaced-trim', 'surfaced-heel'),
  ...tilts('submerged', 'submerged-trim', 'submerged-heel'),
  {
    id: 'gm',
    where: 'afloat',
    kind: LENGTH,
    of: gmInHeel,
    readOff: 'level',
    words: 'metacentric height',
    tellsCondition: true,
    heading: 'Metacentric height',
    limit: atLeast('gm'),
    finding: 'surfaced-gm',
    holdsRest: true,
    effect: LENGTH.ways,
  },
  {
    id: 'gmLongitudinal',
    where: 'afloat',
    kind: LENGTH,
    of: gmInTrim,
    readOff: 'level',
    words: 'longitudinal metacentric height',
    tellsCondition: true,
    heading: null,
  },
  ...(['draftBow', 'draftStern'] as const).map(
    (id): Figure => ({
      id,
      where: 'afloat',
      kind: LENGTH,
      of: (floating, { length }) => waterAt(id === 'draftBow' ? 0 : length)(floating),
      readOff: 'rest',
      words: id === 'draftBow' ? 'draft at the bow' : 'draft at the stern',
      heading: 'Draft at bow, stern',
    }),
  ),
  {
    id: 'reserveBuoyancy',
    where: 'afloat',
    kind: MASS,
    of: reserve,
    readOff: 'rest',
    words: 'reserve buoyancy',
    noun: 'reserve buoyancy',
    tellsCondition: true,
    heading: 'Reserve buoyancy',
  },
  {
    id: 'bgLeast',
    where: 'submerged',
    kind: HEIGHT,
    of: least(gmInHeel, gmInTrim),
    readOff: 'level',
    words: 'BG',
    tellsCondition: true,
    heading: 'BG, tank water free',
    beside: plumb,
    isForMachines: false,
    limit: atLeast('bg'),
    finding: 'submerged-bg',
    holdsRest: true,
  },
  {
    id: 'bg',
    where: 'submerged',
    kind: HEIGHT,
    of: bAboveG,
    readOff: 'level',
    words: 'BG, tank water locked',
    tellsCondition: true,
    heading: 'BG, tank water locked',
    beside: plumb,
  },
  {
    id: 'bgEffectiveLongitudinal',
    where: 'submerged',
    kind: HEIGHT,
    of: gmInTrim,
    readOff: 'level',
    words: 'BG, trimming',
    tellsCondition: true,
    heading: null,
    effect: HEIGHT.ways,
  },
  {
    id: 'bgEffective',
    where: 'submerged',
    kind: HEIGHT,
    of: gmInHeel,
    readOff: 'level',
    words: 'BG, heeling',
    tellsCondition: true,
    heading: null,
    effect: HEIGHT.ways,
  },
];

/** Trim and heel, which are held against the painted waterline on the surface and against level under it. */
function tilts(where: Where, trim: FindingCode, heel: FindingCode): readonly Figure[] {
  return [
    {
      id: 'trim',
      where,
      kind: TRIM,
      of: trimAngle,
      readOff: 'rest',
      words: 'trim',
      hangsOnRest: true,
      heading: 'Trim',
      ...(where === 'afloat' && { aim: ({ waterline, length }: Boat) => paintedTrim(waterline, length) }),
      limit: within('trim'),
      finding: trim,
      isTrimmedTo: true,
      effect: TRIM.ways,
    },
    {
      id: 'heel',
      where,
      kind: HEEL,
      of: heelAngle,
      readOff: 'rest',
      words: 'heel',
      hangsOnRest: true,
      heading: 'Heel',
      limit: within('heel'),
      finding: heel,
      effect: HEEL.ways,
    },
  ];
}

/** From so much tilt on what is measured along the plumb line is not what the boat's own heights tell. */
const TILTED = Math.PI / 90;

function plumb(_value: number, _boat: Boat, floating: FloatingState): string {
  return Math.hypot(trimAngle(floating)!, heelAngle(floating)!) > TILTED ? 'along the plumb line' : '';
}

/** The smaller of two readings. */
function least(one: StateFigure, other: StateFigure): StateFigure {
  return floating => Math.min(one(floating), other(floating));
}
