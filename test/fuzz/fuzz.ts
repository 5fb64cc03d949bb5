import type { Analysis } from '../../server/core/analysis/analysis.ts';
import type { MeshFile } from '../../server/core/meshFiles/meshFile.ts';
import { readMeshFile } from '../../server/core/meshFiles/readMeshFile.ts';
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import { rangeOf } from '../../server/core/text/reading/rangeOf.ts';
import { createBoatService } from '../../server/service/service.ts';
import { type Seeded, seeded } from '../helpers/seeded.ts';
import { takeActions } from './actions.ts';
import { askAll, askQuick, said, wrongIn } from './answers.ts';
import { anywhere, edited, garbled, pick } from './edits.ts';
import { attempt, type Log } from './log.ts';
import { hullBytes, samples } from './samples.ts';

/** Edits between a sample and the same sample restored. */
const ROUND = 6;

/** Edits samples at random, asks for everything after each edit, applies what is offered, and restores the sample. */
export function fuzzEdits(edits: number, seed: number, log: Log): void {
  const random = seeded(seed);
  const service = createBoatService();
  const hull = readMeshFile(hullBytes);
  let mesh: MeshFile = hull;
  const meshes = (): MeshFile => mesh;
  const fresh = new Map<string, string>();
  let [sample, text] = [samples[0]!, samples[0]!];
  let analysis: Analysis | undefined;
  for (let round = 0; round < edits; round++) {
    mesh = hull;
    if (round % ROUND === 0) {
      sample = pick(random, samples);
      text = sample;
    }
    if (random.even() < 1 / ROUND) mesh = readMeshFile(garbled(hullBytes, random));
    const next = edited(text, random, pick(random, samples));
    const about = { round, how: next.how, text: next.text };
    const offset = anywhere(random, next.text);
    analysis = attempt(log, about, 'edit', () => service.analyse(next.text, analysis, meshes));
    text = next.text.length > 40_000 ? sample : next.text;
    if (!analysis) continue;
    const now = analysis;
    attempt(log, about, 'answers', () => {
      for (const what of wrongIn(now)) log.fault({ ...about, what });
      for (const what of askAll(service, now, offset)) log.fault({ ...about, what });
    });
    // What is offered where something is wrong, or anywhere.
    const place = random.even() < 0.3 ? offset : placeOf(now, random);
    if (round % ROUND === 2)
      attempt(log, { ...about, how: `${about.how}, actions at ${place}` }, 'actions', () => {
        for (const what of takeActions(service, now, place, meshes)) log.fault({ ...about, what });
      });
    const mended = attempt(log, about, 'mend', () => mendOne(now, random));
    if (mended) {
      text = mended;
      const after = { round, how: `mended after ${about.how}`, text };
      analysis = attempt(log, after, 'edit', () => service.analyse(mended, now, meshes));
    }
    if (round % ROUND < ROUND - 1) continue;
    mesh = hull;
    analysis = attempt(log, { round, how: 'restored', text: sample }, 'restored', () => {
      const again = service.analyse(sample, analysis, meshes);
      if (!fresh.has(sample)) fresh.set(sample, said(service, service.analyse(sample, undefined, meshes)));
      if (said(service, again) !== fresh.get(sample))
        throw new Error('a restored text has other findings than a fresh one');
      return again;
    });
  }
}

/** Where one of the findings begins. */
function placeOf({ syntax, findings }: Analysis, random: Seeded): number {
  return findings.length === 0 ? 0 : rangeOf(syntax, pick(random, findings).place)[0];
}

/** The text with one of the mends that are thought of, if any, whether it would be offered or not. */
function mendOne(analysis: Analysis, random: Seeded): string | null {
  const mends = analysis.file.findings.flatMap(finding => finding.mends ?? []);
  if (mends.length === 0) return null;
  const splices = applyChanges(analysis.syntax, pick(random, mends).changes);
  return splices && splice(analysis.syntax.text, splices);
}

/** Some prefixes and single deletions of every sample, each `step`th from the one given: all of them with 0 and 1. */
export function fuzzPlaces(from: number, step: number, log: Log): void {
  const service = createBoatService();
  const mesh = readMeshFile(hullBytes);
  let round = 0;
  let analysis: Analysis | undefined;
  for (const sample of samples)
    for (let at = from; at < sample.length; at += step)
      for (const [how, text] of [
        [`the first ${at} characters`, sample.slice(0, at)],
        [`without the character at ${at}`, sample.slice(0, at) + sample.slice(at + 1)],
      ] as const) {
        round += 1;
        const about = { round, how, text };
        analysis = attempt(log, about, 'place', () => {
          const now = service.analyse(text, analysis, () => mesh);
          for (const what of wrongIn(now)) log.fault({ ...about, what });
          for (const what of askQuick(service, now, at)) log.fault({ ...about, what });
          return now;
        });
      }
}
