import { boatText } from './boatText.ts';

/**
 * A box barge of round numbers, so that every figure can be worked out by hand: 400 x 100 x 70 mm of hull in water of
 * 1000 kg/m3. It weighs 2000 g, so it floats 50 mm deep on an even keel, and hangs neutral with 800 of the 990 ml in its
 * tank.
 */
export const PROBE = boatText`
  boat: Probe
  water: { density: 1000 kg/m3 }
  hull:
    length: 400 mm
    waterline: 50 mm
    compartments:
      - name: hold
        mass: 600 g
        station: 0 to 400 mm
        offset: -50 to 50 mm
        height: 0 to 70 mm
    tanks:
      - name: main tank
        in: hold
        station: 90 to 310 mm
        offset: -45 to 45 mm
        height: 5 to 55 mm
        kind: bladder
  payload:
    - name: battery
      mass: 800 g
      station: 150 to 250 mm
      height: 30 mm
      in: hold
    - name: floor lead
      mass: 600 g
      station: 120 to 280 mm
      height: 20 mm
      in: hold
  bays:
    - { name: bow bay, in: hold, takes: lead, station: 20 to 120 mm, offset: -30 to 30 mm, height: 2 to 10 mm }
    - { name: stern bay, in: hold, takes: lead, station: 280 to 380 mm, offset: -30 to 30 mm, height: 2 to 10 mm }
  stock:
    lead: { strip: 12 x 6 mm }
  limits: { trim: 0.5°, heel: 1°, draft: 2 mm, gm: 3 mm, bg: 3 mm, fill: 40 to 85 % }
`;

/** The probe with pieces of its text replaced; each must be there. */
export function probe(...changes: readonly (readonly [was: string, is: string])[]): string {
  return changes.reduce((text, [was, is]) => {
    if (!text.includes(was)) throw new Error(`the probe has no “${was}”`);
    return text.replace(was, () => is);
  }, PROBE);
}

/** The probe with parts added, each a line of YAML such as `{ name: pin, mass: 2 g }`. */
export const probeWith = (...parts: readonly string[]): string =>
  probe(['bays:', [...parts.map(part => `  - ${part}`), 'bays:'].join('\n')]);
