import { boatText } from '../helpers/boatText.ts';

/** Small boats in three hands: keys below each other in mm, braces in cm and grams, inches and ounces. All are without a slip. */
export const BOATS: Readonly<Record<string, string>> = {
  teal: boatText`
    boat: Teal
    scale: 1:96
    units: { length: mm, mass: g }
    water:
      kind: fresh
      temperature: 18 °C
    hull:
      length: 640 mm
      waterline: 62 mm
      shells:
        - name: outer hull
          material: fibreglass
          mass: 320 g
          profile: [[0, 0], [60, 30], [150, 42], [480, 42], [640, 4]]
          height: 43 mm
      compartments:
        - name: WTC
          mass: 290 g
          round: 66 mm
          station: 150 to 480 mm
          height: 44 mm
      tanks:
        - name: main ballast
          in: WTC
          round: 58 mm
          station: 256 to 394 mm
          height: 44 mm
          kind: piston
          fills: aft
    payload:
      - name: battery
        mass: 210 g ± 2 g
        station: 170 to 240 mm
        height: 26 mm
        in: WTC
      - name: servo
        mass: 24 g
        station: 420 mm
        offset: -6 mm
        height: 40 mm
        in: WTC
        fixed: true
      - name: keel lead
        material: lead
        mass: 262 g
        station: 274 to 474 mm
        height: 2 to 8 mm
    bays:
      - name: keel forward
        takes: lead
        station: 80 to 146 mm
        offset: -12 to 12 mm
        height: 12 to 18 mm
    stock:
      lead:
        strip: 12 x 6 mm
    limits:
      trim: 6°
      heel: 2°
      fill: 40 to 85 %
    trials:
      - date: 2026-05-02
        condition: submerged
        fill: 62 % ± 3 %
        trim: 1.5° ± 0.5°
  `,
  wigeon: boatText`
    boat: Wigeon
    units: { length: cm, mass: g }
    water: { kind: sea, temperature: 12 °C }
    hull:
      length: 58 cm
      waterline: { bow: 7.1 cm, stern: 6.9 cm }
      compartments:
        - { name: dry tube, material: acrylic, mass: 340 g, round: 7.4 cm, station: 8 to 47 cm, height: 4.2 cm }
      tanks:
        - { name: ballast, in: dry tube, box: 4.2 x 3.8 cm, station: 22 to 32 cm, height: 4 cm, kind: vented, cells: 2 }
    payload:
      - { name: motor, mass: 165 g, station: 38.5 cm, height: 3.9 cm, in: dry tube }
      - { name: pump, mass: 120 g, station: 12 to 16 cm, offset: 0.2 cm, height: 2.6 cm, in: dry tube }
      - { name: nose foam, material: XPS, box: 3.4 x 1.6 cm, station: 2 to 7 cm, height: 4.4 cm }
      - { name: rudder, material: brass, mass: 24 g, station: 55 cm, height: 4.4 cm }
      - { name: keel lead, material: lead, mass: 1085 g, station: 12.3 to 40.3 cm, height: 0 to 0.5 cm, fixed: false }
    bays:
      - { name: aft, takes: foam, station: 48 to 54 cm, offset: -1 to 1 cm, height: 4.6 to 5.6 cm }
    stock: { foam: { density: 30 kg/m3, strip: 2.5 x 2.5 cm } }
    limits: { trim: { surfaced: 1.5°, submerged: 4° }, gm: 0.3 cm }
  `,
  smew: boatText`
    # Inches and ounces.
    boat: Smew
    units: { length: in, mass: oz }
    water: { kind: fresh, temperature: 68 °F }
    hull:
      length: 15 in
      waterline: 2 1/4 in
      compartments:
        - name: hull
          mass: 7 1/2 oz
          profile: [[0, 0], [1/4, 1/2], [2, 1 1/8], [3 1/2, 1 1/4], [9 1/2, 1 1/4], [15, 0]]
          height: 1 1/4 in
      tanks:
        - name: piston tank
          in: hull
          round: 1 3/8 in
          station: 5 to 8 in
          height: 1 1/4 in
          kind: piston
    payload:
      - { name: battery, mass: 5.6 oz, station: 2 1/2 to 4 3/4 in, height: 3/4 in, in: hull }
      - name: piston drive
        mass: 3.1 oz
        station: 9 in
        height: 1 1/4 in
        in: hull
      - name: floor lead
        material: lead
        mass: 10.4 oz
        station: 4 1/4 to 10 1/4 in
        height: 1/8 to 3/8 in
        in: hull
    limits: { trim: 4°, heel: 1 1/2°, draft: 1/16 in }
  `,
};
