import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseAst } from 'vitest/node';

/* What the tests keep to among themselves. */

const folder = new URL('.', import.meta.url).pathname;
const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(file => file.endsWith('.ts'));

/** A node of the syntax tree, as the parser gives it. */
interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
}

const isNode = (value: unknown): value is Node => typeof value === 'object' && value !== null && 'type' in value;

function* nodesIn(value: unknown): Generator<Node> {
  if (Array.isArray(value)) for (const each of value) yield* nodesIn(each);
  if (!isNode(value)) return;
  yield value;
  for (const part of Object.values(value)) yield* nodesIn(part);
}

/** Where the code of a test has a fault: `file:line`. */
function faultsIn(file: string, program: string, isFault: (node: Node, source: string) => boolean): readonly string[] {
  const faults = [...nodesIn(parseAst(program, { lang: 'ts' }))].filter(node =>
    isFault(node, program.slice(node.start, node.end)),
  );
  return faults.map(({ start }) => `${file}:${program.slice(0, start).split('\n').length}`);
}

const faultsInAll = (isFault: (node: Node, source: string) => boolean): readonly string[] =>
  files.flatMap(file => faultsIn(file, readFileSync(join(folder, file), 'utf8'), isFault));

const sources = ['schema', 'server', 'client'].flatMap(room =>
  readdirSync(join(folder, '..', room), { recursive: true, encoding: 'utf8' })
    .filter(file => file.endsWith('.ts'))
    .map(file => join(room, file)),
);
const sourceOf = (file: string): string => readFileSync(join(folder, '..', file), 'utf8');

/** The keys of a boat file, by its JSON Schema. */
function keysOf(value: unknown): readonly string[] {
  if (typeof value !== 'object' || value === null) return [];
  const own = 'properties' in value && value.properties ? Object.keys(value.properties) : [];
  return [...own, ...Object.values(value).flatMap(keysOf)];
}
const schema: unknown = JSON.parse(readFileSync(new URL('../schema/boat.schema.json', import.meta.url), 'utf8'));
const keys = new Set(keysOf(schema));

/** A line of a boat file, as it begins with a key or an entry. */
const yamlLine = new RegExp(`(?:^|\\\\n|\\\\t|})[ ]*(?:- |(?:${[...keys].join('|')}):)`);
/** A line's end written as an escape; a backslash before it makes it none. */
const escapedEnd = /(?<!\\)(?:\\\\)*\\n/;

/** What stands between the quotes, `}` for what is put in. */
function quoted(node: Node, source: string): string {
  if (node.type === 'Literal') return /^['"]/.test(source) ? source.slice(1, -1) : '';
  if (node.type !== 'TemplateLiteral') return '';
  const { quasis } = node as Node & { readonly quasis: readonly { readonly value: { readonly raw: string } }[] };
  return quasis.map(({ value }) => value.raw).join('}');
}

function isEscapedBoatText(node: Node, source: string): boolean {
  const text = quoted(node, source);
  return escapedEnd.test(text) && yamlLine.test(text);
}

const PICKS = new Set(['find', 'findLast', 'findIndex', 'filter']);

/** Titles and messages are for people: what is picked is picked by its code, kind, path or position. */
function isPickByWords(node: Node): boolean {
  const call = node as Node & { readonly callee?: { readonly property?: Named }; readonly arguments?: unknown };
  if (node.type !== 'CallExpression' || !PICKS.has(call.callee?.property?.name ?? '')) return false;
  return [...nodesIn(call.arguments)].some(
    part => part.type === 'Identifier' && ['title', 'message'].includes((part as Node & Named).name),
  );
}

interface Named {
  readonly name: string;
}

const LOOKS = new Set(['startsWith', 'endsWith', 'match', 'matchAll', 'search', 'slice', 'split']);
const IS_LOOKED = new Set(['test', 'exec']);

/** The last name of `finding.code`, or of `code`. */
function lastName(node: unknown): string | undefined {
  if (!isNode(node)) return undefined;
  const { name, property } = node as Node & Partial<Named> & { readonly property?: Named };
  return name ?? property?.name;
}

/** A code is one word, a title is for people: neither is taken apart. */
function isPartOfCode(node: Node): boolean {
  const call = node as Node & {
    readonly callee?: { readonly property?: Named; readonly object?: unknown };
    readonly arguments?: readonly unknown[];
  };
  if (node.type !== 'CallExpression') return false;
  const way = call.callee?.property?.name ?? '';
  const looked = LOOKS.has(way) ? call.callee?.object : IS_LOOKED.has(way) ? call.arguments?.[0] : null;
  return ['code', 'title'].includes(lastName(looked) ?? '');
}

describe('a boat text in a test', () => {
  it('stands in a template string, its lines as they are', () => {
    expect(keys.size).toBeGreaterThan(50);
    expect(faultsInAll(isEscapedBoatText)).toEqual([]);
  });

  it.each(["'boat: T\\nhull:\\n'", "'  length: 9\\n'", "'x\\n  - y'", `\`- \${x}\\n\``, `\`\${x}payload:\\n\``])(
    '%s does not',
    literal => {
      expect(faultsIn('it', `f(${literal});`, isEscapedBoatText)).toEqual(['it:1']);
    },
  );

  it.each(["'petrel: written.\\n'", '/\\nbays:/', "'bays:\\\\n'"])('%s is none', literal => {
    expect(faultsIn('it', `f(${literal});`, isEscapedBoatText)).toEqual([]);
  });
});

describe('a correction, finding or offer', () => {
  it('is picked by what it is, not by what it says', () => {
    // The editor's own test sees what a person sees.
    expect(faultsInAll(isPickByWords).filter(fault => !fault.startsWith('editor/'))).toEqual([]);
  });

  it.each(["all.find(({ title }) => title === 'x')", 'all.filter(each => /x/.test(each.message))'])(
    '%s is not',
    code => {
      expect(faultsIn('it', code, isPickByWords)).toEqual(['it:1']);
    },
  );
});

describe('a code or a title', () => {
  it('is taken as a whole: what a finding is about, it says itself', () => {
    const inSources = sources.flatMap(file => faultsIn(file, sourceOf(file), isPartOfCode));
    const inTests = faultsInAll(isPartOfCode).filter(fault => !fault.startsWith('editor/'));
    expect([...inSources, ...inTests]).toEqual([]);
  });

  it.each([
    "code.startsWith('surfaced-')",
    'all.filter(finding => /^transit-/.test(finding.code))',
    "correction.title.split(':')",
  ])('%s is none', code => {
    expect(faultsIn('it', code, isPartOfCode)).toEqual(['it:1']);
  });
});

/** Lines that a function of the program may have, its own types and all. */
const MOST_LINES = 80;

const isFunction = ({ type }: Node): boolean =>
  ['FunctionDeclaration', 'FunctionExpression', 'ArrowFunctionExpression'].includes(type);

const isLong = (node: Node, source: string): boolean => isFunction(node) && source.split('\n').length > MOST_LINES;

describe('a function', () => {
  it(`has no more than ${MOST_LINES} lines`, () => {
    expect(sources.flatMap(file => faultsIn(file, sourceOf(file), isLong))).toEqual([]);
  });

  it('of one line more is found', () => {
    const lines = '\n'.repeat(MOST_LINES);
    expect(faultsIn('it', `const f = () => {${lines}};`, isLong)).toEqual(['it:1']);
    expect(faultsIn('it', `const f = () => {${lines.slice(1)}};`, isLong)).toEqual([]);
  });
});

describe('a name', () => {
  const declared = /^export (?:declare |async )*(?:const|function\*?|class|interface|type|enum) +\*?(\w+)/gm;

  it('has one home: no two files export the same one', () => {
    const homes = new Map<string, string[]>();
    for (const file of sources) {
      for (const [, name] of sourceOf(file).matchAll(declared)) {
        homes.set(name!, [...(homes.get(name!) ?? []), file]);
      }
    }
    expect(homes.size).toBeGreaterThan(1000);
    const shared = [...homes].filter(([, files]) => files.length > 1);
    // Both entries of the extension are asked for by this name.
    expect(shared.map(([name]) => name)).toEqual(['activate']);
  });
});
