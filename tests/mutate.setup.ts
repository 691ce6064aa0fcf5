/** Properties try fewer cases where each is tried for every change. */
import fc from 'fast-check';

fc.configureGlobal({ numRuns: 20 });
