import { inStretches, type Steps } from '../../steps/steps.ts';
import type { Form, Polyhedron } from '../form/form.ts';

/** A mesh in more pieces than this is taken as one: crumbs, not parts of a boat. */
const MOST = 16;
/** Triangles that are looked at in one step. */
const STEP = 50_000;

/** The forms that a form is made of: of a mesh, what hangs together by its vertices. */
export function* formsIn(form: Form): Steps<readonly Form[]> {
  if (form.shape === 'polyhedron') return yield* meshPieces(form);
  if (form.shape !== 'compound') return [form];
  const forms: Form[] = [];
  for (const part of form.parts) forms.push(...(yield* formsIn(part)));
  return forms;
}

function* meshPieces(mesh: Polyhedron): Steps<readonly Polyhedron[]> {
  const { vertices, faces } = mesh;
  const count = faces.length / 3;
  const leads = new Uint32Array(vertices.length / 3);
  for (let i = 0; i < leads.length; i++) leads[i] = i;
  const leadOf = (vertex: number): number => {
    let at = vertex;
    // Ends: a lead is never above the one that it leads.
    while (leads[at] !== at) at = leads[at] = leads[leads[at]!]!;
    return at;
  };
  yield* inStretches(count, STEP, (from, to) => {
    for (let k = 3 * from; k < 3 * to; k += 3) {
      const a = leadOf(faces[k]!);
      const b = leadOf(faces[k + 1]!);
      const c = leadOf(faces[k + 2]!);
      leads[a] = leads[b] = leads[c] = Math.min(a, b, c);
    }
  });
  // By their leads, in the order in which they come.
  const sizes = new Map<number, number>();
  for (let k = 0; k < faces.length && sizes.size <= MOST; k += 3) {
    const lead = leadOf(faces[k]!);
    sizes.set(lead, (sizes.get(lead) ?? 0) + 3);
  }
  if (sizes.size < 2 || sizes.size > MOST) return [mesh];
  if (count > STEP) yield;
  const pieces = new Map([...sizes].map(([lead, size]) => [lead, { faces: new Uint32Array(size), filled: 0 }]));
  for (let k = 0; k < faces.length; k += 3) {
    const piece = pieces.get(leadOf(faces[k]!))!;
    for (let i = k; i < k + 3; i++) piece.faces[piece.filled++] = faces[i]!;
  }
  return [...pieces.values()].map(piece => ({ shape: 'polyhedron', vertices, faces: piece.faces }));
}
