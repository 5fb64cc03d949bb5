/** Imported before any schema is made: the page's policy forbids code from text, and zod would try it. */
import { config } from 'zod';

config({ jitless: true });
