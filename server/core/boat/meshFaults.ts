import type { FindingCode } from '../findings/catalogue/catalogue.ts';
import type { Severity } from '../findings/finding.ts';
import type { Vec3 } from '../geometry/form/vector.ts';
import type { CheckedMesh, MeshFaults } from '../geometry/mesh/meshCheck.ts';
import type { MeshPlacement } from '../geometry/mesh/placedMesh.ts';
import { lengthText, percentText, stationWords } from '../wording/numbers.ts';
import { heightText } from '../wording/places.ts';
import { type Setting, tell } from './readingContext.ts';

/** A mesh whose holes leave more than this share of its volume open is in no figure. */
const MOST_AT_STAKE = 0.01;
/** A share of the volume that no builder can weigh. */
const NOTHING = 0.001;

interface OfFile {
  readonly file: string;
  readonly placement: MeshPlacement;
}

/** Tells what is wrong with a mesh and how much it matters for its use; false when it is better left out of the figures. */
export function tellMeshFaults({ faults }: CheckedMesh, of: OfFile, setting: Setting): boolean {
  const isSound = setting.use === 'wall' || setting.use === 'dry' || tellOpenings(faults, of, setting);
  if (setting.use !== 'wall') tellSides(faults, of, setting);
  tellEdges(faults, of, setting);
  tellCrossings(faults, of, setting);
  return isSound;
}

const say = (setting: Setting, code: FindingCode, message: string, severity: Severity) =>
  tell(setting, code, ['mesh', 'file'], message, { severity });

const counted = (count: number, one: string, many: string): string =>
  `${count.toLocaleString('en')} ${count === 1 ? one : many}`;

/** Holes: right for a wall, not for what keeps water out or in. */
function tellOpenings(faults: MeshFaults, { file, placement }: OfFile, setting: Setting): boolean {
  const { openEdges, gaps, widestGap, atStake, twisted } = faults;
  if (twisted > 0) {
    say(
      setting,
      'mesh-twisted',
      `At ${counted(twisted, 'edge', 'edges')} of “${file}” inside and outside cannot be told apart, as on a band with half a twist, so that it has no volume. Draw the surface anew there.`,
      'error',
    );
    return false;
  }
  if (openEdges === 0) return true;
  if (gaps === 0) {
    say(
      setting,
      'mesh-open',
      `${counted(openEdges, 'edge', 'edges')} of “${file}” do not meet corner to corner, but no gap can be seen between them: the volume holds.`,
      'information',
    );
    return true;
  }
  const width = lengthText(widestGap * placement.metres, setting.around.units);
  const isUsed = atStake <= MOST_AT_STAKE;
  const used = isUsed
    ? 'It is figured as if closed straight across; close it in the drawing program.'
    : 'Until it is closed in the drawing program it is left out of all figures.';
  const shell = setting.use === 'displaces' ? ' A free-flooding hull may be open: it belongs under “shells”.' : '';
  say(
    setting,
    'mesh-open',
    `“${file}” is not closed: ${counted(openEdges, 'edge has', 'edges have')} a triangle on one side only, round ${counted(gaps, 'gap', 'gaps')} up to ${width} wide, and ${percentText(atStake)} of its volume hangs on how that is closed. ${used}${shell}`,
    'error',
  );
  return isUsed;
}

/** Triangles that faced inward, and hollows. */
function tellSides(faults: MeshFaults, { file }: OfFile, setting: Setting): void {
  const { turned, triangles, degenerate, repeated, cavities } = faults;
  if (turned > 0) {
    const which =
      turned === triangles - degenerate - repeated
        ? `“${file}” was inside out: all its triangles faced inward.`
        : `${turned.toLocaleString('en')} of the ${counted(triangles, 'triangle', 'triangles')} of “${file}” faced the wrong way.`;
    say(setting, 'mesh-turned', `${which} They are turned over here, and the volume is right.`, 'information');
  }
  if (cavities === 0 || setting.use === 'dry') return;
  const what = counted(cavities, 'closed surface lies', 'closed surfaces lie');
  say(
    setting,
    'mesh-hollow',
    setting.use === 'holds'
      ? `In “${file}” ${what} inside the outer one, and the room in there is taken off what the tank holds.`
      : `In “${file}” ${what} inside the outer one, such as the inside of a wall. No water gets there: it displaces by its outer surface. Weigh it, since by its form it would be solid.`,
    'information',
  );
}

function tellEdges(
  { crowdedEdges, gaps, degenerate, repeated, joined, tolerance }: MeshFaults,
  of: OfFile,
  setting: Setting,
): void {
  const { file, placement } = of;
  if (crowdedEdges > 0) {
    const matters =
      setting.use === 'wall'
        ? 'what stands inside counts as wall too'
        : gaps > 0
          ? 'what that does to the volume shows when its gaps are closed'
          : 'the volume holds';
    say(
      setting,
      'mesh-edges',
      `${counted(crowdedEdges, 'edge', 'edges')} of “${file}” belong to three triangles or more, where pieces touch or a sheet stands inside: ${matters}.`,
      'information',
    );
  }
  if (degenerate > 0) {
    const corners =
      joined > 0
        ? ` ${counted(joined, 'corner', 'corners')} less than ${Number((tolerance * placement.metres * 1e6).toPrecision(1))} µm apart were joined.`
        : '';
    say(
      setting,
      'mesh-tidied',
      `${counted(degenerate, 'triangle', 'triangles')} of “${file}” had two corners in one spot and were left out; that changes nothing.${corners}`,
      'information',
    );
  }
  if (repeated > 0) {
    say(
      setting,
      'mesh-twice',
      `${counted(repeated, 'triangle', 'triangles')} of “${file}” ${repeated === 1 ? 'lies' : 'lie'} on another with the same three corners, and ${repeated === 1 ? 'was' : 'were'} left out: each counts once. A body that was exported twice in one place counts once too.`,
      'information',
    );
  }
}

function tellCrossings(
  { crossings, countedTwice, gaps }: MeshFaults,
  { file, placement }: OfFile,
  setting: Setting,
): void {
  if (crossings.pairs === 0 || !crossings.at || setting.use === 'dry') return;
  const { units } = setting.around;
  const [station, , height] = placedPoint(crossings.at, placement);
  const pairs = `${crossings.isPartial ? 'More than ' : ''}${counted(crossings.pairs, 'pair', 'pairs')} of triangles of “${file}” go through each other, one of them ${stationWords(station, units)} at height ${heightText(height, units)}`;
  if (setting.use === 'wall') {
    say(setting, 'mesh-crossing', `${pairs}: what lies inside the surface counts as wall too.`, 'information');
    return;
  }
  const isLittle = countedTwice !== null && countedTwice < NOTHING;
  const share =
    countedTwice === null
      ? gaps > 0
        ? 'How much of the volume that spoils cannot be told until its gaps are closed.'
        : 'So many triangles lie one behind the other that it cannot be told how much of the volume counts twice. Unite the pieces in the drawing program.'
      : isLittle
        ? 'That spoils less than 0.1 % of the volume.'
        : `About ${percentText(countedTwice)} of the volume counts twice. Unite the pieces in the drawing program.`;
  say(setting, 'mesh-crossing', `${pairs}. ${share}`, isLittle ? 'information' : 'warning');
}

function placedPoint(point: Vec3, { axes, metres, at }: MeshPlacement): Vec3 {
  const along = (axis: 0 | 1 | 2): number => axes[axis].sign * metres * point[axes[axis].from] + at[axis];
  return [along(0), along(1), along(2)];
}
