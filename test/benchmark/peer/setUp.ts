import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';

/** A general YAML language server, from the registry that npm is set to. */
const PACKAGE = 'yaml-language-server';
const VERSION = '1.25.0';

const folder = resolve('.cache/peer');
const inPackage = (file: string): string => resolve(folder, 'node_modules', PACKAGE, file);

/** Puts the peer into the cache folder where it is not there yet, without its built-in wait; what to start. */
export function setUpPeer(): string {
  const start = inPackage('bin/yaml-language-server');
  if (!existsSync(start)) {
    mkdirSync(folder, { recursive: true });
    writeFileSync(resolve(folder, 'package.json'), '{ "private": true }');
    const install = ['install', '--no-audit', '--no-fund', '--ignore-scripts', `${PACKAGE}@${VERSION}`];
    execFileSync('npm', install, { cwd: folder, stdio: 'inherit' });
  }
  const settings = inPackage('out/server/src/yamlSettings.js');
  const code = readFileSync(settings, 'utf8');
  const without = code.replace(/validationDelayMs = \d+/, 'validationDelayMs = 0');
  if (!without.includes('validationDelayMs = 0')) throw new Error(`${PACKAGE} ${VERSION} keeps its wait elsewhere.`);
  if (without !== code) writeFileSync(settings, without);
  return start;
}

export const PEER = `${PACKAGE} ${VERSION}`;
