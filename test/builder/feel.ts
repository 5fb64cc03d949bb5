import type { Boat, Part } from '../../server/core/boat/boat.ts';
import type { Vec3 } from '../../server/core/geometry/form/vector.ts';
import type { Seeded } from '../helpers/seeded.ts';
import type { FamilyBoat } from './family.ts';
import { type Figure, type Floated, type Floater, figureOf, isInTrim, missesOf } from './figures.ts';
import { DENSITY, pointPiece } from './reshape.ts';
import type { Truth } from './truth.ts';

/*
 * A builder by feel, to see the tool beside it (rough, no source): looks with perfect eyes, has lead and foam in any amount,
 * and at every try mends what is worst of draft, trim and heel, by a rule of three from what the last such piece did.
 */

/** Weight amidships, from the stern to the bow, from port to starboard. */
const HANDLES = ['weight', 'moment', 'list'] as const;
type Handle = (typeof HANDLES)[number];
type Amounts = Readonly<Record<Handle, number>>;

const ANSWERS: Readonly<Record<Handle, readonly Figure[]>> = {
  weight: ['draft'],
  moment: ['trim', 'underTrim'],
  list: ['heel', 'underHeel'],
};

/** An old hand guesses the first piece to within about this factor, as the logarithm's standard deviation. */
const GUESS = 0.5;

/** The try at which the boat is in trim, from 1; null when it never is. */
export function workByFeel(
  { plan }: FamilyBoat,
  { boat }: Truth,
  { floater, random, mostTries }: { readonly floater: Floater; readonly random: Seeded; readonly mostTries: number },
): number | null {
  const at = (amounts: Amounts): Boat => ({ ...boat, payload: [...boat.payload, ...piecesFor(amounts, plan, boat)] });
  const none: Amounts = { weight: 0, moment: 0, list: 0 };
  let amounts = none;
  let shown = floater(boat);
  /** What one kilogramme did to a figure, in its limits, when it was laid last. */
  const answers = new Map<Figure, number>();
  const probe = (plan.mass * 1e-3) / 200;
  for (let attempt = 1; attempt <= mostTries; attempt++) {
    const misses = missesOf(shown, boat);
    const [handle, figure] = HANDLES.flatMap(each => ANSWERS[each].map(of => [each, of] as const)).sort(
      (a, b) => Math.abs(outBy(misses, b[1])) - Math.abs(outBy(misses, a[1])),
    )[0]!;
    const answered = (to: Floated, by: number): number =>
      figureOf(to, figure) === null ? Number.NaN : (outBy(missesOf(to, boat), figure) - outBy(misses, figure)) / by;
    const guess = () =>
      answered(floater(at({ ...amounts, [handle]: amounts[handle] + probe })), probe) *
      Math.exp(GUESS * random.normal());
    const answer = answers.get(figure) ?? guess();
    if (!(Math.abs(answer) > 0)) return null;
    const by = bounded(-outBy(misses, figure) / answer, plan.mass * 1e-3 * MOST);
    amounts = { ...amounts, [handle]: amounts[handle] + by };
    shown = floater(at(amounts));
    answers.set(figure, answered(shown, by));
    if (isInTrim(missesOf(shown, boat))) return attempt;
  }
  return null;
}

const outBy = (misses: ReturnType<typeof missesOf>, figure: Figure): number =>
  misses.find(miss => miss.figure === figure)?.by ?? 0;

/** Nobody lays more than this share of the boat at one place on a feeling. */
const MOST = 0.03;

const bounded = (amount: number, most: number): number => Math.min(most, Math.max(-most, amount));

function piecesFor({ weight, moment, list }: Amounts, { length, radius }: FamilyBoat['plan'], boat: Boat): Part[] {
  const place = (station: number, offset: number): readonly [number, number] => [
    station * length * 1e-3,
    offset * radius * 1e-3,
  ];
  const pieces = [
    [weight / 2 + moment, place(0.15, 0)],
    [weight / 2 - moment, place(0.82, 0)],
    [list, place(0.5, 0.3)],
    [-list, place(0.5, -0.3)],
  ] as const;
  return pieces.flatMap(([net, [x, y]]) => {
    if (net === 0) return [];
    const material = net > 0 ? 'lead' : 'foam';
    const centre: Vec3 = [x, y, (net > 0 ? 0.55e-3 : 1.3e-3) * radius];
    const mass = net / (1 - boat.water.density / DENSITY[material]);
    return [pointPiece({ material, mass, inside: null }, centre)];
  });
}
