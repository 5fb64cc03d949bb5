import type { Analysis } from '../analysis/analysis.ts';
import type { Boat } from '../boat/boat.ts';
import { type BuiltIn, byCondition, type InCondition } from '../conditions/loadingCondition.ts';
import type { Submerged } from '../conditions/submerged.ts';
import type { Surfaced } from '../conditions/surfaced.ts';
import type { Figure } from '../figures/figure.ts';
import { figuredIn, figuresOf } from '../figures/figured.ts';
import type { Vec3 } from '../geometry/form/vector.ts';
import { g, mm } from './machineUnits.ts';

/** Figures and facts of one condition; one that cannot be had is null. Under `byFile` the same by the file alone. */
interface ConditionJson {
  readonly [key: string]: number | boolean | ReturnType<typeof point> | ConditionJson | null;
}

type ConditionsJson = Readonly<Record<BuiltIn, ConditionJson> & Record<string, ConditionJson>>;

/** What a boat does in each condition, by its id. */
export const conditionsJson = (
  boat: Boat,
  conditions: readonly InCondition[],
  figures: readonly Figure[],
): ConditionsJson => byCondition(conditions, inCondition => conditionJson(boat, inCondition, figures));

/** The same of all that is known of a boat; beside each condition what the boat does there by the file alone, null without trials. */
export function withFiledJson({ boat, conditions, scheme: { figures }, filed, withTrials }: Analysis): ConditionsJson {
  const byFile = withTrials ? conditionsJson(filed.boat, filed.conditions, figures) : null;
  return byCondition(
    conditions,
    (inCondition): ConditionJson => ({
      ...conditionJson(boat, inCondition, figures),
      byFile: byFile?.[inCondition.condition.id] ?? null,
    }),
  );
}

function conditionJson(boat: Boat, inCondition: InCondition, figures: readonly Figure[]): ConditionJson {
  const all = figuredIn(boat, inCondition, figures);
  return {
    ...(inCondition.where === 'submerged' ? hangingJson(inCondition.state) : afloatJson(inCondition.state)),
    ...Object.fromEntries(
      figuresOf(inCondition.condition, figures)
        .filter(({ isForMachines }) => isForMachines !== false)
        .map(figure => {
          const figured = all.find(one => one.figure === figure);
          return [figure.id, figured ? figured.value * figure.kind.factor : null] as const;
        }),
    ),
  };
}

function afloatJson(state: Surfaced) {
  const afloat = state.status === 'afloat' ? state : null;
  return {
    afloat: state.status === 'empty' || state.status === 'unsettled' ? null : state.status !== 'sinks',
    displacement: afloat && g(afloat.displacement),
    centreOfBuoyancy: afloat && point(afloat.centreOfBuoyancy),
    waterplaneArea: afloat && afloat.waterplaneArea * 1e6,
    gramsPerMm: afloat?.massPerImmersion ?? null,
    momentToTrim1deg: afloat && afloat.momentToTrimOneDegree * 1e6,
  };
}

function hangingJson(state: Submerged) {
  const neutral = state.status === 'neutral' ? state : null;
  return {
    reachable: state.status === 'empty' || state.status === 'unsettled' ? null : neutral !== null,
    stable: neutral?.stable ?? null,
    centreOfBuoyancy: neutral && point(neutral.centreOfBuoyancy),
    centreOfMass: neutral && point(neutral.centreOfMass),
  };
}

export const point = (p: Vec3) => ({ station: mm(p[0]), offset: mm(p[1]), height: mm(p[2]) });
