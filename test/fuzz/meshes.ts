import { boxForm } from '../../server/core/geometry/form/box.ts';
import { readMeshFile } from '../../server/core/meshFiles/readMeshFile.ts';
import { createBoatService } from '../../server/service/service.ts';
import { type Seeded, seeded } from '../helpers/seeded.ts';
import { binaryStl, textStl } from '../helpers/stl.ts';
import { meshXml, model, pack, RELATIONS } from '../helpers/threeMf.ts';
import { askQuick, wrongIn } from './answers.ts';
import { edited, garbled, pick } from './edits.ts';
import { attempt, type Log } from './log.ts';
import { samples } from './samples.ts';

const box = boxForm([0, -0.04, 0], [0.8, 0.08, 0.09]);
const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
const xml = model(
  `<object id="1" type="model">${meshXml(boxForm([0, -40, 0], [800, 80, 90]))}</object>`,
  '<item objectid="1" transform="1 0 0 0 1 0 0 0 1 0 0 0"/>',
);
const packed = (relations: string, part: string): Uint8Array =>
  pack({ '_rels/.rels': relations, '3D/boat.model': part });

/** Files of each kind, changed in their bytes, or in their words before they are packed. */
const KINDS: Readonly<Record<string, (random: Seeded) => Uint8Array>> = {
  'binary STL': random => garbled(binaryStl(box, 1000), random),
  'text STL': random => garbled(bytesOf(textStl(box, 1000)), random),
  'words of a text STL': random => bytesOf(edited(textStl(box, 1000), random, RELATIONS).text),
  '3MF': random => garbled(packed(RELATIONS, xml), random),
  'words of a 3MF': random => packed(RELATIONS, edited(xml, random, RELATIONS).text),
  'relations of a 3MF': random => packed(edited(RELATIONS, random, xml).text, xml),
};

/** Reads so many garbled mesh files, and floats the sample that has a mesh by each. */
export function fuzzMeshes(files: number, seed: number, log: Log): void {
  const random = seeded(seed);
  const service = createBoatService();
  const text = samples.find(sample => sample.includes('mesh:'))!;
  for (let round = 0; round < files; round++) {
    const how = pick(random, Object.keys(KINDS));
    const bytes = KINDS[how]!(random);
    // To read it again, the bytes themselves are wanted.
    const about = { round, how, text: Buffer.from(bytes).toString('base64') };
    const mesh = attempt(log, about, 'mesh file', () => readMeshFile(bytes));
    if (!mesh) continue;
    attempt(log, about, 'boat with it', () => {
      const analysis = service.analyse(text, undefined, () => mesh);
      for (const what of wrongIn(analysis)) log.fault({ ...about, what });
      for (const what of askQuick(service, analysis, text.indexOf('mesh:'))) log.fault({ ...about, what });
    });
  }
}
