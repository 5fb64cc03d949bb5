import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import manifest from '../../package.json' with { type: 'json' };
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import { createBoatService } from '../../server/service/service.ts';
import { runCommandLine } from '../../server/terminal/commandLine.ts';
import { memoryWorld } from '../helpers/memoryWorld.ts';

const folder = new URL('../../samples/', import.meta.url);
const read = (name: string): string => readFileSync(new URL(name, folder), 'utf8');
const guide = read('README.md');

/** The blocks of one language, as they stand in the guide. */
const blocks = (language: string): readonly string[] => [...guide.matchAll(blockOf(language))].map(match => match[1]!);

const blockOf = (language: string): RegExp => new RegExp(`(?<=^\`\`\`${language}\\n)(.*?)(?=^\`\`\`$)`, 'gms');

/** What a line is about, without its figures: its first words, or the first cell of a table. */
const label = (line: string): string =>
  (/^\| [^|]* \|/.exec(line) ?? /^ *\S+(?: [^\d\s]+)*(?= {2}|:|,| \d|$)/.exec(line) ?? [line])[0];

/** The lines as they are said now, in their order; one that is not said stays as it was, with a mark. */
function renewed(lines: readonly string[], said: readonly string[]): readonly string[] {
  let from = 0;
  return lines.map(line => {
    if (line === '…') return line;
    const at = said.findIndex((each, i) => i >= from && label(each) === label(line));
    if (at < 0) return `NOT SAID: ${line}`;
    from = at + 1;
    return said[at]!;
  });
}

/** The commands of a block run one after the other; `files` keeps what they write. */
function renewedConsole(block: string, files: Map<string, string>): string {
  const lines = block.trimEnd().split('\n');
  const starts = lines.flatMap((line, i) => (line.startsWith('$ ') ? [i] : []));
  const parts = starts.flatMap((start, k) => {
    const { world, said } = memoryWorld({});
    runCommandLine(lines[start]!.replace('$ trimwright ', '').split(' '), {
      ...world,
      readFile: name => files.get(name) ?? read(name),
      rewriteFile: (name, _, now) => void files.set(name, now),
    });
    return [lines[start]!, ...renewed(lines.slice(start + 1, starts[k + 1]), said().out.split('\n'))];
  });
  return `${parts.join('\n')}\n`;
}

/** What hover and light bulb say at the second trial of the guide, once the lead is in. */
function saidOfTrial(): readonly string[] {
  const service = createBoatService();
  const petrel = service.analyse(read('petrel.boat.yaml'));
  const splices = applyChanges(petrel.syntax, petrel.corrections.all()[0]!.changes)!;
  const [trials] = blocks('yaml').filter(piece => piece.startsWith('trials:'));
  const analysis = service.analyse(`${splice(petrel.syntax.text, splices)}\n${trials}`).settled.all();
  const at = analysis.syntax.text.indexOf('condition: submerged');
  const hover = service.hover(analysis, at)?.contents as { readonly value: string };
  const actions = service.codeActions(analysis, [at, at], { uri: 'file:///petrel', version: null });
  return [...hover.value.split('\n'), ...actions.map(({ title }) => title)];
}

test('the program says what the guide says that it says', { timeout: 60_000 }, async () => {
  const files = new Map<string, string>();
  const said = saidOfTrial();
  const text = guide
    .replace(blockOf('console'), block => renewedConsole(block, files))
    .replace(blockOf('text'), block => `${renewed(block.trimEnd().split('\n'), said).join('\n')}\n`);
  expect(text).not.toContain('NOT SAID');
  expect(text.match(/^ {2}Trim /gm)).toHaveLength(6);
  await expect(text).toMatchFileSnapshot('../../samples/README.md');
});

test('pieces of boat files in the guide are read without a fault', () => {
  const service = createBoatService();
  const pieces = blocks('yaml');
  expect(pieces.length).toBeGreaterThan(1);
  const petrel = read('petrel.boat.yaml');
  for (const piece of pieces) {
    // Its own payload is in the boat already; other sections are added to it.
    const text = piece.startsWith('payload:') ? petrel : `${petrel}\n${piece}`;
    if (piece.startsWith('payload:')) expect(petrel).toContain(piece);
    expect(service.analyse(text).file.findings.map(({ message }) => message)).toEqual([]);
  }
});

const prose = guide.replace(/^```.*?^```$/gms, '');
const spans = [...prose.matchAll(/`([^`\n]+)`/g)].map(match => match[1]!);

test('figures in the prose are those of the blocks', () => {
  const [, bg, before, after] = /B\) above the centre of mass \(G\), (\S+) mm here, and (\S+)° has become (\S+)°/.exec(
    prose,
  )!;
  const console = blocks('console').join('\n');
  expect(console).toMatch(new RegExp(`BG, tank water free +${bg} `));
  expect(console).toMatch(new RegExp(`Trim +${before}° bow down`));
  expect(console).toMatch(new RegExp(`Trim +${after}° bow down`));
  expect(read('petrel.boat.yaml')).toMatch(/^ {2}length: 860 mm/m);
  expect(read('petrel.boat.yaml')).toContain('kind: piston');
});

test('commands in the prose are those of the editor and the command line', () => {
  const titles = manifest.contributes.commands.map(({ title }) => title);
  const named = [...prose.matchAll(/\*Trimwright: ([^*]+)\*/g)].map(match => match[1]!);
  expect(named.length).toBeGreaterThan(4);
  expect(named.filter(name => !titles.includes(name))).toEqual([]);
  const { world, said } = memoryWorld({});
  runCommandLine(['--help'], world);
  const words = spans.flatMap(span =>
    span.startsWith('trimwright ') ? [...span.matchAll(/^trimwright [a-z]+|--[a-z-]+/g)].map(match => match[0]) : [],
  );
  expect(words.length).toBeGreaterThan(5);
  expect(words.filter(word => !said().out.includes(word))).toEqual([]);
});

test('keys in the prose are keys of the file', () => {
  const reference = read('../schema/REFERENCE.md');
  const keys = spans.flatMap(span => /^(?:- )?([A-Za-z]+):(?: |$)/.exec(span)?.[1] ?? []);
  expect(keys.length).toBeGreaterThan(20);
  expect(keys.filter(key => !reference.includes(`**${key}**`))).toEqual([]);
});

test('pictures of the guide are there', () => {
  const pictures = [...guide.matchAll(/!\[[^\]]+\]\(([^)]+)\)/g)].map(match => match[1]!);
  expect(pictures.length).toBeGreaterThan(3);
  for (const picture of pictures) expect(readFileSync(new URL(picture, folder)).length).toBeGreaterThan(10_000);
});
