import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { sheetDocument } from '../../server/core/drawing/print/sheetDocument.ts';
import { cutLines } from '../../server/core/report/bench.ts';
import { conditionRows } from '../../server/core/report/conditionRows.ts';
import { rangeRows } from '../../server/core/report/rangeRows.ts';
import { transitRows } from '../../server/core/report/transitRows.ts';
import { UNCERTAINTY_KEY } from '../../server/core/report/uncertaintyBlock.ts';
import { analysed } from '../helpers/analysed.ts';
import { allNodes, parseXml } from '../helpers/svg.ts';

const sample = (name: string) => readFileSync(new URL(`../../samples/${name}.boat.yaml`, import.meta.url), 'utf8');

/** The page as XML: its void elements closed, its style taken out. */
const parsed = (html: string) =>
  parseXml(
    html
      .replace(/^<!doctype html>/, '')
      .replace(/<style>.*?<\/style>/gs, '')
      .replace(/<(meta|br)([^>]*)>/g, '<$1$2/>')
      .trim(),
  );

/** All that can be read on the page, without the drawings. */
const wordsOf = (html: string): string =>
  parsed(html.replace(/<svg.*?<\/svg>/gs, ''))
    .children.filter(({ name }) => name === 'body')
    .map(({ text }) => text)
    .join('')
    .replaceAll('\u00a0', ' ');

describe('the printed sheet', () => {
  it.each(['petrel', 'curlew', 'sprat'])('of %s is whole, fetches nothing and runs nothing', name => {
    const html = sheetDocument(analysed(sample(name)), { paper: 'a4' });
    const nodes = allNodes(parsed(html));
    expect(nodes.filter(node => ['script', 'link', 'img', 'iframe', 'form', 'object'].includes(node.name))).toEqual([]);
    expect(nodes.flatMap(node => Object.keys(node.attributes)).filter(key => /^on|^style$|href|src/.test(key))).toEqual(
      [],
    );
    expect(html.replaceAll('xmlns="http://www.w3.org/2000/svg"', '')).not.toMatch(/https?:|@import|url\(/);
    const policy = nodes.find(({ attributes }) => attributes['http-equiv'] === 'Content-Security-Policy')!;
    expect(policy.attributes.content).toMatch(/^default-src 'none'; style-src 'unsafe-inline';/);
    expect(nodes.filter(node => node.name === 'svg').length).toBeGreaterThanOrEqual(9);
    expect(html).not.toMatch(/NaN|undefined|Infinity|\[object/);
  });

  it.each(['petrel', 'sprat'])('of %s lists what is aboard, and has a form for the pool', async name => {
    const html = sheetDocument(analysed(sample(name)), { paper: 'a4' });
    const own = ['pieces', 'trial'].map(
      kind => html.match(new RegExp(`<section class="${kind}">.*?</section>`, 's'))![0],
    );
    const lines = own
      .join('\n')
      .replace(/<\/(p|tr|h2|h3|span)>/g, '\n')
      .replace(/<\/t[hd]>/g, ' | ')
      .replace(/<[^>]*>/g, '')
      .replaceAll('\u00a0', ' ');
    await expect(lines.replace(/[ |]+$/gm, '').replace(/\n+/g, '\n')).toMatchFileSnapshot(`golden/${name}.txt`);
  });

  it.each(['petrel', 'dunlin'])('of %s ends no line between a figure and its unit', name => {
    const html = sheetDocument(analysed(sample(name)), { paper: 'a4' });
    const words = [...html.matchAll(/<(td|li|p)(?: [^>]*)?>([^<]*)/g)].map(([, , inside]) => inside!);
    expect(words.filter(inside => /\d\u00a0(mm|g|%)/.test(inside)).length).toBeGreaterThan(10);
    expect(words.filter(inside => /\d (mm|g|ml|%|g·mm)(?=[ ;,.)]|$)|± /.test(inside))).toEqual([]);
  });

  it('has every figure and finding of the report, and every line of the cut list', () => {
    const analysis = analysed(sample('petrel'));
    const words = wordsOf(sheetDocument(analysis, { paper: 'a4' }));
    const rows = [
      ...analysis.conditions.flatMap(inCondition => conditionRows(analysis, inCondition)),
      ...transitRows(analysis),
      ...rangeRows(analysis),
    ];
    expect(rows.length).toBeGreaterThan(15);
    for (const { name, value } of rows) for (const part of [name, value]) expect(words).toContain(part);
    for (const { message } of analysis.findings) expect(words).toContain(message);
    const [best] = analysis.corrections.all();
    expect(words).toContain(best!.title);
    for (const line of cutLines(best!.pieces[0]!, best!.parts[0]!.name, analysis.boat))
      expect(words).toContain(line.trim());
  });

  it('says no figure to be in order that its uncertainty leaves open', () => {
    const analysis = analysed(sample('petrel'));
    const html = sheetDocument(analysis, { paper: 'a4' });
    const verdicts = new Map(
      allNodes(parsed(html.replace(/<svg.*?<\/svg>/gs, '')))
        .filter(({ name, children }) => name === 'tr' && /^[✓✗]/.test(children[2]?.text ?? ''))
        .map(({ children }) => [children[0]?.text, children[2]?.text]),
    );
    // 70 % ± 11 % within 40 to 85 %: less than two uncertainties from the limit. 12.6 ± 1.4 mm is far above 3 mm.
    expect(verdicts.get('Neutral fill')).toBe('✓ ok?');
    expect(verdicts.get('Metacentric height')).toBe('✓ ok');
    expect(analysis.said.openQuestions.length).toBeGreaterThan(0);
    for (const { message } of analysis.said.openQuestions) expect(wordsOf(html)).toContain(message);
    expect(wordsOf(html)).toContain(UNCERTAINTY_KEY[1]);
  });

  it('takes names as text', () => {
    const name = `<script>alert("1")</script> & 'so on'`;
    const html = sheetDocument(analysed(sample('petrel').replace('name: battery', `name: ${JSON.stringify(name)}`)), {
      paper: 'a4',
    });
    expect(html).not.toContain('<script');
    expect(wordsOf(html)).toContain(name);
  });

  it('of a file that says nothing yet still has the form for the pool', () => {
    const words = wordsOf(sheetDocument(analysed(''), { paper: 'letter' }));
    expect(words).toContain('Nothing in the file floats yet');
    expect(words).toContain('At the pool');
  });
});
