// Where the thread that reckons spread begins: TypeScript is made known in the thread itself.
import { register } from 'tsx/esm/api';

register();
await import('./worker.ts');
