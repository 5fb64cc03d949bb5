import { readdirSync, readFileSync } from 'node:fs';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import type { MeshFile } from '../../server/core/meshFiles/meshFile.ts';
import { readMeshFile } from '../../server/core/meshFiles/readMeshFile.ts';
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import { createBoatService } from '../../server/service/service.ts';
import { MACHINE_WORDS, strayNumbers } from '../helpers/finite.ts';
import { type Seeded, seeded } from '../helpers/seeded.ts';
import { anywhere, edited, garbled, pick } from './edits.ts';

/** Something that shall never be, and the text that it came of. */
interface Fault {
  readonly round: number;
  readonly what: string;
  readonly how: string;
  readonly text: string;
}

interface FuzzReport {
  readonly faults: readonly Fault[];
  readonly edits: number;
  readonly mends: number;
  readonly restored: number;
  /** The longest that any edit took with all its answers, ms. */
  readonly slowest: number;
}

const folder = new URL('../../samples/', import.meta.url);
const samples = readdirSync(folder)
  .filter(name => name.endsWith('.boat.yaml'))
  .map(name => readFileSync(new URL(name, folder), 'utf8'));

/** Edits between a sample and the same sample restored. */
const ROUND = 8;
/** Where a surface may lie infinitely high: submerged there is none. */
const ENDLESS = new Set(['level']);
const URI = 'file:///fuzz.boat.yaml';

/** Edits samples at random, asks for everything after each edit, applies what is offered, and restores the sample. */
export function fuzz(edits: number, seed: number, progress: (done: number) => void = () => {}): FuzzReport {
  const random = seeded(seed);
  const service = createBoatService();
  const bytes = readFileSync(new URL('guillemot-hull.stl', folder));
  const hull = readMeshFile(bytes);
  let mesh: MeshFile = hull;
  const meshes = (): MeshFile => mesh;
  const fresh = new Map(samples.map(text => [text, said(service, service.analyse(text, undefined, meshes))]));
  const faults: Fault[] = [];
  let [mends, restored, slowest] = [0, 0, 0];
  let [sample, text] = [samples[0]!, samples[0]!];
  let analysis: Analysis | undefined;
  for (let round = 0; round < edits; round++) {
    mesh = hull;
    if (round % ROUND === 0) {
      analysis = attempt(faults, { round, how: 'restored', text: sample }, () => {
        const again = service.analyse(sample, analysis, meshes);
        if (said(service, again) !== fresh.get(sample))
          throw new Error('a restored text has other findings than a fresh one');
        return again;
      });
      restored++;
      sample = pick(random, samples);
      text = sample;
      progress(round);
    }
    if (random.even() < 1 / ROUND) mesh = readMeshFile(garbled(bytes, random));
    const next = edited(text, random, pick(random, samples));
    const about = { round, how: next.how, text: next.text };
    const start = performance.now();
    analysis = attempt(faults, about, () => {
      const now = service.analyse(next.text, analysis, meshes);
      for (const what of wrongIn(now)) faults.push({ ...about, what });
      for (const what of askAll(service, now, anywhere(random, next.text))) faults.push({ ...about, what });
      return now;
    });
    slowest = Math.max(slowest, performance.now() - start);
    text = next.text.length > 40_000 ? sample : next.text;
    const mended = analysis && attempt(faults, about, () => mendOne(analysis!, random));
    if (mended) {
      mends++;
      text = mended.text;
      const after = attempt(faults, about, () => service.analyse(mended.text, analysis, meshes));
      if (after && !isMended(analysis!, after, mended.code))
        faults.push({
          ...about,
          what: `“${mended.title}” leaves ${mended.code} as it was`,
          how: `mended after ${about.how}`,
        });
      analysis = after;
    }
  }
  return { faults, edits, mends, restored, slowest };
}

type Service = ReturnType<typeof createBoatService>;

/** Runs something; what is thrown is a fault. */
function attempt<T>(faults: Fault[], about: Omit<Fault, 'what'>, run: () => T): T | undefined {
  try {
    return run();
  } catch (problem) {
    faults.push({ ...about, what: problem instanceof Error ? (problem.stack ?? problem.message) : String(problem) });
    return undefined;
  }
}

/** Everything that is said of a boat at once, to be compared. */
const said = (service: Service, analysis: Analysis): string =>
  JSON.stringify([
    analysis.file.findings,
    strip(analysis.surfaced),
    strip(analysis.submerged),
    service.summary(analysis).text,
    service.symbols(analysis),
  ]);

/** Figures, without the functions that figure others. */
const strip = (figures: object): unknown => JSON.parse(JSON.stringify(figures));

/** Numbers and words that are none. */
function* wrongIn({ boat, surfaced, submerged, transit, findings }: Analysis): Generator<string> {
  for (const stray of strayNumbers({ boat, surfaced, submerged, transit }, ENDLESS)) yield `no number: ${stray}`;
  for (const { message } of findings) {
    // What the file itself says is quoted.
    const found = MACHINE_WORDS.exec(message.replace(/“[^”]*”/g, ''));
    if (found) yield `a machine’s word: ${message}`;
  }
}

/** Everything that an editor asks for while someone types. */
function* askAll(service: Service, analysis: Analysis, offset: number): Generator<string> {
  for (const { range, message } of service.diagnostics(analysis, null)) {
    const { start, end } = range;
    if (start.line > end.line || (start.line === end.line && start.character > end.character)) {
      yield `a range that ends before it begins: ${message}`;
    }
  }
  const { text } = analysis.syntax;
  const told: Readonly<Record<string, unknown>> = {
    hover: service.hover(analysis, offset),
    completions: service.completions(analysis, offset),
    summary: service.summary(analysis),
    hints: service.inlayHints(analysis, [0, text.length]),
    symbols: service.symbols(analysis),
    highlights: service.highlights(analysis, offset),
    trial: service.newTrial(analysis),
  };
  for (const [what, answer] of Object.entries(told))
    for (const words of wordsIn(answer))
      if (MACHINE_WORDS.test(words) && !text.includes(words.trim())) yield `a machine’s word in ${what}: ${words}`;
  service.definition(analysis, offset, URI);
  service.references(analysis, offset, { uri: URI, withDefinition: true });
  service.renaming(analysis, offset);
  service.rename(analysis, offset, 'new name', { uri: URI, version: null });
  service.codeLenses(analysis, URI);
  service.foldingRanges(analysis);
  const { pictures } = service.sheet(analysis, {
    proposal: null,
    width: 880,
    names: 'few',
    seen: ['surfaced-side', 'submerged-side'],
  });
  if (pictures.some(({ svg }) => /NaN|Infinity/.test(svg))) yield 'a picture with no numbers';
}

/** Every text in an answer, without what it quotes of the file. */
function wordsIn(answer: unknown): readonly string[] {
  if (typeof answer === 'string') return answer.replace(/“[^”]*”|`[^`]*`/gs, '').split('\n');
  return typeof answer === 'object' && answer !== null ? Object.values(answer).flatMap(wordsIn) : [];
}

interface Mended {
  readonly title: string;
  readonly code: string;
  readonly text: string;
}

/** Takes one of the mends that are offered, if any. */
function mendOne(analysis: Analysis, random: Seeded): Mended | null {
  const offers = analysis.file.findings.flatMap(({ code, mends = [] }) => mends.map(mend => ({ code, ...mend })));
  if (offers.length === 0) return null;
  const { code, title, changes } = pick(random, offers);
  const splices = applyChanges(analysis.syntax, changes);
  return splices && { title, code, text: splice(analysis.syntax.text, splices) };
}

/** Fewer findings of its kind are left, or what was under them has come to light. */
function isMended(before: Analysis, after: Analysis, code: string): boolean {
  const count = ({ file }: Analysis): number => file.findings.filter(finding => finding.code === code).length;
  const isHidden = before.syntax.isGivenUp || after.syntax.text === before.syntax.text;
  return isHidden
    ? after.syntax.text !== before.syntax.text
    : JSON.stringify(places(after)) !== JSON.stringify(places(before)) || count(after) < count(before);
}

const places = ({ file }: Analysis) => file.findings.map(({ code, message, place }) => [code, message, place]);
