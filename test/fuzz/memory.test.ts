import { expect, test } from 'vitest';
import { watchMemory } from './memory.ts';

test('tells what is held in the second ten thousand edits, and in those after it that hold most', () => {
  const memory = watchMemory();
  const kept: number[][] = [];
  const look = (from: number, to: number): void => {
    for (let edits = from; edits <= to; edits += 50) memory.look(edits);
  };
  look(50, 29_450);
  expect(memory.growth()).toBeNull();
  for (let i = 0; i < 40; i++) kept.push(new Array<number>(100_000).fill(i));
  look(29_500, 40_000);
  const { settled, most } = memory.growth()!;
  const megabytes = (kept.length * 100_000 * 8) / 1024 / 1024;
  expect(most.held - settled.held).toBeGreaterThan(0.5 * megabytes);
  expect(most.resident).toBeGreaterThan(most.held);
  expect(settled.code).toBeGreaterThan(0);
});
