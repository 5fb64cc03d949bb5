import { describe, expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { conditionsOf } from '../../server/core/conditions/loadingCondition.ts';
import type { Correction } from '../../server/core/corrections/correction.ts';
import { roomAdvice } from '../../server/core/corrections/remedies/roomAdvice.ts';
import { breaksLimit } from '../../server/core/corrections/search/realise.ts';
import { FIGURES } from '../../server/core/figures/table.ts';
import { conditionOf } from '../../server/core/findings/finding.ts';
import { judgeIn } from '../../server/core/judges/judge.ts';
import { correctionReport } from '../../server/core/report/correctionReport.ts';
import { plainPaint } from '../../server/core/report/rows.ts';
import { finish } from '../../server/core/steps/steps.ts';
import { service, toldSince } from '../helpers/analysed.ts';
import { boatOutOfTrim } from '../helpers/boatsOutOfTrim.ts';
import { textLines } from '../helpers/boatText.ts';
import { corrected, firstOfBoth, outOfLimits } from '../helpers/corrected.ts';
import { isLong } from '../helpers/long.ts';

/** The boat with little room left: bays taken out by name, a stub of what is inside, and nothing that may be moved. */
function withoutRoom(text: string, kept: RegExp): string {
  return text
    .split('\n')
    .filter(line => !line.includes('takes:') || kept.test(line))
    .map(line =>
      line.includes('tube floor')
        ? line.replace(/station: \d+ to (\d+)/, (_, end) => `station: ${Number(end) - 14} to ${end}`)
        : line,
    )
    .map(line =>
      /^ {2}- \{.*mass: .*, in: dry cylinder \}$/.test(line) ? line.replace(' }', ', fixed: true }') : line,
    )
    .join('\n');
}

interface Case {
  readonly seed: number;
  readonly analysis: Analysis;
}

/** Boats of which the first correction of both conditions is gone with the room. */
function casesOf(count: number, kept: RegExp): readonly Case[] {
  const cases: Case[] = [];
  let previous: Analysis | undefined;
  for (let seed = 0; seed < count; seed++) {
    const analysis = service.analyse(withoutRoom(boatOutOfTrim(seed).text, kept), previous);
    previous = analysis;
    if (outOfLimits(analysis).length > 0 && !firstOfBoth(analysis)) cases.push({ seed, analysis });
  }
  return cases;
}

const BOATS = isLong ? 100 : 20;
const hasStub = casesOf(BOATS, /tube floor/);
const hasEnds = casesOf(BOATS, /keel forward|deck aft/);

describe('a boat that its bays cannot trim', { timeout: 60_000 }, () => {
  test('is offered nothing that claims both conditions, and each claim of one is true', () => {
    let claims = 0;
    for (const { seed, analysis } of [...hasStub, ...hasEnds]) {
      for (const correction of analysis.corrections.all().filter(({ left }) => left.length === 0)) {
        expect(correction.condition).not.toBe('both');
        expect(correction.title).not.toContain('both conditions');
        const again = service.analyse(corrected(analysis, correction), analysis);
        const still = outOfLimits(again).filter(finding => conditionOf(finding) === correction.condition);
        expect({ seed, still }).toEqual({ seed, still: [] });
        claims++;
      }
    }
    expect(hasStub.length).toBeGreaterThan(0.2 * BOATS);
    expect(claims).toBeGreaterThan(0.1 * BOATS);
  });

  test('is offered the nearest, before all that leaves more, which names the limits that give way and is true', () => {
    let hits = 0;
    for (const { seed, analysis } of [...hasStub, ...hasEnds]) {
      const nearest = analysis.corrections.all().find(({ left }) => left.length > 0);
      if (!nearest) continue;
      hits++;
      const out = (correction: Correction) =>
        conditionsOf(correction)
          .flatMap(inCondition => judgeIn(correction.boat, inCondition, FIGURES))
          .filter(breaksLimit).length;
      const [first] = analysis.corrections.all();
      expect({ seed, isFirst: first === nearest || out(first!) <= out(nearest) }).toEqual({ seed, isFirst: true });
      const again = service.analyse(corrected(analysis, nearest), analysis);
      const still = outOfLimits(again).filter(({ about }) => about !== 'transit');
      // Every limit that is still out is told, and no other.
      expect(nearest.title).toMatch(/: the nearest; (still out: |one limit still out$|\d limits still out$)/);
      expect({ seed, codes: still.map(({ code }) => code) }).toEqual({
        seed,
        codes: nearest.left.map(({ code }) => code),
      });
      // Nor is it said to clear them, where it is offered.
      const { text } = analysis.syntax;
      const uri = 'file:///a';
      const offered = service.codeActions(analysis, [0, text.length], { uri, version: null }).find(({ edit }) => {
        const edits = edit?.changes?.[uri] ?? [];
        return (
          TextDocument.applyEdits(TextDocument.create(uri, 'boat', 1, text), edits) === corrected(analysis, nearest)
        );
      });
      const cleared = offered!.diagnostics!.map(({ code }) => code);
      expect({ seed, cleared: cleared.filter(code => still.some(each => each.code === code)) }).toEqual({
        seed,
        cleared: [],
      });
      // By how much, the report says.
      const report = correctionReport(analysis, nearest, plainPaint);
      for (const { message } of still) expect(report).toContain(message);
      const before = outOfLimits(analysis).filter(({ about }) => about !== 'transit');
      expect(still.length).toBeLessThanOrEqual(before.length);
    }
    expect(hits).toBeGreaterThan(0.05 * BOATS);
  });
});

/** The advised room as bays of the file: just what the advice says, with a finger's breadth at each end. */
function advisedBays(advice: string): string {
  const found = [
    ...advice.matchAll(
      /([\d.]+) (?:g|mm) of (lead|foam strip) near station ([\d.]+) mm, ([\d.]+) mm up(?:, to (port|starboard))?/g,
    ),
  ];
  return textLines(
    found.map(([, amount, what, station, height, side], i) => {
      const [breadth, depth] = what === 'lead' ? [12, 6] : [25, 12];
      const long = what === 'lead' ? Number(amount) / (breadth * depth * 11.34e-3) : Number(amount);
      const [from, to] = [Number(station) - long / 2 - 8, Number(station) + long / 2 + 8];
      const [port, starboard] = [side === 'starboard' ? -8 : -20, side === 'port' ? 8 : 20];
      return `  - { name: advised ${i}, takes: ${what === 'lead' ? 'lead' : 'foam'}, station: ${from} to ${to} mm, offset: ${port} to ${starboard} mm, height: ${Number(height) - depth / 2} to ${Number(height) + depth / 2} mm }`;
    }),
  );
}

describe('the advice on room', { timeout: 60_000 }, () => {
  test('a boat with the advised bays can be trimmed in both conditions', () => {
    let hits = 0;
    for (const { seed, analysis } of hasStub) {
      const advice = finish(roomAdvice(analysis.boatToTrim!));
      if (advice === null) continue;
      expect(advice).toMatch(/^A bay for .* would meet every limit\.$/);
      const text = analysis.syntax.text.replace('stock:', `${advisedBays(advice)}stock:`);
      const again = service.analyse(text, analysis);
      expect(toldSince(analysis, again)).toEqual([]);
      expect({ seed, isTrimmed: firstOfBoth(again) !== undefined }).toEqual({ seed, isTrimmed: true });
      hits++;
    }
    expect(hits).toBeGreaterThan(0.15 * BOATS);
  });
});
