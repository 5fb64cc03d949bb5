import type { Form, Polyhedron } from '../form/form.ts';

/** A mesh in more pieces than this is taken as one: crumbs, not parts of a boat. */
const MOST = 16;

/** The forms that a form is made of: of a mesh, what hangs together by its vertices. */
export function formsIn(form: Form): readonly Form[] {
  switch (form.shape) {
    case 'compound':
      return form.parts.flatMap(formsIn);
    case 'polyhedron':
      return meshPieces(form);
    default:
      return [form];
  }
}

function meshPieces(mesh: Polyhedron): readonly Polyhedron[] {
  const { vertices, faces } = mesh;
  const leads = Uint32Array.from({ length: vertices.length / 3 }, (_, i) => i);
  const leadOf = (vertex: number): number => {
    let at = vertex;
    // Ends: a lead is never above the one that it leads.
    while (leads[at] !== at) at = leads[at] = leads[leads[at]!]!;
    return at;
  };
  for (let k = 0; k < faces.length; k += 3) {
    const [a, b, c] = [leadOf(faces[k]!), leadOf(faces[k + 1]!), leadOf(faces[k + 2]!)];
    const least = Math.min(a, b, c);
    leads[a] = leads[b] = leads[c] = least;
  }
  const pieces = new Map<number, number[]>();
  for (let k = 0; k < faces.length; k += 3) {
    const lead = leadOf(faces[k]!);
    const piece = pieces.get(lead) ?? [];
    pieces.set(lead, piece);
    piece.push(faces[k]!, faces[k + 1]!, faces[k + 2]!);
    if (pieces.size > MOST) return [mesh];
  }
  if (pieces.size < 2) return [mesh];
  return [...pieces.values()].map(piece => ({ shape: 'polyhedron', vertices, faces: Uint32Array.from(piece) }));
}
