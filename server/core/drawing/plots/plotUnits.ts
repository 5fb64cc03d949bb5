import { type FileUnits, fromSi, unitNamed } from '../../../../schema/units.ts';

/** A unit for an axis: its name, and figures in it from SI. */
export interface PlotUnit {
  readonly name: string;
  readonly of: (si: number) => number;
}

/** Lengths of a few per cent of a boat: millimetres beside metres, inches beside feet. */
export function lengthPlotUnit({ length }: FileUnits): PlotUnit {
  const name = length === 'm' ? 'mm' : length === 'ft' ? 'in' : length;
  const unit = unitNamed(name, 'length')!;
  return { name, of: si => fromSi(si, unit) };
}

export const inDegrees: PlotUnit = { name: '°', of: rad => (rad * 180) / Math.PI };
export const percent: PlotUnit = { name: '%', of: part => part * 100 };

/** Grams or ounces, as the boat's pieces are weighed. */
export function massPlotUnit(units: FileUnits): PlotUnit {
  const unit = unitNamed(isImperial(units) ? 'oz' : 'g', 'mass')!;
  return { name: unit.name, of: kilograms => fromSi(kilograms, unit) };
}

/** g·mm or oz·in. */
export function momentPlotUnit(units: FileUnits): PlotUnit {
  const mass = massPlotUnit(units);
  const length = unitNamed(isImperial(units) ? 'in' : 'mm', 'length')!;
  return { name: `${mass.name}·${length.name}`, of: moment => mass.of(fromSi(moment, length)) };
}

const isImperial = ({ length }: FileUnits): boolean => length === 'in' || length === 'ft';
