import { axesText, BOAT_AXES, type MeshAxes } from '../../../schema/meshAxes.ts';
import { toSi, unitNamed } from '../../../schema/units.ts';
import type { Bounds } from '../geometry/cut/solids.ts';
import type { Form } from '../geometry/form/form.ts';
import { isMirrored, type MeshPlacement } from '../geometry/mesh/placedMesh.ts';
import { normalName } from '../meshFiles/fileName.ts';
import type { LoadedMesh } from '../meshFiles/meshFile.ts';
import { lengthText } from '../wording/numbers.ts';
import { tellMeshFaults } from './meshFaults.ts';
import { measuredForm, type Placed, type PlacedForm, tellUnused } from './placed.ts';
import { type Setting, tell } from './readingContext.ts';

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
  const axes = mesh.axes ?? BOAT_AXES;
  const [x, y, z] = mesh.at ?? [];
  const placement: MeshPlacement = {
    axes,
    metres: metresOf(mesh, file, setting) * (entry.grown ?? 1),
    at: [x?.value ?? 0, y?.value ?? 0, z?.value ?? 0],
  };
  if (!tellMeshFaults(file.mesh, { file: named.name, placement }, setting)) return null;
  const { surface, closed, outer } = file.mesh;
  const form = around.shapes.placed(use === 'wall' ? surface : use === 'displaces' ? outer : closed, placement);
  const bounds = around.shapes.boundsOf(form);
  if (isMirrored(axes)) tellMirror(placement, mesh, setting, form);
  return measuredForm(form, bounds, [meshWords(named.name, file, bounds, setting)]);
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
