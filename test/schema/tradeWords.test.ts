import { describe, expect, it } from 'vitest';
import { isFileKey } from '../../schema/fileKeys.ts';
import { findMaterial } from '../../schema/materials.ts';
import { keyMeant, unitsMeant, wordMeant } from '../../schema/tradeWords.ts';
import { tradeTables } from '../../schema/tradeWordTables.ts';

describe('words of the trade', () => {
  it.each(Object.keys(tradeTables.keys))('stand for a key of the file: %s', key => {
    expect(isFileKey(key)).toBe(true);
  });

  it.each(Object.values(tradeTables.materials).flat())('stand for a material of the handbook: %s', name => {
    expect(findMaterial(name)?.key).toBe(name);
  });

  it.each<[string, readonly string[], string | null]>([
    ['weight', ['mass', 'height'], 'mass'],
    ['Dia.', ['round', 'box'], 'round'],
    ['size', ['round', 'box'], 'box'],
    ['compartments', ['cells', 'kind'], 'cells'],
    ['hieght', ['mass', 'height'], 'height'],
    ['qty', ['mass', 'count'], 'count'],
    ['weight in water', ['mass', 'inWater'], 'inWater'],
    ['volume', ['capacity', 'round'], 'capacity'],
    ['colour', ['mass', 'height'], null],
  ])('%s among %j is %s', (word, free, key) => {
    expect(keyMeant(word, free)).toBe(key);
  });

  it.each<[string, string | null]>([
    ['pump', 'sealed'],
    ['gas', 'vented'],
    ['Air', 'vented'],
    ['syringe', 'piston'],
    ['bag', 'bladder'],
    ['rubbish', null],
  ])('a tank “%s” is %s', (word, kind) => {
    expect(wordMeant(word, ['sealed', 'vented', 'piston', 'bladder'])).toBe(kind);
  });

  it.each<[string, readonly string[], string | null]>([
    ['CO2', ['air', 'nitrogen', 'carbon dioxide', 'tetrafluoroethane'], 'carbon dioxide'],
    ['R134a', ['air', 'nitrogen', 'carbon dioxide', 'tetrafluoroethane'], 'tetrafluoroethane'],
    ['aft', ['bow', 'stern', 'aft of midships', 'forward of midships'], 'stern'],
    ['amidships', ['bow', 'stern', 'aft of midships', 'forward of midships'], 'aft of midships'],
    ['keel', ['baseline', 'waterline'], 'baseline'],
    ['DWL', ['baseline', 'waterline'], 'waterline'],
  ])('“%s” among %j is %s', (word, few, known) => {
    expect(wordMeant(word, few)).toBe(known);
  });

  it.each<[string, ReturnType<typeof unitsMeant>]>([
    ['inches', { length: 'in', mass: 'oz' }],
    ['imperial', { length: 'in', mass: 'oz' }],
    ['metric', { length: 'mm', mass: 'g' }],
    ['in and lb', { length: 'in', mass: 'lb' }],
    ['cubits', null],
  ])('units “%s”', (said, units) => {
    expect(unitsMeant(said)).toEqual(units);
  });
});
