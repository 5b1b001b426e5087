// Whose estimates begin anew when a room's air changes, and from when.
import { expect, it } from 'vitest';
import { addReadings } from '../../api/climate/add-readings.ts';
import { setAssumedAir } from '../../api/climate/rooms.ts';
import { setSensorAside, takeSensorBack } from '../../api/climate/sensors.ts';
import { describeEngines } from '../support/engines.ts';
import { day, labsOf, hour, minute, type Reading, readings, room, start } from './lab.ts';
import { container, move, settle, staleFrom } from './shelf.ts';

const steady = (from: number, until: number) => readings(from, until, 5 * minute, () => [21, 50]);

describeEngines('late readings', (on) => {
  const newLab = labsOf(on);
  const world = async () => {
    const lab = await newLab();
    const bench = await room(lab, 'wet bench');
    const bay = await room(lab, 'instrument bay');
    return { lab, bench, bay, here: await container(lab, bench), there: await container(lab, bay) };
  };

  it('a container is estimated again from the first block of air that changed, and not before', async () => {
    const { lab, here, there } = await world();
    const send = (sent: Reading[]) => addReadings(lab, { room: 'wet bench', readings: sent });
    await send(steady(start, start + 6 * day));
    expect(await staleFrom(lab, here)).toEqual(new Date(start));
    expect(await staleFrom(lab, there)).toBeNull();

    await settle(lab);
    await send(steady(start, start + 6 * day));
    expect(await staleFrom(lab, here)).toBeNull();

    const at = start + 3 * day + 10 * hour + 2 * minute;
    await send([{ at: new Date(at), temperatureC: 25, humidityPercent: 50 }]);
    expect(await staleFrom(lab, here)).toEqual(new Date(start + 3 * day + 10 * hour));
    expect(await staleFrom(lab, there)).toBeNull();
  });

  it('the typical day that stood in after the record is replaced from where the record ended', async () => {
    const { lab, here } = await world();
    await addReadings(lab, { room: 'wet bench', readings: steady(start, start + day) });
    await settle(lab);
    await addReadings(lab, { room: 'wet bench', readings: steady(start + 3 * day, start + 4 * day) });
    expect(await staleFrom(lab, here)).toEqual(new Date(start + day));
  });

  it('a container that has moved on is estimated again too', async () => {
    const { lab, bay, here } = await world();
    await move(lab, here, bay, new Date(start + 2 * day));
    await settle(lab);
    await addReadings(lab, { room: 'wet bench', readings: steady(start, start + day) });
    expect(await staleFrom(lab, here)).toEqual(new Date(start));
  });

  it('a sensor set aside changes the air it spoke for, and taking it back undoes that', async () => {
    const { lab, here } = await world();
    await addReadings(lab, { room: 'wet bench', sensor: 'a', readings: steady(start, start + 2 * day) });
    const warm = readings(start + day, start + 2 * day, 5 * minute, () => [23, 50]);
    await addReadings(lab, { room: 'wet bench', sensor: 'b', readings: warm });
    for (const act of [
      () => setSensorAside(lab, { room: 'wet bench', sensor: 'B', why: 'stands in the sun' }),
      () => takeSensorBack(lab, { room: 'wet bench', sensor: 'b' }),
    ]) {
      await settle(lab);
      await act();
      expect(await staleFrom(lab, here)).toEqual(new Date(start + day));
    }
  });

  it('a shelf too full to estimate at once is marked all the same, for the next pass', async () => {
    const { lab, bench, here } = await world();
    const others = await Promise.all(Array.from({ length: 60 }, () => container(lab, bench)));
    await settle(lab);
    await addReadings(lab, { room: 'wet bench', readings: steady(start, start + hour) });
    for (const id of [here, ...others]) expect(await staleFrom(lab, id)).toEqual(new Date(start));
  });

  it('assumed air holds for all time', async () => {
    const { lab, there } = await world();
    await setAssumedAir(lab, { room: 'instrument bay', humidityPercent: 40, temperatureC: 22 });
    expect((await staleFrom(lab, there))?.getTime()).toBe(0);
    await settle(lab);
    await setAssumedAir(lab, { room: 'instrument bay', humidityPercent: 40, temperatureC: 22 });
    expect(await staleFrom(lab, there)).toBeNull();
  });
});
