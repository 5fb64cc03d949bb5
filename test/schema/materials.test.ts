import { describe, expect, it } from 'vitest';
import { findMaterial, materialNames, materials, nearestMaterials } from '../../schema/materials.ts';

const namesOf = (material: (typeof materials)[number]) => [material.key, ...material.names];

describe('the handbook', () => {
  it.each(materials.map(m => [m.key, m] as const))('%s has a density inside its own range, and a source', (_, m) => {
    const [least, most] = m.range;
    expect(least).toBeGreaterThan(0);
    expect(least).toBeLessThanOrEqual(m.density);
    expect(m.density).toBeLessThanOrEqual(most);
    expect(m.source).not.toBe('');
  });

  it('has no name twice', () => {
    const all = materials.flatMap(namesOf).map(name => name.toLowerCase().replace(/[-_\s]+/g, ''));
    expect(all.filter((name, i) => all.indexOf(name) !== i)).toEqual([]);
  });

  // Acceptance ranges of trade materials, kg/m3; the source and whether it was seen stand beside each.
  it.each([
    ['lead', 11340, 11300, 11350, 'CRC Handbook; ASM Metals Handbook (memory)'],
    ['hard lead', 11000, 10600, 11270, 'ASM Metals Handbook vol. 2 (memory)'],
    ['brass', 8500, 8400, 8730, 'Copper Development Association; EN 1991-1-1 Table A.4 (memory)'],
    ['stainless', 8000, 7900, 8030, 'EN 10088-1 (memory)'],
    ['aluminium', 2700, 2640, 2840, 'ASM vol. 2; EN 1991-1-1 Table A.4 (memory)'],
    ['steel', 7850, 7800, 7870, 'EN 1991-1-1 Table A.4 (memory)'],
    ['tungsten alloy', 17500, 16850, 18850, 'ASTM B777 (memory)'],
    ['ABS', 1050, 1020, 1210, 'ASTM D792 / ISO 1183 property table (seen)'],
    ['PLA', 1240, 1210, 1290, 'Garlotta 2001 (seen)'],
    ['PETG', 1270, 1260, 1280, 'unfilled-resin table (seen)'],
    ['acrylic', 1190, 1170, 1190, 'unfilled-resin table (seen)'],
    ['rigid PVC', 1400, 1300, 1450, 'unfilled-resin table (seen)'],
    ['polycarbonate', 1200, 1190, 1220, 'unfilled-resin tables (seen)'],
    ['nylon', 1140, 1130, 1160, 'unfilled-resin table (seen)'],
    ['cast resin', 1050, 1030, 1250, 'sheet table (seen)'],
    ['epoxy', 1150, 1100, 1250, 'Handbook of epoxy resins (memory)'],
    ['fibreglass', 1600, 1400, 1950, 'ISO 12215-5 Annex C constituents (derived)'],
    ['birch plywood', 680, 640, 714, 'EN 1991-1-1 Table A.3 (memory)'],
    ['softwood plywood', 500, 430, 580, 'EN 1991-1-1 Table A.3 (memory)'],
    ['balsa', 160, 80, 250, 'USDA Wood Handbook Table 5-5 (memory)'],
    ['PVC foam', 80, 40, 250, 'commercial grades, ISO 845 (memory)'],
  ])('%s is %d kg/m3, %d to %d: %s', (name, typical, least, most) => {
    const found = findMaterial(name)!;
    expect(found.density).toBe(typical);
    expect(found.range).toEqual([least, most]);
  });

  // ASTM C578-10 Table 1, least densities in lb/ft3 (seen); 1 lb/ft3 = 16.01846337 kg/m3.
  it.each([
    ['EPS', [0.7, 0.9, 1.15, 1.35, 1.8, 2.4, 2.85]],
    ['XPS', [1.3, 1.55, 1.8, 2.2, 3.0]],
  ])('%s covers every type of the standard', (name, pounds) => {
    const { density, range } = findMaterial(name)!;
    const types = pounds.map(lb => lb * 16.01846337);
    for (const type of types) {
      expect(type).toBeGreaterThanOrEqual(range[0]);
      expect(type).toBeLessThanOrEqual(range[1]);
    }
    expect(density).toBeGreaterThan(Math.min(...types));
    expect(density).toBeLessThan(Math.max(...types));
  });

  // ISO 12215-5:2008 Annex C (memory): glass 2560, polyester 1200 kg/m3, glass mass fraction 0.30 to 0.50.
  it.each([
    [0.3, 1427.5],
    [0.35, 1474.1],
    [0.5, 1634.0],
  ])('a laminate with %d of its mass in glass, %d kg/m3, is fibreglass', (glass, density) => {
    expect(1 / (glass / 2560 + (1 - glass) / 1200)).toBeCloseTo(density, 1);
    const [least, most] = findMaterial('fibreglass')!.range;
    expect(density).toBeGreaterThan(least);
    expect(density).toBeLessThan(most);
  });

  // Fresh water at 20 °C, 998.2072 kg/m3: ITTC 7.5-02-01-03 Table 1 (seen); the figures follow (derived).
  it('gives lead and foam the weight and lift in water that they are known for', () => {
    const water = 998.2072;
    const lead = findMaterial('lead')!.density;
    expect(1 - water / lead).toBeCloseTo(0.912, 4);
    expect(lead / (lead - water)).toBeCloseTo(1.096522, 5);
    const [least, most] = findMaterial('foam')!.range;
    expect(least).toBeLessThan(findMaterial('EPS')!.density);
    expect(most).toBeGreaterThanOrEqual(findMaterial('PVC foam')!.range[1]);
    expect(findMaterial('foam')!.density).toBe(30);
  });

  it('says the caution with everything that holds lead', () => {
    for (const name of ['lead', 'hard lead', 'lead shot in resin', 'solder']) {
      expect(findMaterial(name)!.caution).toMatch(/dust.*fumes.*wash hands.*children and pets.*pond/);
    }
  });

  it.each(['PLA', 'PETG', 'ABS'])('says that a print of %s carries voids', name => {
    expect(findMaterial(name)!.note).toMatch(/print carries voids/);
  });
});

describe('finding a material', () => {
  it.each([
    ['GRP', 'fibreglass'],
    ['Glass-Fibre', 'fibreglass'],
    ['fiberglass', 'fibreglass'],
    [' LEAD ', 'lead'],
    ['pvc', 'PVC'],
    ['Aluminum', 'aluminium'],
    ['delrin', 'acetal'],
    ['o ring', 'rubber'],
    ['birch_ply', 'birch plywood'],
  ])('“%s” is %s', (name, key) => {
    expect(findMaterial(name)?.key).toBe(key);
  });

  it('finds each material by each of its names', () => {
    for (const material of materials) for (const name of namesOf(material)) expect(findMaterial(name)).toBe(material);
    expect(materialNames()).toEqual(materials.map(m => m.key));
  });

  it.each(['unobtainium', '', 'mm'])('does not find “%s”', name => {
    expect(findMaterial(name)).toBeNull();
  });

  it.each([
    ['fibreglas', 'fibreglass'],
    ['led', 'lead'],
    ['brasss', 'brass'],
    ['plexigas', 'acrylic'],
    ['alumnium', 'aluminium'],
    ['unobtainium', null],
  ])('takes “%s” for %s', (name, key) => {
    expect(nearestMaterials(name)[0] ?? null).toBe(key);
  });
});
