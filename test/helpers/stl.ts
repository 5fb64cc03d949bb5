import type { Polyhedron } from '../../server/core/geometry/form/form.ts';

/** A body as a binary STL file; coordinates are multiplied by `scale`, such as 1000 for millimetres out of metres. */
export function binaryStl({ vertices, faces }: Polyhedron, scale = 1, header = 'made for a test'): Uint8Array {
  const bytes = new Uint8Array(84 + (50 * faces.length) / 3);
  bytes.set(new TextEncoder().encode(header).subarray(0, 80));
  const view = new DataView(bytes.buffer);
  view.setUint32(80, faces.length / 3, true);
  faces.forEach((vertex, i) => {
    const at = 84 + 50 * Math.trunc(i / 3) + 12 + 12 * (i % 3);
    for (let k = 0; k < 3; k++) view.setFloat32(at + 4 * k, scale * vertices[3 * vertex + k]!, true);
  });
  return bytes;
}

/** The same as a text STL file. */
export function textStl({ vertices, faces }: Polyhedron, scale = 1, name = 'hull'): string {
  const lines = [`solid ${name}`];
  faces.forEach((vertex, i) => {
    if (i % 3 === 0) lines.push('  facet normal 0 0 0', '    outer loop');
    const place = [0, 1, 2].map(k => (scale * vertices[3 * vertex + k]!).toExponential(9));
    lines.push(`      vertex ${place.join(' ')}`);
    if (i % 3 === 2) lines.push('    endloop', '  endfacet');
  });
  return `${[...lines, `endsolid ${name}`].join('\n')}\n`;
}
