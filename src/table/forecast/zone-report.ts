import type { ZoneForecast, ZoneName } from '../../engine/contract.ts'
import type { Forecast } from './forecast.ts'

/** A zone by its name; of a pot dipped half and half, the sector it stands for. */
export type ZoneLabel = ZoneName | 'overlap' | 'half' | 'otherHalf'

export interface ZoneReport {
  readonly label: ZoneLabel
  readonly zone: ZoneForecast
}

/**
 * The zones of a forecast as they are told: the outside from the rim down, then one of the inside, which is one surface
 * to the eye; of a pot dipped half and half one of each sector, the overlap first. `worst` picks the one.
 */
export function zoneReports(
  forecast: Forecast,
  worst: (zones: readonly ZoneForecast[]) => ZoneForecast | undefined,
): readonly ZoneReport[] {
  const coated = (zones: readonly ZoneForecast[]) => zones.filter(({ coats }) => coats.length > 0)
  const zones = coated(forecast.pot.zones)
  const one = (label: ZoneLabel, of: readonly ZoneForecast[]): readonly ZoneReport[] => {
    const zone = worst(of)
    return zone ? [{ label, zone }] : []
  }
  const { halves } = forecast
  if (halves)
    return [
      ...one('overlap', zones),
      ...one('half', coated(halves.first)),
      ...one('otherHalf', coated(halves.second)),
    ]
  const outside = zones.filter(({ face }) => face === 'outside').sort((a, b) => b.fromMm - a.fromMm)
  return [
    ...outside.map((zone) => ({ label: zone.name, zone })),
    ...one(
      'inside',
      zones.filter(({ face }) => face === 'inside'),
    ),
  ]
}

/** The thickest by its upper estimate. */
export const thickest = (zones: readonly ZoneForecast[]): ZoneForecast | undefined =>
  zones.reduce<ZoneForecast | undefined>(
    (most, zone) => (most === undefined || zone.upperMm > most.upperMm ? zone : most),
    undefined,
  )
