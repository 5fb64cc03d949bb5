import type { Boat } from '../boat/boat.ts';
import type { InCondition } from '../conditions/loadingCondition.ts';
import type { Vec3 } from '../geometry/form/vector.ts';
import { massText, momentText, offsetWords, tapeStep, tapeText } from '../wording/numbers.ts';
import { heightText, stationText } from '../wording/places.ts';
import type { Row } from './rows.ts';

/** Something to know of a floated boat that is neither held against a limit nor given an uncertainty. */
export interface ConditionFact extends Row {
  /** The heading of the figure that it stands before; else it stands last. */
  readonly before?: string;
}

/** What there is to know besides the figures. */
export function factsOf({ state }: InCondition, boat: Boat): readonly ConditionFact[] {
  const { units } = boat;
  if (state.status === 'afloat') {
    const step = tapeStep(units);
    const before = 'Reserve buoyancy';
    return [
      { name: 'Displacement', value: massText(state.displacement, units), before },
      { name: 'Centre of buoyancy', value: pointWords(state.centreOfBuoyancy, boat), before },
      {
        name: `Weight to sink it ${tapeText(step, units)}`,
        value: massText(state.massPerImmersion * step, units),
        before,
      },
      { name: 'Moment to trim 1°', value: momentText(state.momentToTrimOneDegree, units), before },
    ];
  }
  if (state.status !== 'neutral') return [];
  return [
    { name: 'Stays level', value: state.stable ? 'yes' : 'no' },
    {
      name: 'Moment to trim 1°',
      value: state.stable ? momentText(state.momentToTrimOneDegree, units) : 'nothing holds it',
    },
    { name: 'Centre of buoyancy', value: pointWords(state.centreOfBuoyancy, boat) },
    { name: 'Centre of mass', value: pointWords(state.centreOfMass, boat) },
  ];
}

export const pointWords = (point: Vec3, boat: Boat): string =>
  `station ${stationText(point[0], boat.units)}, ${offsetWords(point[1], boat.units)}, height ${heightText(point[2], boat.units)}`;
