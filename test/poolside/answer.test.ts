import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { putAboard } from '../../client/poolside/dayLog.ts';
import { createPoolside } from '../../server/core/poolside/answer.ts';
import { emptyDay } from '../../server/core/poolside/day.ts';
import { poolBoatOf } from '../../server/core/poolside/poolBoat.ts';
import { textOfDay } from '../../server/core/poolside/textOfDay.ts';
import { finish } from '../../server/core/steps/steps.ts';
import { fileFindings, heard } from '../helpers/analysed.ts';
import { dayOf, fieldsOf } from './days.ts';

const sample = (name: string) => readFileSync(new URL(`../../samples/${name}.boat.yaml`, import.meta.url), 'utf8');
const petrel = sample('petrel');
const { surfaced, submerged } = fieldsOf(petrel);
const [fore, aft, heel] = surfaced as [(typeof surfaced)[0], (typeof surfaced)[0], (typeof surfaced)[0]];

describe('what is asked for', () => {
  it('is the water near both ends, the angles and the tank, each with what the file foretells', () => {
    expect(surfaced.map(({ key }) => key)).toEqual(['marks', 'marks', 'heel', 'trim']);
    expect(submerged.map(({ key }) => key)).toEqual(['trim', 'heel', 'fill', 'water', 'proud']);
    // As `trimwright report` has it: 12.2° bow down, 1.8° to port, 70 % or 315 ml.
    expect(submerged.map(({ expected }) => expected?.words.replace(/ ±.*/, '').replace(/^70$/, '70 %'))).toEqual([
      '12.2° bow down',
      '1.8° to port',
      '70 %',
      '315',
      undefined,
    ]);
  });
  it('is in the file’s own units, on the steps of a tape', () => {
    const [mark] = fieldsOf(sample('sprat')).surfaced;
    expect(mark).toMatchObject({ unit: 'in', step: 1 / 16, station: '1 in' });
    expect((mark!.expected!.size * 16) % 1).toBe(0);
  });
  it('is read where it was the last time', () => {
    expect(fieldsOf(sample('dunlin')).surfaced.map(({ station }) => station)).toEqual(['60 mm', '660 mm', null, null]);
  });
  it('is nothing under water of a boat without a tank', () => {
    const dry = petrel.replace(/ {2}tanks:[\s\S]*?(?=\npayload:)/, '');
    const { view } = createPoolside(dry, () => null)(emptyDay(''));
    expect(view).toMatchObject({ dives: false, fields: { submerged: [] } });
  });
  it('is still asked where the file has errors, without what is expected', () => {
    const { view } = createPoolside(petrel.replace('mass: 610 g', 'mass: 610 mm'), () => null)(emptyDay(''));
    expect(view.isWhole).toBe(false);
    expect(view.fields.surfaced.map(({ expected }) => expected)).toEqual([null, null, null, null]);
    expect(view.findings.join()).toContain('“mm” is a unit of length');
  });
  it('stands in the page from the beginning', () => {
    const { view, text, name, files } = finish(poolBoatOf(heard(petrel)));
    expect([name, text, files]).toEqual(['Petrel', petrel, []]);
    expect(view).toMatchObject({ isSettled: true, fields: { surfaced: [{ expected: fore.expected }, {}, {}, {}] } });
  });
});

describe('what was read', () => {
  const read = dayOf('Petrel', 'surfaced', [
    [fore, fore.expected!.size + 30],
    [heel, -2],
  ]);
  const answer = createPoolside(petrel, () => null)(read);
  it('is set against the file at once', () => {
    expect(answer.view.isSettled).toBe(false);
    expect(answer.view.compared).toMatchObject([
      { condition: 'surfaced', key: 'marks', station: fore.at, tone: 'differs' },
      { condition: 'surfaced', key: 'heel', station: null, tone: 'agrees' },
    ]);
    expect(answer.view.compared[0]!.words).toMatch(/^30\.\d mm more than by the file \(96\.5 mm\)\. /);
  });
  it('tells then what may be behind it', () => {
    const view = answer.settled.all();
    expect(view.isSettled).toBe(true);
    expect(view.verdict[0]).toMatch(/^Most likely \(/);
  });
});

describe('what to put aboard', () => {
  const read = dayOf('Dunlin', 'surfaced', [[fieldsOf(sample('dunlin')).surfaced[2]!, 0.5]]);
  const dunlin = sample('dunlin');
  const ask = createPoolside(dunlin, () => null);
  it('is nothing before the first reading', () => {
    expect(createPoolside(dunlin, () => null)(emptyDay('')).advice.all()).toBeNull();
  });
  it('is lead and foam of the file’s bays, and with all of it aboard the boat is within its limits', () => {
    const advice = ask(read).advice.all()!;
    expect(advice.state).toBe('pieces');
    // Drawn in the boat are the pieces, and nothing else as proposed.
    expect(advice.pictures.surfaced.svg.match(/class="ghost (?:lead|foam)"/g)).toHaveLength(advice.pieces.length);
    const laden = advice.pieces.reduce((day, { piece }) => putAboard(day, piece), read);
    expect(laden.aboard).toHaveLength(advice.pieces.length);
    // While it is put aboard the advice stays what it was.
    expect(ask(laden).advice.all()!.pieces).toEqual(advice.pieces);
    expect(ask(laden).settled.all().findings).toEqual([]);
    const analysis = heard(textOfDay(dunlin, laden));
    expect(fileFindings(analysis).filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(analysis.trials.at(-1)!.aboard).toEqual([]);
  });
  it('is nothing for a boat that is in trim', () => {
    const curlew = sample('curlew');
    const fields = fieldsOf(curlew);
    const day = dayOf(
      'Curlew',
      'surfaced',
      fields.surfaced.slice(0, 2).map(field => [field, field.expected!.size] as const),
    );
    expect(createPoolside(curlew, () => null)(day).advice.all()).toMatchObject({ state: 'within', pieces: [] });
  });
  it('is said to be nothing where there is no room', () => {
    const bare = petrel.replace(/\nbays:[\s\S]*?(?=\nlimits:)/, '');
    const day = dayOf('Petrel', 'surfaced', [[aft, aft.expected!.size]]);
    const advice = createPoolside(bare, () => null)(day).advice.all()!;
    expect(advice).toMatchObject({ state: 'none', pieces: [] });
    expect(advice.words).toContain('no bays');
  });
});
