import { strToU8, zipSync } from 'fflate';
import type { Polyhedron } from '../../server/core/geometry/form/form.ts';

// Written by the 3MF Core Specification and its Production Extension, from memory.
export const RELATIONS = `<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">
<Relationship Target="/Metadata/picture.png" Id="r0" Type="http://schemas.openxmlformats.org/package/2006/relationships/metadata/thumbnail"/>
<Relationship Target="/3D/boat.model" Id="r1" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>`;

/** A body as the resources of such a file give it. */
export const meshXml = ({ vertices, faces }: Polyhedron): string => {
  const rows = (values: ArrayLike<number>, write: (a: number, b: number, c: number) => string) =>
    Array.from({ length: values.length / 3 }, (_, i) =>
      write(values[3 * i]!, values[3 * i + 1]!, values[3 * i + 2]!),
    ).join('');
  return `<mesh><vertices>${rows(vertices, (x, y, z) => `<vertex x="${x}" y="${y}" z="${z}"/>`)}</vertices>
<triangles>${rows(faces, (a, b, c) => `<triangle v1="${a}" v2="${b}" v3="${c}"/>`)}</triangles></mesh>`;
};

/** The part that holds the bodies. */
export const model = (resources: string, build: string, unit = ' unit="millimeter"'): string =>
  `<?xml version="1.0" encoding="UTF-8"?>
<model${unit} xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02" xmlns:p="http://schemas.microsoft.com/3dmanufacturing/production/2015/06">
<metadata name="Title">Hull &amp; fin</metadata><resources>${resources}</resources><build>${build}</build></model>`;

export const pack = (files: Readonly<Record<string, string>>): Uint8Array =>
  zipSync(Object.fromEntries(Object.entries(files).map(([name, text]) => [name, strToU8(text)])));

/** A whole file with one such part. */
export const threeMf = (resources: string, build: string, unit?: string): Uint8Array =>
  pack({ '_rels/.rels': RELATIONS, '3D/boat.model': model(resources, build, unit), 'Metadata/picture.png': 'none' });
