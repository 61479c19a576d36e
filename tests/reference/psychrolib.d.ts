/** What the tests use of psychrolib (MIT), which comes without types. Pressures Pa, temperatures degC. */
declare module 'psychrolib' {
  const psychrolib: {
    readonly SI: number
    SetUnitSystem(system: number): void
    GetSatVapPres(tempC: number): number
    GetTWetBulbFromRelHum(tempC: number, rh: number, pressurePa: number): number
    GetTDewPointFromRelHum(tempC: number, rh: number): number
    GetRelHumFromTWetBulb(tempC: number, wetC: number, pressurePa: number): number
    GetHumRatioFromRelHum(tempC: number, rh: number, pressurePa: number): number
    GetMoistAirVolume(tempC: number, humRatio: number, pressurePa: number): number
    GetStandardAtmPressure(altitudeM: number): number
  }
  export default psychrolib
}
