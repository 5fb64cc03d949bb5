import { describe, expect, test } from 'vitest';
import type { CompletionItem } from 'vscode-languageserver-types';
import { conditionFindings } from '../../server/core/findings/catalogue/conditionFindings.ts';
import { createBoatService } from '../../server/service/service.ts';
import { type BoatText, boat, boatText } from '../helpers/boatText.ts';
import { chosen as chosenOf } from '../helpers/chosen.ts';

const service = createBoatService();

const completions = ({ text, caret }: BoatText): readonly CompletionItem[] =>
  service.completions(service.analyse(text), caret);

const labels = (marked: BoatText): readonly string[] => completions(marked).map(item => item.label);

const chosen = (marked: BoatText, label: string): string => chosenOf(marked.text, completions(marked), label);

describe('keys', () => {
  test('of the file, without those it has', () => {
    expect(
      labels(boat`
        boat: Tern
        |`),
    ).toEqual(expect.arrayContaining(['hull', 'payload', 'limits', 'water']));
    expect(
      labels(boat`
        boat: Tern
        |`),
    ).not.toContain('boat');
    expect(labels(boat`|`)).toContain('boat');
  });

  test.each([
    [
      'half typed, the last of an entry',
      boat`
        payload:
          - name: a
            m|`,
    ],
    [
      'half typed, between others',
      boat`
        payload:
          - name: a
            m|
            height: 3 mm`,
    ],
    [
      'half typed, before another entry',
      boat`
        payload:
          - name: a
            ma|
          - name: b`,
    ],
    [
      'beside a dash',
      boat`
        payload:
          - m|`,
    ],
    [
      'beside a dash, nothing typed',
      boat`
        payload:
          - |`,
    ],
    [
      'on an empty line',
      boat`
        payload:
          - name: a
            |
      `,
    ],
    [
      'in the place of another',
      boat`
        payload:
          - name: a
            no|te: b`,
    ],
    [
      'between braces',
      boat`
        payload:
          - { name: a, m| }`,
    ],
    [
      'between braces that are not closed',
      boat`
        payload:
          - { name: a, |
          - { name: b }`,
    ],
    [
      'between braces, other slips about',
      boat`
        payload:
          - { name: a, m|
          - name:b
        hull:
        \tlength 5`,
    ],
    [
      'in brackets over several lines',
      boat`
        payload: [
          { name: a },
          { name: b, m| }
        ]`,
    ],
    [
      'with a dash in the column of the key',
      boat`
        payload:
        - name: a
          m|
        hull:`,
    ],
  ])('of an entry, %s', (_name, marked) => {
    const here = labels(marked);
    expect(here).toEqual(expect.arrayContaining(['mass', 'material', 'station', 'in']));
    expect(here).not.toContain('takes');
    expect(here.includes('name')).toBe(
      !marked.text.includes('name: a') ||
        marked.text.startsWith(boatText`
          payload:
          - name: b`),
    );
  });

  test.each([
    [
      'a tank',
      boat`
        hull:
          tanks:
            - name: main
              |`,
      'kind',
    ],
    [
      'a bay',
      boat`
        bays:
          - { name: a, | }`,
      'takes',
    ],
    [
      'the hull',
      boat`
        hull:
          le|`,
      'length',
    ],
    [
      'the hull, nothing typed',
      boat`
        hull:
          |`,
      'tanks',
    ],
    [
      'a map in an entry',
      boat`
        payload:
          - name: a
            balance: { | }`,
      'offset',
    ],
    [
      'a map below a key in an entry',
      boat`
        payload:
          - name: a
            balance:
              |`,
      'offset',
    ],
    ['a limit for each condition', boat`limits: { trim: { sur| } }`, 'surfaced'],
    ['the water', boat`water: { | }`, 'temperature'],
  ])('of %s', (_name, marked, key) => {
    expect(labels(marked)).toContain(key);
  });

  test('come with their colon and what could stand there', () => {
    expect(
      chosen(
        boat`
          payload:
            - name: a
              ma|
        `,
        'mass',
      ),
    ).toBe(boatText`
      payload:
        - name: a
          mass: 410 g
    `);
    expect(
      chosen(
        boat`
          bays:
            - { name: a, ta| }`,
        'takes',
      ),
    ).toBe(boatText`
      bays:
        - { name: a, takes: lead }`);
    expect(
      chosen(
        boat`
          payload:
            - name: a
              ma|ss: 3`,
        'material',
      ),
    ).toBe(
      boatText`
        payload:
          - name: a
            material: 3`,
    );
    expect(
      chosen(
        boat`
          hull:
            |`,
        'tanks',
      ),
    ).toBe(
      boatText`
        hull:
          tanks:
            - name: main ballast
              in: dry cylinder
              round: 70 mm
              station: 360 to 560 mm
              height: 46 mm
              kind: sealed`,
    );
  });

  test('come in the units of the boat, at its length, in its compartment', () => {
    expect(
      chosen(
        boat`
          units: { length: in, mass: oz }
          hull:
            length: 18 in
            compartments:
              - name: WTC
          payload:
            - |`,
        'part in a compartment',
      ),
    ).toBe(boatText`
      units: { length: in, mass: oz }
      hull:
        length: 18 in
        compartments:
          - name: WTC
      payload:
        - name: battery
          mass: 10.9 oz
          station: 5 3/16 to 6 13/16 in
          height: 15/16 in
          in: WTC`);
  });

  test('say what they are for', () => {
    const mass = completions(boat`
      payload:
        - name: a
          |`).find(item => item.label === 'mass');
    expect(JSON.stringify(mass?.documentation)).toContain('Example: `mass: ');
    const takes = completions(boat`
      bays:
        - |`).find(item => item.label === 'takes');
    expect(takes?.detail).toBe('needed');
  });
});

describe('values', () => {
  test.each([
    [
      'materials',
      boat`
        payload:
          - name: a
            material: |`,
      ['lead', 'brass'],
    ],
    [
      'materials, half typed',
      boat`
        payload:
          - name: a
            material: le|
            mass: 3 g`,
      ['lead', 'brass'],
    ],
    [
      'materials between braces',
      boat`
        payload:
          - { name: a, material: | }`,
      ['lead', 'brass'],
    ],
    [
      'kinds of tank',
      boat`
        hull:
          tanks:
            - name: a
              kind: |`,
      ['sealed', 'vented', 'piston', 'bladder'],
    ],
    [
      'what a bay takes',
      boat`
        bays:
          - { name: a, takes: | }`,
      ['lead', 'foam'],
    ],
    [
      'the end that a piston fills from',
      boat`
        hull:
          tanks:
            - fills: |`,
      ['aft', 'forward'],
    ],
    [
      'an axis',
      boat`
        payload:
          - axis: |`,
      ['fore-aft', 'athwart', 'vertical'],
    ],
    [
      'yes or no',
      boat`
        payload:
          - fixed: |`,
      ['true', 'false'],
    ],
    [
      'an example',
      boat`
        hull:
          length: |`,
      ['900 mm'],
    ],
    [
      'units of mass behind a number',
      boat`
        payload:
          - name: a
            mass: 24|`,
      ['g', 'kg', 'oz', 'lb'],
    ],
    [
      'units of length behind a fraction',
      boat`
        hull:
          length: 5 1/4 |`,
      ['mm', 'in'],
    ],
  ])('%s', (_name, marked, expected) => {
    expect(labels(marked)).toEqual(expect.arrayContaining(expected));
  });

  test('compartments, in quotes where they must be', () => {
    const hull = boatText`
      hull:
        compartments:
          - name: dry cylinder
          - name: "bow: wet"
    `;
    const marked = boat`
      ${hull}payload:
        - name: a
          in: dr|`;
    expect(labels(marked)).toEqual(['dry cylinder', 'bow: wet']);
    expect(chosen(marked, 'dry cylinder')).toBe(boatText`
      ${hull}payload:
        - name: a
          in: dry cylinder`);
    expect(chosen(marked, 'bow: wet')).toBe(boatText`
      ${hull}payload:
        - name: a
          in: "bow: wet"`);
  });

  test('take the place of the value that stands there', () => {
    expect(
      chosen(
        boat`
          payload:
            - material: br|ass # x
        `,
        'lead',
      ),
    ).toBe(boatText`
      payload:
        - material: lead # x
    `);
    expect(
      chosen(
        boat`
          bays:
            - { takes: l|ead, name: x }
        `,
        'foam',
      ),
    ).toBe(boatText`
      bays:
        - { takes: foam, name: x }
    `);
  });

  test('units stand off their number, degrees do not', () => {
    expect(
      chosen(
        boat`
          hull:
            length: 900|`,
        'mm',
      ),
    ).toBe(boatText`
      hull:
        length: 900 mm`);
    expect(
      chosen(
        boat`
          hull:
            length: 900 |`,
        'in',
      ),
    ).toBe(boatText`
      hull:
        length: 900 in`);
    expect(chosen(boat`limits: { trim: 0.5| }`, '°')).toBe('limits: { trim: 0.5° }');
  });

  test("the file's own units come first", () => {
    expect(
      labels(boat`
        units: { length: in, mass: oz }
        hull:
          length: 35|`)[0],
    ).toBe('in');
  });

  test('nothing behind a whole quantity, in a name, in a comment or in a block of text', () => {
    expect(
      labels(boat`
        hull:
          length: 900 mm |`),
    ).toEqual([]);
    expect(
      labels(boat`
        payload:
          - name: Te|rn`),
    ).toEqual([]);
    expect(labels(boat`boat: Tern # ma|`)).toEqual([]);
    expect(labels(boat`# ma|`)).toEqual([]);
    expect(
      labels(boat`
        payload:
          - note: ||
              ma|`),
    ).toEqual([]);
    expect(
      labels(boat`
        boat: Tern
          ma|`),
    ).toEqual([]);
  });
});

describe('entries', () => {
  test('beside a dash and in the column of the dashes', () => {
    expect(
      chosen(
        boat`
          payload:
            - name: a
            - |
        `,
        'lead',
      ),
    ).toBe(
      boatText`
        payload:
          - name: a
          - name: keel lead
            material: lead
            mass: 120 g
            station: 150 to 400 mm
            height: 3 to 9 mm
      `,
    );
    expect(
      chosen(
        boat`
          payload:
            - name: a
            |
        `,
        'foam',
      ),
    ).toBe(
      boatText`
        payload:
          - name: a
          - name: bow foam
            material: foam
            box: 34 x 16 mm
            station: 90 to 190 mm
            height: 66 mm
      `,
    );
    expect(
      labels(boat`
        payload:
          |`),
    ).toContain('part in a compartment');
    expect(
      labels(boat`
        hull:
          shells:
            - |`),
    ).toContain('shell');
  });

  test('in brackets', () => {
    expect(chosen(boat`bays: [ | ]`, 'bay')).toBe(
      'bays: [ { name: keel forward, takes: lead, station: 40 to 190 mm, offset: -10 to 10 mm, height: 2 to 10 mm } ]',
    );
  });

  test('not in an entry that has keys', () => {
    expect(
      labels(boat`
        payload:
          - name: a
            |`),
    ).not.toContain('lead');
  });

  test('every one reads without a finding in a boat', () => {
    const around = boat`
      boat: Tern
      hull:
        length: 900 mm
        compartments:
          - { name: dry cylinder, mass: 400 g, round: 60 mm, station: 200 to 660 mm, height: 40 mm }
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
      const text = boatText`
        ${shell}payload:
          - |`;
      expect(readFindings(chosen({ text: text.replace('|', ''), caret: text.length - 1 }, label)), label).toEqual([]);
    }
    const bays = boatText`
      ${shell}bays:
        - `;
    expect(readFindings(chosen({ text: bays, caret: bays.length }, 'bay'))).toEqual([]);
  });
});
