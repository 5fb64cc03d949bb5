import { assembleBodies, emptyCache } from '../../server/core/bodies/assemble.ts';
import { floatSurfaced } from '../../server/core/conditions/surfaced.ts';
import { dot, type Vec3 } from '../../server/core/geometry/form/vector.ts';
import type { Section } from './check.ts';
import { minimise } from './nelderMead.ts';
import { between, randomFrom } from './random.ts';
import { BOAT_LENGTH, type RandomBoat, randomBoat } from './randomBoats.ts';
import { pressedSolid, pressedWall, waterHeight } from './waterPressure.ts';

const BOATS = 20;
const DEGREE = Math.PI / 180;

interface Lie {
  readonly draft: number;
  readonly trim: number;
  readonly heel: number;
}

/** The attitude of least potential energy of everything, the water around included, over gravity. */
function leastEnergy(boat: RandomBoat): Lie {
  const { density } = boat.boat.water;
  const pressed = [...boat.solids.map(pressedSolid), pressedWall(boat.shell.form, boat.shell.volume)];
  const tanks = boat.tanks.map(({ form, volume }) => ({ form, volume, space: pressedSolid(form) }));
  const mass = boat.masses.reduce((sum, [each]) => sum + each, 0);
  const moment = [0, 1, 2].map(axis => boat.masses.reduce((sum, [each, at]) => sum + each * at[axis]!, 0));
  const ballast = density * tanks.reduce((sum, tank) => sum + tank.volume, 0);
  const energy = ([draft, trim, heel]: readonly number[]): number => {
    const raw: Vec3 = [-Math.tan(trim!), -Math.tan(heel!), 1];
    const size = Math.hypot(...raw);
    const n: Vec3 = [raw[0] / size, raw[1] / size, raw[2] / size];
    const h = dot(n, [BOAT_LENGTH / 2, 0, draft!]);
    const weights = dot(n, moment as unknown as Vec3) - (mass + ballast) * h;
    const water = tanks.reduce((sum, { space, form, volume }) => sum + waterHeight(space, form, volume, n), 0);
    const pushed = pressed.reduce((sum, body) => sum + body.under(n, h).depthSum, 0);
    return weights + density * (water + pushed);
  };
  const [draft, trim, heel] = minimise(energy, [0.07, 0, 0], [0.01, 0.05, 0.05]);
  return { draft: draft!, trim: trim!, heel: heel! };
}

function settled(boat: RandomBoat): Lie {
  const surfaced = floatSurfaced(assembleBodies(boat.boat, emptyCache()), BOAT_LENGTH);
  if (surfaced.status !== 'afloat') throw new Error(`Random boat ${boat.seed} is not afloat: ${surfaced.status}`);
  return surfaced.attitude;
}

/** Draft, trim and heel of random boats against those of least energy. */
export function balanceSection(): Section {
  const random = randomFrom(1);
  const boats = Array.from({ length: BOATS }, (_, i) => randomBoat(Math.floor(between(random, 0, 1e6)), i % 2 === 0));
  const pairs = boats.map(boat => [settled(boat), leastEnergy(boat)] as const);
  const worst = (figure: keyof Lie): number =>
    Math.max(...pairs.map(([ours, least]) => Math.abs(ours[figure] - least[figure])));
  const most = (figure: 'trim' | 'heel'): number => Math.max(...pairs.map(([ours]) => Math.abs(ours[figure]))) / DEGREE;
  const shared = { source: 'energy', known: 'computed', expected: 0 } as const;
  return {
    title: 'Whole boats against least energy',
    about: `${BOATS} random boats, each a free-flooding shell, a dry cylinder, foam, lead, balls and rods, half of them with slack tanks; they lie at up to ${most('trim').toFixed(0)}° of trim and ${most('heel').toFixed(0)}° of heel. Energy from the pressure on the outer surfaces alone, least by a search without derivatives.`,
    checks: [
      {
        ...shared,
        what: `draft, worst of ${BOATS} boats`,
        unit: 'mm',
        within: { absolute: 0.01 },
        got: () => worst('draft') * 1e3,
      },
      {
        ...shared,
        what: `trim, worst of ${BOATS} boats`,
        unit: '°',
        within: { absolute: 0.01 },
        got: () => worst('trim') / DEGREE,
      },
      {
        ...shared,
        what: `heel, worst of ${BOATS} boats`,
        unit: '°',
        within: { absolute: 0.01 },
        got: () => worst('heel') / DEGREE,
      },
    ],
  };
}
