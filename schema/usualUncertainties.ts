/**
 * The uncertainty of a figure that is written without a tolerance, by how it came about: one standard uncertainty (GUM, JCGM
 * 100:2008, 4.3). A tolerance in the file goes before these. All but the handbook's are common practice, no source.
 */
export interface UsualUncertainty {
  /** Which figures, for people. */
  readonly what: string;
  /** How much, for people. */
  readonly uncertainty: string;
  readonly why: string;
  /** One standard uncertainty of a figure, SI. */
  readonly of: (value: number) => number;
}

/** At most this share of a size: what is small is measured with something finer. */
const atMost =
  (uncertainty: number, share: number): UsualUncertainty['of'] =>
  value =>
    Math.min(uncertainty, share * Math.abs(value));
const always =
  (uncertainty: number): UsualUncertainty['of'] =>
  () =>
    uncertainty;

export const usualUncertainties = {
  mass: {
    what: 'mass',
    uncertainty: '1 g or 0.5 %, the greater; at most 20 %',
    why: 'A kitchen scale shows whole grams; what weighs less than 5 g was weighed on a finer one.',
    of: value => Math.min(Math.max(0.001, 0.005 * value), 0.2 * value),
  },
  place: {
    what: 'station, offset, height, also of a balance point',
    uncertainty: '2 mm',
    why: 'A tape along a curved hull, and the middle of a thing taken by eye. Of a range it is the uncertainty of its middle.',
    of: always(0.002),
  },
  centreline: {
    what: 'offset that is not given',
    uncertainty: '1 mm',
    why: 'Put on the centreline by eye.',
    of: always(0.001),
  },
  length: {
    what: 'length of a station range',
    uncertainty: '1 mm; at most 5 %',
    why: 'The distance of two marks on one tape.',
    of: atMost(0.001, 0.05),
  },
  size: {
    what: 'diameter, breadth, depth; the greatest breadth of a profile, of a table of offsets or of a mesh as a whole',
    uncertainty: '0.5 mm; at most 5 %',
    why: 'A ruler or calipers across; all points of a drawn form grow or shrink together, by the mould or the printer.',
    of: atMost(0.0005, 0.05),
  },
  volume: {
    what: 'volume that was dunked',
    uncertainty: '1 ml or 2 %, the greater; at most 20 %',
    why: 'The marks of a kitchen jug, and bubbles.',
    of: value => Math.min(Math.max(1e-6, 0.02 * value), 0.2 * value),
  },
  inWater: {
    what: 'weight in water',
    uncertainty: '2 g or 1 %, the greater',
    why: 'A spring balance; a bubble left on the thing.',
    of: value => Math.max(0.002, 0.01 * Math.abs(value)),
  },
  capacity: {
    what: 'capacity of a tank by the jug',
    uncertainty: '5 ml or 2 %, the greater; at most 20 %',
    why: 'The marks of a kitchen jug, and drops that stay behind.',
    of: value => Math.min(Math.max(5e-6, 0.02 * value), 0.2 * value),
  },
  density: {
    what: 'density that an entry or the stock gives',
    uncertainty: '2 %',
    why: 'A piece weighed and measured, or a data sheet.',
    of: value => 0.02 * value,
  },
  fill: {
    what: 'fill that is left in a tank; an empty tank is empty',
    uncertainty: '2 % of the tank',
    why: 'Read through the wall.',
    of: value => (value > 0 ? 0.02 : 0),
  },
  temperature: {
    what: 'temperature of the water',
    uncertainty: '1 °C',
    why: 'A household thermometer.',
    of: always(1),
  },
  temperatureNotGiven: {
    what: 'temperature of the water where none is given',
    uncertainty: '5 °C about 20 °C',
    why: 'A pool in summer or a pond in spring.',
    of: always(5),
  },
  salinity: {
    what: 'salinity of the water',
    uncertainty: '1 g/kg; fresh water is fresh',
    why: 'A hydrometer, or the open sea by the name of it.',
    of: value => (value > 0 ? 1 : 0),
  },
  waterDensity: {
    what: 'density of the water as measured',
    uncertainty: '0.5 kg/m³',
    why: 'Half a mark of a hydrometer.',
    of: always(0.5),
  },
} as const satisfies Record<string, UsualUncertainty>;

/** Every value in a range is as likely as any other: its standard uncertainty (GUM 4.3.7). */
export const uncertaintyOfRange = ([least, most]: readonly [number, number]): number =>
  (most - least) / (2 * Math.sqrt(3));
