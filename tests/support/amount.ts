// How much a test does: a fixed sample in every run, the whole in `npm run long`.

const long = process.env['DRUMKEEP_LONG'] === 'yes';

/** `sample` in every run, `whole` in the long one. */
export const amount = (sample: number, whole: number): number => (long ? whole : sample);
