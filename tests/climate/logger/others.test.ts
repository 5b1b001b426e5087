// What is no logger's file is called what it is.
import { expect, test } from 'vitest';
import { readLogger } from '../../../api/climate/logger/read.ts';
import { fromText, reading } from './air.ts';

test.each([
  ['picture.csv', 'a PNG picture'],
  ['web-page.csv', 'a web page'],
  ['paper.pdf', 'a PDF document'],
  ['empty.csv', 'empty'],
  ['one-column.csv', 'a text of one column'],
  ['prose.csv', 'a text without readings'],
  ['old-workbook.xls', 'an old .xls workbook'],
])('%s is %s', async (name, is) => {
  expect(await reading(name)).toMatchObject({ is });
});

test('an old workbook comes with advice', async () => {
  expect(await reading('old-workbook.xls')).toMatchObject({ expected: 'the same workbook saved as .xlsx, or as CSV' });
});

test.each([
  ['\ufeff \n\n', 'empty'],
  ['{"readings": [1, 2]}', 'a JSON document'],
  ['<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg"/>', 'an SVG picture'],
  ['time,temperature,humidity\n', 'a text without readings'],
  ['a,b,c\nd,e,f\n', 'a text without readings'],
])('%j is %s', async (text, is) => {
  expect(await fromText(text)).toMatchObject({ is });
});

test.each([
  [[0xff, 0xd8, 0xff, 0xe0, 1, 2], 'a JPEG picture'],
  [[0x50, 0x4b, 3, 4, 20, 0, 0, 0], 'a zip archive'],
  [[0x1f, 0x8b, 8, 0], 'a gzip archive'],
  [[1, 2, 3, 4, 5, 6, 7, 8, 14, 15, 16], 'a binary file of no known kind'],
])('bytes %j are %s', async (bytes, is) => {
  expect(await readLogger(Uint8Array.from(bytes), 'air.csv', { labZone: 'UTC' })).toMatchObject({ is });
});

test('a workbook cut in half is damaged, not half read', async () => {
  const { bytesOf } = await import('./air.ts');
  const bytes = bytesOf('workbook.xlsx');
  expect(await readLogger(bytes.subarray(0, bytes.length / 2), 'air.xlsx', { labZone: 'UTC' })).toMatchObject({
    is: 'a damaged workbook',
  });
});
