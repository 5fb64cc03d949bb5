import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { describe, expect, it } from 'vitest';

/**
 * The arrows of the house: what each room may import. A room is a folder, or one file named here. `type` imports count:
 * a shape borrowed from a later stage is a dependency on it too.
 */
const rooms: Readonly<Record<string, readonly string[]>> = {
  schema: ['zod'],
  'server/core/steps': [],
  'server/core/statistics': [],
  'server/core/geometry/form': [],
  'server/core/geometry/cut': ['server/core/geometry/form', 'server/core/steps'],
  'server/core/geometry/outline': ['server/core/geometry/form', 'server/core/geometry/cut', 'server/core/steps'],
  'server/core/geometry/mesh': [
    'server/core/geometry/form',
    'server/core/geometry/cut',
    'server/core/geometry/outline',
    'server/core/steps',
  ],
  'server/core/geometry/shapes': [
    'server/core/geometry/form',
    'server/core/geometry/cut',
    'server/core/geometry/outline',
    'server/core/geometry/mesh',
    'server/core/steps',
  ],
  'server/core/meshFiles': [
    'schema',
    'server/core/geometry/form',
    'server/core/geometry/mesh',
    'server/core/steps',
    'fflate',
    'saxes',
  ],
  'server/core/findings/catalogue': [],
  'server/core/findings': ['schema', 'server/core/findings/catalogue'],
  'server/core/text/reading': [
    'server/core/steps',
    'schema',
    'server/core/findings',
    'server/core/findings/catalogue',
    'yaml',
  ],
  'server/core/text/editing': ['schema', 'server/core/findings', 'server/core/text/reading', 'yaml'],
  'server/core/wording': ['schema'],
  'server/core/boat': [
    'server/core/steps',
    'schema',
    'server/core/meshFiles',
    'server/core/text/reading',
    'server/core/geometry/form',
    'server/core/geometry/cut',
    'server/core/geometry/mesh',
    'server/core/geometry/outline',
    'server/core/geometry/shapes',
    'server/core/wording',
    'server/core/findings',
    'server/core/findings/catalogue',
    'zod',
  ],
  'server/core/bodies': [
    'server/core/steps',
    'server/core/boat',
    'server/core/geometry/form',
    'server/core/geometry/cut',
    'server/core/geometry/shapes',
  ],
  'server/core/conditions': [
    'schema',
    'server/core/steps',
    'server/core/boat',
    'server/core/wording',
    'server/core/bodies',
    'server/core/geometry/form',
    'server/core/geometry/cut',
  ],
  'server/core/figures': [
    'schema',
    'server/core/boat',
    'server/core/conditions',
    'server/core/findings/catalogue',
    'server/core/wording',
  ],
  'server/core/planning': [
    'schema',
    'server/core/boat',
    'server/core/bodies',
    'server/core/conditions',
    'server/core/figures',
    'server/core/geometry/form',
    'server/core/geometry/cut',
    'server/core/wording',
  ],
  'server/core/uncertainty': [
    'schema',
    'server/core/steps',
    'server/core/boat',
    'server/core/bodies',
    'server/core/conditions',
    'server/core/figures',
    'server/core/geometry/form',
    'server/core/geometry/cut',
    'server/core/geometry/shapes',
  ],
  'server/core/arrangement': [
    'server/core/steps',
    'schema',
    'server/core/boat',
    'server/core/geometry/form',
    'server/core/geometry/cut',
    'server/core/geometry/shapes',
    'server/core/text/reading',
    'server/core/uncertainty',
    'server/core/findings',
    'server/core/findings/catalogue',
    'server/core/wording',
  ],
  'server/core/trials/estimation': ['server/core/statistics', 'server/core/steps', 'ml-matrix'],
  'server/core/trials/pool': [
    'schema',
    'server/core/steps',
    'server/core/boat',
    'server/core/bodies',
    'server/core/conditions',
    'server/core/figures',
    'server/core/uncertainty',
    'server/core/findings',
    'server/core/geometry/form',
    'server/core/geometry/cut',
    'server/core/trials/estimation',
    'server/core/wording',
  ],
  'server/core/trials': [
    'server/core/steps',
    'server/core/boat',
    'server/core/uncertainty',
    'server/core/findings',
    'server/core/trials/estimation',
    'server/core/trials/pool',
    'server/core/wording',
  ],
  'server/core/judges': [
    'schema',
    'server/core/boat',
    'server/core/conditions',
    'server/core/figures',
    'server/core/planning',
    'server/core/uncertainty',
    'server/core/trials/pool',
    'server/core/trials',
    'server/core/findings',
    'server/core/findings/catalogue',
    'server/core/wording',
    'server/core/steps',
  ],
  'server/core/corrections/room': [
    'schema',
    'server/core/uncertainty',
    'server/core/boat',
    'server/core/bodies',
    'server/core/conditions',
    'server/core/figures',
    'server/core/findings',
    'server/core/geometry/form',
    'server/core/geometry/cut',
    'server/core/geometry/shapes',
    'server/core/wording',
  ],
  'server/core/corrections/correction.ts': [
    'server/core/boat',
    'server/core/bodies',
    'server/core/conditions',
    'server/core/figures',
    'server/core/findings',
    'server/core/corrections/room',
    'server/core/corrections/balance',
  ],
  'server/core/corrections/balance': [
    'server/core/statistics',
    'schema',
    'server/core/uncertainty',
    'server/core/boat',
    'server/core/bodies',
    'server/core/conditions',
    'server/core/figures',
    'server/core/judges',
    'server/core/corrections/room',
    'server/core/geometry/form',
    'server/core/geometry/cut',
    'yalps',
  ],
  'server/core/corrections/words': [
    'schema',
    'server/core/boat',
    'server/core/bodies',
    'server/core/conditions',
    'server/core/figures',
    'server/core/judges',
    'server/core/findings',
    'server/core/corrections/room',
    'server/core/corrections/correction.ts',
    'server/core/corrections/balance',
    'server/core/wording',
  ],
  'server/core/corrections/search': [
    'schema',
    'server/core/steps',
    'server/core/boat',
    'server/core/bodies',
    'server/core/conditions',
    'server/core/figures',
    'server/core/judges',
    'server/core/findings',
    'server/core/corrections/room',
    'server/core/corrections/correction.ts',
    'server/core/corrections/balance',
    'server/core/corrections/words',
    'server/core/wording',
  ],
  'server/core/corrections/kinds': [
    'schema',
    'server/core/steps',
    'server/core/boat',
    'server/core/bodies',
    'server/core/conditions',
    'server/core/figures',
    'server/core/judges',
    'server/core/findings',
    'server/core/corrections/room',
    'server/core/corrections/correction.ts',
    'server/core/corrections/balance',
    'server/core/corrections/search',
    'server/core/corrections/words',
    'server/core/geometry/cut',
    'server/core/wording',
  ],
  'server/core/corrections/remedies': [
    'server/core/steps',
    'server/core/boat',
    'server/core/bodies',
    'server/core/conditions',
    'server/core/findings',
    'server/core/planning',
    'server/core/corrections/room',
    'server/core/corrections/balance',
    'server/core/corrections/search',
    'server/core/corrections/words',
    'server/core/corrections/kinds',
    'server/core/geometry/form',
    'server/core/geometry/cut',
    'server/core/wording',
  ],
  'server/core/corrections': [
    'server/core/steps',
    'server/core/boat',
    'server/core/conditions',
    'server/core/figures',
    'server/core/judges',
    'server/core/findings',
    'server/core/corrections/room',
    'server/core/corrections/correction.ts',
    'server/core/corrections/balance',
    'server/core/corrections/search',
    'server/core/corrections/words',
    'server/core/corrections/kinds',
  ],
  'server/core/analysis': [
    'schema',
    'server/core/arrangement',
    'server/core/geometry/shapes',
    'server/core/meshFiles',
    'server/core/text/reading',
    'server/core/text/editing',
    'server/core/steps',
    'server/core/boat',
    'server/core/bodies',
    'server/core/conditions',
    'server/core/figures',
    'server/core/planning',
    'server/core/uncertainty',
    'server/core/trials',
    'server/core/trials/pool',
    'server/core/judges',
    'server/core/findings',
    'server/core/corrections',
    'server/core/corrections/room',
    'server/core/corrections/correction.ts',
    'server/core/corrections/kinds',
  ],
  'server/core/report': [
    'server/core/text/editing',
    'schema',
    'server/core/analysis',
    'server/core/text/reading',
    'server/core/geometry/form',
    'server/core/geometry/cut',
    'server/core/boat',
    'server/core/bodies',
    'server/core/conditions',
    'server/core/figures',
    'server/core/planning',
    'server/core/uncertainty',
    'server/core/trials',
    'server/core/trials/pool',
    'server/core/judges',
    'server/core/findings',
    'server/core/corrections',
    'server/core/corrections/room',
    'server/core/corrections/correction.ts',
    'server/core/corrections/kinds',
    'server/core/corrections/remedies',
    'server/core/steps',
    'server/core/findings/catalogue',
    'server/core/corrections/balance',
    'server/core/corrections/words',
    'server/core/corrections/search',
    'server/core/wording',
  ],
  'server/core/drawing/styleSheet.ts': [],
  'server/core/drawing/plots': [
    'server/core/corrections',
    'schema',
    'server/core/analysis',
    'server/core/boat',
    'server/core/bodies',
    'server/core/conditions',
    'server/core/figures',
    'server/core/uncertainty',
    'server/core/judges',
    'server/core/trials/pool',
    'server/core/corrections/correction.ts',
    'server/core/corrections/balance',
    'server/core/corrections/room',
    'server/core/geometry/form',
    'server/core/geometry/cut',
    'server/core/geometry/outline',
    'server/core/geometry/shapes',
    'server/core/wording',
    'server/core/drawing/styleSheet.ts',
    'server/core/drawing',
    'd3-scale',
    'd3-shape',
  ],
  'server/core/drawing': [
    'server/core/steps',
    'schema',
    'server/core/analysis',
    'server/core/boat',
    'server/core/bodies',
    'server/core/conditions',
    'server/core/figures',
    'server/core/planning',
    'server/core/uncertainty',
    'server/core/judges',
    'server/core/trials/pool',
    'server/core/corrections/correction.ts',
    'server/core/corrections/balance',
    'server/core/corrections/room',
    'server/core/geometry/form',
    'server/core/geometry/cut',
    'server/core/geometry/outline',
    'server/core/geometry/shapes',
    'server/core/wording',
    'server/core/drawing/styleSheet.ts',
    'server/core/drawing/plots',
    'd3-path',
    'd3-scale',
  ],
  'server/core/drawing/gauges': [
    'schema',
    'server/core/steps',
    'server/core/analysis',
    'server/core/boat',
    'server/core/bodies',
    'server/core/conditions',
    'server/core/figures',
    'server/core/uncertainty',
    'server/core/judges',
    'server/core/trials/pool',
    'server/core/corrections/correction.ts',
    'server/core/corrections/balance',
    'server/core/corrections/room',
    'server/core/geometry/form',
    'server/core/geometry/cut',
    'server/core/geometry/outline',
    'server/core/geometry/shapes',
    'server/core/wording',
    'server/core/drawing/styleSheet.ts',
    'server/core/drawing',
    'server/core/text/reading',
    'server/core/findings',
  ],
  'server/core/drawing/print': [
    'server/core/steps',
    'schema',
    'server/core/analysis',
    'server/core/boat',
    'server/core/bodies',
    'server/core/conditions',
    'server/core/figures',
    'server/core/uncertainty',
    'server/core/judges',
    'server/core/trials/pool',
    'server/core/corrections/correction.ts',
    'server/core/corrections/balance',
    'server/core/corrections/room',
    'server/core/geometry/form',
    'server/core/geometry/cut',
    'server/core/geometry/outline',
    'server/core/geometry/shapes',
    'server/core/wording',
    'server/core/drawing/styleSheet.ts',
    'server/core/drawing',
    'server/core/drawing/gauges',
    'server/core/report',
  ],
  'server/core/poolside/day.ts': [],
  'server/core/poolside': [
    'schema',
    'server/core/analysis',
    'server/core/boat',
    'server/core/corrections',
    'server/core/corrections/correction.ts',
    'server/core/corrections/kinds',
    'server/core/corrections/room',
    'server/core/corrections/words',
    'server/core/drawing',
    'server/core/findings',
    'server/core/meshFiles',
    'server/core/poolside/day.ts',
    'server/core/report',
    'server/core/steps',
    'server/core/text/editing',
    'server/core/text/reading',
    'server/core/trials',
    'server/core/trials/pool',
    'server/core/uncertainty',
    'server/core/wording',
  ],
  'server/editor/answers': [
    'server/core/steps',
    'schema',
    'server/core/analysis',
    'server/core/arrangement',
    'server/core/text/reading',
    'server/core/text/editing',
    'server/core/geometry/form',
    'server/core/geometry/cut',
    'vscode-languageserver-types',
    'server/core/boat',
    'server/core/planning',
    'server/core/bodies',
    'server/core/conditions',
    'server/core/figures',
    'server/core/uncertainty',
    'server/core/trials',
    'server/core/trials/pool',
    'server/core/judges',
    'server/core/findings',
    'server/core/corrections',
    'server/core/corrections/room',
    'server/core/corrections/correction.ts',
    'server/core/corrections/kinds',
    'server/core/findings/catalogue',
    'server/core/corrections/balance',
    'server/core/corrections/words',
    'server/core/wording',
  ],
  'server/service': [
    'schema',
    'server/core/steps',
    'server/core/analysis',
    'server/core/boat',
    'server/core/meshFiles',
    'server/core/findings',
    'server/core/findings/catalogue',
    'server/core/text/reading',
    'server/core/text/editing',
    'server/core/drawing',
    'server/core/drawing/gauges',
    'server/core/drawing/print',
    'server/core/poolside',
    'server/core/report',
    'server/editor/answers',
    'vscode-languageserver-types',
  ],
  'server/editor/protocol.ts': [],
  'server/editor/poolsidePage.ts': [],
  'server/editor': [
    'server/service',
    'server/editor/protocol.ts',
    'vscode-languageserver',
    'vscode-languageserver-textdocument',
  ],
  'server/terminal': [
    'server/service',
    'server/editor/protocol.ts',
    'server/editor/poolsidePage.ts',
    'node:child_process',
    'node:crypto',
    'node:fs',
    'node:os',
    'node:path',
    'node:url',
    'node:util',
  ],
  'client/panel': ['client/panel/placed.ts', 'server/core/drawing/styleSheet.ts', 'server/editor/protocol.ts'],
  // The desktop's entry alone: the rest of the client runs in a browser too.
  'client/extension.ts': ['client', 'node:fs', 'vscode', 'vscode-languageclient'],
  'client/panel/placed.ts': [],
  'client/poolside': [
    'client/panel/placed.ts',
    'server/core/drawing/styleSheet.ts',
    'server/core/poolside',
    'server/core/poolside/day.ts',
  ],
  client: [
    'client/panel',
    'server/editor/poolsidePage.ts',
    'server/editor/protocol.ts',
    'vscode',
    'vscode-languageclient',
  ],
};

/** Rooms that must run in a browser worker as well as in Node. */
const pureRooms = Object.keys(rooms).filter(room => !/^client|^server\/(?:editor|terminal)$/.test(room));

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

describe('what is dangerous has one door', () => {
  it('texts come to the YAML parser by the guard against deep nesting', () => {
    const callers = sources.filter(file =>
      /\b(?:parseDocument|parseAllDocuments|Composer)\b|import \{[^}]*\bparse\b[^}]*\} from 'yaml'/.test(
        readFileSync(file, 'utf8'),
      ),
    );
    expect(callers).toEqual(['server/core/text/reading/parseYaml.ts']);
  });
});

describe('limits are read in one place', () => {
  /** What the file asks is read by the reader of the boat, handed out by the loading conditions, and told by the figures. */
  const readers = ['server/core/boat', 'server/core/figures', 'server/core/conditions/loadingCondition.ts'];

  it('the figures tell what a limit allows; nobody else looks', () => {
    const others = sources.filter(
      file => file.startsWith('server') && !readers.some(reader => file === reader || file.startsWith(`${reader}/`)),
    );
    const looking = others.filter(file => /\.limits\b|[{,]\s*limits\b[^}]*\}\s*[:)=]/.test(programOf(file)));
    expect(looking).toEqual([]);
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

/** A file without its comments and its words for people. */
const programOf = (file: string): string =>
  readFileSync(file, 'utf8').replace(/\/\*[\s\S]*?\*\/|\/\/.*|'(?:[^'\\\n]|\\.)*'|`[^`]*`/g, '');

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
