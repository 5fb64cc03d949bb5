import { expect, test } from 'vitest';
import { readSyntax } from '../../server/core/text/reading/syntax.ts';
import { createBoatService } from '../../server/service/service.ts';
import { type BoatText, boat, boatText } from '../helpers/boatText.ts';
import { PROBE } from '../helpers/probe.ts';

const service = createBoatService();
const nothing = service.analyse('');

const text = boatText`
  hull:
    tanks:
      - { name: main }
  payload:
    - { name: battery }
    - { name: long mast }
  conditions:
    - name: awash
      without: [battery, long mast]
      tanks:
        - { tank: main, fill: 40 % }
    - name: light
      without:
        - battery
  trials:
    - { condition: surfaced, without: [battery] }
`;

/** The lines that a new name changes. */
function renamed(at: string, name: string): readonly string[] {
  const uri = 'file:///a.boat.yaml';
  const analysis = { ...nothing, syntax: readSyntax(text) };
  const result = service.rename(analysis, text.indexOf(at), name, { uri, version: null });
  if (result.status === 'refused') return [result.reason];
  return (result.edit.changes?.[uri] ?? []).map(({ range }) => text.split('\n')[range.start.line]!.trim());
}

test('a name is changed where a condition or a trial leaves it ashore', () => {
  expect(renamed('battery', 'cell')).toEqual([
    '- { name: battery }',
    'without: [battery, long mast]',
    '- battery',
    '- { condition: surfaced, without: [battery] }',
  ]);
  expect(renamed('main', 'ballast')).toEqual(['- { name: main }', '- { tank: main, fill: 40 % }']);
  // A condition has a name of its own, which no thing needs to heed.
  expect(renamed('awash', 'battery')).toEqual(['- name: awash']);
  expect(renamed('awash', 'light')).toEqual([expect.stringContaining('called “light” already')]);
});

const labels = ({ text: typed, caret }: BoatText) =>
  service.completions(service.analyse(typed), caret).map(({ label }) => label);

const start = boatText`
  hull:
    tanks:
      - { name: main }
  payload:
    - { name: battery }
    - { name: long mast }
  conditions:
`;

test.each([
  ['names of what is left ashore', boat`${start}  - { name: a, without: [|] }`, ['battery', 'long mast']],
  [
    'names behind a dash',
    boat`${start}  - name: a
    without:
      - |`,
    ['battery', 'long mast'],
  ],
  ['tanks', boat`${start}  - { name: a, tanks: [{ tank: | }] }`, ['main']],
  [
    'its keys',
    boat`${start}  - { name: a, | }`,
    ['condition', 'fill', 'tanks', 'aboard', 'without', 'water', 'limits'],
  ],
  ['its limits', boat`${start}  - { name: a, limits: { | } }`, ['trim', 'heel', 'draft', 'gm', 'bg', 'fill']],
  ['whole entries', boat`${start}  |`, ['awash', 'lighter, afloat', 'submerged otherwise']],
])('completion offers %s', (_, marked, offered) => {
  expect(labels(marked)).toEqual(expect.arrayContaining(offered));
});

test('what is left ashore already is not offered again', () => {
  expect(labels(boat`${start}  - { name: a, without: [battery, |] }`)).toEqual(['long mast']);
});

test('every entry that is offered reads without a fault', () => {
  for (const label of ['awash', 'lighter, afloat', 'submerged otherwise']) {
    const marked = boat`${PROBE}conditions:${'\n'}  |`;
    const item = service.completions(service.analyse(marked.text), marked.caret).find(each => each.label === label)!;
    const written = (item.textEdit?.newText ?? '')
      .replace(/\$\{\d+:((?:\\.|[^}\\])*)\}/g, '$1')
      .replace(/\\(.)/g, '$1')
      .replace('[long mast]', '[floor lead]')
      .replace('dry cylinder', 'hold')
      .replaceAll('\n', '\n  ');
    const findings = service.analyse(boatText`
      ${PROBE}conditions:
        ${written}
    `).file.findings;
    expect(findings.map(({ message }) => message)).toEqual([]);
  }
});

test('the hover over a condition has its figures against its limits; over a key what it is for', () => {
  const analysis = service
    .analyse(boatText`
      ${PROBE}conditions:
        - name: awash
          fill: 50 %
          limits: { draft: 2 mm }
        - { name: sunk, fill: 95 %, limits: { gm: 3 mm } }
    `)
    .settled.all();
  const hover = (at: string) =>
    (service.hover(analysis, analysis.syntax.text.indexOf(at))!.contents as { readonly value: string }).value;
  // 2000 g and 495 g of water over 40 g a millimetre; the paint is at 50 mm.
  expect(hover('awash')).toMatch(/\| Draft \| 62\.4 ± [\d.]+ mm \(12\.4 mm deep\) \| out, limit 2 mm \|/);
  expect(hover('awash')).toMatch(/\| Metacentric height \| [\d.]+ ± [\d.]+ mm \| {2}\|/);
  expect(hover('fill: 50')).toMatch(/^\*\*fill\*\*: How full all tanks are together/);
  expect(hover('sunk')).toContain('Sunk: sinks,');
});
