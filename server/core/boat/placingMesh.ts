import { axesText, BOAT_AXES, type MeshAxes } from '../../../schema/meshAxes.ts';
import { toSi, unitNamed } from '../../../schema/units.ts';
import { type Bounds, isFine } from '../geometry/cut/solids.ts';
import type { Form, Polyhedron } from '../geometry/form/form.ts';
import { isMirrored, type MeshPlacement } from '../geometry/mesh/placedMesh.ts';
import { normalName } from '../meshFiles/fileName.ts';
import type { LoadedMesh } from '../meshFiles/meshFile.ts';
import type { Steps } from '../steps/steps.ts';
import { lengthText } from '../wording/numbers.ts';
import { tellMeshFaults } from './meshFaults.ts';
import { measuredForm, type Placed, type PlacedForm, tellUnused } from './placed.ts';
import { type FormUse, type Setting, tell } from './readingContext.ts';

type MeshEntry = NonNullable<PlacedForm['mesh']>;

/** A mesh from its file, turned into boat axes and put in its place. */
export function placeMesh(entry: PlacedForm, mesh: MeshEntry, setting: Setting): Placed | null {
  const { around, use } = setting;
  const named = normalName(mesh.file);
  if (!named.ok) return tell(setting, 'mesh-name', ['mesh', 'file'], named.message);
  const file = around.meshes(named.name);
  if (file === null) {
    return tell(setting, 'mesh-loading', ['mesh', 'file'], `“${named.name}” is being read.`, {
      severity: 'information',
    });
  }
  if (file.status === 'faulty') {
    return tell(setting, file.code, ['mesh', 'file'], `“${named.name}” ${file.words}`);
  }
  tellUnused(entry, ['station', 'offset', 'height', 'axis'], 'a mesh lies where “at” puts its origin.', setting);
  const placement = placementOf(entry, mesh, metresOf(mesh, file, setting));
  if (!tellMeshFaults(file.mesh, { file: named.name, placement }, setting)) return null;
  const form = around.shapes.placed(surfaceFor(use, file), placement);
  const bounds = around.shapes.boundsOf(form);
  if (isMirrored(placement.axes)) tellMirror(placement, mesh, setting, form);
  return measuredForm(form, bounds, [meshWords(named.name, file, bounds, setting)]);
}

const placementOf = ({ grown = 1 }: PlacedForm, { axes = BOAT_AXES, at }: MeshEntry, metres: number): MeshPlacement => {
  const [x, y, z] = at ?? [];
  return { axes, metres: metres * grown, at: [x?.value ?? 0, y?.value ?? 0, z?.value ?? 0] };
};

const surfaceFor = (use: FormUse, { mesh: { surface, closed, outer } }: LoadedMesh): Polyhedron =>
  use === 'wall' ? surface : use === 'displaces' ? outer : closed;

/** Makes in steps what takes long to make of a mesh, so that it is at hand when it is placed. */
export function* meshReady(
  entry: PlacedForm,
  mesh: MeshEntry,
  { around, use, endsClosed }: Pick<Setting, 'around' | 'use' | 'endsClosed'>,
): Steps<void> {
  const named = normalName(mesh.file);
  const file = named.ok ? around.meshes(named.name) : null;
  if (!named.ok || file?.status !== 'loaded') return;
  const untold: Setting = { around, use, endsClosed, path: [], findings: [] };
  const placement = placementOf(entry, mesh, metresOf(mesh, file, untold));
  if (!tellMeshFaults(file.mesh, { file: named.name, placement }, untold)) return;
  const form = around.shapes.placed(surfaceFor(use, file), placement);
  if (!isFine(form)) return;
  yield;
  if (use === 'wall' || isMirrored(placement.axes)) yield* around.shapes.wallSteps(form, endsClosed);
  if (use !== 'wall') yield* around.shapes.solidSteps(form);
  yield;
}

/** The unit that the entry says, else the file's own, else mm. */
function metresOf({ unit }: MeshEntry, file: LoadedMesh, setting: Setting): number {
  const said = unit === undefined ? null : toSi(1, unitNamed(unit, 'length')!);
  if (said !== null && file.unit && Math.abs(said / file.unit.metres - 1) > 1e-9) {
    tell(
      setting,
      'mesh-unit',
      ['mesh', 'unit'],
      `The file itself says that it is in ${file.unit.name}; “unit: ${unit}” overrules it. Remove this unless the file is wrong.`,
      {
        severity: 'warning',
        mends: [{ title: 'Remove “unit”', changes: [{ kind: 'remove', path: [...setting.path, 'mesh', 'unit'] }] }],
      },
    );
  }
  return said ?? file.unit?.metres ?? 0.001;
}

/** Off its own centreline by more than this share of its breadth a form is not the same to port and starboard. */
const LOPSIDED = 1e-3;

/** Axes that turn a form into its mirror image matter where its two sides differ. */
function tellMirror({ axes, at }: MeshPlacement, mesh: MeshEntry, setting: Setting, form: Form): void {
  const { from, to } = setting.around.shapes.boundsOf(form);
  const [, aside] = setting.around.shapes.wallOf(form, setting.endsClosed).centroid;
  if (Math.abs(aside - at[1]) <= LOPSIDED * (to[1] - from[1])) return;
  const [aft, starboard, up] = axes;
  const upright: MeshAxes = [aft, { ...starboard, sign: starboard.sign === 1 ? -1 : 1 }, up];
  const text = axesText(upright);
  const place = { on: 'value', path: [...setting.path, 'mesh', 'axes'] } as const;
  tell(
    setting,
    'mesh-mirrored',
    ['mesh', 'axes'],
    `“${axesText(axes)}” makes the form its mirror image: what is to port in “${mesh.file}” comes to starboard. Drawing programs have right-handed axes, so that “${text}” is more likely.`,
    {
      severity: 'warning',
      mends: [{ title: `Change to “${text}”`, changes: [{ kind: 'replace', place, text }] }],
    },
  );
}

function meshWords(name: string, file: LoadedMesh, { from, to }: Bounds, { around }: Setting): string {
  const size = ([0, 1, 2] as const).map(axis => lengthText(to[axis] - from[axis], around.units)).join(' x ');
  return `“${name}”: ${file.mesh.faults.triangles.toLocaleString('en')} triangles, ${size}`;
}
