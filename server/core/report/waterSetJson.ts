import type { InWater, SetPiece, WaterSet } from '../corrections/kinds/waterSet.ts';
import { submergedJson, surfacedJson } from './jsonReport.ts';

/** The pieces that change with the water, in the units of the JSON report. */
export const waterSetJson = ({ inBoth, fresh, sea }: WaterSet) => ({
  inBoth: inBoth.map(pieceJson),
  fresh: inWaterJson(fresh),
  sea: inWaterJson(sea),
});

const inWaterJson = ({ water, only, lying }: InWater) => ({
  water: { density: water.density, temperature: water.temperature },
  only: only.map(pieceJson),
  result: { surfaced: surfacedJson(lying), submerged: submergedJson(lying) },
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
