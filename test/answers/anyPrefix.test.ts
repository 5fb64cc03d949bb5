import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { createBoatService } from '../../server/service/service.ts';

const folder = new URL('../../samples/', import.meta.url);
const samples = readdirSync(folder)
  .filter(name => name.endsWith('.boat.yaml'))
  .map(name => readFileSync(new URL(name, folder), 'utf8'));

const service = createBoatService();
const uri = 'file:///sample.boat.yaml';

/** Everything that an editor asks for while someone types. */
function askAll(analysis: Analysis, offset: number): void {
  for (const { range, message } of service.diagnostics(analysis, null)) {
    expect(message).not.toBe('');
    const [start, end] = [range.start, range.end];
    expect(start.line < end.line || (start.line === end.line && start.character <= end.character)).toBe(true);
  }
  service.hover(analysis, offset);
  service.completions(analysis, offset);
  service.symbols(analysis);
  service.summary(analysis);
  service.definition(analysis, offset, uri);
  service.references(analysis, offset, { uri, withDefinition: true });
  service.highlights(analysis, offset);
  service.renaming(analysis, offset);
  service.rename(analysis, offset, 'new name', { uri, version: null });
  service.inlayHints(analysis, [0, analysis.syntax.text.length]);
  service.codeLenses(analysis, uri);
  service.foldingRanges(analysis);
}

describe('while someone types', { timeout: 120_000 }, () => {
  test('there are samples to type', () => {
    expect(samples.length).toBeGreaterThanOrEqual(3);
  });

  test('any prefix of a sample, any character gone, is answered, with what was known before or without', () => {
    let before: Analysis | undefined;
    fc.assert(
      fc.property(
        fc.constantFrom(...samples),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.boolean(),
        (sample, part, isPrefix) => {
          const at = Math.floor(part * sample.length);
          const text = sample.slice(0, at) + (isPrefix ? '' : sample.slice(at + 1));
          const analysis = service.analyse(text, before);
          before = analysis;
          askAll(analysis, at);
        },
      ),
      { numRuns: 120 },
    );
  });

  test('what is kept from the text before never shows: findings are those of a fresh analysis', () => {
    fc.assert(
      fc.property(fc.constantFrom(...samples), fc.double({ min: 0, max: 1, noNaN: true }), (sample, part) => {
        const at = Math.floor(part * sample.length);
        const changed = sample.slice(0, at) + sample.slice(at + 1);
        const next = service.analyse(changed, service.analyse(sample));
        expect(service.diagnostics(next, null)).toEqual(service.diagnostics(service.analyse(changed), null));
      }),
      { numRuns: 40 },
    );
  });
});
