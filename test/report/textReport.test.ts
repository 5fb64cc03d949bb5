import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { textReport } from '../../server/core/report/textReport.ts';
import { heard } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { probe } from '../helpers/probe.ts';

const sample = (name: string) => readFileSync(new URL(`../../samples/${name}.boat.yaml`, import.meta.url), 'utf8');

describe('the report', () => {
  it.each(['petrel', 'curlew', 'sprat'])('of %s', async name => {
    await expect(textReport(heard(sample(name)))).toMatchFileSnapshot(`golden/${name}.txt`);
  });
  it('has no figure with a bare minus, and none that is no number', () => {
    for (const name of ['petrel', 'curlew', 'sprat']) {
      const report = textReport(heard(sample(name)));
      expect(report).not.toMatch(/ -\d|NaN|Infinity|undefined|null/);
    }
  });
});

describe('what the report says of a boat', () => {
  it.each<readonly [string, string, readonly RegExp[]]>([
    [
      'that sinks',
      probe(['mass: 800 g', 'mass: 1700 g']),
      [/Sinks +100 g too heavy/, /Too heavy +by 100 g, tanks empty/],
    ],
    ['that is too light', probe(['mass: 800 g', 'mass: 500 g']), [/Too light +by 110 g, tanks full/]],
    [
      'of which nothing floats',
      `boat: B
hull: { length: 300 mm }
`,
      [/Nothing in the file weighs anything yet/, /Nothing in the file floats yet/],
    ],
    [
      'that is not whole',
      probe([
        boatText`
          mass: 600 g
              s`,
        boatText`
          mass: 600 q
              s`,
      ]),
      [/Figured without “floor lead”: limits and corrections wait until that is fixed\./],
    ],
    [
      'that is faulty and out of trim',
      probe(['150 to 250', '170 to 270'], ['kind: bladder', 'kind: bag']),
      [/Corrections are computed once the errors in the file are fixed\./],
    ],
    [
      'that pieces cannot trim: it is too heavy, and the bays take lead',
      probe(['mass: 800 g', 'mass: 1000 g']),
      [/No 5 pieces or fewer in the bays bring the boat inside its surfaced limits\./],
    ],
    [
      'that does not stay level',
      probe(['kind: bladder', 'kind: vented']),
      [/BG, tank water free +below by 21\.1 mm.* +out/, /Moment to trim 1° +nothing holds it/, /Stays level +no/],
    ],
    [
      'whose figure rounds to its limit',
      probe(['150 to 250', '156 to 256']),
      [/Trim +0\.52° bow up ± .*out +limit 0\.5°/],
    ],
  ])('%s', (_, text, says) => {
    const report = textReport(heard(text));
    for (const words of says) expect(report).toMatch(words);
    expect(report).not.toContain('Within all limits.');
  });
  it('in colours, where there are any', () => {
    const paint = {
      heading: (t: string) => `<h>${t}</h>`,
      good: (t: string) => `<g>${t}</g>`,
      bad: (t: string) => `<b>${t}</b>`,
    };
    const report = textReport(heard(probe(['150 to 250', '170 to 270'])), paint);
    for (const ink of ['<h>Surfaced</h>', '<g>ok </g>', '<b>out</b>']) expect(report).toContain(ink);
  });
});
