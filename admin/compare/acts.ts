// What the pages of lot checks tell.
import { act } from '../act/told.ts';
import { flag, instant, many, maybe, number, text, word } from '../shape.ts';
import type { Retention } from '../spot/questions.ts';
import type { Chamber } from './questions.ts';

const kept = { check: { id: text }, runs: many({ id: text }) };
export const recordCheckAct = act(
  'recordLotCheck',
  'LotCheckKept',
  {
    check: maybe(text),
    sorbent: maybe(text),
    oldLotNumber: maybe(text),
    newLotNumber: maybe(text),
    retention: maybe(word<Retention>()),
    margin: maybe(number),
    at: maybe(instant),
    chamber: maybe(word<Chamber>()),
    isLined: maybe(flag),
    saturationMinutes: maybe(number),
    eluent: maybe(text),
    eluentBatch: maybe(text),
    stabiliser: maybe(text),
    temperatureC: maybe(number),
    distanceMm: maybe(number),
    humidityPercent: maybe(number),
    room: maybe(text),
    note: maybe(text),
    table: maybe(text),
    runs: maybe(
      many({ lotNumber: maybe(text), tank: maybe(text), spots: many({ compound: text, value: maybe(number) }) }),
    ),
  },
  kept,
);
export const takeCheckBackAct = act('takeLotCheckBack', 'LotCheckKept', { check: text }, kept);
export const restoreCheckAct = act('restoreLotCheck', 'LotCheckKept', { check: text }, kept);

const decided = { decision: { id: text }, lot: { lotNumber: text } };
export const decideLotAct = act(
  'decideLot',
  'LotDecided',
  { sorbent: text, lotNumber: text, outcome: word<'ACCEPTED' | 'REJECTED'>(), why: text, check: maybe(text) },
  decided,
);
export const takeDecisionBackAct = act('takeLotDecisionBack', 'LotDecided', { decision: text }, decided);
export const restoreDecisionAct = act('restoreLotDecision', 'LotDecided', { decision: text }, decided);
export const setCheckSettingsAct = act(
  'setCheckSettings',
  'CheckSettingsKept',
  { marginRf: maybe(number) },
  { lab: { checks: { marginRf: number } } },
);
