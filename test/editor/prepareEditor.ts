import { mkdirSync, rmSync } from 'node:fs';
import { setUpEditor } from '../../client/launch/servedEditor.mjs';
import { shots } from './session.ts';

/** Before the first test: the editor in its cache folder, and no screenshots of earlier runs. */
export default function prepareEditor(): void {
  setUpEditor(line => console.log(line));
  rmSync(shots, { recursive: true, force: true });
  mkdirSync(shots, { recursive: true });
}
