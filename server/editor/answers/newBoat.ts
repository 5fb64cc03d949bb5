import { UNSHOWN } from '../../../schema/quoted.ts';
import type { FileUnits } from '../../../schema/units.ts';
import { doubleQuoted, quoteScalar } from '../../core/text/reading/quoteScalar.ts';
import { massText, tapeText } from '../../core/wording/numbers.ts';

/** How a new boat is measured: in millimetres and grams, or in inches and ounces. */
export type NewUnits = 'metric' | 'inches';

/** The text of a new boat file: a small boat in trim, to be overwritten part by part. */
export function newBoatText(name: string, units: NewUnits = 'metric'): string {
  const text = metricBoat(name);
  return units === 'metric' ? text : inInches(text);
}

/** A boat's name as it stands in the first line of its file, and as the value of `boat:`; without what cannot be seen. */
export function newBoatTitle(name: string): { readonly comment: string; readonly name: string } {
  const seen = name.replace(UNSHOWN, ' ').replace(/ +/g, ' ').trim();
  const called = seen === '' ? 'New boat' : seen;
  const isOdd = /^["'[{]/.test(called);
  return { comment: called.replace(/\s+/g, ' '), name: isOdd ? doubleQuoted(called) : quoteScalar(called, false) };
}

function metricBoat(name: string): string {
  const title = newBoatTitle(name);
  return `# ${title.comment}. Stations run aft from the bow tip, offsets to starboard, heights up from the keel.
# Weigh every part, measure where it lies, and overwrite these figures.
boat: ${title.name}

water: { kind: fresh, temperature: 18 °C }

hull:
  length: 600 mm
  waterline: 64 mm             # painted, above the baseline
  shells:                      # free-flooding: only the wall displaces
    - name: outer hull
      material: fibreglass
      mass: 300 g
      profile: [[0, 0], [40, 22], [120, 36], [200, 40], [420, 40], [520, 26], [600, 4]]
      height: 40 mm
  compartments:                # watertight: displace whole
    - name: dry cylinder
      mass: 260 g
      round: 64 mm
      station: 150 to 450 mm
      height: 41 mm
  tanks:
    - name: main ballast
      in: dry cylinder
      round: 56 mm
      station: 265 to 350 mm
      height: 41 mm
      kind: piston

payload:                       # in the order it goes aboard
  - name: battery
    mass: 180 g
    station: 170 to 240 mm
    height: 24 mm
    in: dry cylinder
  - name: electronics
    mass: 120 g
    station: 390 mm
    height: 40 mm
    in: dry cylinder
  - name: keel lead
    material: lead
    mass: 180 g
    station: 260 to 440 mm
    height: 2 to 7 mm

bays:                          # where lead or foam can still go
  - { name: keel forward, takes: lead, station: 90 to 146 mm, offset: -12 to 12 mm, height: 12 to 18 mm }
  - { name: keel aft, takes: lead, station: 454 to 500 mm, offset: -12 to 12 mm, height: 16 to 22 mm }
  - { name: deck aft, takes: foam, station: 455 to 520 mm, offset: -12 to 12 mm, height: 44 to 56 mm }

stock:                         # on the bench
  lead: { strip: 12 x 6 mm }
  foam: { density: 30 kg/m3, strip: 24 x 12 mm }
`;
}

const INCHES: FileUnits = { length: 'in', mass: 'oz' };

/** The units of a new boat. */
export const UNITS: Readonly<Record<NewUnits, FileUnits>> = { metric: { length: 'mm', mass: 'g' }, inches: INCHES };

/** The column of notes behind a line. */
const NOTES = 31;

/** The same boat by another tape: lengths in sixteenths of an inch, masses in ounces. */
function inInches(text: string): string {
  const inches = (mm: string): string => tapeText(Number(mm) / 1000, INCHES);
  const bare = (mm: string): string => inches(mm).replace(/ in$/, '');
  return (
    text
      .replace(/(?<=profile: ).*/, points => points.replace(/\d+/g, bare))
      .replace(
        /(?<![-\d.])(-?[\d.]+)( to | x )(-?[\d.]+) mm/g,
        (_, a: string, joint: string, b: string) => `${bare(a)}${joint}${inches(b)}`,
      )
      .replace(/(?<![-\d.])(-?[\d.]+) mm/g, (_, mm: string) => inches(mm))
      .replace(/(?<!\d)(\d+) g$/gm, (_, grams: string) => massText(Number(grams) / 1000, INCHES, 1))
      // Sixteenths are coarser than millimetres: this brings it level again.
      .replace('15 3/8 in', '15 1/4 in')
      .replace('temperature: 18 °C', 'temperature: 65 °F')
      .replace(/\n\nwater:/, '\nunits: { length: in, mass: oz }\n\nwater:')
      // Notes behind a line stay below each other.
      .replace(/^(.*\S) +(# .*)$/gm, (_, line: string, note: string) => `${line.padEnd(NOTES)}${note}`)
  );
}
