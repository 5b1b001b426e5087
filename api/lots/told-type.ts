// Runs, checks and decisions that are told, as GraphQL takes them.
import { builder } from '../builder.ts';
import { addMutation } from '../mutation.ts';
import { fresh, LabRef, LotRef, PlateRegimeEnum, there } from '../stock/schema.ts';
import { checkSettingsOf, checkSettingsSet, usualChecks, type CheckSettings } from './check-settings.ts';
import { checkTakenBack, lotCheckRecorded, type CheckKept } from './check.ts';
import { dailyCheckRecorded, dailyChecksRecorded, runsTakenBack, runTakenBack, type RunsKept } from './daily.ts';
import { decisionTakenBack, lotDecided, type Decided } from './decide.ts';
import { ChamberEnum, LotOutcomeEnum, RetentionEnum } from './estimate-type.ts';
import { LotCheckRef, LotDecisionRef, RetentionRunRef } from './refs.ts';
import {
  checkBackSaid,
  checkSettingsSaid,
  dailyCheckSaid,
  dailyTableSaid,
  decideSaid,
  decisionBackSaid,
  lotCheckSaid,
  runBackSaid,
  runsBackSaid,
} from './said.ts';

type Fields = Parameters<Parameters<typeof builder.inputType>[1]['fields']>[0];

const conditionFields = (t: Fields) => ({
  chamber: t.field({ type: ChamberEnum, description: 'What plates were developed in.' }),
  isLined: t.boolean({ description: 'The chamber was lined with paper.' }),
  saturationMinutes: t.float({ description: 'The chamber stood with eluent before, min.' }),
  eluent: t.string({ description: 'The eluent, such as `toluene`.' }),
  eluentBatch: t.string({ description: 'Its batch.' }),
  stabiliser: t.string({ description: 'What it is stabilised with, such as `ethanol 0.6 %`.' }),
  temperatureC: t.float({ description: 'Temperature, °C; the room’s of that time when not given.' }),
  distanceMm: t.float({ description: 'Distance run, mm.' }),
  humidityPercent: t.float({ description: 'Humidity, % RH; the room’s of that time when not given.' }),
  room: t.string({ description: 'In which room; the container’s when not given.' }),
  regime: t.field({
    type: PlateRegimeEnum,
    description: 'How plates were prepared; as their container stood then when not given.',
  }),
  by: t.string({ description: 'Who ran it, by short name; who acts when not given.' }),
});

const SpotInput = builder.inputType('RetentionSpotInput', {
  description: 'One spot or peak: its value, or how far spot and front ran.',
  fields: (t) => ({
    compound: t.string({ required: true, description: 'The reference compound, such as `Sudan red`.' }),
    value: t.float({ description: 'Rf from 0 to 1; on columns k or column volumes, which may exceed 1.' }),
    spotMm: t.float({ description: 'Instead of an Rf: how far the spot ran, mm.' }),
    frontMm: t.float({ description: 'And the front, mm: not below the spot.' }),
  }),
});

const runFields = (t: Fields) => ({
  ...conditionFields(t),
  label: t.string({
    description: 'Label of the container it came from: its water at that time is then filled in.',
  }),
  at: t.field({ type: 'DateTime', description: 'When; now when not given.' }),
  tank: t.string({ description: 'The tank it shared with others that day.' }),
  plate: t.string({ description: 'Its own mark.' }),
  box: t.string({ description: 'The box it came from.' }),
  waterFraction: t.float({ description: 'Water, kg per kg dry sorbent, where it was measured.' }),
  note: t.string({ description: 'A note.' }),
});

const RunInput = builder.inputType('RetentionRunInput', {
  description: 'One plate or column. What it does not say is taken from what was said for all.',
  fields: (t) => ({
    ...runFields(t),
    lotNumber: t.string({
      description: 'Its lot by number, or `old` or `new`; its container’s when not given.',
    }),
    spots: t.field({ type: [SpotInput], required: true, description: 'What was read.' }),
  }),
});

const CheckKeptRef = builder.objectRef<CheckKept>('LotCheckKept').implement({
  description: 'A lot check was begun, got runs, was taken back or counts again.',
  fields: (t) => ({
    check: t.field({
      type: LotCheckRef,
      description: 'The check as it now stands.',
      resolve: ({ checkId }, _, { database }) => database.read.lotCheck.findUniqueOrThrow({ where: { id: checkId } }),
    }),
    runs: t.field({
      type: [RetentionRunRef],
      description: 'The runs that were written.',
      resolve: ({ runIds }, _, { database }) =>
        database.read.retentionRun.findMany({ where: { id: { in: runIds } }, orderBy: { id: 'asc' } }),
    }),
  }),
});

const RunsKeptRef = builder.objectRef<RunsKept>('RunsKept').implement({
  description: 'Runs were written, taken back, or count again.',
  fields: (t) => ({
    runs: t.field({
      type: [RetentionRunRef],
      description: 'The runs.',
      resolve: ({ runIds }, _, { database }) =>
        database.read.retentionRun.findMany({ where: { id: { in: runIds } }, orderBy: { id: 'asc' } }),
    }),
  }),
});

const DecidedRef = builder.objectRef<Decided>('LotDecided').implement({
  description: 'A lot was accepted or rejected, or that was taken back.',
  fields: (t) => ({
    decision: t.field({
      type: LotDecisionRef,
      description: 'The decision.',
      resolve: ({ decisionId }, _, { database }) =>
        database.read.lotDecision.findUniqueOrThrow({ where: { id: decisionId } }),
    }),
    lot: t.field({
      type: LotRef,
      description: 'The lot.',
      resolve: async ({ lotId }, _, { load }) => there(await load.lot.load(lotId), 'lot'),
    }),
  }),
});

const tableText =
  'Runs as a table: a first line of headings (`lot`, `tank`, `plate`, and if wanted `box`, `container`, `date`, `by`, `water %`, `front mm` …), every other column a compound with its Rf, or with ` mm` behind its name how far it ran. Tabs, semicolons or commas between cells.';

addMutation('recordLotCheck', {
  description:
    'Begins a lot check, or adds runs to one. An Rf outside 0 to 1 and a front below its spot are refused with where and why; nothing is written then.',
  check: lotCheckSaid,
  success: CheckKeptRef,
  run: (input, context) => fresh(context, lotCheckRecorded(context, input)),
  fields: (t) => ({
    ...conditionFields(t),
    check: t.id({ description: 'The check that the runs are for; a new one when not given.' }),
    sorbent: t.string({ description: 'Of a new check: the sorbent or plate kind.' }),
    oldLotNumber: t.string({ description: 'Of a new check: the lot that is known.' }),
    newLotNumber: t.string({ description: 'Of a new check: the lot that is checked.' }),
    retention: t.field({ type: RetentionEnum, description: 'What the values are; Rf when not given.' }),
    margin: t.float({ description: 'Both lots count as the same within this; the lab’s when not given.' }),
    at: t.field({ type: 'DateTime', description: 'When all were run that do not say it themselves; now.' }),
    runs: t.field({ type: [RunInput], description: 'Plates or columns.' }),
    table: t.string({ description: tableText }),
    note: t.string({ description: 'A note on the check.' }),
  }),
});

const checkField = (t: Fields) => ({ check: t.id({ required: true, description: 'Which check.' }) });
addMutation('takeLotCheckBack', {
  description: 'Takes a whole lot check back; `restoreLotCheck` lets it count again.',
  check: checkBackSaid,
  success: CheckKeptRef,
  run: (input, context) => fresh(context, checkTakenBack(context, input, true)),
  fields: checkField,
});
addMutation('restoreLotCheck', {
  description: 'Lets a lot check that was taken back count again.',
  check: checkBackSaid,
  success: CheckKeptRef,
  run: (input, context) => fresh(context, checkTakenBack(context, input, false)),
  fields: checkField,
});

addMutation('recordDailyCheck', {
  description: 'The daily check: two dyes on any plate, two numbers. It feeds the same charts as lot checks.',
  check: dailyCheckSaid,
  success: RunsKeptRef,
  run: (input, context) => fresh(context, dailyCheckRecorded(context, input)),
  fields: (t) => ({
    ...runFields(t),
    sorbent: t.string({ description: 'The sorbent or plate kind; its container’s when not given.' }),
    lotNumber: t.string({ description: 'Its lot; its container’s when not given.' }),
    retention: t.field({ type: RetentionEnum, description: 'What the values are; Rf when not given.' }),
    spots: t.field({ type: [SpotInput], required: true, description: 'What was read.' }),
  }),
});
addMutation('recordDailyChecks', {
  description: 'Daily checks of earlier days from a table, all of them or none.',
  check: dailyTableSaid,
  success: RunsKeptRef,
  run: (input, context) => fresh(context, dailyChecksRecorded(context, input)),
  fields: (t) => ({
    ...conditionFields(t),
    sorbent: t.string({ required: true, description: 'The sorbent or plate kind.' }),
    retention: t.field({ type: RetentionEnum, description: 'What the values are; Rf when not given.' }),
    table: t.string({ required: true, description: tableText }),
  }),
});

const runField = (t: Fields) => ({ run: t.id({ required: true, description: 'Which run.' }) });
addMutation('takeRunBack', {
  description: 'Takes a plate or column back, of a daily check or a lot check.',
  check: runBackSaid,
  success: RunsKeptRef,
  run: (input, context) => fresh(context, runTakenBack(context, input, true)),
  fields: runField,
});
addMutation('restoreRun', {
  description: 'Lets a run that was taken back count again.',
  check: runBackSaid,
  success: RunsKeptRef,
  run: (input, context) => fresh(context, runTakenBack(context, input, false)),
  fields: runField,
});

const runsField = (t: Fields) => ({ runs: t.idList({ required: true, description: 'Which runs.' }) });
addMutation('takeRunsBack', {
  description: 'Takes plates or columns back together, such as all that a table wrote: all of them or none.',
  check: runsBackSaid,
  success: RunsKeptRef,
  run: (input, context) => fresh(context, runsTakenBack(context, input, true)),
  fields: runsField,
});
addMutation('restoreRuns', {
  description: 'Lets runs that were taken back count again, all of them or none.',
  check: runsBackSaid,
  success: RunsKeptRef,
  run: (input, context) => fresh(context, runsTakenBack(context, input, false)),
  fields: runsField,
});

addMutation('decideLot', {
  description:
    'A person accepts or rejects a lot, with a reason. A rejected lot is never offered for a need; what is kept of it is let go.',
  check: decideSaid,
  success: DecidedRef,
  run: (input, context) => fresh(context, lotDecided(context, input)),
  fields: (t) => ({
    sorbent: t.string({ required: true, description: 'The sorbent or plate kind.' }),
    lotNumber: t.string({ required: true, description: 'The lot.' }),
    outcome: t.field({ type: LotOutcomeEnum, required: true, description: 'Accepted or rejected.' }),
    why: t.string({ required: true, description: 'Why, in a few words.' }),
    check: t.id({ description: 'The check it rests on; none when not given.' }),
  }),
});
const decisionField = (t: Fields) => ({ decision: t.id({ required: true, description: 'Which decision.' }) });
addMutation('takeLotDecisionBack', {
  description: 'Takes a decision on a lot back; the one before it counts again.',
  check: decisionBackSaid,
  success: DecidedRef,
  run: (input, context) => fresh(context, decisionTakenBack(context, input, true)),
  fields: decisionField,
});
addMutation('restoreLotDecision', {
  description: 'Lets a decision that was taken back count again.',
  check: decisionBackSaid,
  success: DecidedRef,
  run: (input, context) => fresh(context, decisionTakenBack(context, input, false)),
  fields: decisionField,
});

const CheckSettingsRef = builder.objectRef<CheckSettings & { own: string[] }>('CheckSettings').implement({
  description: 'What the lab sets for its checks; what it has not set has an invented default.',
  fields: (t) => ({
    marginRf: t.exposeFloat('marginRf', { description: 'Lots count as the same within this, Rf.' }),
    marginColumn: t.exposeFloat('marginColumn', { description: 'The same of columns, k or column volumes.' }),
    readingStepRf: t.exposeFloat('readingStepRf', { description: 'To what an Rf is read.' }),
    readingStepColumn: t.exposeFloat('readingStepColumn', { description: 'To what k or column volumes are read.' }),
    own: t.exposeStringList('own', { description: 'Which of these the lab has set itself, by name.' }),
  }),
});
builder.objectField(LabRef, 'checks', (t) =>
  t.field({
    type: CheckSettingsRef,
    description: 'What it has set for its checks.',
    resolve: ({ settings }) => checkSettingsOf(settings),
  }),
);
const SettingsKept = builder.objectRef<{ labId: string }>('CheckSettingsKept').implement({
  description: 'The lab’s choices for its checks were written.',
  fields: (t) => ({ lab: t.field({ type: LabRef, description: 'The lab.', resolve: (_, __, { lab }) => lab }) }),
});
const back = (of: keyof CheckSettings): string => `not given: stays; null: its default (${usualChecks[of]})`;
addMutation('setCheckSettings', {
  description: 'Sets what lot checks are judged by.',
  check: checkSettingsSaid,
  success: SettingsKept,
  run: (input, context) => checkSettingsSet(context, input),
  fields: (t) => ({
    marginRf: t.float({ description: `Margin of Rf; ${back('marginRf')}.` }),
    marginColumn: t.float({ description: `Margin of columns; ${back('marginColumn')}.` }),
    readingStepRf: t.float({ description: `Reading step of Rf; ${back('readingStepRf')}.` }),
    readingStepColumn: t.float({ description: `Reading step of columns; ${back('readingStepColumn')}.` }),
  }),
});
