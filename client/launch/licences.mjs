/** Licence texts of everything that the bundles hold, for the file that travels with them. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * What a bundle holds: bytes of each package and of each room of our own, and what it asks of its host.
 * @param {import('esbuild').Metafile} metafile
 */
export function contentsOf({ outputs }) {
  /** @type {Record<string, number>} */
  const packages = {};
  /** @type {Record<string, number>} */
  const rooms = {};
  for (const { inputs } of Object.values(outputs)) {
    for (const [file, { bytesInOutput }] of Object.entries(inputs)) {
      // What is named and then left out as unused is not in the bundle.
      if (bytesInOutput === 0) continue;
      const name = /.*node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(file)?.[1];
      const [of, part] = name ? [packages, name] : [rooms, file.split('/').slice(0, -1).join('/')];
      of[part] = (of[part] ?? 0) + bytesInOutput;
    }
  }
  const imports = Object.values(outputs).flatMap(output => output.imports.map(({ path }) => path));
  return { packages, rooms, imports: [...new Set(imports)].sort() };
}

/**
 * One text with the licence of each package.
 * @param {string} root where `node_modules` is
 * @param {readonly string[]} packages
 */
export function licenceTexts(root, packages) {
  const texts = packages.map(name => {
    const folder = join(root, 'node_modules', name);
    const { version, license, author } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
    const file = readdirSync(folder).find(each => /^licen[cs]e/i.test(each));
    const text = file
      ? readFileSync(join(folder, file), 'utf8').trim()
      : `${author?.name ?? author}. The package holds no text of its licence.`;
    return `${name} ${version} (${license})\n\n${text}\n`;
  });
  return `Trimwright holds parts of these packages, under their own licences.\n\n${texts.join(`\n${'-'.repeat(72)}\n\n`)}`;
}
