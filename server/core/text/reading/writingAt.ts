import type { Path } from '../../../../schema/path.ts';
import { lineEnd, lineStart, type Span } from './lines.ts';
import { isMapNode, isSeq, visit } from './nodes.ts';
import { pathAt } from './pathAt.ts';
import type { Syntax } from './syntax.ts';
import { spanOf } from './tree.ts';
import { keysOf } from './values.ts';

/** What could be written at an offset, also where the file around it is half typed. */
export type Writing = WritingKey | WritingValue | WritingEntry;

interface Typed {
  /** What stands there already, up to the offset. */
  readonly typed: string;
  /** All of the word or value that stands there. */
  readonly span: Span;
  /** Between brackets, where nothing can go on a line below. */
  readonly isFlow: boolean;
}

/** A key of the map at a path. */
export interface WritingKey extends Typed {
  readonly on: 'key';
  readonly path: Path;
  /** A colon follows already. */
  readonly hasColon: boolean;
  /** Keys that the map has, the one at the offset aside. */
  readonly written: readonly string[];
}

/** The value of the key at a path. */
interface WritingValue extends Typed {
  readonly on: 'value';
  readonly path: Path;
}

/** A new entry, dash and all, of the list at a path. */
export interface WritingEntry extends Typed {
  readonly on: 'entry';
  readonly path: Path;
}

export function writingAt(syntax: Syntax, offset: number): Writing | null {
  const { text } = syntax;
  const start = lineStart(text, offset);
  if (isInComment(text.slice(start, offset))) return null;
  const flow = flowStart(syntax, offset);
  return flow === null ? writingInBlock(syntax, start, offset) : writingInFlow(syntax, flow, offset);
}

function writingInBlock(syntax: Syntax, start: number, offset: number): Writing | null {
  const { text } = syntax;
  const before = text.slice(start, offset);
  const value = /^(\s*(?:-\s+)*)([\w-]+):\s+(.*)$/s.exec(before);
  if (value) {
    const [, lead = '', key = '', typed = ''] = value;
    const at = pathAt(syntax, start + lead.length);
    const path = at.on === 'key' ? at.path : [...at.path, key];
    return { on: 'value', path, typed, span: [offset - typed.length, valueEnd(syntax, offset)], isFlow: false };
  }
  const key = /^\s*(?:-\s+)*([\w-]*)$/.exec(before);
  if (!key) return null;
  const typed = key[1] ?? '';
  const at = pathAt(syntax, offset);
  const span: Span = [offset - typed.length, offset + /^[\w-]*/.exec(text.slice(offset))![0].length];
  if (isSeq(at.node) && at.on === 'between') return { on: 'entry', path: at.path, typed, span, isFlow: false };
  const path = at.on === 'key' ? at.path.slice(0, -1) : at.path;
  return writingKey(syntax, { path, typed, span, isFlow: false });
}

function writingKey(syntax: Syntax, key: Typed & { readonly path: Path }, own: readonly string[] = []): WritingKey {
  const { text } = syntax;
  const word = text.slice(...key.span);
  const hasColon = /^[ \t]*:/.test(text.slice(key.span[1], lineEnd(text, key.span[1])));
  const written = [...keysOf(syntax, key.path), ...own].filter(name => name !== word);
  return { on: 'key', ...key, hasColon, written };
}

/** One open bracket, from outside in. */
interface Frame {
  readonly isMap: boolean;
  index: number;
  key: string | null;
  /** Where what is being written in it starts. */
  from: number;
  readonly keys: string[];
}

/** Reads the brackets from the outermost to the offset by their text, so that what is half typed does not matter. */
function writingInFlow(syntax: Syntax, start: number, offset: number): Writing | null {
  const { text } = syntax;
  const frames = openFrames(text, start, offset);
  const inner = frames.at(-1);
  if (!inner) return null;
  const outer = pathAt(syntax, start + 1);
  const base = outer.on === 'key' ? outer.path.slice(0, -1) : outer.path;
  const steps = frames.slice(0, -1).map(frame => (frame.isMap ? (frame.key ?? '') : frame.index));
  const path = [...baseOf(base, outer.on, frames[0]!), ...steps];
  const typed = text.slice(inner.from, offset).trimStart();
  const from = offset - typed.length;
  if (inner.isMap && inner.key === null) {
    if (!/^[\w-]*$/.test(typed)) return null;
    const span: Span = [from, offset + /^[\w-]*/.exec(text.slice(offset))![0].length];
    return writingKey(syntax, { path, typed, span, isFlow: true }, inner.keys);
  }
  const span: Span = [from, offset + /^[^,{}[\]\r\n]*/.exec(text.slice(offset))![0].trimEnd().length];
  if (inner.isMap) return { on: 'value', path: [...path, inner.key ?? ''], typed, span, isFlow: true };
  return { on: 'entry', path, typed, span, isFlow: true };
}

/** The path of the outermost brackets: an item found just inside a list is one step too deep. */
const baseOf = (path: Path, on: string, outermost: Frame): Path =>
  on === 'value' && !outermost.isMap && typeof path.at(-1) === 'number' ? path.slice(0, -1) : path;

function openFrames(text: string, start: number, offset: number): readonly Frame[] {
  const frames: Frame[] = [];
  let quote: string | null = null;
  for (let i = start; i < offset; i += 1) {
    const char = text[i]!;
    const frame = frames.at(-1);
    if (quote !== null) {
      if (char === quote) quote = null;
    } else if ((char === '"' || char === "'") && /^\s*$/.test(text.slice(frame?.from ?? start, i))) quote = char;
    else if (char === '{' || char === '[')
      frames.push({ isMap: char === '{', index: 0, key: null, from: i + 1, keys: [] });
    else if (char === '}' || char === ']') frames.pop();
    else if (frame && char === ',') Object.assign(frame, { index: frame.index + 1, key: null, from: i + 1 });
    else if (frame?.isMap && frame.key === null && char === ':' && /^:(?:\s|$)/.test(text.slice(i, i + 2))) {
      frame.key = text.slice(frame.from, i).trim();
      frame.keys.push(frame.key);
      frame.from = i + 1;
    }
  }
  return frames;
}

/** Where the outermost bracket that is open at an offset stands: in the tree, or on the line where the tree has none. */
function flowStart({ text, root }: Syntax, offset: number): number | null {
  let found: number | null = null;
  visit(root, {
    node: node => {
      if (!(isMapNode(node) || isSeq(node)) || !node.flow) return true;
      if (node.start < offset && offset < node.end) found ??= node.start;
      return false;
    },
  });
  if (found !== null) return found;
  const start = lineStart(text, offset);
  const value = /^\s*(?:-\s+)*(?:[\w-]+:\s+)?(?=[{[])/.exec(text.slice(start, offset));
  if (!value) return null;
  const bracket = start + value[0].length;
  return bracket < offset && openFrames(text, bracket, offset).length > 0 ? bracket : null;
}

/** The end of the value that an offset is in, where it is one scalar on one line; else the offset. */
function valueEnd(syntax: Syntax, offset: number): number {
  const { node, on } = pathAt(syntax, offset);
  const span = on === 'value' ? spanOf(node) : null;
  return span && span[1] > offset && lineEnd(syntax.text, offset) >= span[1] ? span[1] : offset;
}

/** A `#` at the start of a line or after a blank, outside quotes. */
const isInComment = (before: string): boolean => /(?:^|\s)#/.test(before.replace(/"[^"]*"|'[^']*'/g, '""'));
