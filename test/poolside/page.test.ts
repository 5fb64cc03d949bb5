import { createHash } from 'node:crypto';
import { beforeAll, describe, expect, it } from 'vitest';
import { bundlePoolside } from '../../client/poolside/bundle.mjs';
import { poolsidePage } from '../../server/editor/poolsidePage.ts';
import { runCommandLine } from '../../server/terminal/commandLine.ts';
import { memoryWorld } from '../helpers/memoryWorld.ts';
import { PROBE } from '../helpers/probe.ts';

let built = '';
beforeAll(async () => {
  ({ page: built } = await bundlePoolside());
});

const BOAT = { name: '</script><b>$& $1', text: '<!-- </script> -->', meshes: [], view: { words: '</style>' } };
const between = (page: string, start: string, end: string) =>
  page.slice(page.indexOf(start) + start.length).split(end)[0]!;
const hashOf = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

describe('the page as built', () => {
  it('runs and shows only what its policy names by hash, and lets nothing in or out', () => {
    const policy = between(built, 'Content-Security-Policy" content="', '"').split('; ');
    expect(policy).toEqual([
      "default-src 'none'",
      `script-src ${hashOf(between(built, '\n<script>', '</script>\n</body>'))}`,
      `style-src ${hashOf(between(built, '<style>', '</style>'))}`,
      'worker-src blob:',
      "connect-src 'none'",
      "base-uri 'none'",
      "form-action 'none'",
    ]);
  });
  it('is one file that fetches nothing, with room for a boat below 2 MB', () => {
    expect(built.length).toBeLessThan(1.5e6);
    const markup = built.replace(/<script[\s\S]*?<\/script>/g, '');
    expect(markup.length).toBeGreaterThan(1000);
    expect(markup).not.toMatch(/<link|<img|<iframe|\ssrc=|\shref=|@import|url\(/i);
    const program = built.replace(/<script[^>]*id="licences">.*/, '');
    const names = [...program.matchAll(/https?:\/\/[\w./-]+/g)].map(([address]) => address);
    // Names of namespaces and of documents, none of them an address that is asked.
    expect(names.filter(address => !/^http:\/\/(?:www\.w3\.org|schemas\.microsoft\.com)\//.test(address))).toEqual(
      names.filter(address => /json-schema\.org|3mf/.test(address)),
    );
    expect(built).not.toMatch(/\b(?:fetch|XMLHttpRequest|WebSocket|EventSource|importScripts|sendBeacon)\s*\(/);
  });
  it('carries the licences of what it holds', () => {
    const licences: unknown = JSON.parse(between(built, 'id="licences">', '</script>'));
    expect(licences).toMatch(/^zod [\d.]+ \(MIT\)$/m);
  });
  it('carries its worker whole', () => {
    const worker: unknown = JSON.parse(between(built, 'id="worker">', '</script>'));
    expect(worker).toMatch(/onmessage/);
  });
  it('ends no script early', () => {
    expect(built.match(/<\/script>/g)).toHaveLength(4);
    expect(built).not.toContain('<!--');
  });
});

describe('a boat in the page', () => {
  it('is there as it was given, and nothing of it is markup', () => {
    const page = poolsidePage(built, BOAT);
    expect(JSON.parse(between(page, 'id="boat">', '</script>'))).toEqual(BOAT);
    expect(page.match(/<\/script>/g)).toHaveLength(4);
    expect(page.replace(/(?<=id="boat">).*/, '{{boat}}</script>')).toBe(built);
  });
});

describe('trimwright poolside', () => {
  const run = (...args: readonly string[]) => {
    const { world, written, said } = memoryWorld({ 'a.boat.yaml': PROBE });
    return { code: runCommandLine(['poolside', 'a.boat.yaml', ...args], world), written, ...said() };
  };
  it('writes the page with the boat in it', () => {
    const { code, written, err } = run('-o', 'a.html');
    expect(code).toBe(0);
    expect(err).toMatch(/^a\.html: written\. /);
    const [, boat] = /^<p>(.*)<\/p>$/.exec(written['a.html']!)!;
    expect(JSON.parse(boat!)).toMatchObject({ text: PROBE, meshes: [], view: { isSettled: true } });
  });
  it('puts it out where no file is named', () => {
    expect(run().out).toMatch(/^<p>\{/);
  });
});
