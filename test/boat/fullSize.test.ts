import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createDescriber } from '../../schema/describe.ts';
import { readExtent, readQuantity, readSection } from '../../schema/quantity.ts';
import { completionsAt } from '../../server/editor/answers/completion.ts';
import { analysed, fileFindings, marked, mended, service } from '../helpers/analysed.ts';
import { boat } from '../helpers/boatText.ts';
import { probe } from '../helpers/probe.ts';

const units = { length: 'mm', mass: 'g', scale: 1 / 60 } as const;

describe('a length in full size', () => {
  it.each([
    ['67.1 m full size', 67.1 / 60],
    ['220 ft full size', (220 * 0.3048) / 60],
    ['220 ft 2 in full-size', (220 * 0.3048 + 2 * 0.0254) / 60],
    ['67.1 m Full Size ', 67.1 / 60],
  ])('%s is so much on the model', (text, metres) => {
    const read = readQuantity(text, 'length', units);
    expect(read.ok && read.value.value).toBeCloseTo(metres, 12);
  });
  it('ranges, sections and tolerances are divided too', () => {
    const range = readExtent('12 to 30 m ± 0.3 m full size', 'length', units);
    expect(range).toMatchObject({ ok: true, value: { from: 0.2, to: 0.5, sigma: expect.closeTo(0.005, 12) } });
    expect(readSection('2.4 x 1.2 m full size', 'length', units)).toMatchObject({
      ok: true,
      value: { first: expect.closeTo(0.04, 12), second: expect.closeTo(0.02, 12) },
    });
  });
  it('is the length of the model times the scale, whatever both are', () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 400 }), fc.integer({ min: 1, max: 3000 }), (ratio, millimetres) => {
        const metres = (millimetres * ratio) / 1000;
        const read = readQuantity(`${metres} m full size`, 'length', { ...units, scale: 1 / ratio });
        expect(read.ok && read.value.value).toBeCloseTo(millimetres / 1000, 9);
      }),
    );
  });
  it.each([
    ['a mass', '40 kg full size', 'mass'],
    ['a bare number', '67 full size', 'length'],
    ['beyond any model', '6000 m full size', 'length'],
  ] as const)('of %s is refused', (_, text, dimension) => {
    expect(readQuantity(text, dimension, units).ok).toBe(false);
  });
  it('stands anywhere in the file', () => {
    const analysis = analysed(
      probe(
        [
          'boat: Probe',
          `boat: Probe
scale: 1:100`,
        ],
        ['length: 400 mm', 'length: 40 m full size'],
        ['station: 0 to 400 mm', 'station: 0 to 40 m full size'],
        ['waterline: 50 mm', 'waterline: 5 m full size'],
      ),
    );
    expect(fileFindings(analysis)).toEqual([]);
    expect(analysis.boat.length).toBeCloseTo(0.4, 12);
    expect(analysis.boat.waterline!.bow).toBeCloseTo(0.05, 12);
    expect(analysis.boat.compartments[0]!.volume * 1e6).toBeCloseTo(2800, 6);
    const at = analysis.syntax.text.indexOf('40 m full');
    const hover = service.hover(analysis, at)!.contents as { value: string };
    expect(hover.value).toContain('On the model, 1:100: 400 mm');
  });
  it('without a scale is told once, and mended by adding one', () => {
    const analysis = analysed(probe(['length: 400 mm', 'length: 28.8 m full size']));
    const [finding, ...others] = fileFindings(analysis);
    expect(finding).toMatchObject({ code: 'scale-missing' });
    expect(others).toEqual([]);
    expect(marked(analysis, finding!)).toBe('28.8 m full size');
    expect(analysed(mended(analysis, finding!)).boat.length).toBeCloseTo(0.4, 12);
  });
  it('with a scale that cannot be read, only the scale is told', () => {
    const analysis = analysed(
      probe(
        [
          'boat: Probe',
          `boat: Probe
scale: 1 to 60`,
        ],
        ['length: 400 mm', 'length: 24 m full size'],
      ),
    );
    expect(fileFindings(analysis).map(({ code }) => code)).toEqual(['wrong-value']);
  });
  it('follows the scale when that changes', () => {
    const text = (scale: number) =>
      probe(
        [
          'boat: Probe',
          `boat: Probe
scale: 1:${scale}`,
        ],
        ['height: 0 to 70 mm', 'height: 0 to 7 m full size'],
      );
    const first = analysed(text(100));
    expect(service.analyse(text(50), first).boat.compartments[0]!.volume).toBeCloseTo(
      2 * first.boat.compartments[0]!.volume,
      9,
    );
  });
  it('is offered behind a length', () => {
    const { text, caret } = boat`
      boat: X
      scale: 1:60
      hull:
        length: 67 m |
    `;
    const items = completionsAt(analysed(text), createDescriber(), caret);
    expect(items.map(({ label }) => label)).toContain('full size');
  });
});
