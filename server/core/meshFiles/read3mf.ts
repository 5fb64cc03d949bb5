import { strFromU8 } from 'fflate';
import { SaxesParser } from 'saxes';
import { quoted } from '../../../schema/quoted.ts';
import type { Polyhedron } from '../geometry/form/form.ts';
import type { Steps } from '../steps/steps.ts';
import { type FaultyMesh, faulty, type MeshUnit, MOST_TRIANGLES, tooManyTriangles } from './meshFile.ts';
import { type Model, type Placement, readModel, type Transform } from './threeMfModel.ts';
import { type Files, unpack } from './unpack.ts';
import { damaged, Unreadable } from './unreadable.ts';

export interface ThreeMf {
  readonly form: Polyhedron;
  readonly unit: MeshUnit;
}

/** Bytes of its relations that are read: a package has a handful of them. */
const MOST_RELATIONS = 100_000;
/** Figures that are placed in one step. */
const STRETCH = 60_000;
/** Objects made of objects made of objects, and how many may be placed in all. */
const DEEPEST = 16;
const MOST_PLACED = 10_000;

/** Reads a 3MF package: everything that its build puts on the plate, in the unit of its main model. */
export function* read3mf(bytes: Uint8Array): Steps<ThreeMf | FaultyMesh> {
  try {
    const files = yield* unpack(bytes);
    yield;
    return yield* assemble(files);
  } catch (problem) {
    // What else may be thrown says nothing to a person.
    return (problem instanceof Unreadable ? problem : damaged('nothing can be made of it')).mesh;
  }
}

function* assemble(files: Files): Steps<ThreeMf | FaultyMesh> {
  const models = new Map<string, Model>();
  const modelAt = function* (name: string): Steps<Model> {
    const known = models.get(name);
    if (known) return known;
    const bytes = files.get(name);
    if (!bytes) throw damaged(`it lacks its part ${quoted(name)}`);
    const made = yield* readModel(bytes);
    models.set(name, made);
    return made;
  };
  const root = mainModel(files);
  const { unit, items, objects } = yield* modelAt(root);
  const vertices: number[] = [];
  const faces: number[] = [];
  let placed = 0;
  const put = function* (place: Placement, from: string, around: readonly Transform[], depth = 0): Steps<void> {
    if (depth > DEEPEST || ++placed > MOST_PLACED) throw damaged('its objects hold each other without end');
    const file = place.file === null ? from : place.file.replace(/^\//, '');
    const object = (yield* modelAt(file)).objects.get(place.object);
    if (!object) throw damaged(`it places an object ${quoted(place.object)} that it does not have`);
    if (!object.isPart) return;
    const transforms = place.transform ? [place.transform, ...around] : around;
    const start = vertices.length / 3;
    for (let i = 0; i < object.vertices.length; i += 3) {
      if (i % STRETCH === 0) yield;
      vertices.push(...moved([object.vertices[i]!, object.vertices[i + 1]!, object.vertices[i + 2]!], transforms));
    }
    const count = object.vertices.length / 3;
    const isMirrored = transforms.filter(transform => determinant(transform) < 0).length % 2 === 1;
    for (let i = 0; i < object.triangles.length; i += 3) {
      if (i % STRETCH === 0) yield;
      const [a, b, c] = [object.triangles[i]!, object.triangles[i + 1]!, object.triangles[i + 2]!];
      if (!isCorner(a, count) || !isCorner(b, count) || !isCorner(c, count)) {
        throw damaged('a triangle has a corner that is not there');
      }
      faces.push(start + a, start + (isMirrored ? c : b), start + (isMirrored ? b : c));
    }
    if (Math.max(faces.length, vertices.length) > 3 * MOST_TRIANGLES) throw new Unreadable(tooManyTriangles());
    for (const component of object.components) yield* put(component, file, transforms, depth + 1);
  };
  const whole = (object: string): Placement => ({ object, file: null, transform: null });
  for (const item of items.length > 0 ? items : loneObjects(objects).map(whole)) yield* put(item, root, []);
  if (faces.length === 0) {
    return faulty('mesh-unreadable', 'has no triangles in it. Export it again with the form in view.');
  }
  yield;
  const form: Polyhedron = {
    shape: 'polyhedron',
    vertices: Float64Array.from(vertices),
    faces: Uint32Array.from(faces),
  };
  return { form, unit };
}

const isCorner = (corner: number, count: number): boolean => Number.isInteger(corner) && corner >= 0 && corner < count;

/** The model that the package starts from. */
function mainModel(files: Files): string {
  const relations = files.get('_rels/.rels');
  const start = relations ? startOf(strFromU8(relations.subarray(0, MOST_RELATIONS))) : null;
  if (start !== null) return start;
  const lone = [...files.keys()].filter(name => /\.model$/i.test(name));
  if (lone.length !== 1) throw damaged('it does not say which model to start from');
  return lone[0]!;
}

/** What the relations of a package start from (Open Packaging Conventions, “Relationships”; from memory); null for nothing. */
function startOf(relations: string): string | null {
  let target: string | null = null;
  const parser = new SaxesParser();
  parser.on('opentag', ({ name, attributes }) => {
    if (!/^(?:\w+:)?Relationship$/.test(name) || !/\/3dmodel$/.test(attributes.Type ?? '')) return;
    target ??= attributes.Target?.replace(/^\//, '') || null;
  });
  try {
    parser.write(relations).close();
  } catch {
    // Where they are damaged a lone model may still tell.
  }
  return target;
}

/** Without anything on the plate: the objects that are no part of another. */
function loneObjects(objects: Model['objects']): readonly string[] {
  const used = new Set([...objects.values()].flatMap(object => object.components.map(({ object: id }) => id)));
  return [...objects.keys()].filter(id => !used.has(id));
}

function moved(point: readonly number[], transforms: readonly Transform[]): readonly number[] {
  return transforms.reduce(
    ([x, y, z], m) => [0, 1, 2].map(i => x! * m[i]! + y! * m[3 + i]! + z! * m[6 + i]! + m[9 + i]!),
    point,
  );
}

const determinant = (m: Transform): number =>
  m[0]! * (m[4]! * m[8]! - m[5]! * m[7]!) -
  m[1]! * (m[3]! * m[8]! - m[5]! * m[6]!) +
  m[2]! * (m[3]! * m[7]! - m[4]! * m[6]!);
