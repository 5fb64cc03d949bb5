import type { Analysis } from '../analysis/analysis.ts';
import type { Tank } from '../boat/boat.ts';
import { byCondition, conditionsOf } from '../conditions/loadingCondition.ts';
import type { Reach } from '../corrections/balance/reach.ts';
import { inHand } from '../corrections/balance/sureness.ts';
import type { Correction } from '../corrections/correction.ts';
import { another, chanceOf, keptBy } from '../corrections/kinds/another.ts';
import { reaches } from '../corrections/propose.ts';
import { TRANSIT_FIGURES } from '../figures/transitTable.ts';
import type { Place } from '../findings/finding.ts';
import { scale } from '../geometry/form/vector.ts';
import { positionAt } from '../text/reading/lines.ts';
import { rangeOf } from '../text/reading/rangeOf.ts';
import { conditionsJson, point, withFiledJson } from './conditionJson.ts';
import { editsJson, learnedJson } from './learnedJson.ts';
import { degrees, g, mm } from './machineUnits.ts';
import { trialsJson } from './trialsJson.ts';
import { uncertaintyJson } from './uncertaintyJson.ts';

/**
 * The machine-readable report: lengths mm, areas mm2, volumes mm3, masses g, angles degrees, moments g·mm, density kg/m3,
 * fractions 0..1. A figure that cannot be had is null, with a finding that says why.
 */
export function jsonReport(analysis: Analysis) {
  const { boat, bodies } = analysis;
  const { figures } = analysis.scheme;
  const { surfaced, submerged, ...conditions } = withFiledJson(analysis);
  return {
    boat: boat.name,
    water: { density: boat.water.density },
    hull: { length: mm(boat.length) },
    /** The figures are those of the boat as the trials have it. */
    withTrials: analysis.withTrials,
    mass: g(bodies.mass),
    centroid: bodies.mass > 0 ? point(scale(bodies.massMoment, 1 / bodies.mass)) : null,
    wanted: wantedJson(analysis),
    surfaced,
    submerged,
    /** The builder's own, by their names. */
    conditions,
    tanks: boat.tanks.map(tank => tankJson(analysis, tank)),
    transit: analysis.transit.all().map(step => ({
      fill: step.fill,
      draft: step.draft === null ? null : mm(step.draft),
      ...Object.fromEntries(TRANSIT_FIGURES.map(({ id, kind, of }) => [id, of(step) * kind.factor] as const)),
      afloat: step.afloat,
    })),
    righting: rightingJson(analysis),
    otherEquilibria: analysis.stability.all().otherEquilibria.map(rest => ({
      trim: degrees(rest.trim),
      heel: degrees(rest.heel),
    })),
    reach: reachJson(analysis),
    trials: trialsJson(analysis),
    learned: learnedJson(analysis),
    uncertainty: uncertaintyJson(analysis),
    findings: [...analysis.findings, ...analysis.said.openQuestions].map(finding => ({
      code: finding.code,
      severity: finding.severity,
      message: finding.message,
      path: 'path' in finding.place ? finding.place.path : null,
      range: rangeJson(analysis, finding.place),
    })),
    corrections: analysis.corrections.all().map(correction => ({
      title: correction.title,
      kind: correction.kind,
      condition: correction.condition,
      floatFirst: correction.floatFirst,
      ...surenessJson(analysis, correction),
      edits: editsJson(analysis, correction.changes),
      moves: correction.moves.map(({ part, along, across }) => ({
        name: part.name,
        aft: mm(along),
        starboard: mm(across),
      })),
      entries: correction.entries.map(entry => Object.fromEntries(entry.fields)),
      /** Aboard in one condition of the builder's own only. */
      carried: correction.carried.map(({ condition, entries }) => ({
        condition: condition.id,
        entries: entries.map(entry => Object.fromEntries(entry.fields)),
      })),
      result: conditionsJson(correction.boat, conditionsOf(correction), figures),
    })),
  };
}

/** How likely all limits are kept, what is in hand of each, and what another bit of lead would do to that. */
function surenessJson({ boatToTrim }: Analysis, correction: Correction) {
  if (!boatToTrim) return {};
  const more = another(correction, boatToTrim);
  return {
    chance: chanceOf(correction, boatToTrim),
    inHand: keptBy(correction, boatToTrim).map(kept => ({
      condition: kept.condition.id,
      figure: kept.figure,
      /** 1 in the middle of the limit, 0 at its edge; of a least figure, how far above it. */
      part: inHand(kept),
    })),
    another: more && { lead: g(more.mass), bay: more.bay, chance: more.chance },
  };
}

/** What the boat still lacks for its painted waterline and for the dive; null without a painted waterline. */
const wantedJson = ({ wanted }: Analysis) =>
  wanted && {
    displacement: g(wanted.displacement),
    /** In the dry; negative: too much. */
    mass: g(wanted.mass),
    centre: wanted.centre && point(wanted.centre),
    highest: wanted.highest === null ? null : mm(wanted.highest),
    tank: {
      water: wanted.tank.water * 1e9,
      fill: wanted.tank.fill,
      capacity: wanted.tank.capacity * 1e9,
      centre: wanted.tank.centre && point(wanted.tank.centre),
    },
  };

function tankJson({ tankSizes, blows }: Analysis, tank: Tank) {
  const blow = blows.find(candidate => candidate.tank === tank);
  const sizing = tankSizes.find(candidate => candidate.body.tank === tank);
  const length = sizing?.recommendedLength ?? null;
  const pressure = sizing?.gaugePressure ?? null;
  return {
    name: tank.name,
    capacity: tank.capacity * 1e9,
    fillNeutral: sizing?.fillNeutral ?? null,
    recommendedCapacity: sizing ? sizing.recommendedCapacity * 1e9 : null,
    recommendedLength: length === null ? null : mm(length),
    /** Pa. */
    gaugePressure: pressure !== null && Number.isFinite(pressure) ? pressure : null,
    /** At the depth that it is blown from: Pa over the air outside, gas as it would be at the surface. */
    blow: blow ? { gaugePressure: blow.gauge, gas: blow.free * 1e9, blows: blow.times } : null,
  };
}

/** What the bays can still give, as polygons of added mass (g) and moment aft (g·mm), net of buoyancy. */
function reachJson({ boatToTrim }: Analysis) {
  if (!boatToTrim || boatToTrim.boat.bays.length === 0) return null;
  const of = (reach: Reach | null) =>
    reach && {
      polygon: reach.polygon.map(([mass, moment]) => ({ mass: g(mass), moment: moment * 1e6 })),
      needed: { mass: g(reach.needed[0]), moment: reach.needed[1] * 1e6 },
      isInside: reach.isInside,
      margin: reach.margin,
    };
  return Object.fromEntries(Object.entries(reaches(boatToTrim)).map(([id, reach]) => [id, of(reach)]));
}

/** Righting levers over all heels, free to trim, from port to starboard; null where the boat comes to no rest. */
const rightingJson = ({ conditions }: Analysis) =>
  byCondition(conditions, ({ levers }) => {
    if (!levers) return null;
    const { points, range } = levers.all();
    return {
      points: points.map(({ heel, trim, lever }) => ({ heel: degrees(heel), trim: degrees(trim), lever: mm(lever) })),
      range: range && { port: degrees(range[0]), starboard: degrees(range[1]) },
    };
  });

/** Lines and characters count from 0, as in the language server protocol. */
function rangeJson({ syntax }: Analysis, place: Place) {
  const [start, end] = rangeOf(syntax, place);
  return { start: positionAt(syntax.lineStarts, start), end: positionAt(syntax.lineStarts, end) };
}
