import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { TextEdit } from 'vscode-languageserver-types';
import { runCommandLine } from '../../server/terminal/commandLine.ts';
import { heard, service } from '../helpers/analysed.ts';
import { outOfLimits } from '../helpers/corrected.ts';
import { memoryWorld } from '../helpers/memoryWorld.ts';

const PETREL = readFileSync(new URL('../../samples/petrel.boat.yaml', import.meta.url), 'utf8');

/** Runs a command against files in memory. */
function run(args: readonly string[], files: Readonly<Record<string, string>>) {
  const { world, written, said } = memoryWorld(files);
  const code = runCommandLine(args, world);
  return { code, ...said(), written };
}

/** Figures to nine digits after the point: what was moved lies a last bit off where it is read back from the file. */
const rounded = (figures: unknown): unknown =>
  JSON.parse(JSON.stringify(figures, (_, value) => (typeof value === 'number' ? Number(value.toFixed(9)) : value)));

describe('trimwright correct', () => {
  test('prints the corrections of a sample for the bench, and why they are so', async () => {
    const { code, out } = run(['correct', 'petrel', '--explain'], { petrel: PETREL });
    expect(code).toBe(0);
    await expect(out).toMatchFileSnapshot('golden/petrel.txt');
  });

  test('--write leaves the file as the preferred code action does', () => {
    const { code, written, err } = run(['correct', 'petrel', '--write'], { petrel: PETREL });
    expect(code).toBe(0);
    expect(err).toBe('petrel: written.\n');
    const analysis = heard(PETREL);
    const at = PETREL.indexOf('waterline:');
    const actions = service.codeActions(analysis, [at, at], { uri: 'file:///petrel', version: null });
    const preferred = actions.filter(({ isPreferred }) => isPreferred);
    expect(preferred).toHaveLength(1);
    const edits = preferred[0]!.edit!.changes!['file:///petrel'] as TextEdit[];
    const document = TextDocument.create('file:///petrel', 'boat', 1, PETREL);
    expect(written.petrel).toBe(TextDocument.applyEdits(document, edits));
    expect(outOfLimits(heard(written.petrel!))).toEqual([]);
    expect(outOfLimits(analysis)).not.toEqual([]);
  });

  test('--json gives entries and results that the file then has', () => {
    const { code, out } = run(['correct', 'petrel', '--json'], { petrel: PETREL });
    expect(code).toBe(0);
    const corrections = JSON.parse(out) as {
      title: string;
      condition: string;
      entries: Record<string, string>[];
      result: { surfaced: { trim: number; draft: number }; submerged: { trim: number; fill: number } };
    }[];
    const [first] = corrections;
    expect(first!.condition).toBe('both');
    const { written } = run(['correct', 'petrel', '--json', '--write'], { petrel: PETREL });
    for (const entry of first!.entries) expect(written.petrel).toContain(`name: ${entry.name}`);
    const after = JSON.parse(run(['report', 'petrel', '--json'], { petrel: written.petrel! }).out);
    expect(rounded(after.surfaced)).toEqual(rounded({ ...first!.result.surfaced, byFile: null }));
    expect(rounded(after.submerged)).toEqual(rounded({ ...first!.result.submerged, byFile: null }));
  });

  test('--water sea writes pieces that trim the boat there', () => {
    const { code, written } = run(['correct', 'petrel', '--water', 'sea', '--write'], { petrel: PETREL });
    expect(code).toBe(0);
    const atSea = written.petrel!.replace('kind: fresh', 'kind: sea');
    expect(outOfLimits(heard(atSea))).toEqual([]);
    expect(outOfLimits(heard(written.petrel!))).not.toEqual([]);
    expect(run(['correct', 'petrel', '--water', 'brine'], { petrel: PETREL }).code).toBe(2);
  });

  test('fails for a file with errors, and writes nothing', () => {
    const faulty = PETREL.replace('mass: 318 g', 'mass: 318 mm');
    const { code, out, written } = run(['correct', 'petrel', '--write'], { petrel: faulty });
    expect(code).toBe(1);
    expect(out).toContain('The file has errors: fix them first (trimwright check).');
    expect(written).toEqual({});
  });

  test('--both-waters prints what changes with the water, and its JSON has the same pieces', async () => {
    const curlew = readFileSync(new URL('../../samples/curlew.boat.yaml', import.meta.url), 'utf8');
    const { code, out } = run(['correct', 'curlew', '--both-waters'], { curlew });
    expect(code).toBe(0);
    await expect(out).toMatchFileSnapshot('golden/curlewBothWaters.txt');
    const json = JSON.parse(run(['correct', 'curlew', '--both-waters', '--json'], { curlew }).out) as {
      inBoth: unknown[];
      fresh: { only: unknown[] };
      sea: { only: { name: string; mass: number }[] };
    };
    expect([json.inBoth, json.fresh.only]).toEqual([[], []]);
    expect(json.sea.only.length).toBeGreaterThan(0);
    for (const { name, mass } of json.sea.only) {
      expect(out).toMatch(new RegExp(`  ${name}: .*, ${mass.toFixed(0)} g on the scale`));
    }
    expect(run(['correct', 'curlew', '--both-waters', '--write'], { curlew }).code).toBe(2);
  });

  test('says what room would do when the bays will not', () => {
    const shut = PETREL.replace(/^ {2}- \{ name: (?!keel forward).*takes.*\n/gm, '');
    const { code, out } = run(['correct', 'petrel'], { petrel: shut });
    expect(code).toBe(0);
    expect(out).toMatch(
      /\nA bay for [\d.]+ (g of lead|mm of foam strip) near station \d+ mm, .* would meet every limit\.\n$/,
    );
  });
});
