// What drying needs to know of a sorbent beside its isotherm, density and voids, each figure with how far it is to be trusted.

export type SorbentClass = 'silica' | 'alumina' | 'c18' | 'magnesium silicate' | 'cellulose';
