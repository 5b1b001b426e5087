// What of an act's input was told, without what was left out: null stays, it takes something away.

type Told<Of> = { [Key in keyof Of]?: Exclude<Of[Key], undefined> };

export const told = <Of extends object>(of: Of): Told<Of> =>
  Object.fromEntries(Object.entries(of).filter(([, value]) => value !== undefined)) as Told<Of>;
