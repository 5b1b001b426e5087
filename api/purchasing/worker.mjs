// Where a worker thread begins: TypeScript is made known in the thread itself, whatever the main thread was started with.
import { register } from 'tsx/esm/api';

register();
await import('./worker.ts');
