import fc from 'fast-check';

// A boat costs too much to be made smaller step by step once it has failed: the seed that is printed finds it again.
fc.configureGlobal({ endOnFailure: true });
