import { describe, expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { CompletionItem } from 'vscode-languageserver-types';
import { conditionFindings } from '../../server/core/findings/catalogue/conditionFindings.ts';
import { createBoatService } from '../../server/editor/service.ts';
import { type BoatText, boat } from '../helpers/boatText.ts';

const service = createBoatService();

const completions = ({ text, caret }: BoatText): readonly CompletionItem[] =>
  service.completions(service.analyse(text), caret);

const labels = (marked: BoatText): readonly string[] => completions(marked).map(item => item.label);

/** The text after choosing an item, its snippet's places filled with what they suggest. */
const chosen = ({ text, caret }: BoatText, label: string): string => {
  const item = completions({ text, caret }).find(each => each.label === label);
  if (!item?.textEdit || !('range' in item.textEdit)) throw new Error(`no “${label}” here`);
  const document = TextDocument.create('', 'boat', 1, text);
  const { range, newText } = item.textEdit;
  const [start, end] = [document.offsetAt(range.start), document.offsetAt(range.end)];
  const indent = /^ */.exec(text.split('\n')[range.start.line] ?? '')![0];
  const filled = newText
    .replace(/\$\{\d+\|((?:\\.|[^,|\\])*)[^}]*\}/g, '$1')
    .replace(/\$\{\d+:((?:\\.|[^}\\])*)\}/g, '$1')
    .replace(/\$\d/g, '')
    .replace(/\\(.)/g, '$1');
  return text.slice(0, start) + filled.replaceAll('\n', `\n${indent}`) + text.slice(end);
};

describe('keys', () => {
  test('of the file, without those it has', () => {
    expect(labels(boat`boat: Tern\n|`)).toEqual(expect.arrayContaining(['hull', 'payload', 'limits', 'water']));
    expect(labels(boat`boat: Tern\n|`)).not.toContain('boat');
    expect(labels(boat`|`)).toContain('boat');
  });

  test.each([
    ['half typed, the last of an entry', boat`payload:\n  - name: a\n    m|`],
    ['half typed, between others', boat`payload:\n  - name: a\n    m|\n    height: 3 mm`],
    ['half typed, before another entry', boat`payload:\n  - name: a\n    ma|\n  - name: b`],
    ['beside a dash', boat`payload:\n  - m|`],
    ['beside a dash, nothing typed', boat`payload:\n  - |`],
    ['on an empty line', boat`payload:\n  - name: a\n    |\n`],
    ['in the place of another', boat`payload:\n  - name: a\n    no|te: b`],
    ['between braces', boat`payload:\n  - { name: a, m| }`],
    ['between braces that are not closed', boat`payload:\n  - { name: a, |\n  - { name: b }`],
    ['between braces, other slips about', boat`payload:\n  - { name: a, m|\n  - name:b\nhull:\n\tlength 5`],
    ['in brackets over several lines', boat`payload: [\n  { name: a },\n  { name: b, m| }\n]`],
    ['with a dash in the column of the key', boat`payload:\n- name: a\n  m|\nhull:`],
  ])('of an entry, %s', (_name, marked) => {
    const here = labels(marked);
    expect(here).toEqual(expect.arrayContaining(['mass', 'material', 'station', 'in']));
    expect(here).not.toContain('takes');
    expect(here.includes('name')).toBe(
      !marked.text.includes('name: a') || marked.text.startsWith('payload:\n- name: b'),
    );
  });

  test.each([
    ['a tank', boat`hull:\n  tanks:\n    - name: main\n      |`, 'kind'],
    ['a bay', boat`bays:\n  - { name: a, | }`, 'takes'],
    ['the hull', boat`hull:\n  le|`, 'length'],
    ['the hull, nothing typed', boat`hull:\n  |`, 'tanks'],
    ['a map in an entry', boat`payload:\n  - name: a\n    balance: { | }`, 'offset'],
    ['a map below a key in an entry', boat`payload:\n  - name: a\n    balance:\n      |`, 'offset'],
    ['a limit for each condition', boat`limits: { trim: { sur| } }`, 'surfaced'],
    ['the water', boat`water: { | }`, 'temperature'],
  ])('of %s', (_name, marked, key) => {
    expect(labels(marked)).toContain(key);
  });

  test('come with their colon and what could stand there', () => {
    expect(chosen(boat`payload:\n  - name: a\n    ma|\n`, 'mass')).toBe('payload:\n  - name: a\n    mass: 410 g\n');
    expect(chosen(boat`bays:\n  - { name: a, ta| }`, 'takes')).toBe('bays:\n  - { name: a, takes: lead }');
    expect(chosen(boat`payload:\n  - name: a\n    ma|ss: 3`, 'material')).toBe(
      'payload:\n  - name: a\n    material: 3',
    );
    expect(chosen(boat`hull:\n  |`, 'tanks')).toBe(
      'hull:\n  tanks:\n    - name: main ballast\n      in: dry cylinder\n      round: 70 mm\n      station: 360 to 560 mm\n      height: 46 mm\n      kind: sealed',
    );
  });

  test('say what they are for', () => {
    const mass = completions(boat`payload:\n  - name: a\n    |`).find(item => item.label === 'mass');
    expect(JSON.stringify(mass?.documentation)).toContain('Example: `mass: ');
    const takes = completions(boat`bays:\n  - |`).find(item => item.label === 'takes');
    expect(takes?.detail).toBe('needed');
  });
});

describe('values', () => {
  test.each([
    ['materials', boat`payload:\n  - name: a\n    material: |`, ['lead', 'brass']],
    ['materials, half typed', boat`payload:\n  - name: a\n    material: le|\n    mass: 3 g`, ['lead', 'brass']],
    ['materials between braces', boat`payload:\n  - { name: a, material: | }`, ['lead', 'brass']],
    ['kinds of tank', boat`hull:\n  tanks:\n    - name: a\n      kind: |`, ['sealed', 'vented', 'piston', 'bladder']],
    ['what a bay takes', boat`bays:\n  - { name: a, takes: | }`, ['lead', 'foam']],
    ['the end that a piston fills from', boat`hull:\n  tanks:\n    - fills: |`, ['aft', 'forward']],
    ['an axis', boat`payload:\n  - axis: |`, ['fore-aft', 'athwart', 'vertical']],
    ['yes or no', boat`payload:\n  - fixed: |`, ['true', 'false']],
    ['an example', boat`hull:\n  length: |`, ['900 mm']],
    ['units of mass behind a number', boat`payload:\n  - name: a\n    mass: 24|`, ['g', 'kg', 'oz', 'lb']],
    ['units of length behind a fraction', boat`hull:\n  length: 5 1/4 |`, ['mm', 'in']],
  ])('%s', (_name, marked, expected) => {
    expect(labels(marked)).toEqual(expect.arrayContaining(expected));
  });

  test('compartments, in quotes where they must be', () => {
    const hull = 'hull:\n  compartments:\n    - name: dry cylinder\n    - name: "bow: wet"\n';
    const marked = boat`${hull}payload:\n  - name: a\n    in: dr|`;
    expect(labels(marked)).toEqual(['dry cylinder', 'bow: wet']);
    expect(chosen(marked, 'dry cylinder')).toBe(`${hull}payload:\n  - name: a\n    in: dry cylinder`);
    expect(chosen(marked, 'bow: wet')).toBe(`${hull}payload:\n  - name: a\n    in: "bow: wet"`);
  });

  test('take the place of the value that stands there', () => {
    expect(chosen(boat`payload:\n  - material: br|ass # x\n`, 'lead')).toBe('payload:\n  - material: lead # x\n');
    expect(chosen(boat`bays:\n  - { takes: l|ead, name: x }\n`, 'foam')).toBe('bays:\n  - { takes: foam, name: x }\n');
  });

  test('units stand off their number, degrees do not', () => {
    expect(chosen(boat`hull:\n  length: 900|`, 'mm')).toBe('hull:\n  length: 900 mm');
    expect(chosen(boat`hull:\n  length: 900 |`, 'in')).toBe('hull:\n  length: 900 in');
    expect(chosen(boat`limits: { trim: 0.5| }`, '°')).toBe('limits: { trim: 0.5° }');
  });

  test("the file's own units come first", () => {
    expect(labels(boat`units: { length: in, mass: oz }\nhull:\n  length: 35|`)[0]).toBe('in');
  });

  test('nothing behind a whole quantity, in a name, in a comment or in a block of text', () => {
    expect(labels(boat`hull:\n  length: 900 mm |`)).toEqual([]);
    expect(labels(boat`payload:\n  - name: Te|rn`)).toEqual([]);
    expect(labels(boat`boat: Tern # ma|`)).toEqual([]);
    expect(labels(boat`# ma|`)).toEqual([]);
    expect(labels(boat`payload:\n  - note: ||\n      ma|`)).toEqual([]);
    expect(labels(boat`boat: Tern\n  ma|`)).toEqual([]);
  });
});

describe('entries', () => {
  test('beside a dash and in the column of the dashes', () => {
    expect(chosen(boat`payload:\n  - name: a\n  - |\n`, 'lead')).toBe(
      'payload:\n  - name: a\n  - name: keel lead\n    material: lead\n    mass: 120 g\n    station: 150 to 400 mm\n    height: 3 to 9 mm\n',
    );
    expect(chosen(boat`payload:\n  - name: a\n  |\n`, 'foam')).toBe(
      'payload:\n  - name: a\n  - name: bow foam\n    material: foam\n    box: 34 x 16 mm\n    station: 90 to 190 mm\n    height: 66 mm\n',
    );
    expect(labels(boat`payload:\n  |`)).toContain('part in a compartment');
    expect(labels(boat`hull:\n  shells:\n    - |`)).toContain('shell');
  });

  test('in brackets', () => {
    expect(chosen(boat`bays: [ | ]`, 'bay')).toBe(
      'bays: [ { name: keel forward, takes: lead, station: 40 to 190 mm, offset: -10 to 10 mm, height: 2 to 10 mm } ]',
    );
  });

  test('not in an entry that has keys', () => {
    expect(labels(boat`payload:\n  - name: a\n    |`)).not.toContain('lead');
  });

  test('every one reads without a finding in a boat', () => {
    const around = boat`
      boat: Tern
      hull:
        length: 900 mm
        compartments:
          - { name: dry cylinder, mass: 400 g, round: 80 mm, station: 100 to 800 mm, height: 46 mm }
        shells:
        - |
    `;
    // How the boat floats is another matter: only what is said of the entries themselves counts here.
    const readFindings = (text: string) =>
      service
        .analyse(text)
        .findings.filter(({ code }) => !(code in conditionFindings))
        .map(finding => finding.message);
    const shell = chosen(around, 'shell');
    expect(readFindings(shell)).toEqual([]);
    for (const label of ['part in a compartment', 'part in the water', 'lead', 'foam']) {
      const text = `${shell}payload:\n  - |`;
      expect(readFindings(chosen({ text: text.replace('|', ''), caret: text.length - 1 }, label)), label).toEqual([]);
    }
    const bays = `${shell}bays:\n  - `;
    expect(readFindings(chosen({ text: bays, caret: bays.length }, 'bay'))).toEqual([]);
  });
});
