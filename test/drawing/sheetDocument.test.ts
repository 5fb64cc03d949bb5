import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fileIn, withFile } from '../../server/core/drawing/print/fileInside.ts';
import { revisionOf } from '../../server/core/drawing/print/revision.ts';
import { cutLines } from '../../server/core/report/bench.ts';
import { conditionRows } from '../../server/core/report/conditionRows.ts';
import { rangeRows } from '../../server/core/report/rangeRows.ts';
import { transitRows } from '../../server/core/report/transitRows.ts';
import { UNCERTAINTY_KEY } from '../../server/core/report/uncertaintyBlock.ts';
import { massText } from '../../server/core/wording/numbers.ts';
import { heard } from '../helpers/analysed.ts';
import { printed } from '../helpers/printed.ts';
import { allNodes, parseXml } from '../helpers/svg.ts';

const sample = (name: string) => readFileSync(new URL(`../../samples/${name}.boat.yaml`, import.meta.url), 'utf8');

const BRIEF = { paper: 'a4', fileName: 'petrel.boat.yaml', appendix: false } as const;
/** Lines of a file that are made by the dozen. */
const NEW_LINE = String.fromCharCode(10);

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
    const html = printed(heard(sample(name)), { paper: 'a4', fileName: 'a.boat.yaml', appendix: true });
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

  it.each(['petrel', 'sprat'])('of %s lists the parts, and has a form for the pool', async name => {
    const html = printed(heard(sample(name)), BRIEF);
    const own = ['trial', 'pieces'].map(
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

  it('is two pages: the verdict and what to do, then the pool and the parts; all the rest is an appendix', () => {
    const analysis = heard(sample('petrel'));
    const [brief, whole] = [BRIEF, { ...BRIEF, appendix: true }].map(options => printed(analysis, options)) as [
      string,
      string,
    ];
    const sections = (html: string, kind: string) =>
      allNodes(parsed(html)).filter(
        ({ name, attributes }) => name === 'section' && attributes.class?.split(' ')[0] === kind,
      );
    expect(sections(brief, 'page')).toHaveLength(2);
    const [one, two] = sections(brief, 'page');
    expect(one!.text).toContain('Not yet: 6 of 10 out');
    expect(allNodes(one!).filter(({ attributes }) => /-side$/.test(attributes.id ?? ''))).toHaveLength(2);
    expect(one!.text).toContain('What to do');
    expect(one!.text).toContain('Lead is poisonous');
    expect(two!.text).toContain('At the pool');
    expect(two!.text).toContain('all of it, tanks empty');
    expect(sections(brief, 'appendix')).toEqual([]);
    expect(sections(whole, 'page')).toHaveLength(2);
    expect(sections(whole, 'appendix')).toHaveLength(1);
  });

  it('says what the parts weigh by the file, and what the likeliest boat does where trials tell otherwise', () => {
    const rows = (name: string): readonly string[] =>
      allNodes(parsed(printed(heard(sample(name)), BRIEF)))
        .filter(({ name: tag, text }) => tag === 'tr' && /^(?:all of it|likeliest)/.test(text))
        .map(({ text }) => text);
    const [byFile, byTrials] = rows('dunlin');
    const grams = (row: string | undefined): number => Number(/(\d+)\u00a0g/.exec(row ?? '')?.[1]);
    // The sum of its parts in the file.
    expect(grams(byFile)).toBe(402 + 46 + 318 + 212 + 118 + 96 + 84 + 362);
    const { bodies } = heard(sample('dunlin'));
    expect(grams(byTrials)).toBe(Math.round(1000 * bodies.mass));
    expect(rows('petrel')).toHaveLength(1);
  });

  it('ends no line within a figure of inches', () => {
    const cells = allNodes(parsed(printed(heard(sample('sprat')), BRIEF))).filter(({ name }) => name === 'td');
    const figures = cells.map(({ text }) => text).filter(text => /\d\s\d+\/\d+/.test(text));
    expect(figures.length).toBeGreaterThan(5);
    expect(figures.filter(text => /\d \d+\/\d+|\d in/.test(text))).toEqual([]);
  });

  it('bears the names of boat and file, its revision and its page at its foot', () => {
    const text = sample('petrel');
    const html = printed(heard(text), { ...BRIEF, fileName: 'p"e}</style>.boat.yaml' });
    expect(html).toContain(`revision ${revisionOf(text)}`);
    expect(html).toContain('counter(page) " of " counter(pages)');
    const style = html.match(/<style>(.*?)<\/style>/s)![1]!;
    expect(style).toContain('.notes');
    expect(style).toContain('p\\22 e\\7d \\3c \\2f style\\3e .boat.yaml');
  });

  it('of many parts lets its second page run on', () => {
    const parts = Array.from(
      { length: 60 },
      (_, i) => `  - { name: part ${i}, mass: 2 g, station: ${230 + i} mm, height: 50 mm, in: dry cylinder }`,
    );
    const text = sample('petrel').replace(/^payload:.*$/m, found => [found, ...parts].join(NEW_LINE));
    const analysis = heard(text);
    expect(analysis.boat.payload).toHaveLength(67);
    const html = printed(analysis, BRIEF);
    const pages = allNodes(parsed(html)).filter(({ attributes }) => /^page/.test(attributes.class ?? ''));
    expect(pages.map(({ attributes }) => attributes.class)).toEqual(['page', 'page second long']);
  });

  it('has what is expected beside every blank: as it is, and with the proposal', () => {
    const analysis = heard(sample('petrel'));
    const [correction] = analysis.corrections.all();
    const { surfaced, submerged } = correction!;
    if (surfaced.status !== 'afloat' || submerged.status !== 'neutral')
      throw new Error('expected to float and to hang');
    const rows = allNodes(parsed(printed(analysis, BRIEF)))
      .filter(({ name, attributes }) => name === 'table' && /form/.test(attributes.class ?? ''))
      .flatMap(table => allNodes(table).filter(({ name }) => name === 'tr'))
      .map(({ children }) => children.map(({ text }) => text.replaceAll('\u00a0', ' ')));
    const row = (what: string) => rows.find(cells => cells[1]?.startsWith(what))!;
    expect(row('whole boat weighs').slice(2, 4)).toEqual([
      massText(analysis.bodies.mass, analysis.boat.units),
      massText(analysis.bodies.mass + correction!.pieces.reduce((sum, { mass }) => sum + mass, 0), analysis.boat.units),
    ]);
    expect(row('tank water')[3]).toContain(`${Math.round(submerged.fill * 100)} % full`);
    // 69 mm and 791 mm: 8 % of 860 mm from either end. On a straight surface the draft is half way between them.
    const [fore, aft] = ['water above the baseline, 69 mm', 'the same, 791 mm'].map(what =>
      Number.parseFloat(row(what)[3]!),
    );
    expect((fore! + aft!) / 2).toBeCloseTo(surfaced.attitude.draft * 1000, 0);
    for (const cells of rows.slice(1)) expect(cells.slice(4)).toEqual(['', '', '']);
  });

  it.each(['petrel', 'dunlin'])('of %s ends no line between a figure and its unit', name => {
    const html = printed(heard(sample(name)), { paper: 'a4', fileName: 'a.boat.yaml', appendix: true });
    const words = [...html.matchAll(/<(td|li|p)(?: [^>]*)?>([^<]*)/g)].map(([, , inside]) => inside!);
    expect(words.filter(inside => /\d\u00a0(mm|g|%)/.test(inside)).length).toBeGreaterThan(10);
    expect(words.filter(inside => /\d (mm|g|ml|%|g·mm)(?=[ ;,.)]|$)|± /.test(inside))).toEqual([]);
  });

  it('has every figure and finding of the report, and every line of the cut list', () => {
    const analysis = heard(sample('petrel'));
    const words = wordsOf(printed(analysis, { paper: 'a4', fileName: 'a.boat.yaml', appendix: true }));
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
    const analysis = heard(sample('petrel'));
    const html = printed(analysis, { paper: 'a4', fileName: 'a.boat.yaml', appendix: true });
    const verdicts = new Map(
      allNodes(parsed(html.replace(/<svg.*?<\/svg>/gs, '')))
        .filter(({ name, children }) => name === 'tr' && /^[✓✗]/.test(children[2]?.text ?? ''))
        .map(({ children }) => [children[0]?.text, children[2]?.text]),
    );
    // 70 % ± 11 % within 40 to 85 %: less than two uncertainties from the limit. 12.6 ± 1.4 mm is far above 3 mm.
    expect(verdicts.get('Neutral fill')).toBeUndefined();
    expect(verdicts.get('Metacentric height')).toBe('✓ ok');
    expect(analysis.said.openQuestions.length).toBeGreaterThan(0);
    for (const { message } of analysis.said.openQuestions) expect(wordsOf(html)).toContain(message);
    expect(wordsOf(html)).toContain(UNCERTAINTY_KEY[1]);
  });

  it('takes names as text', () => {
    const name = `<script>alert("1")</script> & 'so on'`;
    const html = printed(heard(sample('petrel').replace('name: battery', `name: ${JSON.stringify(name)}`)), {
      paper: 'a4',
      fileName: 'a.boat.yaml',
      appendix: true,
    });
    expect(html).not.toContain('<script');
    expect(wordsOf(html)).toContain(name);
  });

  it('of a file that says nothing yet still has the form for the pool', () => {
    const words = wordsOf(printed(heard(''), { paper: 'letter', fileName: null, appendix: true }));
    expect(words).toContain('Nothing in the file floats yet');
    expect(words).toContain('At the pool');
  });
});

describe('the boat file in a page', () => {
  it.each([
    ['a sample', sample('petrel')],
    ['line ends of all kinds', 'a\r\nb\rc\n\n'],
    ['what looks like markup', `boat: </style></script><!-- "'&amp;&lt; -->`],
    ['what no page can write', 'a\u0000b\u000bc\ufffed\ud800e\u00a0f'],
  ])('comes out as it went in: %s', (_, text) => {
    const page = `<html><head>${withFile({ name: 'x.boat.yaml', text })}</head></html>`;
    expect(fileIn(page)).toEqual({ name: 'x.boat.yaml', text });
  });
  it.each([
    ['../../etc/passwd', 'passwd.boat.yaml'],
    ['C:\\boats\\tern.boat.yml', 'tern.boat.yaml'],
    ['.hidden', 'hidden.boat.yaml'],
    ['', 'boat.boat.yaml'],
  ])('gets a plain name: %s', (name, plain) => {
    expect(fileIn(`<p>${withFile({ name, text: '' })}`)?.name).toBe(plain);
  });
  it('is none where it was damaged', () => {
    const page: string = withFile({ name: 'x', text: 'y' });
    expect(fileIn(page.replace('&quot;text', '&quot;tex'))).toBeNull();
    expect(fileIn(page.replace('{', ''))).toBeNull();
    expect(fileIn('<p>')).toBeNull();
  });
});

it.each([
  ['', '811c-9dc5'],
  ['a', 'e40c-292c'],
  ['foobar', 'bf9c-f968'],
])('the revision of “%s” is its FNV-1a: test vectors of RFC 9923, from memory', (text, revision) => {
  expect(revisionOf(text)).toBe(revision);
});
