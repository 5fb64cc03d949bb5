import type { Describer } from '../../../schema/describe.ts';
import { createNeighbours } from '../arrangement/neighbours.ts';
import type { Water } from '../boat/boat.ts';
import type { OwnCondition } from '../boat/ownCondition.ts';
import { boatSteps } from '../boat/readBoat.ts';
import { sameData } from '../boat/sameData.ts';
import type { BoatSource } from '../boat/source.ts';
import { emptyCache } from '../bodies/assemble.ts';
import { loadingConditionOf } from '../conditions/ownCondition.ts';
import { type Scheme, STANDARD } from '../figures/scheme.ts';
import type { Finding } from '../findings/finding.ts';
import type { MeshLookup } from '../meshFiles/meshFile.ts';
import { finish, type Steps } from '../steps/steps.ts';
import { syntaxSteps } from '../text/reading/syntax.ts';
import { emptyVariations } from '../uncertainty/variations.ts';
import type { Analysis, AsRead } from './analysis.ts';
import { placesIn } from './arranged.ts';
import { type BoatAsRead, conclude } from './conclude.ts';
import type { LoadedScheme, TaughtBefore } from './kept.ts';

/** A text as it was read, before anything of it floats. */
export interface TextRead extends BoatAsRead, AsRead {}

/**
 * Analyses a text. With the previous analysis of the same file, entries, bodies and conditions that a keystroke left as
 * they were are taken from it. `meshes` hands out the mesh files that are loaded; `scheme` says what is figured.
 */
export const analyse = (
  text: string,
  describer: Describer,
  previous?: Analysis,
  meshes: MeshLookup = () => null,
  scheme: Scheme = STANDARD,
): Analysis => conclude(finish(readText(text, describer, previous, meshes, scheme)), previous);

/** The first half of that, in steps. */
export function* readText(
  text: string,
  describer: Describer,
  previous?: Analysis,
  meshes: MeshLookup = () => null,
  scheme: Scheme = STANDARD,
): Steps<TextRead> {
  const syntax = yield* syntaxSteps(text, previous?.syntax);
  const cache = previous?.kept.cache ?? emptyCache();
  const reading = yield* boatSteps(syntax, describer, previous?.kept.entries, { meshes, shapes: cache.shapes });
  const variations = previous?.kept.variations ?? emptyVariations();
  const neighbours = previous?.kept.neighbours ?? createNeighbours(cache.shapes);
  const loaded = loadedBy(scheme, reading.conditions, previous?.kept.loaded);
  const written = [...syntax.findings, ...reading.findings];
  const errors = written.filter(finding => finding.severity === 'error' && !isIn('trials', finding));
  const places = placesIn(syntax, reading, neighbours);
  // Corrections shall hold in every condition of the file; the figures of the others are what they are without one of them.
  const isFaulty = errors.length > 0;
  const isWhole = errors.every(finding => isIn('conditions', finding)) && reading.boat.leftOut.length === 0;
  return {
    syntax,
    file: {
      get findings() {
        return [...written, ...places.found.all()];
      },
      written,
      places,
      isFaulty,
      isWhole,
      wantedFiles: reading.meshNames,
    },
    boat: reading.boat,
    source: reading.source,
    trials: reading.trials,
    scheme: loaded.scheme,
    neighbours,
    parts: { describer, meshes, entries: reading.kept, cache, neighbours, variations, loaded },
  };
}

/** The scheme with the conditions of the file; the same object as before while nothing in them has changed. */
function loadedBy(base: Scheme, conditions: readonly OwnCondition[], before?: LoadedScheme): LoadedScheme {
  if (before?.base === base && sameData(before.conditions, conditions)) return before;
  const others = [...base.others, ...conditions.map(loadingConditionOf)];
  return { base, conditions, scheme: conditions.length > 0 ? { ...base, others } : base };
}

/** Trials are in no figure of the file: a fault in one spoils none. */
const isIn = (section: 'trials' | 'conditions', { place }: Finding): boolean =>
  'path' in place && place.path[0] === section;

/** The same boat in other water: everything that follows from the water is figured anew. */
export function inOtherWater(analysis: Analysis, water: Water): Analysis {
  const { syntax, file, scheme, kept, source: known, learned, boatToTrim } = analysis.settled.all();
  const density = { value: water.density, sigma: null, unit: null };
  const otherWater: Pick<BoatSource, 'water' | 'waterAt'> = { water: { density }, waterAt: ['water', 'other'] };
  const source: BoatSource = { ...known, ...otherWater, boat: { ...known.boat, water } };
  // What the trials say is in the boat already: they were made in their own water.
  const taught: TaughtBefore | null = learned?.verdict
    ? {
        readSoFar: boatToTrim?.readSoFar ?? 'nowhere',
        uncertainties: asked => learned.verdict!.uncertainties(asked, source),
      }
    : null;
  return conclude({ syntax, file, source, trials: [], scheme, parts: kept, ...(taught && { taught }) });
}
