import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { CodeAction } from 'vscode-languageserver-types';
import { inOtherWater } from '../../server/core/analysis/analyse.ts';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { waterOfKind } from '../../server/core/boat/readWater.ts';
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import { codeActionsAt } from '../../server/editor/answers/codeActions.ts';
import { fileFindings, heard, service, toldSince } from '../helpers/analysed.ts';
import { boatOutOfTrim } from '../helpers/boatsOutOfTrim.ts';
import { corrected, firstOfBoth, outOfLimits, splicesOf } from '../helpers/corrected.ts';
import { isLong } from '../helpers/long.ts';
import { PROBE } from '../helpers/probe.ts';

/* Boats trimmed in fresh water that go to the sea, and come home again. */

const FRESH = 'water: { kind: fresh, temperature: 18 °C }';
const SEA = 'water: { kind: sea, temperature: 18 °C }';

const BOATS = isLong ? 30 : 5;

describe('pieces for the sea', { timeout: 180_000 }, () => {
  test('trim the boat there; taken out again it is trimmed in fresh water as before', () => {
    let hits = 0;
    let floated = 0;
    let previous: Analysis | undefined;
    for (let seed = 0; seed < BOATS; seed++) {
      const { trimmed } = boatOutOfTrim(seed);
      const fresh = service.analyse(trimmed, previous);
      previous = fresh;
      expect(outOfLimits(fresh)).toEqual([]);
      const sea = inOtherWater(fresh, waterOfKind('sea', fresh.boat.water.temperature));
      // 2.7 % denser: 2.5 kg of boat are some 65 g too light for the painted line.
      expect(outOfLimits(sea).map(({ code }) => code)).toContain('surfaced-draft');
      floated++;
      const correction = firstOfBoth(sea);
      if (!correction || correction.pieces.length === 0) continue;
      hits++;
      const laden = corrected(sea, correction);
      const there = service.analyse(laden.replace(FRESH, SEA), fresh);
      expect({ seed, left: [...outOfLimits(there), ...toldSince(fresh, there)] }).toEqual({ seed, left: [] });
      expect(there.surfaced).toEqual(correction.surfaced);
      expect(there.submerged).toEqual(correction.submerged);
      // The set is wrong for fresh water: that is why it comes out again.
      expect(outOfLimits(service.analyse(laden, fresh))).not.toEqual([]);
      const names = new Set(correction.parts.map(({ name }) => name));
      const home = service.analyse(withoutEntries(laden, splicesOf(sea, correction).length, names, trimmed), fresh);
      expect(outOfLimits(home)).toEqual([]);
      expect(home.surfaced).toEqual(fresh.surfaced);
    }
    expect(floated).toBe(BOATS);
    expect(hits).toBeGreaterThan(0.5 * BOATS);
  });
});

describe('the set for both waters', { timeout: 60_000 }, () => {
  const waterAction = (text: string) => {
    const analysis = heard(text);
    const at = text.indexOf('water:');
    const actions = codeActionsAt(analysis, [at, at], { uri: 'file:///a', version: null });
    // The other water is offered for no finding's sake.
    return actions.filter(({ diagnostics }) => diagnostics?.length === 0);
  };
  const applied = (text: string, { edit }: CodeAction) =>
    TextDocument.applyEdits(TextDocument.create('file:///a', 'boat', 1, text), edit!.changes!['file:///a']!);

  test('goes in with a change to sea water, and out again with the change back: the file is as it was', () => {
    const curlew = readFileSync(new URL('../../samples/curlew.boat.yaml', import.meta.url), 'utf8');
    const [toSea, ...others] = waterAction(curlew);
    expect(others).toEqual([]);
    expect(toSea!.title).toMatch(
      /^Change to sea water: insert \d+ g lead in “keel forward”, \d+ g lead in “keel aft”$/,
    );
    const there = applied(curlew, toSea!);
    expect([...outOfLimits(heard(there)), ...fileFindings(heard(there))]).toEqual([]);
    expect(there).toContain('kind: sea, temperature');
    expect(there.match(/name: lead keel (forward|aft) for sea,.*# for sea water only; lead: /g)).toHaveLength(2);
    const [toFresh] = waterAction(there);
    expect(toFresh!.title).toBe('Change to fresh water: remove “lead keel forward for sea”, “lead keel aft for sea”');
    expect(applied(there, toFresh!)).toBe(curlew);
  });

  test('is not offered where the boat is out of trim in its own water, or the water is given by its density', () => {
    const petrel = readFileSync(new URL('../../samples/petrel.boat.yaml', import.meta.url), 'utf8');
    expect(waterAction(petrel)).toEqual([]);
    expect(waterAction(PROBE)).toEqual([]);
  });

  test('keeps all limits in both waters, by the full model on the boat read again', () => {
    let hits = 0;
    let previous: Analysis | undefined;
    for (let seed = 0; seed < BOATS; seed++) {
      const analysis = service.analyse(boatOutOfTrim(seed).text, previous);
      previous = analysis;
      const set = analysis.waterSet.all();
      if (!set) continue;
      hits++;
      for (const { only, water } of [set.fresh, set.sea]) {
        const changes = [...set.inBoth, ...only].flatMap(({ made }) =>
          made ? [{ kind: 'append', path: ['payload'], entry: made.entry } as const] : [],
        );
        const splices = changes.length > 0 ? applyChanges(analysis.syntax, changes)! : [];
        const laden = service.analyse(splice(analysis.syntax.text, splices), analysis);
        expect(toldSince(analysis, laden)).toEqual([]);
        const out = outOfLimits(inOtherWater(laden, water)).filter(({ about }) => about !== 'transit');
        expect({ seed, out }).toEqual({ seed, out: [] });
      }
    }
    expect(hits).toBeGreaterThan(0.5 * BOATS);
  });
});

/** The file with the entries of these names taken out line by line, as somebody would: what is left is what was. */
function withoutEntries(text: string, edits: number, names: ReadonlySet<string>, was: string): string {
  expect(edits).toBeGreaterThan(0);
  const lines = text.split('\n').filter(line => ![...names].some(name => line.includes(`name: ${name},`)));
  expect(lines.join('\n')).toBe(was);
  return lines.join('\n');
}
