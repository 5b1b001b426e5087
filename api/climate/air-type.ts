// A point of a room's air as GraphQL shows it.
import { builder } from '../builder.ts';
import type { AirPoint } from './plot.ts';

export const AirPointRef = builder.objectRef<AirPoint>('AirPoint').implement({
  description:
    "A stretch of a room's air: the mean of its 5-minute blocks and their range, so that a thinned plot hides no peak. Figures are null where nothing is known.",
  fields: (t) => ({
    at: t.expose('at', { type: 'DateTime', description: 'The middle of the stretch.' }),
    temperatureC: t.exposeFloat('temperatureC', { nullable: true, description: 'Mean temperature, °C.' }),
    temperatureLowC: t.exposeFloat('temperatureLowC', { nullable: true, description: 'Lowest block, °C.' }),
    temperatureHighC: t.exposeFloat('temperatureHighC', { nullable: true, description: 'Highest block, °C.' }),
    relativeHumidityPercent: t.exposeFloat('humidityPercent', {
      nullable: true,
      description: 'Relative humidity, %: mean vapour over mean saturated vapour.',
    }),
    humidityLowPercent: t.exposeFloat('humidityLowPercent', { nullable: true, description: 'Driest block, % RH.' }),
    humidityHighPercent: t.exposeFloat('humidityHighPercent', { nullable: true, description: 'Dampest block, % RH.' }),
    vapourGramsPerM3: t.exposeFloat('vapourGramsPerM3', {
      nullable: true,
      description: 'Mean water vapour in the air, g/m³: what the sorbent sees.',
    }),
    isFilled: t.boolean({
      description: 'Some of it was not measured: the typical day stands in, or the air taken for granted.',
      resolve: ({ filledFraction }) => filledFraction > 0,
    }),
    filledFraction: t.exposeFloat('filledFraction', { description: 'Share of it that was not measured, 0 to 1.' }),
  }),
});
