import { afterEach, expect, it, vi } from 'vitest';
import { pdfOf } from '../../server/terminal/pdf.ts';

afterEach(() => {
  vi.unstubAllEnvs();
});

it('says plainly that there is no browser to print with', () => {
  vi.stubEnv('PATH', '');
  expect(() => pdfOf('<p>')).toThrow(
    'a PDF needs Chromium, Chrome or Edge on this machine, and none was found. Write NAME.html instead and print it from any browser',
  );
});
