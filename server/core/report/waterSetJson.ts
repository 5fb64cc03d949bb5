import { conditionsOf } from '../conditions/loadingCondition.ts';
import type { InWater, SetPiece, WaterSet } from '../corrections/kinds/waterSet.ts';
import type { Figure } from '../figures/figure.ts';
import { conditionsJson } from './conditionJson.ts';

/** The pieces that change with the water, in the units of the JSON report. */
export const waterSetJson = (set: WaterSet, figures: readonly Figure[]) => ({
  inBoth: set.inBoth.map(pieceJson),
  fresh: inWaterJson(set.fresh, figures),
  sea: inWaterJson(set.sea, figures),
});

const inWaterJson = ({ water, only, lying }: InWater, figures: readonly Figure[]) => ({
  water: { density: water.density, temperature: water.temperature },
  only: only.map(pieceJson),
  result: conditionsJson(lying.boat, conditionsOf(lying), figures),
});

/** Masses g, stations and offset mm. */
const pieceJson = ({ part, made }: SetPiece) => ({
  name: part.name,
  material: part.material,
  isAboard: made === null,
  mass: part.mass * 1e3,
  station: [part.from[0] * 1e3, part.to[0] * 1e3],
  offset: part.centroid[1] * 1e3,
  height: part.centroid[2] * 1e3,
  in: part.inside,
});
