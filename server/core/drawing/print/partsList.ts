import type { FileUnits } from '../../../../schema/units.ts';
import type { Analysis } from '../../analysis/analysis.ts';
import type { Boat, Part } from '../../boat/boat.ts';
import type { Bodies } from '../../bodies/assemble.ts';
import type { Form } from '../../geometry/form/form.ts';
import { inStretches, type Steps } from '../../steps/steps.ts';
import { massText, offsetWords, tapeText, volumeText } from '../../wording/numbers.ts';
import { endsCounted, fromStationZero, heightText, stationTape } from '../../wording/places.ts';
import { htmlElement, type Markup, svgText, together } from '../markup.ts';
import { called } from '../things.ts';
import { heading, htmlSection, prose } from './html.ts';

type Cells = readonly [what: string, mass: string, station: string, athwart: string, height: string, where: string];

const headOf = (units: FileUnits): Cells => [
  'what',
  'mass',
  fromStationZero(units),
  'athwart',
  'height of its middle',
  'where',
];

/** Rows that are set in one step. */
const ROWS_A_STEP = 100;

/**
 * Everything that the boat is made of and carries by the file, in its order, with what it weighs together: not what trials only
 * suppose, nor where they nudge it. Null for an empty file.
 */
export function* partsList(analysis: Analysis): Steps<Markup | null> {
  const { filed, kept, withTrials } = analysis;
  const { boat } = filed;
  const { units } = boat;
  const built = (entry: { readonly name: string; readonly form: Form }, mass: string, where: string): Cells => {
    const { from, to } = kept.cache.shapes.boundsOf(entry.form);
    return [
      called(entry.name),
      mass,
      endsCounted([from[0], to[0]], 'station', units)
        .map(end => tapeText(end, units))
        .join(' to '),
      offsetWords((from[1] + to[1]) / 2, units),
      heightText((from[2] + to[2]) / 2, units),
      where,
    ];
  };
  const groups: readonly (readonly Cells[])[] = [
    boat.shells.map(shell => built(shell, massText(shell.mass, units), 'free-flooding shell')),
    boat.compartments.map(one => built(one, massText(one.mass, units), 'watertight compartment')),
    boat.tanks.map(tank => built(tank, `holds ${volumeText(tank.capacity, units)}`, `${tank.kind} tank`)),
    boat.payload.map(part => rowOf(part, boat)),
  ];
  const rows = groups.flat();
  if (rows.length === 0) return null;
  const drawn: Markup[] = [];
  yield* inStretches(rows.length, ROWS_A_STEP, (from, end) => {
    drawn.push(...rows.slice(from, end).map(cells => tableRow(cells, null)));
  });
  const total = totalOf('all of it, tanks empty', filed.bodies, units);
  // What is expected at the pool goes by the likeliest boat.
  const likeliest = withTrials ? totalOf('likeliest, by the trials', analysis.bodies, units) : total;
  const isOther = likeliest.slice(1).join() !== total.slice(1).join();
  return htmlSection(
    'pieces',
    heading('Parts'),
    htmlElement(
      'table',
      { class: 'list' },
      htmlElement(
        'thead',
        {},
        htmlElement('tr', {}, ...headOf(units).map(words => htmlElement('th', { scope: 'col' }, svgText(words)))),
      ),
      htmlElement('tbody', {}, together(drawn), tableRow(total, 'total'), isOther ? tableRow(likeliest, null) : null),
    ),
  );
}

function totalOf(what: string, { mass, massMoment: [x, y, z] }: Bodies, units: FileUnits): Cells {
  if (mass <= 0) return [what, massText(mass, units), '', '', '', ''];
  return [
    what,
    massText(mass, units),
    stationTape(x / mass, units),
    offsetWords(y / mass, units),
    heightText(z / mass, units),
    'its centre of mass',
  ];
}

const tableRow = (cells: Cells, kind: string | null): Markup =>
  htmlElement('tr', { class: kind }, ...cells.map(words => htmlElement('td', {}, prose(words))));

function rowOf(part: Part, { units }: Boat): Cells {
  const { name, materialWords: material, mass, from, to, centroid, inside, massFrom } = part;
  const [start, end] = endsCounted([from[0], to[0]], 'station', units).map(at => tapeText(at, units));
  return [
    material === null || name.includes(material) ? called(name) : `${called(name)} (${material})`,
    massFrom === 'scale' ? massText(mass, units) : `${massText(mass, units)}, by its form`,
    start === end ? `${start}` : `${start} to ${end}`,
    offsetWords(centroid[1], units),
    heightText(centroid[2], units),
    inside === null ? 'in the water' : `in “${inside}”`,
  ];
}
