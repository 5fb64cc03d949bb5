import type { Boat } from '../boat/boat.ts';
import type { Finding } from '../findings/finding.ts';
import type { Worth } from '../trials/nextReading.ts';
import type { NextStep, ReadingWay } from '../trials/readables.ts';
import { stationTape } from '../wording/places.ts';
import { conditionPlace } from './places.ts';
import type { Standing } from './standings.ts';

type WithBoat = Extract<NextStep, { readonly kind: 'boat' }>;

/** What to read of the whole boat next, and what that would leave of a figure's uncertainty. */
export function readNext(
  { figured, uncertainty, sigma }: Standing,
  figureName: string,
  { what, left }: Worth<NextStep> & { readonly what: WithBoat },
  boat: Boat,
): Finding {
  const { way, stations } = what;
  const { title, how } = WORDS[way];
  const [fore, aft] = stations.map(station => stationTape(station, boat.units)) as [string, string];
  return {
    code: 'weigh-next',
    severity: 'information',
    about: 'uncertainty',
    message: `${title}: ${figureName} ± ${sigma(uncertainty.sigma)} would become ± ${sigma(uncertainty.sigma * left)}. ${how(fore, aft, boat)}`,
    place: conditionPlace(boat, figured.condition),
  };
}

interface Words {
  readonly title: string;
  readonly how: (fore: string, aft: string, boat: Boat) => string;
}

const LIFT = 'Lift a heavy boat with two, the batteries out.';
const MAINS = 'Keep mains leads away from the water.';

const WORDS: Readonly<Record<ReadingWay, Words>> = {
  scale: {
    title: 'Weigh the whole boat',
    how: () => `Drained and dry; write it as a trial with “condition: bench” and “scales:”. ${LIFT}`,
  },
  'two scales': {
    title: 'Weigh the boat on two scales',
    how: (fore, aft) =>
      `Drained and dry, keel level on an edge across each scale, such as at ${fore} and ${aft}; write it as a trial with “condition: bench” and “scales:”. ${LIFT}`,
  },
  'knife edge': {
    title: 'Balance the boat on a knife edge',
    how: () => `Drained and dry; write it as a trial with “condition: bench” and “balance:”. ${LIFT}`,
  },
  hung: {
    title: 'Hang the flooded boat under water on two spring balances',
    how: (fore, aft, { tanks }) =>
      `Keel level${tanks.length > 0 ? ', tanks full' : ''}, such as at ${fore} and ${aft}; write it as a trial with “condition: hung” and “hooks:”. ${LIFT} ${MAINS}`,
  },
  afloat: {
    title: 'Float the boat and read the water near both ends',
    how: (fore, aft) => `Such as at ${fore} and ${aft}; write it as a trial with “condition: surfaced”. ${MAINS}`,
  },
  submerged: {
    title: 'Let the boat hang neutral under water and read its trim, heel and fill',
    how: () => `On a line, in shallow clear water; write it as a trial with “condition: submerged”. ${MAINS}`,
  },
};
