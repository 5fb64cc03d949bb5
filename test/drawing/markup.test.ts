import fc from 'fast-check';
import { expect, it } from 'vitest';
import { element, escaped, htmlElement, short, svgText } from '../../server/core/drawing/markup.ts';
import { parseXml } from '../helpers/svg.ts';

/** A character that XML can write (XML 1.0, production 2) and that no reader of attributes takes for white space. */
function isWritable(character: string): boolean {
  const point = character.codePointAt(0)!;
  return point >= 0x20 && !(point >= 0xd800 && point <= 0xdfff) && point !== 0xfffe && point !== 0xffff;
}
const writable = fc.string({ unit: 'binary', maxLength: 40 }).map(words => [...words].filter(isWritable).join(''));

it('any text comes back as it was, between tags and in quotes', () => {
  fc.assert(
    fc.property(writable, words => {
      expect(parseXml(element('a', {}, svgText(words), element('b', {}))).text).toBe(words);
      expect(parseXml(element('a', { b: words })).attributes.b).toBe(words);
    }),
  );
});

it('what cannot be written is shown as such, whatever the text', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), words => {
      const xml = element('a', { b: words }, svgText(words));
      expect(parseXml(xml).name).toBe('a');
      expect(escaped(words)).not.toMatch(/[<>"']/);
    }),
  );
  expect(escaped('\ud800\u0000x')).toBe('\ufffd\ufffdx');
});

it.each([
  [1, '1'],
  [0.125, '0.13'],
  [-0.001, '0'],
  [1234.5678, '1234.57'],
  [Number.NaN, '0'],
  [Number.POSITIVE_INFINITY, '0'],
])('%d is written %s', (value, words) => {
  expect(short(value)).toBe(words);
});

it('elements are closed as their kind is', () => {
  expect(element('path', { d: 'M0 0', class: null, x: 1.005 })).toBe('<path d="M0 0" x="1"/>');
  expect(htmlElement('td', {})).toBe('<td></td>');
  expect(htmlElement('meta', { charset: 'utf-8' })).toBe('<meta charset="utf-8">');
});
