// First step of `npm test` and `npm run package`.
import { prepareClone } from './install.mjs';

prepareClone();
