import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { projectRoot } from '../../client/launch/install.mjs';

const framed = (body: string): string => `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`;
const message = (of: object): string => framed(JSON.stringify({ jsonrpc: '2.0', ...of }));
const hello = message({ id: 1, method: 'initialize', params: { processId: null, rootUri: null, capabilities: {} } });

/** A server of its own that is sent one thing after the other, each when the one before is answered; then its input ends. */
async function served(...sent: readonly string[]) {
  const server = spawn(process.execPath, [join(projectRoot, 'dist/server.cjs'), '--stdio']);
  const said = { out: '', err: '' };
  server.stdout.on('data', data => {
    said.out += data;
  });
  server.stderr.on('data', data => {
    said.err += data;
  });
  const ended = new Promise<number | null>(resolve => server.on('exit', resolve));
  server.stdin.on('error', () => {});
  for (const each of sent) {
    const before = said.out;
    server.stdin.write(each);
    if (each.includes('"id"')) await expect.poll(() => said.out, { timeout: 10_000 }).not.toBe(before);
  }
  return { said, ended, end: () => server.stdin.end() };
}

test.each([
  ['a key without a colon', 'Content-Length 17\r\n\r\n{"jsonrpc":"2.0"}'],
  ['no length', 'Content-Type: text\r\n\r\n{}'],
  ['a length that is no number', 'Content-Length: many\r\n\r\n{}'],
])('after a header with %s the server ends, and says why', async (_, broken) => {
  const { said, ended } = await served(hello, broken);
  expect(await ended).toBe(1);
  expect(said.err).toBe(
    'What came over standard input has no header of the language server protocol. The server ends.\n',
  );
});

test('a body that is no JSON is passed over', async () => {
  const { said, ended, end } = await served(hello, framed('{"jsonrpc":'), message({ id: 2, method: 'shutdown' }));
  expect(said.out).toContain('"id":2');
  end();
  expect(await ended).toBe(0);
});

test('where the editor dies without a word, so does the server', async () => {
  const { ended, end } = await served(hello);
  end();
  expect(await ended).toBe(1);
});
