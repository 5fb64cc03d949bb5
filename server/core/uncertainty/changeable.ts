import type { Entry } from '../boat/boat.ts';
import { type BoatSource, entriesIn } from '../boat/source.ts';
import { type Bodies, type BodyCache, pieceSteps } from '../bodies/assemble.ts';
import { compoundSolid } from '../geometry/cut/compound.ts';
import { add, subtract } from '../geometry/form/vector.ts';
import type { Steps } from '../steps/steps.ts';
import { weightOf } from './exchange.ts';
import { type Input, LISTS } from './input.ts';
import { type Changes, sourceWithSteps } from './withInputs.ts';

/**
 * The bodies of a boat with other values of some inputs, in steps. What none of them touches is put together once, however
 * many values are tried; what the bodies carry besides the boat's own entries stays on board.
 */
export function changeableBodies(
  source: BoatSource,
  bodies: Bodies,
  cache: BodyCache,
  inputs: readonly Input[],
): (changes: Changes) => Steps<Bodies> {
  const touched = touchedBy(source, inputs);
  const isTouched = new Set<Entry>(LISTS.flatMap(list => entriesIn<Entry>(touched.source[list])));
  const rest = bodies.displacers.filter(({ entry }) => !isTouched.has(entry));
  const hull = compoundSolid(rest.map(({ body }) => body));
  const before = weightOf(touched.source.boat);
  return function* (changes) {
    const { boat } = yield* sourceWithSteps(touched.source, touched.moved(changes));
    const { displacers, tanks, weights } = yield* pieceSteps(boat, cache);
    const now = weightOf(boat);
    const whole = compoundSolid([hull, ...displacers.map(({ body }) => body)]);
    return {
      density: boat.water.density,
      displacers: [...rest, ...displacers],
      weights: [...bodies.weights.filter(({ entry }) => !isTouched.has(entry)), ...weights],
      tanks: bodies.tanks.map(body => {
        const i = touched.source.boat.tanks.indexOf(body.tank);
        return i < 0 ? body : tanks[i]!;
      }),
      mass: bodies.mass + now.mass - before.mass,
      massMoment: add(bodies.massMoment, subtract(now.moment, before.moment)),
      hull: whole,
      volume: whole.volume,
      volumeMoment: whole.moment,
    };
  };
}

/** A boat of those entries alone that inputs touch, and changes of inputs by their places there. */
function touchedBy(source: BoatSource, inputs: readonly Input[]) {
  const at = inputs.flatMap(({ target }) => (target.on === 'entries' ? target.at : []));
  const indices = (list: (typeof LISTS)[number]) => [
    ...new Set(at.flatMap(place => (place.list === list ? [place.index] : []))),
  ];
  const places = {
    shells: indices('shells'),
    compartments: indices('compartments'),
    tanks: indices('tanks'),
    payload: indices('payload'),
  };
  const shells = places.shells.map(i => source.shells[i]!);
  const compartments = places.compartments.map(i => source.compartments[i]!);
  const tanks = places.tanks.map(i => source.tanks[i]!);
  const payload = places.payload.map(i => source.payload[i]!);
  const boat = {
    ...source.boat,
    shells: entriesIn(shells),
    compartments: entriesIn(compartments),
    tanks: entriesIn(tanks),
    payload: entriesIn(payload),
  };
  const movedTo = new Map(
    inputs.map((input): readonly [Input, Input] => {
      const { target } = input;
      if (target.on === 'water') return [input, input];
      const moved = target.at.map(({ list, index }) => ({ list, index: places[list].indexOf(index) }));
      return [input, { ...input, target: { ...target, at: moved } }];
    }),
  );
  return {
    source: { ...source, boat, shells, compartments, tanks, payload },
    moved: (changes: Changes): Changes => new Map([...changes].map(([input, to]) => [movedTo.get(input)!, to])),
  };
}
