// What other rooms may ask of campaigns.
export { sharesFitted } from './fit.ts';
