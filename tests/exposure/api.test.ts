// Exposures as a script sees them: what was just written shows in the answer, and each number says what it rests on.
import { expect, it } from 'vitest';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type World } from '../support/world.ts';

interface Exposure {
  asOf: string;
  state: string;
  reason: string;
  meanWaterFraction: number;
  scoopWaterFraction: number;
  meanAsReceivedFraction: number;
  hoursToLimit: number | null;
}

const exposureOf = async (world: World, label: string): Promise<Exposure> => {
  const { container } = await world.ask<{ container: { exposure: Exposure } }>(
    `query ($label: String!) { container(label: $label) { exposure {
      asOf state reason meanWaterFraction scoopWaterFraction meanAsReceivedFraction hoursToLimit } } }`,
    { label },
  );
  return container.exposure;
};

describeEngines('exposures over GraphQL', (on) => {
  it('what was just written shows in the answer, also when it happened yesterday', async () => {
    const world = await newWorld(await on.fresh());
    await world.furnished();
    const { label } = await world.drum(600);
    const before = await exposureOf(world, label);
    expect(before).toMatchObject({ state: 'GOOD', asOf: world.now().toISOString() });
    const told = await world.tell<{ container: { exposure: Exposure } }>(
      'openContainer',
      { label, at: world.ago(24 * 60) },
      'container { exposure { meanWaterFraction reason asOf } }',
    );
    const after = told.container.exposure;
    expect(after.meanWaterFraction).toBeGreaterThan(before.meanWaterFraction + 0.001);
    expect(after.reason).toMatch(/^open 24 h at about 45 % RH, 22 °C/);
    const stored = await exposureOf(world, label);
    expect(stored.meanWaterFraction).toBe(after.meanWaterFraction);
    expect(stored.meanAsReceivedFraction).toBeCloseTo(stored.meanWaterFraction / (1 + stored.meanWaterFraction), 12);
  });

  it('without starting water it is unknown until somebody weighs', async () => {
    const world = await newWorld(await on.fresh());
    await world.furnished();
    const { label } = await world.drum(600, {}, { certificateWaterPercent: null });
    expect(await exposureOf(world, label)).toMatchObject({
      state: 'UNKNOWN',
      reason: expect.stringContaining('weigh first'),
    });
    const weighing = {
      label,
      method: 'LOSS_ON_DRYING',
      temperatureC: 150,
      of: 'WHOLE',
      waterFraction: 0.031,
      basis: 'DRY',
    };
    await world.tell('recordWeighing', weighing, '__typename');
    const weighed = await exposureOf(world, label);
    expect(weighed.state).not.toBe('UNKNOWN');
    expect(weighed.meanWaterFraction).toBeCloseTo(0.031, 3);
  });

  it('a loss on drying at 105 °C counts the half percent that stays behind', async () => {
    // Residue of 6 nm silica at 105 °C in room air: about half a percent (product paper, "What repeatable means").
    const world = await newWorld(await on.fresh());
    await world.furnished();
    const [hot, cool] = [await world.drum(600), await world.drum(600)];
    const weighing = { method: 'LOSS_ON_DRYING', of: 'WHOLE', waterFraction: 0.04, basis: 'DRY' };
    await world.tell('recordWeighing', { ...weighing, label: hot.label, temperatureC: 150 }, '__typename');
    await world.tell('recordWeighing', { ...weighing, label: cool.label, temperatureC: 105 }, '__typename');
    const corrected =
      (await exposureOf(world, cool.label)).meanWaterFraction - (await exposureOf(world, hot.label)).meanWaterFraction;
    expect(corrected).toBeGreaterThan(0.004);
    expect(corrected).toBeLessThan(0.006);
  });

  it('a portion begins with the water of what was poured, and grams are booked by it', async () => {
    const world = await newWorld(await on.fresh());
    await world.furnished();
    const { label } = await world.drum(600);
    await world.tell('openContainer', { label, at: world.ago(4 * 24 * 60) }, '__typename');
    const top = (await exposureOf(world, label)).scoopWaterFraction;
    expect(top).toBeGreaterThan(0.03);
    const poured = await world.tell<{ made: { label: string; dryGrams: number } }>(
      'takePortion',
      { label, grams: 50, innerDiameterMm: 70, heightMm: 90, closure: 'TIGHT' },
      'made { label dryGrams }',
    );
    // 50 g as received at the water of the scoop.
    expect(poured.made.dryGrams).toBeCloseTo(50 / (1 + top), 1);
    expect((await exposureOf(world, poured.made.label)).meanWaterFraction).toBeCloseTo(top, 2);
  });

  it('tells every number behind it, and which are guesses', async () => {
    const world = await newWorld(await on.fresh());
    await world.furnished();
    const { label } = await world.drum(600, { closure: 'TIGHT' });
    const { container } = await world.ask<{
      container: {
        exposure: {
          restsOn: { name: string; value: number | null; unit: string; confidence: string; source: string }[];
        };
      };
    }>(
      `query ($label: String!) { container(label: $label) { exposure { restsOn { name value unit origin confidence source } } } }`,
      {
        label,
      },
    );
    const grounds = new Map(container.exposure.restsOn.map((one) => [one.name, one]));
    expect(grounds.get('filmCapacity')).toMatchObject({ value: 0.066, unit: 'kg/kg' });
    expect(grounds.get('upperEnd')).toMatchObject({ value: 0.05, confidence: 'GUESS' });
    expect(grounds.get('closureConductance')).toMatchObject({ value: 7.5e-8, source: expect.stringContaining('USP') });
    expect(grounds.get('startingWater')).toMatchObject({ value: 0, source: 'certificate of analysis' });
    expect(grounds.get('innerDiameter')).toMatchObject({ value: 120 });
    expect([...grounds.values()].every(({ source }) => source.length > 0)).toBe(true);
  });

  it('draws its water over time and depth: wettest at the top, rising while it stands open', async () => {
    const world = await newWorld(await on.fresh());
    await world.furnished();
    const { label } = await world.drum(600);
    await world.tell('openContainer', { label, at: world.ago(3 * 24 * 60) }, '__typename');
    type Water = { at: string; meanWaterFraction: number; roomHumidityPercent: number };
    const { container } = await world.ask<{
      container: { waterOverTime: Water[]; depthProfile: { depthMm: number; waterFraction: number }[] };
    }>(
      `query ($label: String!, $from: DateTime) { container(label: $label) {
        waterOverTime(from: $from, points: 10) { at meanWaterFraction low high scoopWaterFraction scoopLow scoopHigh roomHumidityPercent }
        depthProfile { depthMm waterFraction } } }`,
      { label, from: world.ago(5 * 24 * 60) },
    );
    expect(container.waterOverTime).toHaveLength(10);
    const means = container.waterOverTime.map(({ meanWaterFraction }) => meanWaterFraction);
    expect(means.every((mean, i) => i === 0 || mean >= (means[i - 1] ?? 0) - 1e-9)).toBe(true);
    expect(means.at(-1)).toBeCloseTo((await exposureOf(world, label)).meanWaterFraction, 4);
    expect(container.waterOverTime.every(({ roomHumidityPercent }) => Math.abs(roomHumidityPercent - 45) < 0.1)).toBe(
      true,
    );
    const profile = container.depthProfile.map(({ waterFraction }) => waterFraction);
    expect(profile).toEqual([...profile].sort((one, other) => other - one));
  });

  it('says what would be: open it gets wetter than closed, dried it is dry, and nothing is written', async () => {
    const world = await newWorld(await on.fresh());
    await world.furnished();
    const { label } = await world.drum(600);
    await world.tell('openContainer', { label, at: world.ago(24 * 60) }, '__typename');
    const tomorrow = new Date(world.now().getTime() + 24 * 3_600_000);
    const ask = async (events: Record<string, unknown>[]) => {
      const { whatIf } = await world.ask<{
        whatIf: { exposure: { meanWaterFraction: number }[]; waterGainedGrams: number };
      }>(
        `query ($container: WhatIfContainerInput) { whatIf(container: $container) { exposure { at meanWaterFraction state reason } waterGainedGrams } }`,
        { container: { label, events, report: [tomorrow] } },
      );
      return whatIf.exposure[0]?.meanWaterFraction ?? NaN;
    };
    const before = await exposureOf(world, label);
    const stays = await ask([]);
    const closes = await ask([{ type: 'CLOSED', closure: 'TIGHT' }]);
    const dries = await ask([
      { type: 'DRIED', waterFraction: 0.002 },
      { type: 'CLOSED', closure: 'SEALED' },
    ]);
    expect(stays).toBeGreaterThan(closes);
    expect(closes).toBeGreaterThanOrEqual(before.meanWaterFraction);
    expect(dries).toBeCloseTo(0.002, 6);
    expect(await exposureOf(world, label)).toEqual(before);
  });

  it('draws what would be: shut at noon it stops where it stood; dried by a recipe it holds what 105 °C leave', async () => {
    const world = await newWorld(await on.fresh());
    await world.furnished();
    const { label } = await world.drum(600);
    await world.tell('openContainer', { label, at: world.ago(24 * 60) }, '__typename');
    const inHours = (hours: number) => new Date(world.now().getTime() + hours * 3_600_000);
    const draw = async (events: Record<string, unknown>[]) =>
      (
        await world.ask<{ whatIf: { course: { at: string; meanWaterFraction: number }[] } }>(
          'query ($container: WhatIfContainerInput) { whatIf(container: $container) { course(points: 9) { at meanWaterFraction } } }',
          { container: { label, events, report: [inHours(8)] } },
        )
      ).whatIf.course;
    const course = await draw([{ type: 'CLOSED', closure: 'SEALED', at: inHours(4) }]);
    expect(course.map(({ at }) => at)).toEqual(Array.from({ length: 9 }, (_, i) => inHours(i).toISOString()));
    const water = course.map(({ meanWaterFraction }) => meanWaterFraction);
    expect(water[4]).toBeGreaterThan((water[0] ?? NaN) + 1e-5);
    // Sealed, it gains next to nothing in four hours.
    expect(Math.abs((water[8] ?? NaN) - (water[4] ?? NaN))).toBeLessThan(0.2 * ((water[4] ?? NaN) - (water[0] ?? NaN)));
    // Product design: 105 °C in room air leaves about half a percent in 6 nm silica.
    const dried = await draw([
      { type: 'DRIED', temperatureC: 105, minutes: 60 },
      { type: 'CLOSED', closure: 'SEALED' },
    ]);
    expect(dried[1]?.meanWaterFraction).toBeGreaterThan(0.003);
    expect(dried[1]?.meanWaterFraction).toBeLessThan(0.008);
  });

  it('answers a scenario of nothing but numbers as the published fine grid does', async () => {
    // Exposure model, section 6: silica, 120 mm, 30 mm headspace, start 0, 25 °C, 50 % RH, open: 0.00590 after 24 h.
    const world = await newWorld(await on.fresh());
    const scenario = {
      sorbent: 'silica',
      container: {
        bedDepthMm: 120,
        bedDiameterMm: 90,
        headspaceMm: 30,
        mouthDiameterMm: 90,
        volumeL: 1,
        closure: 'OPEN',
      },
      start: { at: '2026-03-02T08:00:00Z', waterFraction: 0 },
      climate: [{ at: '2026-03-02T08:00:00Z', temperatureC: 25, humidityPercent: 50 }],
      report: ['2026-03-03T08:00:00Z'],
    };
    const query = `query ($scenario: WhatIfScenarioInput) { whatIf(scenario: $scenario) { exposure { meanWaterFraction topWaterFraction } } }`;
    const { whatIf } = await world.ask<{
      whatIf: { exposure: { meanWaterFraction: number; topWaterFraction: number }[] };
    }>(query, {
      scenario,
    });
    expect(Math.abs((whatIf.exposure[0]?.meanWaterFraction ?? NaN) - 0.0059)).toBeLessThan(5e-5);
    expect(Math.abs((whatIf.exposure[0]?.topWaterFraction ?? NaN) - 0.04645)).toBeLessThan(1.5e-4);
    const { errors } = await world.post(query, {
      scenario: { ...scenario, container: { ...scenario.container, bedDepthMm: -3 } },
    });
    expect(errors?.[0]).toMatchObject({
      message: expect.stringMatching(/^invalid scenario\.container\.bedDepthMm: -3, expected /),
      extensions: { at: 'scenario.container.bedDepthMm' },
    });
  });

  it('a list of few columns shows what each container shows by itself', async () => {
    const world = await newWorld(await on.fresh());
    await world.furnished();
    await world.drum(600);
    await world.plates();
    const { label } = await world.drum(300);
    await world.tell('openContainer', { label, at: world.ago(24 * 60) }, '__typename');
    const fields = `__typename id label kind isOpen openedAt closure usualClosure cameInAt finishedAt dryGrams dryGramsAssumed freeDryGrams
      asReceivedGrams sorbent { name } lot { lotNumber } room { name } vessel { name } ... on PlateBox { plates freePlates }
      exposure { asOf state reason meanWaterFraction low high scoopWaterFraction scoopLow scoopHigh topWaterFraction meanAsReceivedFraction
        scoopAsReceivedFraction chancePastLimit hoursToLimit hoursToLimitOpen hoursToLimitClosed upperWaterFraction lowerWaterFraction
        grade minutesToRoomEquilibrium }`;
    type Shown = { label: string };
    const { containers } = await world.ask<{ containers: { nodes: Shown[] } }>(
      `{ containers { nodes { ${fields} } } }`,
    );
    expect(containers.nodes).toHaveLength(3);
    for (const listed of containers.nodes) {
      const alone = await world.ask<{ container: Shown }>(
        `query ($label: String!) { container(label: $label) { ${fields} } }`,
        {
          label: listed.label,
        },
      );
      expect(listed).toEqual(alone.container);
    }
    const { byLabel } = await world.ask<{ byLabel: { nodes: Shown[] } }>(
      `{ byLabel: containers(orderBy: LABEL) { nodes { ${fields} } } }`,
    );
    const sorted = [...containers.nodes].sort((one, other) => (one.label < other.label ? -1 : 1));
    expect(byLabel.nodes).toEqual(sorted);
  });

  it('pages of the open list join without a gap, whatever they filter', async () => {
    const world = await newWorld(await on.fresh());
    await world.furnished();
    for (let i = 0; i < 7; i++) await world.drum(300 + i);
    const seenLabels: string[] = [];
    let after: string | null = null;
    do {
      type Page = {
        containers: {
          nodes: { label: string }[];
          pageInfo: { endCursor: string; hasNextPage: boolean };
          totalCount: number;
        };
      };
      const { containers }: Page = await world.ask<Page>(
        `query ($after: String) { containers(first: 3, after: $after, filter: { state: [GOOD, REDRY, UNKNOWN], inUse: true, isOpen: false }) {
          totalCount nodes { label } pageInfo { endCursor hasNextPage } } }`,
        { after },
      );
      expect(containers.totalCount).toBe(7);
      seenLabels.push(...containers.nodes.map(({ label }) => label));
      after = containers.pageInfo.hasNextPage ? containers.pageInfo.endCursor : null;
    } while (after);
    expect(new Set(seenLabels).size).toBe(7);
    expect(seenLabels).toHaveLength(7);
  });
});
