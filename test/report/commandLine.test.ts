import { describe, expect, it } from 'vitest';
import { runCommandLine } from '../../server/terminal/commandLine.ts';
import { heard, service } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { memoryWorld } from '../helpers/memoryWorld.ts';
import { PROBE, probe } from '../helpers/probe.ts';

/** Runs a command against files in memory. */
function run(args: readonly string[], files: Readonly<Record<string, string>> = {}, isTerminal = false) {
  const { world, written, shown, said } = memoryWorld(files, isTerminal);
  const code = runCommandLine(args, world);
  return { code, ...said(), written, shown };
}

const CALM = probe([
  boatText`
    mass: 800 g
        station: 150 to 250 mm
        height: 30 mm`,
  boatText`
    mass: 800 g
        station: 150 to 250 mm
        height: 10 mm`,
]);
const TRIM = probe(['150 to 250', '160 to 260']);
const WRONG = probe(['mass: 800 g', 'mass: 800 mm']);

describe('check', () => {
  it('prints findings as file:line:column in the order of the file, and fails on errors', () => {
    const line = WRONG.split('\n').findIndex(text => text.includes('800 mm')) + 1;
    const { code, out } = run(['check', 'a.boat.yaml'], { 'a.boat.yaml': WRONG });
    expect(code).toBe(1);
    expect(out).toContain(
      `a.boat.yaml:${line}:15: error: Expected a mass, e.g. 310 g, but “mm” is a unit of length. [wrong-quantity]\n`,
    );
    const lines = out
      .trimEnd()
      .split('\n')
      .map(text => Number(text.split(':')[1]));
    expect(lines).toEqual([...lines].sort((a, b) => a - b));
  });
  it('does not fail on warnings', () => {
    const { code, out } = run(['check', 'a'], { a: TRIM });
    expect(code).toBe(0);
    expect(out).toMatch(/^a:5:3: warning: Surfaced, the bow rides 3 mm high: .* \[surfaced-trim\]$/m);
  });
  it('takes several files, and fails for one of them', () => {
    const { code, out } = run(['check', 'a', 'b'], { a: CALM, b: WRONG });
    expect(code).toBe(1);
    expect(out).toMatch(/^a: no findings\nb:/);
  });
  it('checks the others where one is not there', () => {
    const { code, out, err } = run(['check', 'a', 'nowhere', 'b'], { a: CALM, b: CALM });
    expect(code).toBe(2);
    expect(out).toBe('a: no findings\nb: no findings\n');
    expect(err).toBe('nowhere: there is no such file or folder.\n');
  });
});

describe('report', () => {
  it('prints the text report', () => {
    expect(run(['report', 'a'], { a: TRIM })).toMatchObject({ code: 0, err: '', out: service.report(heard(TRIM)) });
  });
  it('fails for a boat that sinks', () => {
    expect(run(['report', 'a'], { a: probe(['mass: 800 g', 'mass: 1700 g']) }).code).toBe(1);
  });
  it('prints one JSON object', () => {
    const { out, code } = run(['report', 'a', '--json'], { a: PROBE });
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({
      boat: 'Probe',
      surfaced: { afloat: true },
      submerged: { reachable: true },
    });
    expect(out.endsWith('}\n')).toBe(true);
  });
  it('figures the boat in other water', () => {
    const { out } = run(['report', 'a', '--json', '--water', 'sea'], { a: PROBE });
    // ITTC 7.5-02-01-03, Table 3 (seen): 20 °C 1024.8103 kg/m3; EOS-80 lies 0.05 below.
    expect(Math.abs(JSON.parse(out).water.density - 1024.8103)).toBeLessThan(0.08);
  });
  it('says what it does, and shows colours on a terminal only', () => {
    const there = run(['report', 'a'], { a: TRIM }, true);
    expect(there.shown).toEqual(['a: computing …', null]);
    expect(there.out).toContain('\u001b[1m');
    const elsewhere = run(['report', 'a'], { a: TRIM });
    expect(elsewhere.err).toBe('');
    expect(elsewhere.out).not.toContain('\u001b');
  });
});

describe('correct', () => {
  it('writes the best correction into the file, and nothing else', () => {
    const { written, code } = run(['correct', 'a', '--write'], { a: TRIM });
    expect(code).toBe(0);
    expect(Object.keys(written)).toEqual(['a']);
    const after = heard(written.a!);
    expect(after.file.findings).toEqual([]);
    expect(after.findings.map(({ code }) => code)).not.toContain('surfaced-trim');
  });
  it('leaves the file alone without --write', () => {
    expect(run(['correct', 'a'], { a: TRIM }).written).toEqual({});
  });
  it.each([
    ['there is nothing to do', CALM, 'Nothing to correct: the boat is within its limits.'],
    ['the file is faulty', WRONG, 'The file has errors: fix them first (trimwright check).'],
    [
      'the boat sinks',
      probe(['mass: 800 g', 'mass: 1700 g']),
      'No lead or foam that the bays and the stock allow brings the boat within its limits.',
    ],
  ])('says why when %s', (_, text, says) => {
    expect(run(['correct', 'a'], { a: text }).out).toContain(says);
  });
});

describe('sheet', () => {
  it('writes the page to a file, or to the output', () => {
    const { out, err, written, code } = run(['sheet', 'a', '-o', 'b.html'], { a: TRIM });
    expect([out, err, code]).toEqual(['', 'b.html: written.\n', 0]);
    expect(written['b.html']).toMatch(/^<!doctype html>/);
    expect(written['b.html']).toContain('size: A4 portrait');
    expect(run(['sheet', 'a'], { a: TRIM }).out).toBe(written['b.html']);
  });
  it('for the paper that is in the printer', () => {
    expect(run(['sheet', 'a', '--paper', 'letter'], { a: TRIM }).out).toContain('size: letter portrait');
  });
  it('as a PDF where the file is called so', () => {
    const { written, code } = run(['sheet', 'a', '-o', 'b.pdf'], { a: TRIM });
    expect(code).toBe(0);
    expect(written['b.pdf']).toMatch(/^%PDF of <!doctype html>/);
  });
  it('with all the rest where it is asked for', () => {
    const [brief, whole] = [[], ['--appendix']].map(more => run(['sheet', 'a', ...more], { a: TRIM }).out);
    expect(brief).not.toContain('Righting lever');
    expect(whole).toContain('Righting lever');
  });
  it('has the file in it, which comes out again as it was', () => {
    const { written } = run(['sheet', 'folder/tern.boat.yaml', '-o', 'b.html'], { 'folder/tern.boat.yaml': TRIM });
    const unpacked = run(['unpack', 'b.html'], { 'b.html': written['b.html']! });
    expect([unpacked.code, unpacked.err]).toEqual([0, 'tern.boat.yaml: written.\n']);
    expect(unpacked.written['tern.boat.yaml']).toBe(TRIM);
    expect(run(['unpack', 'b.html', '-o', '-'], { 'b.html': written['b.html']! }).out).toBe(TRIM);
    expect(
      run(['unpack', 'b.html', '-o', 'c.boat.yaml'], { 'b.html': written['b.html']! }).written['c.boat.yaml'],
    ).toBe(TRIM);
  });
  it('that has no file in it says so', () => {
    expect(run(['unpack', 'a'], { a: '<html></html>' })).toMatchObject({
      code: 1,
      err: 'a: there is no boat file in this page. It has to be a trim sheet as “trimwright sheet” writes it.\n',
    });
  });
  it('or one drawing, with its look inside it', () => {
    const { out } = run(['sheet', 'a', '--svg', 'surfaced-side'], { a: TRIM });
    expect(out).toMatch(/^<svg [^>]*id="surfaced-side"[^>]*><style>[^<]+<\/style>/);
    expect(out.endsWith('</svg>\n')).toBe(true);
  });
  it('says when there is nothing to draw', () => {
    const { code, err } = run(['sheet', 'a', '--svg', 'transit'], { a: probe(['mass: 800 g', 'mass: 1700 g']) });
    expect([code, err]).toEqual([1, 'There is no transit to draw for this boat as it is: see its report.\n']);
  });
  it('draws in other water', () => {
    const words = (water: string) => run(['sheet', 'a', '--water', water, '--svg', 'submerged-side'], { a: TRIM }).out;
    expect(words('sea')).not.toBe(words('fresh'));
  });
});

describe('names from strangers', () => {
  const sly = String.raw`"\e[2J\u202e\x07sly"`;
  const SLY = probe(['name: floor lead', `name: ${sly}`]);
  it.each([
    [
      'check',
      probe([
        boatText`
      height: 30 mm
          in: hold`,
        boatText`
            height: 30 mm
                in: ${sly}`,
      ]),
    ],
    ['report', SLY],
    ['correct', probe(['150 to 250', '160 to 260'], ['name: bow bay', `name: ${sly}`])],
  ])('%s hands no control character to the terminal', (command, text) => {
    const { out } = run([command, 'a'], { a: text }, true);
    const plain = [0, 1, 31, 32].reduce((text, colour) => text.replaceAll(`\u001b[${colour}m`, ''), out);
    expect(plain).toContain('sly');
    expect(plain).not.toMatch(/(?!\n)[\p{Control}\p{Bidi_Control}]/u);
  });
  it('hands on no colour that a name brings along', () => {
    const text = probe(['boat: Probe', 'boat: "\\e[31mred"']);
    for (const isTerminal of [true, false]) {
      expect(run(['report', 'a'], { a: text }, isTerminal).out).toMatch(/\ufffd\[31mred/);
      expect(run(['check', 'a\u001b[31m'], { 'a\u001b[31m': text }, isTerminal).out).not.toContain('\u001b');
    }
  });
  it('keeps a finding on its line, whatever a name has in it', () => {
    const text = probe([
      'boat: Probe',
      boatText`
        boat: Probe
        "zz\\nother.boat.yaml:1:1: error: yours": 1`,
    ]);
    const { out } = run(['check', 'a\nb'], { 'a\nb': text });
    expect(
      out
        .trimEnd()
        .split(/\n/)
        .every(line => line.startsWith('a\ufffdb:')),
    ).toBe(true);
    expect(run(['check', 'c\nd'], {}).err).toBe(`c\ufffdd: there is no such file or folder.\n`);
  });
  it('keeps them in JSON, as escapes', () => {
    const { out } = run(['report', 'a', '--json'], { a: SLY });
    expect(out).not.toMatch(/(?!\n)[\p{Control}\p{Bidi_Control}]/u);
    expect(() => JSON.parse(out)).not.toThrow();
  });
});

describe('wrong use', () => {
  it('tells its version', () => {
    expect(run(['--version'])).toMatchObject({ code: 0, out: '1.2.3\n', err: '' });
  });
  it('writes nothing into what is piped in', () => {
    const { code, err, written } = run(['correct', '-', '--write'], { '-': TRIM });
    expect([code, written]).toEqual([2, {}]);
    expect(err).toMatch(/^“--write” needs a file/);
  });
  it('reads what is piped in, and puts a sheet out', () => {
    expect(run(['sheet', '-', '-o', '-'], { '-': TRIM }).out).toMatch(/^<!doctype html>/);
  });
  it('overwrites a file only when told', () => {
    const files = { a: TRIM, 'b.html': 'mine' };
    expect(run(['sheet', 'a', '-o', 'b.html'], files)).toMatchObject({ code: 2, written: {} });
    expect(run(['sheet', 'a', '-o', 'b.html', '--overwrite'], files).code).toBe(0);
    expect(run(['report', 'a', '--overwrite'], files).code).toBe(2);
  });
  it.each([
    [['fly'], 'There is no command “fly”.'],
    [['report'], '“report” needs a boat file, such as: trimwright report petrel.boat.yaml'],
    [['report', 'a', 'b'], '“report” takes one boat file at a time.'],
    [['check', 'a', '--json'], '“--json” belongs to “report”, “correct” and “learn”.'],
    [['sheet', 'a', '--json'], '“--json” belongs to “report”, “correct” and “learn”.'],
    [['report', 'a', '--appendix'], '“--paper”, “--appendix” and “--svg” belong to “sheet”.'],
    [['sheet', 'a', '--svg', 'transit', '--appendix'], '“--svg” is one drawing, without “--appendix”.'],
    [['unpack'], '“unpack” needs a page, such as: trimwright unpack petrel.html'],
    [['report', 'a', '-o', 'b'], '“-o” belongs to “sheet”, “unpack” and “poolside”.'],
    [['poolside', 'a', '--paper', 'a4'], '“--paper”, “--appendix” and “--svg” belong to “sheet”.'],
    [['take', 'a'], '“take” needs a boat file and the trials, such as: trimwright take petrel.boat.yaml day.yaml'],
    [['take', '-', 'b', '--write'], '“--write” needs a file to write into, not what is piped in.'],
    [['sheet', 'a', '--paper', 'A5'], '“--paper” is a4 or letter, not “A5”.'],
    [['sheet', 'a', '--svg', 'front'], /^“--svg” is one of surfaced-side, .*, not “front”\.$/],
    [['report', 'a', '--write'], '“--write” belongs to “correct”, “learn” and “take”.'],
    [['learn', 'a', '--explain'], '“--explain” and “--both-waters” belong to “correct”.'],
    [['report', 'a', '--water', 'mud'], '“--water” is fresh or sea, not “mud”.'],
    [['report', 'a', '--jsn'], "Unknown option '--jsn'."],
  ])('%j', (args, says) => {
    const { code, err, out } = run(args, { a: PROBE, b: PROBE });
    expect([code, out]).toEqual([2, '']);
    if (typeof says === 'string') expect(err.split('\n')[0]).toBe(says);
    else expect(err.split('\n')[0]).toMatch(says);
    expect(err).toContain('trimwright check FILE...');
  });
  it('names a file that cannot be read', () => {
    expect(run(['check', 'nowhere'])).toMatchObject({
      code: 2,
      out: '',
      err: 'nowhere: there is no such file or folder.\n',
    });
  });
  it.each([[[]], [['help']], [['--help']], [['-h']]])('%j prints the usage', args => {
    const { code, out } = run(args);
    expect(code).toBe(0);
    expect(out).toMatch(/^Trim a scale submarine/);
  });
});
