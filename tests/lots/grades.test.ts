// Activity grades: tables as the lab has them, water to reach one, and what dyes showed beside the estimate.
import { beforeEach, expect, it } from 'vitest';
import { newWorld, type World } from '../support/world.ts';
import { describeEngines } from '../support/engines.ts';
import type { Database } from '../../api/database/database.ts';

interface Table {
  sorbentClass: string;
  variant: string;
  source: string;
  isOwn: boolean;
  isUsed: boolean;
  grades: { grade: string; waterOfTotal: number }[];
}
const tableFields = 'sorbentClass variant source isOwn isUsed grades { grade waterOfTotal }';

describeEngines('activity grades', (on) => {
  let database: Database;
  let world: World;
  let label: string;

  beforeEach(async () => {
    database ??= await on.fresh();
    world = await newWorld(database);
    await world.furnished();
    await world.tell('addSorbent', { name: 'Alumina, neutral', sorbentClass: 'alumina' }, '__typename');
    const lot = { sorbent: 'Alumina, neutral', certificateWaterPercent: 3 };
    ({ label } = await world.drum(1030, { closure: 'SEALED' }, lot));
  });

  const tables = async (sorbentClass: string): Promise<Table[]> => {
    const { gradeTables } = await world.ask<{ gradeTables: Table[] }>(`{ gradeTables { ${tableFields} } }`);
    return gradeTables.filter((table) => table.sorbentClass === sorbentClass);
  };
  const water = async (args: string) => {
    const { answer } = await world.ask<{
      answer: {
        waterGrams?: number | null;
        gradeNow?: string;
        sentence?: string;
        cautions?: string[];
        message?: string;
      };
    }>(`{ answer: waterForGrade(${args}) { ... on WaterForGrade { waterGrams gradeNow sentence cautions }
      ... on Refusal { message } } }`);
    return answer;
  };

  it('stand in tables with source and variant, of which one a class is used', async () => {
    const silica = await tables('silica');
    expect(silica.map(({ variant, isUsed, isOwn }) => [variant, isUsed, isOwn])).toEqual([
      ['common texts', true, false],
      ['handbooks of thin-layer chromatography', false, false],
    ]);
    expect(silica.every(({ source }) => source !== '')).toBe(true);
    await world.tell(
      'setGradeTable',
      { sorbentClass: 'silica', variant: 'handbooks of thin-layer chromatography', isUsed: true },
      '__typename',
    );
    expect((await tables('silica')).filter(({ isUsed }) => isUsed).map(({ variant }) => variant)).toEqual([
      'handbooks of thin-layer chromatography',
    ]);
  });

  it('are the lab’s to write, rising in water, with a source; and to take away again', async () => {
    const grades = [
      { grade: 'I', waterOfTotal: 0 },
      { grade: 'II', waterOfTotal: 0.04 },
    ];
    const own = { sorbentClass: 'alumina', variant: 'our own', source: 'weighed here in May', grades, isUsed: true };
    await world.tell('setGradeTable', own, '__typename');
    expect((await tables('alumina')).find(({ isUsed }) => isUsed)).toMatchObject({
      variant: 'our own',
      isOwn: true,
      grades,
    });
    expect(await world.refused('setGradeTable', { ...own, grades: [grades[1], grades[0]] })).toMatchObject({
      path: 'input.grades.1.waterOfTotal',
    });
    expect((await world.refused('setGradeTable', { ...own, variant: 'another', source: null })).path).toBe(
      'input.source',
    );
    await world.tell('resetGradeTable', { sorbentClass: 'alumina', variant: 'our own' }, '__typename');
    expect((await tables('alumina')).map(({ variant }) => variant)).toEqual(['Brockmann']);
    expect((await world.refused('resetGradeTable', { sorbentClass: 'alumina', variant: 'Brockmann' })).path).toBe(
      'input.variant',
    );
  });

  it('say of an estimate what the lab’s own table says', async () => {
    const grade = async () => {
      const { container } = await world.ask<{ container: { exposure: { grade: string } } }>(
        'query ($label: String!) { container(label: $label) { exposure { grade } } }',
        { label },
      );
      return container.exposure.grade;
    };
    expect(await grade()).toBe('II');
    const grades = [
      { grade: 'I', waterOfTotal: 0 },
      { grade: 'III', waterOfTotal: 0.03 },
    ];
    await world.tell(
      'setGradeTable',
      { sorbentClass: 'alumina', variant: 'our own', source: 'weighed here', grades, isUsed: true },
      '__typename',
    );
    expect(await grade()).toBe('III');
    const band = { sorbent: 'Alumina, neutral', policy: 'DRY', grade: 'iii' };
    const { sorbent } = await world.tell<{ sorbent: { targetUpperWaterFraction: number; grades: unknown[] } }>(
      'setSorbentTarget',
      band,
      'sorbent { targetUpperWaterFraction grades { grade } }',
    );
    // 3 % of the whole, on dry basis.
    expect(sorbent.targetUpperWaterFraction).toBeCloseTo(0.03 / 0.97, 12);
    expect(sorbent.grades).toEqual([{ grade: 'I' }, { grade: 'III' }]);
    expect((await world.refused('setSorbentTarget', { ...band, grade: 'II' })).message).toContain('one of I, III');
  });

  it('are never I after a drying below 300 °C, whoever wrote the table: of an estimate, of a batch, beside dyes', async () => {
    const told = async (wanted = 'IIa') => {
      const { container } = await world.ask<{ container: { exposure: { grade: string } } }>(
        'query ($label: String!) { container(label: $label) { exposure { grade } } }',
        { label },
      );
      const { containers } = await world.ask<{ containers: { nodes: { exposure: { grade: string } }[] } }>(
        '{ containers { nodes { label exposure { grade } } } }',
      );
      const { measured } = await world.tell<{ measured: { estimatedGrade: string; sentence: string } }>(
        'recordGrade',
        { label, grade: 'II' },
        'measured { estimatedGrade sentence }',
      );
      expect(measured.sentence).toContain(`grade ${measured.estimatedGrade}.`);
      return [
        container.exposure.grade,
        containers.nodes[0]?.exposure.grade,
        (await water(`label: "${label}", grade: "${wanted}"`)).gradeNow,
        measured.estimatedGrade,
      ];
    };
    const own = (first: string, more = {}) => ({
      ...{ sorbentClass: 'alumina', variant: 'our own', source: 'weighed here', isUsed: true, ...more },
      grades: [
        { grade: first, waterOfTotal: 0 },
        { grade: 'IIa', waterOfTotal: 0.05 },
      ],
    });
    await world.tell('recordDrying', { label, temperatureC: 150, minutes: 240 });
    expect(await told('II')).toEqual(['II', 'II', 'II', 'II']);
    // However dry it is, no water makes it grade I.
    const first = await water(`label: "${label}", grade: "I"`);
    expect(first.waterGrams).toBeNull();
    expect(first.sentence).toMatch(/was last dried at 150 °C: grade I takes 300 °C or more\. Dry it hotter first\.$/);
    const dry = await water(`label: "${label}", grade: "I", waterFraction: 0`);
    expect(dry).toMatchObject({ waterGrams: null, gradeNow: 'II', cautions: [] });
    await world.tell('setGradeTable', { sorbentClass: 'alumina', variant: 'Brockmann', isUsed: true }, '__typename');
    expect(await told('II')).toEqual(['II', 'II', 'II', 'II']);
    await world.tell('setGradeTable', own('I'), '__typename');
    expect(await told()).toEqual(['IIa', 'IIa', 'IIa', 'IIa']);
    await world.tell('setGradeTable', own('Grade I'), '__typename');
    expect(await told()).toEqual(['IIa', 'IIa', 'IIa', 'IIa']);
    await world.tell('setGradeTable', own('super'), '__typename');
    expect(await told()).toEqual(['super', 'super', 'super', 'super']);
    await world.tell('setGradeTable', own('I'), '__typename');
    world.later(60);
    await world.tell('recordDrying', { label, temperatureC: 350, minutes: 240 });
    expect(await told()).toEqual(['I', 'I', 'I', 'I']);
    expect((await water(`label: "${label}", grade: "I", waterFraction: 0`)).waterGrams).toBe(0);
  });

  it('of figures of the lab’s own are told with a source of their own', async () => {
    const grades = [
      { grade: 'I', waterOfTotal: 0 },
      { grade: 'II', waterOfTotal: 0.04 },
    ];
    const over = { sorbentClass: 'alumina', variant: 'Brockmann', grades };
    expect((await world.refused('setGradeTable', over)).path).toBe('input.source');
    expect(await tables('alumina')).toMatchObject([{ isOwn: false }]);
  });

  it('are reached with so many grams of water, shaken and left to stand', async () => {
    // m (w − w₀)/(1 − w): 100 g from nothing to grade III, 6 % of the total.
    const plain = await water('sorbentClass: "alumina", grams: 100, grade: "III"');
    expect(plain.waterGrams).toBeCloseTo(6.383, 3);
    expect(plain.cautions?.join(' ')).toMatch(/shake.*stand/i);
    const drum = await water(`label: "${label}", grade: "iii"`);
    expect(drum.gradeNow).toBe('II');
    const total = 1030;
    expect(drum.waterGrams).toBeCloseTo((total * (0.06 - 0.03)) / (1 - 0.06), -1);
    expect(await water(`label: "${label}", grade: "I"`)).toMatchObject({ waterGrams: null, cautions: [] });
    expect((await water('sorbentClass: "alumina", grams: 100, grade: "IX"')).message).toMatch(
      /^unknown waterForGrade\.grade/,
    );
    expect((await water('sorbentClass: "cellulose", grams: 100, grade: "I"')).message).toMatch(/^unknown/);
  });

  it('are measured by dyes on a column or a plate, and stand beside the estimate', async () => {
    const fields = 'measured { id grade by waterFraction estimatedGrade sentence }';
    const column = await world.tell<{
      measured: { id: string; grade: string; estimatedGrade: string; sentence: string };
    }>('recordGrade', { label, column: { upper: 'Sudan yellow', lower: null, eluate: 'p-methoxyazobenzene' } }, fields);
    expect(column.measured).toMatchObject({ grade: 'III', estimatedGrade: 'II' });
    expect(column.measured.sentence).toMatch(
      /^Grade III: Sudan yellow above, p-methoxyazobenzene ran through\. Estimated then: .* water, grade II\.$/,
    );
    await world.tell('recordGrade', { label, plate: [{ dye: 'azobenzene', rf: 0.6 }] }, fields);
    const list = async () => {
      const { container } = await world.ask<{ container: { gradesMeasured: { grade: string }[] } }>(
        'query ($label: String!) { container(label: $label) { gradesMeasured { grade } } }',
        { label },
      );
      return container.gradesMeasured.map(({ grade }) => grade);
    };
    expect((await list()).sort()).toEqual(['II', 'III']);
    await world.tell('takeGradeBack', { measured: column.measured.id }, '__typename');
    expect(await list()).toEqual(['II']);
    await world.tell('restoreGrade', { measured: column.measured.id }, '__typename');
    expect(await list()).toHaveLength(2);
  });

  it('are refused where dyes say nothing: a picture of no table, or a sorbent that is no alumina', async () => {
    const picture = { upper: 'azobenzene', lower: 'Sudan red' };
    expect((await world.refused('recordGrade', { label, column: picture })).path).toBe('input.column');
    expect((await world.refused('recordGrade', { label })).path).toBe('input.grade');
    const silica = await world.drum(500);
    const plate = [{ dye: 'azobenzene', rf: 0.6 }];
    expect((await world.refused('recordGrade', { label: silica.label, plate })).path).toBe('input.label');
  });
});
