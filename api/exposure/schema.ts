// What GraphQL knows of estimates: exposures, what they rest on, what would be, and how far the background is.
import './exposure-type.ts';
import './what-if-type.ts';
import './progress-type.ts';
import './settings-type.ts';
import './service.ts';

export { ExposureRef } from './refs.ts';
