// Prints how long the extension's bundle takes to load, ms: node loadExtension.cjs dist/extension.cjs
const Module = require('node:module');
const { resolve } = require('node:path');

/**
 * Stands for all of the editor's interface: whatever is asked of it, it is.
 * @type {object}
 */
const anything = new Proxy(Object.bind(null), { get: () => anything, apply: () => anything, construct: () => ({}) });
const { require: load } = Module.prototype;
Module.prototype.require = Object.assign(
  /** @this {NodeModule} @param {string} name */
  function (name) {
    return name === 'vscode' ? anything : load.call(this, name);
  },
  load,
);

const start = performance.now();
require(resolve(process.argv[2] ?? ''));
console.log(performance.now() - start);
