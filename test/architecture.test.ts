import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { describe, expect, it } from 'vitest';

/**
 * The arrows of the house: what each room may import. A room is a folder, or one file named here. `type` imports count:
 * a shape borrowed from a later stage is a dependency on it too.
 */
const rooms: Readonly<Record<string, readonly string[]>> = {
  schema: ['zod'],
  'server/geometry': [],
  'server/findings/catalogue': [],
  'server/findings/finding.ts': ['schema', 'server/findings/catalogue'],
  'server/text': ['schema', 'server/findings/finding.ts', 'server/findings/catalogue', 'yaml'],
  'server/mesh': ['server/geometry', 'fflate', 'saxes'],
  'server/steps.ts': [],
  'server/wording': ['schema'],
  'server/boat': [
    'server/mesh',
    'schema',
    'server/text',
    'server/geometry',
    'server/wording',
    'server/findings/finding.ts',
    'server/findings/catalogue',
    'zod',
  ],
  'server/bodies': ['server/boat', 'server/geometry'],
  'server/conditions': ['server/bodies', 'server/geometry'],
  'server/uncertainty': ['schema', 'server/boat', 'server/bodies', 'server/conditions', 'server/geometry'],
  'server/findings': [
    'server/trials',
    'schema',
    'server/findings/catalogue',
    'server/findings/finding.ts',
    'server/boat',
    'server/bodies',
    'server/conditions',
    'server/uncertainty',
    'server/wording',
  ],
  'server/corrections': [
    'schema',
    'server/steps.ts',
    'server/boat',
    'server/bodies',
    'server/conditions',
    'server/findings',
    'server/findings/finding.ts',
    'server/geometry',
    'server/wording',
    'yalps',
  ],
  'server/trials': [
    'schema',
    'server/steps.ts',
    'server/boat',
    'server/bodies',
    'server/conditions',
    'server/uncertainty',
    'server/findings/finding.ts',
    'server/geometry',
    'server/wording',
    'ml-matrix',
  ],
  'server/analysis.ts': [
    'server/trials',
    'schema',
    'server/steps.ts',
    'server/mesh',
    'server/text',
    'server/boat',
    'server/bodies',
    'server/conditions',
    'server/corrections',
    'server/uncertainty',
    'server/findings',
    'server/findings/finding.ts',
  ],
  'server/report': [
    'server/trials',
    'schema',
    'server/analysis.ts',
    'server/boat',
    'server/conditions',
    'server/corrections',
    'server/uncertainty',
    'server/findings/catalogue',
    'server/findings',
    'server/findings/finding.ts',
    'server/geometry',
    'server/text',
    'server/wording',
  ],
  'server/drawing/styleSheet.ts': [],
  'server/drawing': [
    'schema',
    'server/drawing/styleSheet.ts',
    'server/analysis.ts',
    'server/bodies',
    'server/boat',
    'server/conditions',
    'server/corrections',
    'server/uncertainty',
    'server/findings',
    'server/geometry',
    'server/report',
    'server/trials',
    'server/wording',
    'd3-path',
    'd3-scale',
    'd3-shape',
  ],
  'server/answers': [
    'server/trials',
    'schema',
    'server/uncertainty',
    'server/findings/catalogue',
    'server/analysis.ts',
    'server/boat',
    'server/conditions',
    'server/uncertainty',
    'server/corrections',
    'server/findings',
    'server/findings/finding.ts',
    'server/geometry',
    'server/text',
    'server/wording',
    'vscode-languageserver-types',
  ],
  'server/service.ts': [
    'server/mesh',
    'server/findings/catalogue',
    'schema',
    'server/analysis.ts',
    'server/answers',
    'server/drawing',
    'server/report',
    'server/text',
    'vscode-languageserver-types',
  ],
  'server/protocol.ts': [],
  'client/panel': ['server/drawing/styleSheet.ts'],
  client: ['client/panel', 'server/protocol.ts', 'vscode', 'vscode-languageclient'],
};

/** Rooms that must run in a browser worker as well as in Node. */
const pureRooms = Object.keys(rooms).filter(room => !room.startsWith('client'));

const sources = ['schema', 'server', 'client']
  .flatMap(folder => filesBelow(folder))
  .filter(file => /\.tsx?$/.test(file));

describe('the arrows point one way', () => {
  it.each(Object.keys(rooms))('%s imports only what it may', room => {
    const files = sources.filter(file => roomOf(file) === room);
    expect(files.length).toBeGreaterThan(0);
    const allowed = new Set([room, ...rooms[room]!]);
    const strangers = files.flatMap(file =>
      importsOf(file)
        .filter(target => !allowed.has(roomOf(target)))
        .map(target => `${file} -> ${target}`),
    );
    expect(strangers).toEqual([]);
  });

  it('no file reaches itself through its imports', () => {
    const graph = new Map(sources.map(file => [file, importsOf(file).filter(target => sources.includes(target))]));
    const cycles = sources.filter(file => reaches(graph, file, file));
    expect(cycles).toEqual([]);
  });

  it('the core knows neither Node, nor the editor, nor the clock', () => {
    const pure = sources.filter(file => pureRooms.includes(roomOf(file)));
    expect(pure.length).toBeGreaterThan(40);
    const impure = pure.filter(file =>
      /from '(?:node:|fs|path|vscode')|\bprocess\.|\bDate\.now\b|\bnew Date\(\)|\bMath\.random\b|\bsetTimeout\b/.test(
        readFileSync(file, 'utf8'),
      ),
    );
    expect(impure).toEqual([]);
  });
});

describe('a file has one subject', () => {
  it('no source file is longer than 300 lines', () => {
    const long = sources
      .map(file => ({ file, lines: readFileSync(file, 'utf8').split('\n').length - 1 }))
      .filter(({ lines }) => lines > 300);
    expect(long).toEqual([]);
  });
});

function filesBelow(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter(entry => entry.isFile())
    .map(entry => join(entry.parentPath, entry.name));
}

/** Files as they are on disk, packages by their name. */
function importsOf(file: string): readonly string[] {
  const text = readFileSync(file, 'utf8');
  return [...text.matchAll(/^(?:import|export)\b[^'";]*?from '([^']+)'|^import '([^']+)'/gms)].map(match => {
    const target = match[1] ?? match[2]!;
    return target.startsWith('.') ? normalize(join(dirname(file), target)) : target.split('/')[0]!;
  });
}

/** The most exact room that a file is in. */
function roomOf(file: string): string {
  const holders = Object.keys(rooms).filter(room => file === room || file.startsWith(`${room}/`));
  return holders.sort((a, b) => b.length - a.length)[0] ?? file;
}

function reaches(graph: ReadonlyMap<string, readonly string[]>, from: string, to: string): boolean {
  const seen = new Set<string>();
  const waiting = [...(graph.get(from) ?? [])];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (next === to) return true;
    if (seen.has(next)) continue;
    seen.add(next);
    waiting.push(...(graph.get(next) ?? []));
  }
  return false;
}
