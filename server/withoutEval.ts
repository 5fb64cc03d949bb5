/** Imported before any schema is made: the policy of the poolside page forbids code from text, and zod would try it. */
import { config } from 'zod';

if ('poolside' in globalThis) config({ jitless: true });
