import fc from 'fast-check';
import { drawsFreely } from './long.ts';

// A boat costs too much to be made smaller step by step once it has failed: the seed that is printed finds it again. What
// draws other boats each time is run by whoever wants to know, not by everybody who changes something else.
fc.configureGlobal({ endOnFailure: true, ...(drawsFreely ? {} : { seed: 1 }) });
