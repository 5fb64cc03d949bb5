import { describe, expect, it } from 'vitest';
import { analysed, fileFindings, marked, mended } from '../helpers/analysed.ts';
import { boatText, textLines } from '../helpers/boatText.ts';
import { PROBE, probe } from '../helpers/probe.ts';

/** One slip put into the probe, and what is said of it. */
interface Slip {
  readonly slip: string;
  /** What of the probe is replaced by what. */
  readonly put: readonly [was: string, is: string];
  readonly code: string;
  /** The characters that are underlined. */
  readonly marks: string;
  readonly says: string;
  /** The same piece of the text once the first mend is applied; none where no mend can be told. */
  readonly becomes?: string;
  /** Entries that are in no figure until it is mended. */
  readonly without?: readonly string[];
}

const BAYS = /^bays:\n(?: .*\n)+/m.exec(PROBE)![0];

const SLIPS: readonly Slip[] = [
  {
    slip: 'a key that nobody knows, near one that is missing',
    put: ['    mass: 800 g', '    mas: 800 g'],
    code: 'unknown-key',
    marks: 'mas',
    says: 'There is no key “mas” in a part. Did you mean “mass”?',
    becomes: '    mass: 800 g',
    without: ['battery'],
  },
  {
    slip: 'a key that nobody knows, near nothing',
    put: [
      '    mass: 800 g',
      `    mass: 800 g
    colour: red`,
    ],
    code: 'unknown-key',
    marks: 'colour',
    says: 'There is no key “colour” in a part. Known here: name, mass, material, density, inWater, in, station, offset, height, sides, count, spacing, weighed, round, axis, box, ball, profile, sections, faired, mesh, volume, forms, balance, holds, fixed, outside, note, fitted, removed, was, written, learned.',
    becomes: `    mass: 800 g
    note: colour red`,
  },
  {
    slip: 'a key of the hull that nobody knows',
    put: ['  tanks:', '  tnaks:'],
    code: 'unknown-key',
    marks: 'tnaks',
    says: 'There is no key “tnaks” in the hull. Did you mean “tanks”?',
    becomes: '  tanks:',
    without: ['tnaks'],
  },
  {
    slip: 'a section that nobody knows',
    put: ['payload:', 'jumble:'],
    code: 'unknown-key',
    marks: 'jumble',
    says: 'There is no key “jumble” in a boat file. Known here: boat, scale, units, water, hull, payload, bays, stock, limits, conditions, trials.',
    without: ['jumble'],
  },
  {
    slip: 'a key deep in an entry that nobody knows',
    put: [
      '    mass: 800 g',
      `    mass: 800 g
    balance: { hight: 31 mm }`,
    ],
    code: 'unknown-key',
    marks: 'hight',
    says: 'There is no key “hight” in “balance” of a part. Did you mean “height”?',
    becomes: `    mass: 800 g
    balance: { height: 31 mm }`,
    without: ['battery'],
  },
  {
    slip: 'a key and its value without a colon, between braces',
    put: ['trim: 0.5°', 'trim 0.5°'],
    code: 'unknown-key',
    marks: 'trim 0.5°',
    says: '“trim 0.5°” has no colon. Write the key, a colon, a space and the value: “trim: 0.5°”.',
    becomes: 'trim: 0.5°',
  },
  {
    slip: 'a key of few words missing',
    put: [textLines(['      kind: bladder']), ''],
    code: 'missing-key',
    marks: 'main tank',
    says: 'A tank needs “kind”, such as “kind: sealed”. It is one of “sealed”, “vented”, “piston”, “bladder”.',
    becomes: textLines(['      kind: sealed']),
    without: ['main tank'],
  },
  {
    slip: 'a name missing',
    put: [
      `  - name: battery
    mass: 800 g`,
      '  - mass: 800 g',
    ],
    code: 'missing-key',
    marks: 'mass: 800 g',
    says: 'A part needs “name”, such as “name: battery”.',
    without: ['part 1'],
  },
  {
    slip: 'a place missing',
    put: ['      station: 90 to 310 mm', ''],
    code: 'missing-key',
    marks: 'main tank',
    says: 'This needs “station”, such as “station: 260 to 340 mm”.',
    without: ['main tank'],
  },
  {
    slip: 'one end of the waterline missing',
    put: ['waterline: 50 mm', 'waterline: { bow: 50 mm }'],
    code: 'missing-key',
    marks: 'waterline',
    says: 'The waterline needs “stern”, such as “stern: 57 mm”.',
  },
  {
    slip: 'the length of the hull missing',
    put: ['  length: 400 mm', ''],
    code: 'missing-key',
    marks: 'hull',
    says: 'The hull needs “length”, such as “length: 900 mm”. Until then the aftmost end of what is in the file stands in for it.',
  },
  {
    slip: 'the name of the boat missing',
    put: ['boat: Probe', ''],
    code: 'missing-key',
    marks: 'water: { density: 1000 kg/m3 }',
    says: 'The boat needs a name: add a line “boat: Petrel”.',
  },
  {
    slip: 'a mass missing',
    put: ['    mass: 800 g', ''],
    code: 'mass-unknown',
    marks: 'battery',
    says: '“battery” has no mass. Weigh it: “mass: 310 g”.',
    without: ['battery'],
  },
  {
    slip: 'a length where a mass belongs',
    put: ['mass: 800 g', 'mass: 800 mm'],
    code: 'wrong-quantity',
    marks: 'mm',
    says: 'Expected a mass, e.g. 310 g, but “mm” is a unit of length.',
    without: ['battery'],
  },
  {
    slip: 'an unknown unit',
    put: ['mass: 800 g', 'mass: 800 gr'],
    code: 'wrong-quantity',
    marks: 'gr',
    says: '“gr” is not a unit of mass. Did you mean g? Known are g, kg, oz, lb, mg; e.g. 310 g.',
    becomes: 'mass: 800 g',
    without: ['battery'],
  },
  {
    slip: 'a range that runs backwards',
    put: ['station: 150 to 250 mm', 'station: 250 to 150 mm'],
    code: 'wrong-quantity',
    marks: '250 to 150 mm',
    says: 'A range goes from the lesser to the greater: write 150 to 250 mm.',
    becomes: 'station: 150 to 250 mm',
    without: ['battery'],
  },
  {
    slip: 'one value where a range belongs',
    put: ['fill: 40 to 85 %', 'fill: 60 %'],
    code: 'wrong-quantity',
    marks: '60 %',
    says: 'Expected a range, e.g. 40 to 63 %, but this is one value.',
  },
  {
    slip: 'a negative mass',
    put: ['mass: 800 g', 'mass: -800 g'],
    code: 'wrong-quantity',
    marks: '-800 g',
    says: 'Expected a mass that is not negative, e.g. 310 g.',
    becomes: 'mass: 800 g',
    without: ['battery'],
  },
  {
    slip: 'a word that is none of those known',
    put: ['kind: bladder', 'kind: blader'],
    code: 'wrong-value',
    marks: 'blader',
    says: 'Expected one of “sealed”, “vented”, “piston” or “bladder”, but this says “blader”. Did you mean “bladder”?',
    becomes: 'kind: bladder',
    without: ['main tank'],
  },
  {
    slip: 'no for false',
    put: [
      '    mass: 800 g',
      `    mass: 800 g
    fixed: no`,
    ],
    code: 'wrong-value',
    marks: 'no',
    says: 'Expected true or false, but this says “no”. Did you mean “false”?',
    becomes: `    mass: 800 g
    fixed: false`,
  },
  {
    slip: 'a value where a list belongs',
    put: [
      '    height: 30 mm',
      `    height: 30 mm
    profile: 3`,
    ],
    code: 'wrong-value',
    marks: '3',
    says: 'Expected a list of [station, radius] points, such as [[0, 0], [40, 31], [200, 38]].',
    without: ['battery'],
  },
  {
    slip: 'a list where entries belong',
    put: [BAYS, textLines(['bays: none'])],
    code: 'not-a-list',
    marks: 'none',
    says: '“bays” is a list: begin each entry on a line with “- ”, such as “- name: battery”.',
  },
  {
    slip: 'a scale that is no scale',
    put: [
      'boat: Probe',
      boatText`
        boat: Probe
        scale: sixty`,
    ],
    code: 'wrong-value',
    marks: 'sixty',
    says: 'Expected a scale such as 1:60, but this says “sixty”.',
  },
  {
    slip: 'one name for two things',
    put: ['name: floor lead', 'name: battery'],
    code: 'duplicate-name',
    marks: 'battery',
    says: 'Two things are called “battery”. Give this one a name of its own, such as “battery 2”.',
    becomes: 'name: battery 2',
  },
  {
    slip: 'a compartment that does not exist, near one that does',
    put: [
      `      in: hold
      station`,
      `      in: holt
      station`,
    ],
    code: 'unknown-compartment',
    marks: 'holt',
    says: 'There is no compartment “holt”. Did you mean “hold”?',
    becomes: `      in: hold
      station`,
  },
  {
    slip: 'a compartment that does not exist',
    put: [
      `      in: hold
      station`,
      `      in: galley
      station`,
    ],
    code: 'unknown-compartment',
    marks: 'galley',
    says: 'There is no compartment “galley”. The only one is “hold”.',
    becomes: `      in: hold
      station`,
  },
  {
    slip: 'water that is neither fresh nor sea',
    put: ['water: { density: 1000 kg/m3 }', 'water: { kind: brackish }'],
    code: 'wrong-value',
    marks: 'brackish',
    says: 'Expected “fresh” or “sea”, but this says “brackish”. Brackish water is anything between: measure its salinity or density, such as { salinity: 12 g/kg }.',
  },
  {
    slip: 'an unknown material, near a known one',
    put: [
      '    mass: 800 g',
      `    mass: 800 g
    material: bras`,
    ],
    code: 'unknown-material',
    marks: 'bras',
    says: 'The handbook has no material “bras”. Did you mean “brass”?',
    becomes: `    mass: 800 g
    material: brass`,
  },
  {
    slip: 'an unknown material of a thing in the water',
    put: [
      `    mass: 800 g
    station: 150 to 250 mm
    height: 30 mm
    in: hold`,
      `    mass: 800 g
    station: 150 to 250 mm
    height: 30 mm
    material: unobtainium`,
    ],
    code: 'unknown-material',
    marks: 'unobtainium',
    says: 'The handbook has no material “unobtainium”. Give its density, such as “density: 1400 kg/m3”.',
    without: ['battery'],
  },
];

describe('one slip makes one complaint, on its characters', () => {
  it.each(SLIPS)('$slip', ({ put, code, marks, says, without }) => {
    const analysis = analysed(probe(put));
    const told = fileFindings(analysis);
    expect(told.map(finding => [finding.code, finding.message])).toEqual([[code, says]]);
    expect(told[0]?.severity).toBe('error');
    expect(marked(analysis, told[0]!)).toBe(marks);
    expect(analysis.boat.leftOut).toEqual(without ?? []);
  });

  it.each(SLIPS.filter(({ becomes }) => becomes !== undefined))('$slip: the mend takes it away', ({ put, becomes }) => {
    const analysis = analysed(probe(put));
    const better = mended(analysis, fileFindings(analysis)[0]!);
    expect(better).toBe(probe([put[0], becomes!]));
    // A tank that is no bag cannot have the probe's battery in it.
    expect(fileFindings(analysed(better)).filter(({ code }) => code !== 'same-room')).toEqual([]);
  });
});

it('the probe itself has no fault', () => {
  expect(fileFindings(analysed(PROBE))).toEqual([]);
});
