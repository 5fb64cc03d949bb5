import { type Path, pathKey } from '../../../schema/path.ts';
import { usualUncertainties } from '../../../schema/usualUncertainties.ts';
import type { WaterEntry } from '../../../schema/water.ts';
import { SEA_SALINITY, USUAL_TEMPERATURE } from '../boat/readWater.ts';
import type { BoatSource } from '../boat/source.ts';
import { WATER_RANGE } from '../boat/waterDensity.ts';
import { plain } from './edits.ts';
import type { Input } from './input.ts';

/** What is uncertain of the water: its density where it was measured, else its temperature and its salt. */
export function waterInputs({ water, waterAt = ['water'] }: BoatSource): readonly Input[] {
  if (water?.density) {
    const { value, sigma } = water.density;
    const known = { value, sigma: sigma ?? usualUncertainties.waterDensity.of(value) };
    const edit = (entry: WaterEntry, by: number) => ({ ...entry, density: plain(value + by) });
    return [waterInput(waterAt, 'density', { ...known, origin: sigma === null ? 'measured' : 'written' }, edit)];
  }
  return [temperatureInput(water, waterAt), salinityInput(water, waterAt)];
}

function temperatureInput(water: WaterEntry | null, at: Path): Input {
  const given = water?.temperature;
  const value = given?.value ?? USUAL_TEMPERATURE;
  const usual = given ? usualUncertainties.temperature : usualUncertainties.temperatureNotGiven;
  const known = {
    value,
    sigma: given?.sigma ?? usual.of(value),
    origin: !given ? 'assumed' : given.sigma === null ? 'measured' : 'written',
  } as const;
  return waterInput(at, 'temperature', known, (entry, by) => ({
    ...entry,
    temperature: plain(clamp(value + by, WATER_RANGE.temperature)),
  }));
}

function salinityInput(water: WaterEntry | null, at: Path): Input {
  const given = water?.salinity;
  const value = given?.value ?? (water?.kind === 'sea' ? SEA_SALINITY : 0);
  const known = {
    value,
    sigma: given?.sigma ?? usualUncertainties.salinity.of(value),
    origin: !given ? 'assumed' : given.sigma === null ? 'measured' : 'written',
  } as const;
  return waterInput(at, 'salinity', known, (entry, by) => ({
    ...entry,
    salinity: plain(clamp(value + by, WATER_RANGE.salinity)),
  }));
}

function waterInput(
  entry: Path,
  key: 'density' | 'temperature' | 'salinity',
  known: Pick<Input, 'value' | 'sigma' | 'origin'>,
  edit: (water: WaterEntry, by: number) => WaterEntry,
): Input {
  const path = [...entry, key];
  return {
    ...known,
    id: pathKey(path),
    path,
    places: [path],
    entry,
    entryName: 'water',
    noun: key,
    words: `${key} of the water`,
    dimension: key,
    target: { on: 'water', edit },
  };
}

/** The equation of state reaches no further. */
const clamp = (value: number, [least, most]: readonly [number, number]): number =>
  Math.min(Math.max(value, least), most);
