import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import type { Correction } from '../../server/core/corrections/correction.ts';
import type { Finding } from '../../server/core/findings/finding.ts';
import type { Vec3 } from '../../server/core/geometry/form/vector.ts';
import { judgeSubmerged } from '../../server/core/judges/judgeSubmerged.ts';
import { judgeSurfaced } from '../../server/core/judges/judgeSurfaced.ts';
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import { heard, service, toldSince } from '../helpers/analysed.ts';
import { arbitrarySub, subText } from '../helpers/boats.ts';
import { boatText } from '../helpers/boatText.ts';
import { isLong, runsOf } from '../helpers/long.ts';
import { PROBE, probe } from '../helpers/probe.ts';

/** What is out of a limit; what is only remarked on is not. */
const codes = (findings: readonly Finding[]) =>
  findings.filter(({ severity }) => severity !== 'information').map(({ code }) => code);
const surfacedOut = ({ boat, surfaced }: Analysis) => codes(judgeSurfaced(boat, surfaced));
const submergedOut = ({ boat, submerged }: Analysis) => codes(judgeSubmerged(boat, submerged));

/** The file with a correction put in, read and floated anew. */
function corrected(analysis: Analysis, correction: Correction): Analysis {
  const splices = applyChanges(analysis.syntax, correction.changes);
  if (!splices) throw new Error(`cannot be written: ${correction.title}`);
  return service.analyse(splice(analysis.syntax.text, splices), analysis);
}

interface Box {
  readonly from: Vec3;
  readonly to: Vec3;
}
/** A tenth of a millimetre is as exact as an entry is written. */
const WRITTEN = 1.01e-4;
const AXES = [0, 1, 2] as const;
const isWithin = (inner: Box, outer: Box): boolean =>
  AXES.every(i => inner.from[i] >= outer.from[i] - WRITTEN && inner.to[i] <= outer.to[i] + WRITTEN);
const meets = (a: Box, b: Box): boolean =>
  AXES.every(i => a.from[i] < b.to[i] - WRITTEN && a.to[i] > b.from[i] + WRITTEN);

/** What must hold of every correction whatever it is. */
function holdToIts(promise: Correction, analysis: Analysis): void {
  const after = corrected(analysis, promise);
  const { title } = promise;
  // A bay drawn at random may reach into the cylinder: then a piece in it is told to lie there.
  expect(
    toldSince(analysis, after).filter(({ code }) => code !== 'perhaps-inside'),
    title,
  ).toEqual([]);
  // It is what was floated before it was offered.
  expect(after.bodies.mass, title).toBeCloseTo(
    promise.boat.payload.reduce((sum, part) => sum + part.mass, 0) +
      [...promise.boat.shells, ...promise.boat.compartments].reduce((sum, entry) => sum + entry.mass, 0),
    9,
  );
  const [then, now] = [promise.surfaced, after.surfaced];
  if (then.status === 'afloat' && now.status === 'afloat') {
    expect(now.attitude.trim, title).toBeCloseTo(then.attitude.trim, 5);
    expect(now.attitude.heel, title).toBeCloseTo(then.attitude.heel, 5);
    expect(now.attitude.draft, title).toBeCloseTo(then.attitude.draft, 6);
  } else expect(now.status).toBe(then.status);
  // What it sets out to mend is mended; a compromise says what it leaves.
  if (promise.left.length > 0) expect(title).toMatch(/still out/);
  else {
    if (promise.condition !== 'submerged') expect(surfacedOut(after), title).toEqual([]);
    if (promise.condition !== 'surfaced') expect(submergedOut(after), title).toEqual([]);
  }
  for (const [i, piece] of promise.pieces.entries()) {
    const part = promise.parts[i]!;
    const { bay } = piece.slot;
    expect(part.inside).toBe(bay.inside);
    const others = promise.boat.payload.filter(other => other.name !== part.name && other.inside === part.inside);
    expect(
      others.filter(other => meets(part, other)).map(other => other.name),
      title,
    ).toEqual([]);
    expect(isWithin(part, bay), `${title}: ${part.name} lies in its bay`).toBe(true);
    const volume = AXES.reduce<number>((product, axis) => product * (part.to[axis] - part.from[axis]), 1);
    // As the scale shows it: within a gram or a twentieth of the strip's.
    expect(Math.abs(part.mass - volume * piece.slot.density)).toBeLessThan(Math.max(0.001, 0.05 * part.mass));
  }
}

/** What else may be in a file: inches, bays that overlap, a thinner strip. */
const bench: fc.Arbitrary<(text: string) => string> = fc.constantFrom(
  text => text,
  text =>
    text.replace(
      'hull:',
      boatText`
        units: { length: in, mass: oz }
        hull:`,
    ),
  text => text.replace(/^( {2}- \{ name: keel aft)(.*)$/m, '$1$2\n$1 again$2'),
  text => text.replace('lead: { strip: 12 x 6 mm }', 'lead: { strip: 5 x 5 mm }'),
);

describe('corrections of random boats', { timeout: 300_000 }, () => {
  it('do what they say once they stand in the file, and lie where there is room', () => {
    let out = 0;
    let surfaceMended = 0;
    const kinds: string[] = [];
    fc.assert(
      fc.property(arbitrarySub({ offset: 2 }), bench, (sub, change) => {
        const analysis = heard(change(subText(sub)));
        expect(analysis.file.isFaulty).toBe(false);
        const offered = analysis.corrections.all();
        for (const correction of offered) {
          holdToIts(correction, analysis);
          kinds.push(correction.condition);
        }
        if (analysis.surfaced.status !== 'afloat' || surfacedOut(analysis).length === 0) return;
        out++;
        if (offered.some(({ condition, left }) => condition !== 'submerged' && left.length === 0)) surfaceMended++;
      }),
      runsOf(6, 60),
    );
    expect(out).toBeGreaterThan(isLong ? 24 : 3);
    expect(surfaceMended).toBeGreaterThan(0);
    expect(kinds).toContain('surfaced');
  });
});

describe('no correction is offered', () => {
  it.each([
    ['for a boat within its limits', PROBE],
    [
      'where there is no bay',
      probe([/^bays:\n(?: .*\n)+/m.exec(PROBE)![0], ''], ['150 to 250', '165 to 265'], ['trim: 0.5°', 'trim: 0.1°']),
    ],
    [
      'where the bays cannot do it: off to one side, they lie on the centreline',
      probe(
        [
          '    height: 30 mm',
          `    offset: 9 mm
    height: 30 mm`,
        ],
        ['-30 to 30', '-6 to 6'],
        ['-30 to 30', '-6 to 6'],
      ),
    ],
    [
      'while the file is faulty',
      probe(
        ['150 to 250', '160 to 260'],
        [
          boatText`
            mass: 600 g
                station`,
          boatText`
            mass: 600 q
                station`,
        ],
      ),
    ],
    ['for a boat that sinks', probe(['mass: 800 g', 'mass: 1700 g'])],
  ])('%s', (_, text) => {
    const analysis = heard(text);
    const whole = analysis.corrections.all().filter(({ left, pieces }) => left.length === 0 && pieces.length > 0);
    expect(whole.map(({ title }) => title)).toEqual([]);
  });
});

describe('what is written', () => {
  const rules = /^\d+(?: to \d+)? mm$/;
  it('is rounded to a millimetre, where the tape is metric', () => {
    const analysis = heard(probe(['150 to 250', '160 to 260']));
    const fields = analysis.corrections.all().flatMap(({ entries }) => entries.flatMap(entry => entry.fields));
    const stations = fields.filter(([key]) => key === 'station').map(([, text]) => text);
    expect(stations.length).toBeGreaterThan(0);
    for (const station of stations) expect(station).toMatch(rules);
  });
  it('is rounded to a sixteenth of an inch, where it is not', () => {
    const inches = probe(
      [
        'boat: Probe',
        boatText`
          boat: Probe
          units: { length: in, mass: oz }`,
      ],
      ['150 to 250 mm', '160 to 260 mm'],
    );
    const fields = heard(inches)
      .corrections.all()
      .flatMap(({ entries }) => entries.flatMap(entry => entry.fields));
    const stations = fields.filter(([key]) => key === 'station').map(([, text]) => text);
    expect(stations.length).toBeGreaterThan(0);
    for (const station of stations)
      expect(station).toMatch(/^(?:\d+ )?\d+(?:\/(?:2|4|8|16))? to (?:\d+ )?\d+(?:\/(?:2|4|8|16))? in$/);
  });
});
