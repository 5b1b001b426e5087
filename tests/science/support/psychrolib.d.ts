// The parts of psychrolib that the tests ask.
declare module 'psychrolib' {
  const psychrolib: {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    /** Pa, over ice below the triple point; °C. */
    GetSatVapPres(temperatureC: number): number;
  };
  export default psychrolib;
}
