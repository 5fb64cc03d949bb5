import type * as z from 'zod';
import { boatKeyHelp } from './boatFile.ts';
import type { Path } from './path.ts';

/** What may stand in a map of the boat file. */
export interface KeyInfo {
  readonly key: string;
  readonly description: string;
  readonly example?: string;
  readonly required: boolean;
  /** The words it may be, where there are few. */
  readonly words?: readonly string[];
  /** What stands below it: a map, a list or a plain value. */
  readonly holds: 'map' | 'list' | 'value';
}

export interface Describer {
  /** The keys of the map at a path, in the order of the schema; empty where no map belongs. */
  keysAt(path: Path): readonly KeyInfo[];
  /** Their names alone: what is to be said of each takes long to make. */
  namesAt(path: Path): readonly string[];
  /** Whether the map at a path may have such a key. */
  isKey(path: Path, key: string): boolean;
  /** The description of the key or entry at a path. */
  describe(path: Path): KeyInfo | null;
}

type Node = z.core.JSONSchema.BaseSchema;

/** Key help drawn from the schema's own descriptions. What was built once, when first asked for, is only looked up. */
export function createDescriber(): Describer {
  let made: Node | null = null;
  const root = (): Node => {
    made ??= boatKeyHelp();
    return made;
  };
  return {
    keysAt: path => {
      const node = mapOf(walk(root(), path));
      if (!node?.properties) return [];
      return Object.entries(node.properties).map(([key, value]) => keyInfo(key, value as Node, node));
    },
    namesAt: path => Object.keys(mapOf(walk(root(), path))?.properties ?? {}),
    isKey: (path, key) => Object.hasOwn(mapOf(walk(root(), path))?.properties ?? {}, key),
    describe: path => {
      const key = path.at(-1);
      if (key === undefined) return null;
      const node = walk(root(), path);
      if (!node) return null;
      return keyInfo(String(key), node, mapOf(walk(root(), path.slice(0, -1))) ?? {});
    },
  };
}

function walk(root: Node, path: Path): Node | null {
  let node: Node | null = root;
  for (const step of path) {
    if (!node) return null;
    if (typeof step === 'string') node = ownOf(mapOf(node)?.properties, step);
    else node = itemOf(node, step);
  }
  return node;
}

const mapOf = (node: Node | null): Node | null =>
  node?.properties ? node : ((node?.anyOf?.find(option => (option as Node).properties) as Node | undefined) ?? null);

/** A key of the schema's own: files may have keys such as “constructor”. */
const ownOf = (properties: Node['properties'], key: string): Node | null =>
  properties && Object.hasOwn(properties, key) ? (properties[key] as Node) : null;

function itemOf(node: Node, position: number): Node | null {
  const items = node.items;
  if (Array.isArray(items)) return (items[position] as Node | undefined) ?? null;
  return items && typeof items === 'object' ? (items as Node) : null;
}

function keyInfo(key: string, node: Node, parent: Node): KeyInfo {
  const words = (node.enum ?? node.anyOf?.flatMap(option => (option as Node).enum ?? [])) as string[] | undefined;
  const example = node.examples?.[0];
  return {
    key,
    description: node.description ?? '',
    ...(example === undefined ? {} : { example: Array.isArray(example) ? `[${example.join(', ')}]` : String(example) }),
    required: parent.required?.includes(key) ?? false,
    ...(words?.length ? { words: [...new Set(words)] } : node.type === 'boolean' ? { words: ['true', 'false'] } : {}),
    holds: mapOf(node) && node.type === 'object' ? 'map' : node.type === 'array' ? 'list' : 'value',
  };
}
