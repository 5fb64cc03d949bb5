import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { SERVER_PROCESS } from '../../client/serverProcess.ts';
import { startTalk } from './peer/talk.ts';

/*
 * What is there before anybody types: the extension's bundle loaded, aimed at within 100 ms, the server answering, and at
 * rest within 90 MB. It asserts nothing.
 */

const AIM = { load: 100, memory: 90 };
const SERVER = { name: 'ours', script: 'dist/server.cjs', languageId: 'boat', started: SERVER_PROCESS } as const;
/** Each time in a new process. */
const TIMES = 5;

const line = (what: string, value: string, aim?: string): void =>
  console.log(`  ${what.padEnd(36)} ${value.padStart(8)}${aim === undefined ? '' : `, ${aim} of what is aimed at`}`);

const times = (ratio: number): string => `${ratio.toFixed(2)} times`;

/** Prints what loading the extension and keeping the server costs. */
export async function atRest(): Promise<void> {
  console.log('Before anybody types');
  const loads = Array.from({ length: TIMES }, () =>
    Number(
      execFileSync(process.execPath, ['test/benchmark/loadExtension.cjs', 'dist/extension.cjs'], { encoding: 'utf8' }),
    ),
  ).sort((a, b) => a - b);
  const loaded = loads[TIMES >> 1]!;
  line('the extension is loaded', `${loaded.toFixed(0)} ms`, times(loaded / AIM.load));
  const names = readdirSync('samples').filter(name => name.endsWith('.boat.yaml'));
  for (const name of [null, ...names]) {
    const talk = await startTalk(SERVER, readFileSync('samples/guillemot-hull.stl'));
    if (name === null) line('the server has answered', `${talk.initialized.toFixed(0)} ms`);
    else {
      const told = talk.diagnostics();
      talk.open('file:///rest.boat.yaml', readFileSync(`samples/${name}`, 'utf8'));
      await told;
    }
    const { memory } = await talk.atRest();
    const megabytes = memory / 1024 / 1024;
    line(name ?? 'at rest, no file open', `${megabytes.toFixed(0)} MB`, times(megabytes / AIM.memory));
    talk.end();
  }
}
