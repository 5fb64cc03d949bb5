import { describe, expect, test } from 'vitest';
import { createDescriber } from '../../schema/describe.ts';
import { analyse, readText } from '../../server/core/analysis/analyse.ts';
import { conclusion } from '../../server/core/analysis/conclude.ts';
import { tryMends } from '../../server/core/analysis/soundMends.ts';
import type { Bay } from '../../server/core/boat/boat.ts';
import { pictureSteps } from '../../server/core/drawing/trimSheet.ts';
import type { Steps } from '../../server/core/steps/steps.ts';
import { syntaxSteps } from '../../server/core/text/reading/syntax.ts';
import { createBoatService } from '../../server/service/service.ts';
import { boatOfParts } from '../benchmark/boatOfParts.ts';

const describer = createDescriber();
const PARTS = 300;
const text = boatOfParts(PARTS);

/** From the keel of the boat to high above it. */
const astride = (bay: Bay): Bay => ({ ...bay, from: [bay.from[0], bay.from[1], 0], to: [bay.to[0], bay.to[1], 1] });

/** How many steps a work takes, and what comes of it. */
function counted<T>(work: Steps<T>): { readonly steps: number; readonly value: T } {
  for (let steps = 1; ; steps += 1) {
    const step = work.next();
    if (step.done) return { steps, value: step.value };
  }
}

/** The same of work that is done a step at a call. */
function stepsOf(step: () => boolean): number {
  let steps = 1;
  // Ends: each round is a step of work, and the work ends.
  while (!step()) steps += 1;
  return steps;
}

describe('what takes long is done in steps that do not grow with the file', () => {
  const read = counted(readText(text, describer));

  test('each entry is read in a step of its own', () => {
    expect(counted(syntaxSteps(text)).steps).toBeGreaterThan(text.length / 1000);
    expect(read.steps).toBeGreaterThan(PARTS);
  });

  test('a text that slips is parsed so many words at a time', () => {
    const slipped = text.replace('name: dry part 0,', 'name: dry part 0');
    const { steps, value } = counted(syntaxSteps(slipped));
    expect(value.isPieced).toBe(false);
    // A word, a sign and a blank are some three characters each.
    expect(steps).toBeGreaterThan(text.length / 3000);
  });

  test('its bodies are made, and what lies where it cannot is found, some things at a time', () => {
    const { steps, value } = counted(conclusion(read.value));
    expect(steps).toBeGreaterThan(PARTS / 20);
    expect(stepsOf(value.file.places.found.step)).toBeGreaterThan(PARTS / 20);
  });

  test('its pictures are drawn some things at a time', () => {
    const analysis = analyse(text, describer);
    const { steps, value } = counted(pictureSteps(analysis, { only: ['surfaced-side', 'surfaced-plan'] }));
    expect(value).toHaveLength(2);
    expect(steps).toBeGreaterThan((2 * PARTS) / 60);
  });

  test('a bay that something is in the way of is cut some places at a time', () => {
    const { neighbours, source } = analyse(boatOfParts(10), describer);
    const crossed = { ...source, boat: { ...source.boat, bays: source.boat.bays.map(astride) } };
    const { steps, value } = counted(neighbours.freeBaySteps(crossed));
    expect(value).not.toBe(crossed.boat.bays);
    expect(steps).toBeGreaterThan(5 * crossed.boat.bays.length);
    expect(counted(neighbours.freeBaySteps(crossed)).steps).toBe(1);
  });

  test('each mend is tried in steps of its own', () => {
    const wrong = text.replaceAll(/(\d) g,/g, '$1 gz,');
    const analysis = analyse(wrong, describer);
    const findings = analysis.findings.filter(({ mends }) => (mends ?? []).length > 0).slice(0, 10);
    const mends = findings.flatMap(({ mends }) => mends ?? []);
    expect(findings).toHaveLength(10);
    expect(stepsOf(() => tryMends(analysis, findings))).toBeGreaterThan(mends.length);
  });

  test('the report is made a section at a time, and a sheet a picture at a time', () => {
    const service = createBoatService();
    const analysis = service.analyse(boatOfParts(10));
    // Ends: as above.
    while (!analysis.corrections.step() || !analysis.offers.step());
    expect(stepsOf(service.reports(analysis).step)).toBeGreaterThan(5);
    const paper = { paper: 'a4', fileName: null, appendix: true } as const;
    expect(stepsOf(service.printedSheet(analysis, paper).step)).toBeGreaterThan(10);
  });
});

test('of a keystroke only what it changes takes steps', () => {
  const before = analyse(text, describer);
  const { steps, value } = counted(
    readText(text.replace('name: dry part 0,', 'name: dry part zero,'), describer, before),
  );
  expect(value.boat.payload.map(({ name }) => name)).toContain('dry part zero');
  expect(steps).toBeLessThan(PARTS / 10);
});
