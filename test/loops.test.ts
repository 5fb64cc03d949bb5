import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

/**
 * A loop whose end hangs on a comparison of figures never ends where a figure is NaN, and takes the editor's server with
 * it. So every loop either counts, or says above it why it ends whatever the figures: `// Ends: each round takes one away.`
 */
const sources = ['schema', 'server']
  .flatMap(folder => readdirSync(folder, { recursive: true, withFileTypes: true }))
  .filter(entry => entry.isFile() && entry.name.endsWith('.ts'))
  .map(entry => join(entry.parentPath, entry.name));

/** `for (let i = 0; i < count; i++)`, also a few beyond the counter, in other steps, or halving. */
const COUNTS =
  /^for \(let (\w+)\b[^;]*; \1(?: \+ \d+)? (?:<|<=|>|>=) [^;]+; \1(?:\+\+|--| [+-]= \w+| \/= \d+)(?:, \w+\+\+)?\)/;
const WALKS = /^for \((?:const|let) [^;]*? (?:of|in) /;

/** Loops that neither count nor walk through a list, and say nothing of their end. */
function openLoops(text: string): readonly string[] {
  const lines = text.split('\n');
  return lines.flatMap((line, i) => {
    const loop = /(?:^\s*|\) |else )((?:for \(|while \(|do \{).*)/.exec(line)?.[1];
    if (loop === undefined || COUNTS.test(loop) || WALKS.test(loop)) return [];
    return isToldAbove(lines, i) ? [] : [`${i + 1}: ${line.trim()}`];
  });
}

/** The comment above says it, wherever in its lines. */
function isToldAbove(lines: readonly string[], at: number): boolean {
  for (let i = at - 1; i >= 0 && /^\s*\/\//.test(lines[i]!); i--) if (/\bEnds: \w/.test(lines[i]!)) return true;
  return false;
}

describe('every loop ends', () => {
  it.each([
    ['for (;;) {', 1],
    ['while (a < b) {', 1],
    ['for (let a = 0; a !== b; ) {', 1],
    ['for (let a = 0; a < b; a++) {', 0],
    ['for (const a of b) {', 0],
    ['// Ends: it gets shorter.\nwhile (a < b) {', 0],
  ])('%s: %i open', (text, count) => {
    expect(openLoops(text)).toHaveLength(count);
  });

  it('counts, walks through a list, or says why it ends', () => {
    expect(sources.length).toBeGreaterThan(200);
    const open = sources.flatMap(file => openLoops(readFileSync(file, 'utf8')).map(line => `${file}:${line}`));
    expect(open).toEqual([]);
  });
});
