import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { boundsOf } from '../../server/core/geometry/cut/solids.ts';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import type { Polyhedron } from '../../server/core/geometry/form/form.ts';
import { type MeshFile, missingMesh } from '../../server/core/meshFiles/meshFile.ts';
import { readMeshFile } from '../../server/core/meshFiles/readMeshFile.ts';
import { expectClose } from '../geometry/helpers/close.ts';
import { ellipsoidMesh } from '../geometry/helpers/meshes.ts';
import { fileFindings, marked, mended, service } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { binaryStl } from '../helpers/stl.ts';

/** STL keeps numbers to 24 bits. */
const SINGLE = 1e-6;
const stl = (form: Polyhedron): MeshFile => readMeshFile(binaryStl(form));
const without = (form: Polyhedron, ...faces: number[]): Polyhedron => ({
  ...form,
  faces: form.faces.filter((_, i) => !faces.includes(Math.trunc(i / 3))),
});
const joined = (one: Polyhedron, other: Polyhedron): Polyhedron => ({
  shape: 'polyhedron',
  vertices: Float64Array.from([...one.vertices, ...other.vertices]),
  faces: Uint32Array.from([...one.faces, ...other.faces.map(vertex => vertex + one.vertices.length / 3)]),
});
const turned = (form: Polyhedron): Polyhedron => ({ ...form, faces: form.faces.toReversed() });

/** 400 x 60 x 40, as drawn in mm with its bow at the origin. */
const block = boxForm([0, -30, 0], [400, 30, 40]);
const files: Readonly<Record<string, MeshFile>> = {
  'twice.stl': stl(joined(block, block)),
  'block.stl': stl(block),
  'tiny block.stl': stl(boxForm([0, -0.1, 0], [1, 0.1, 0.1])),
  'open.stl': stl(without(block, 10, 11)),
  'pinhole.stl': stl(joined(without(boxForm([0, -30, 0], [400, 30, 40]), 10, 11), lid())),
  'inside out.stl': stl(turned(block)),
  'hollow.stl': stl(joined(block, boxForm([10, -20, 10], [390, 20, 30]))),
  'crossed.stl': stl(joined(block, boxForm([100, -20, 20], [200, 20, 60]))),
  'forward.stl': stl(boxForm([-400, -30, 0], [0, 20, 40])),
  'odd.stl': stl(boxForm([0, -30, 0], [400, 20, 40])),
  'cut short.stl': readMeshFile(binaryStl(block).subarray(0, 400)),
  '3mf.stl': { ...(stl(block) as MeshFile & { status: 'loaded' }), unit: { name: 'inches', metres: 0.0254 } },
};

/** The top of the block with a hole of 8 x 8 in it: four strips round it. */
function lid(): Polyhedron {
  const [x, y, z] = [[0, 196, 204, 400], [-30, -4, 4, 30], 40];
  const vertices = y.flatMap(b => x.flatMap(a => [a, b, z]));
  const quad = (i: number, j: number) => [4 * j + i, 4 * j + i + 1, 4 * j + i + 5, 4 * j + i + 4] as const;
  const cells = [0, 1, 2].flatMap(j => [0, 1, 2].filter(i => i !== 1 || j !== 1).map(i => quad(i, j)));
  return {
    shape: 'polyhedron',
    vertices: Float64Array.from(vertices),
    faces: Uint32Array.from(cells.flatMap(([a, b, c, d]) => [a, b, c, a, c, d])),
  };
}

const boat = (list: string, mesh: string, more = ''): string => `boat: Sketch
hull:
  length: 400 mm
  ${list}:
    - name: hull
${
  list === 'tanks'
    ? '      kind: sealed'
    : `      mass: 200 g
      material: fibreglass`
}
      mesh: { ${mesh} }
${more}`;

const analyse = (text: string, previous?: Analysis): Analysis =>
  service.analyse(text, previous, name => files[name] ?? missingMesh());
const said = (analysis: Analysis) => fileFindings(analysis).map(({ code, severity }) => `${severity} ${code}`);
const words = (analysis: Analysis) => fileFindings(analysis)[0]!.message;

describe('a mesh file', () => {
  it('is a compartment, its origin where “at” puts it', () => {
    const longer = boat('compartments', 'file: block.stl, unit: mm, at: [20, 0, 6 mm]').replace('400 mm', '420 mm');
    const analysis = analyse(longer);
    expect(fileFindings(analysis)).toEqual([]);
    const [hull] = analysis.boat.compartments;
    expectClose(hull!.volume, 0.4 * 0.06 * 0.04, SINGLE);
    expectClose(hull!.centroid[0], 0.22, SINGLE);
    expectClose(hull!.centroid[2], 0.026, SINGLE);
    expect(hull!.worked).toEqual(['“block.stl”: 12 triangles, 400 mm x 60 mm x 40 mm']);
    expect(analysis.file.wantedFiles).toEqual(['block.stl']);
  });

  it.each([
    ['cm', 10],
    ['m', 1000],
    ['in', 25.4],
    ['ft', 304.8],
  ])('in %s', (unit, times) => {
    const analysis = analyse(boat('compartments', `file: tiny block.stl, unit: ${unit}`));
    expectClose(boundsOf(analysis.boat.compartments[0]!.form).to[0], 0.001 * times, SINGLE);
  });

  it.each([
    // Drawn with its bow towards +x, its deck towards +z, 30 to one side and 20 to the other.
    ['-x -y z', [0, -20, 0], [400, 30, 40]],
    ['-x y z', [0, -30, 0], [400, 20, 40]],
    ['-x z -y', [0, 0, -20], [400, 40, 30]],
  ])('turned by the axes %s', (axes, from, to) => {
    const analysis = analyse(boat('compartments', `file: forward.stl, axes: ${axes}`));
    const { form, volume } = analysis.boat.compartments[0]!;
    const bounds = boundsOf(form);
    for (const [i, value] of [...from, ...to].entries()) {
      expect([...bounds.from, ...bounds.to][i]! * 1000).toBeCloseTo(value, 4);
    }
    expectClose(volume, 0.4 * 0.05 * 0.04, SINGLE);
  });

  it('says where the entry is hovered how large it is', () => {
    const text = boat('compartments', 'file: block.stl');
    const hover = service.hover(analyse(text), text.indexOf('name: hull') + 8);
    expect(JSON.stringify(hover)).toContain('12 triangles');
  });
});

describe('what is wrong with a mesh', () => {
  it('an open one is right for a shell', () => {
    const analysis = analyse(boat('shells', 'file: open.stl'));
    expect(fileFindings(analysis)).toEqual([]);
    // Five sides of 400 x 60 x 40 have their middle below the block's.
    const areas = [0.4 * 0.06, 2 * 0.4 * 0.04, 2 * 0.06 * 0.04];
    const height = (areas[1]! * 0.02 + areas[2]! * 0.02) / (areas[0]! + areas[1]! + areas[2]!);
    expectClose(analysis.boat.shells[0]!.centroid[2], height, SINGLE);
  });

  it('a wide open one is left out of a compartment and of a tank, with the share at stake', () => {
    for (const list of ['compartments', 'tanks']) {
      const analysis = analyse(boat(list, 'file: open.stl'));
      expect(said(analysis)).toEqual(['error mesh-open']);
      // The pyramid under a side of a block, from its middle, is a sixth of it.
      expect(words(analysis)).toContain(
        '4 edges have a triangle on one side only, round 1 gap up to 400 mm wide, and 17 % of its volume',
      );
      expect(words(analysis).includes('“shells”')).toBe(list === 'compartments');
      expect(analysis.boat.leftOut).toEqual(['hull']);
      expect(marked(analysis, fileFindings(analysis)[0]!)).toBe('open.stl');
    }
  });

  it('one with a pinhole is an error too, but figured as if closed', () => {
    const analysis = analyse(boat('compartments', 'file: pinhole.stl'));
    expect(said(analysis)).toEqual(['error mesh-open']);
    expect(words(analysis)).toContain('1 gap up to 8 mm wide');
    expect(words(analysis)).toContain('figured as if closed straight across');
    expectClose(analysis.boat.compartments[0]!.volume, 0.4 * 0.06 * 0.04, SINGLE);
  });

  it('inside a compartment a part may be open: its mass is all that counts', () => {
    const text = boat(
      'compartments',
      'file: block.stl',
      boatText`
        payload:
          - { name: pan, in: hull, mass: 9 g, mesh: { file: open.stl } }
      `,
    );
    expect(fileFindings(analyse(text))).toEqual([]);
    expect(said(analyse(text.replace('in: hull, ', '')))).toEqual(['error mesh-open']);
  });

  it.each([
    ['inside out.stl', 'information mesh-turned', 'was inside out: all its triangles faced inward'],
    ['hollow.stl', 'information mesh-hollow', '1 closed surface lies inside the outer one'],
    ['crossed.stl', 'warning mesh-crossing', 'of the volume counts twice'],
    ['twice.stl', 'information mesh-twice', '12 triangles of “twice.stl” lie on another with the same three corners'],
    ['cut short.stl', 'error mesh-unreadable', '“cut short.stl” is cut short: it promises 12 triangles and holds 6.'],
    [
      'nowhere.stl',
      'error mesh-missing',
      '“nowhere.stl” is not there. Its name counts from the folder of the boat file',
    ],
    ['/boats/hull.stl', 'error mesh-name', 'is a place on one computer'],
    ['hull.step', 'error mesh-name', 'Expected an STL or 3MF file'],
  ])('%s', (file, code, message) => {
    const analysis = analyse(boat('compartments', `file: ${file}`));
    expect(said(analysis)).toContain(code);
    expect(
      fileFindings(analysis)
        .map(finding => finding.message)
        .join(),
    ).toContain(message);
  });

  it('a body that is there twice in one place displaces once', () => {
    expectClose(analyse(boat('compartments', 'file: twice.stl')).boat.compartments[0]!.volume, 960e-6, SINGLE);
  });

  it('hollows displace with the rest in a compartment, and take room from a tank', () => {
    expectClose(analyse(boat('compartments', 'file: hollow.stl')).boat.compartments[0]!.volume, 960e-6, SINGLE);
    expectClose(analyse(boat('tanks', 'file: hollow.stl')).boat.tanks[0]!.capacity, (960 - 304) * 1e-6, SINGLE);
  });

  it('a mirror image matters where the two sides differ, and is mended', () => {
    const text = boat('compartments', 'file: odd.stl, axes: x -y z');
    const analysis = analyse(text);
    expect(said(analysis)).toEqual(['warning mesh-mirrored']);
    expect(marked(analysis, fileFindings(analysis)[0]!)).toBe('x -y z');
    expect(fileFindings(analyse(mended(analysis, fileFindings(analysis)[0]!)))).toEqual([]);
    expect(fileFindings(analyse(text.replace('odd', 'block')))).toEqual([]);
  });

  it('a unit that overrules the file’s own is told, and taken out', () => {
    const analysis = analyse(boat('compartments', 'file: 3mf.stl, unit: mm'));
    expect(said(analysis)).toEqual(['warning mesh-unit']);
    const plain = analyse(mended(analysis, fileFindings(analysis)[0]!));
    expectClose(boundsOf(plain.boat.compartments[0]!.form).to[0], 400 * 0.0254, SINGLE);
  });

  it.each([
    ['cm', 'warning mesh-beyond-hull'],
    ['mm, at: [-60, 0, 0]', 'warning mesh-beyond-hull'],
  ])('one beyond the hull: unit %s', (unit, code) => {
    expect(said(analyse(boat('compartments', `file: block.stl, unit: ${unit}`)))).toEqual([code]);
  });

  it('a shell so small that its wall would fill it', () => {
    const analysis = analyse(
      boat('shells', 'file: block.stl')
        .replace('400 mm', '16 mm')
        .replace('block.stl', 'block.stl, unit: mm')
        .replace('mass: 200 g', 'mass: 9 kg'),
    );
    expect(said(analysis)).toContain('warning wall-unlikely');
  });

  it('places that a mesh has no use for', () => {
    const analysis = analyse(
      boat(
        'compartments',
        'file: block.stl',
        `      station: 20 mm
      height: 3 mm
`,
      ),
    );
    expect(said(analysis)).toEqual(['warning key-without-use', 'warning key-without-use']);
  });
});

describe('a mesh while one types', () => {
  const text = boat(
    'shells',
    'file: hull.stl, at: [200, 0, 30]',
    boatText`
      payload:
        - { name: lead, material: lead, mass: 90 g, station: 200 mm, height: 2 mm }
    `,
  );
  const hull = stl(ellipsoidMesh([200, 30, 30], 40));
  const withHull = (name: string) => (name === 'hull.stl' ? hull : null);

  it('is waited for without alarm', () => {
    const analysis = service.analyse(text, undefined, () => null);
    expect(analysis.findings.map(({ code }) => code)).toContain('mesh-loading');
    expect(analysis.findings.filter(({ severity }) => severity === 'error' || severity === 'warning')).toEqual([]);
    expect(analysis.file.wantedFiles).toEqual(['hull.stl']);
  });

  it('is read anew when it comes or changes, and only then', () => {
    const waiting = service.analyse(text, undefined, () => null);
    const come = service.analyse(text, waiting, withHull);
    expect(come.boat.shells).toHaveLength(1);
    const typed = service.analyse(text.replace('90 g', '95 g'), come, withHull);
    expect(typed.boat.shells[0]).toBe(come.boat.shells[0]);
    const smaller = stl(ellipsoidMesh([180, 28, 28], 40));
    const changed = service.analyse(text, typed, () => smaller);
    expect(changed.boat.shells[0]).not.toBe(come.boat.shells[0]);
    expectClose(boundsOf(changed.boat.shells[0]!.form).to[0], 0.38, SINGLE);
  });

  it('keeps its form, sorted once, while the entry around it changes', () => {
    const before = service.analyse(text, undefined, withHull);
    const after = service.analyse(text.replace('200 g', '210 g'), before, withHull);
    expect(after.boat.shells[0]).not.toBe(before.boat.shells[0]);
    expect(after.boat.shells[0]!.form).toBe(before.boat.shells[0]!.form);
    const { shapes } = after.kept.cache;
    expect(shapes).toBe(before.kept.cache.shapes);
    expect(shapes.wallOf(after.boat.shells[0]!.form, true)).toBe(shapes.wallOf(before.boat.shells[0]!.form, true));
  });
});
