import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import manifest from '../../package.json' with { type: 'json' };
import { readQuantity, readRange } from '../../schema/quantity.ts';
import { textReport } from '../../server/core/report/textReport.ts';
import { runCommandLine } from '../../server/terminal/commandLine.ts';
import { analysed, heard } from '../helpers/analysed.ts';
import { memoryWorld } from '../helpers/memoryWorld.ts';

const read = (file: string): string => readFileSync(new URL(`../../${file}`, import.meta.url), 'utf8');
const readme = read('README.md');
const example = /```yaml\n(.*?)```/s.exec(readme)![1]!;
const prose = readme.replace(/```.*?```/gs, '');
/** What stands in italics, without what is bold. */
const italics = [...prose.replace(/\*\*[^*]+\*\*/g, '').matchAll(/\*([^*\n]+)\*/g)].map(match => match[1]!);

test('the example, pasted, is a boat in trim without a finding', () => {
  const { file, findings } = heard(example);
  expect(file.isWhole).toBe(true);
  expect(findings.map(({ message }) => message)).toEqual([]);
});

test('what the program is quoted with is what it says of the boat that the sheet shows', () => {
  const report = textReport(heard(read('samples/petrel.boat.yaml')));
  const quoted = italics.filter(words => /\d/.test(words));
  expect(quoted.length).toBeGreaterThan(1);
  expect(quoted.filter(words => !report.includes(words))).toEqual([]);
});

test('every other name in italics is a command, a menu of the editor or a sample', () => {
  const commands = manifest.contributes.commands.map(({ title }) => title);
  const named = italics.filter(words => !/\d/.test(words) && !words.startsWith('Extensions: '));
  const isSample = (name: string) => read(`samples/${name.toLowerCase()}.boat.yaml`).includes(`boat: ${name}`);
  expect(named.filter(name => !commands.includes(name) && !isSample(name))).toEqual([]);
});

test('a boat is “it”, in all that a builder reads', () => {
  const files = [
    'package.json',
    'README.md',
    'samples/README.md',
    'samples/EDITORS.md',
    'schema/REFERENCE.md',
    'CHANGELOG.md',
  ];
  expect(files.flatMap(file => read(file).match(/.*\b(?:she|hers?)\b.*/gi) ?? [])).toEqual([]);
});

describe('quantities in the prose are read as they stand', () => {
  it.each([
    ['7/16 in', 'length'],
    ['5 1/4 in', 'length'],
    ['1 lb 3 oz', 'mass'],
    ['240 ± 5 g', 'mass'],
    ['2°', 'angle'],
    ['63 %', 'fraction'],
  ] as const)('%s', (text, dimension) => {
    expect(prose).toContain(`\`${text}\``);
    expect(readQuantity(text, dimension, { length: 'mm', mass: 'g' }).ok).toBe(true);
  });
  it('120 to 480 mm', () => {
    expect(prose).toContain('`120 to 480 mm`');
    expect(readRange('120 to 480 mm', 'length', { length: 'mm', mass: 'g' }).ok).toBe(true);
  });
});

test('the samples are what is said of them', () => {
  const sentence = /The boats in \[samples\].*?\.(?=\n)/s.exec(prose)![0];
  const boats = Object.fromEntries(
    ['Petrel', 'Curlew', 'Sprat', 'Guillemot', 'Dunlin'].map(name => [
      name,
      analysed(read(`samples/${name.toLowerCase()}.boat.yaml`)),
    ]),
  );
  const { Petrel, Curlew, Sprat, Guillemot, Dunlin } = boats;
  expect(Petrel!.findings.some(({ severity }) => severity === 'warning')).toBe(true);
  expect(Curlew!.findings.filter(({ severity }) => severity !== 'information')).toEqual([]);
  expect(Sprat!.boat.units).toMatchObject({ length: 'in', mass: 'oz' });
  expect(Sprat!.boat.shells).toEqual([]);
  expect(Guillemot!.file.wantedFiles).toHaveLength(1);
  expect(Dunlin!.trials.length).toBeGreaterThan(0);
  expect([...sentence.matchAll(/\*(\w+)\*/g)].map(match => match[1])).toEqual(Object.keys(boats));
});

test('what the packages, settings and files are called', () => {
  const { name, version, engines } = manifest;
  expect(prose).toContain(`\`${name}-${version}.tgz\``);
  expect(prose).toContain(
    `Node.js](https://nodejs.org) ${engines.node.replace(/[^\d.]/g, '').replace(/\.0$/, '')} or newer`,
  );
  const settings = Object.keys(manifest.contributes.configuration.properties);
  const named = [...prose.matchAll(/`(trimwright\.[a-z]+)`/g)].map(match => match[1]!);
  expect(named.filter(each => each !== 'trimwright.vsix' && !settings.includes(each))).toEqual([]);
  const links = [...prose.matchAll(/\]\(([^):]+)\)/g)].map(match => match[1]!);
  expect(links.length).toBeGreaterThan(8);
  for (const link of links) expect(existsSync(new URL(`../../${link}`, import.meta.url)), link).toBe(true);
});

test('every command and option of the command line is in its help', () => {
  const { world, said } = memoryWorld({});
  runCommandLine(['--help'], world);
  const spans = [...prose.matchAll(/`(trimwright [^`]+|--[a-z-]+)`/g)].map(match => match[1]!);
  const words = spans.flatMap(span => [...span.matchAll(/^trimwright [a-z]+|--[a-z-]+/g)].map(match => match[0]));
  expect(words.length).toBeGreaterThan(10);
  expect(words.filter(word => !said().out.includes(word))).toEqual([]);
});
