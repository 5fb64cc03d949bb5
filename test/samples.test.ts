import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { offWaterline } from '../server/core/figures/offWaterline.ts';
import { conditionOf } from '../server/core/findings/finding.ts';
import { boundsOf, solidOf } from '../server/core/geometry/cut/solids.ts';
import { applyChanges, splice } from '../server/core/text/editing/edit.ts';
import { heard, service } from './helpers/analysed.ts';
import { sampleMeshes } from './helpers/sampleMeshes.ts';

const folder = new URL('../samples/', import.meta.url);
const sample = (name: string) =>
  service.analyse(readFileSync(new URL(`${name}.boat.yaml`, folder), 'utf8'), undefined, sampleMeshes);
const codes = (analysis: ReturnType<typeof heard>) => analysis.findings.map(finding => finding.code);

describe('Petrel, still to be trimmed', () => {
  const petrel = sample('petrel');
  it('floats down by the bow with a list to port, and hangs stern-light', () => {
    const { surfaced, submerged, boat } = petrel;
    if (surfaced.status !== 'afloat' || submerged.status !== 'neutral')
      throw new Error('expected to float and to hang');
    const off = offWaterline(boat, surfaced);
    expect(off.trim).toBeLessThan(-boat.limits.surfaced.trim);
    expect(off.heel).toBeLessThan(-boat.limits.surfaced.heel);
    // Bow down: the stern is the light end.
    expect(submerged.trim).toBeLessThan(-boat.limits.submerged.trim);
    expect(petrel.file.findings).toEqual([]);
    expect(codes(petrel)).toEqual(
      expect.arrayContaining(['surfaced-trim', 'surfaced-heel', 'submerged-trim', 'submerged-heel']),
    );
  });
  it('has no surfaced finding once the preferred correction is in the file', () => {
    const [best] = petrel.corrections.all();
    const splices = applyChanges(petrel.syntax, best!.changes);
    const after = heard(splice(petrel.syntax.text, splices!));
    expect(after.file.findings).toEqual([]);
    expect(after.findings.filter(finding => conditionOf(finding) === 'surfaced')).toEqual([]);
    expect(after.surfaced.status).toBe('afloat');
  });
});

describe('boats in trim', () => {
  // So small a boat is touchy: worth knowing, nothing to mend.
  it.each([
    ['curlew', []],
    ['sprat', ['submerged-touchy']],
    ['guillemot', []],
    ['teal', ['submerged-touchy']],
    ['grebe', []],
  ] as const)('%s has nothing against it', (name, notes) => {
    const { findings, surfaced, submerged } = sample(name);
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual(notes.map(code => [code, 'information']));
    expect([surfaced.status, submerged.status]).toEqual(['afloat', 'neutral']);
  });
  it.each(['Gannet', 'a: b # c', '12', '', '"x"', "'x'", '[x]', '*x'])(
    'a new boat called %j has no error, and floats and hangs',
    name => {
      const { findings, surfaced, submerged, boat } = heard(service.newBoat(name));
      expect(findings.filter(({ severity }) => severity === 'error' || severity === 'warning')).toEqual([]);
      expect([surfaced.status, submerged.status]).toEqual(['afloat', 'neutral']);
      expect(boat.name).toBe(name === '' ? 'New boat' : name);
    },
  );
});

it('a new boat in inches has no error either', () => {
  const { findings, boat } = heard(service.newBoat('Knot', 'inches'));
  expect(findings.filter(({ severity }) => severity === 'error' || severity === 'warning')).toEqual([]);
  expect(boat.units).toEqual({ length: 'in', mass: 'oz' });
});

it('Guillemot’s mesh is its hull: as long, closed, and of the volume that its sections make', () => {
  const {
    boat,
    file: { wantedFiles },
  } = sample('guillemot');
  expect(wantedFiles).toEqual(['guillemot-hull.stl']);
  const bounds = boundsOf(boat.shells[0]!.form);
  expect([bounds.from[0], bounds.to[0]].map(end => Math.round(end * 1e3))).toEqual([0, 720]);
  expect(bounds.from[1]).toBeCloseTo(-bounds.to[1], 6);
  // A full cylinder of its length, breadth and depth holds π/4·98·98·720 mm3 = 5.4 l; a submarine some 0.8 of it.
  expect(solidOf(boat.shells[0]!.form).volume * 1e3).toBeGreaterThan(4);
  expect(solidOf(boat.shells[0]!.form).volume * 1e3).toBeLessThan(5.4);
});

it('every sample is in no fault and says what it is at its head', () => {
  const names = readdirSync(folder).filter(name => name.endsWith('.boat.yaml'));
  expect(names.length).toBeGreaterThanOrEqual(4);
  for (const name of names) {
    const analysis = sample(name.replace('.boat.yaml', ''));
    expect(analysis.file.findings, name).toEqual([]);
    expect(analysis.syntax.text.startsWith(`# ${analysis.boat.name}`), name).toBe(true);
  }
});
