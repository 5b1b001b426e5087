// The same sorbent as last time: what of that delivery holds again, as the form's fields, and in words.
import type { Typed } from '../act/field.ts';
import { grams as gramWords } from '../say/water.ts';
import type { LastLot } from './questions.ts';

const words = (value: string | number | null | undefined): string => (value == null ? '' : String(value));

/** What came in, as the most of it stands unopened; amounts only of what nobody opened yet. */
export function asLastTime({ supplier, containers }: LastLot): Typed {
  const came = containers.filter(
    ({ kind, takenFrom }) => takenFrom === null && (kind === 'DRUM' || kind === 'PLATE_BOX'),
  );
  const [like] = [...came.filter(({ closure }) => closure === 'SEALED'), ...came];
  if (!like) return {};
  const isWhole = like.closure === 'SEALED';
  const all: Typed = {
    supplier: words(supplier?.name),
    kind: like.kind,
    grams: like.kind === 'DRUM' && isWhole ? words(Number(like.asReceivedGrams.toPrecision(4))) : '',
    plates: like.kind === 'PLATE_BOX' && isWhole ? words(like.plates) : '',
    backing: words(like.backing),
    vessel: words(like.vessel?.name),
    room: like.room.name,
    closure: 'SEALED',
  };
  return Object.fromEntries(Object.entries(all).filter(([, value]) => value !== ''));
}

/** "As lot F-118 came: from Marlpit Chemicals, 1000 g in jar 2.5 L, wet bench". */
export function lastWords(lot: LastLot): string {
  const { supplier, grams, plates, vessel, room } = asLastTime(lot);
  const pack = plates
    ? `${plates} plates`
    : [grams ? gramWords(Number(grams)) : '', vessel ? `in ${vessel}` : ''].filter(Boolean).join(' ');
  const parts = [supplier ? `from ${supplier}` : '', pack, room ?? ''].filter(Boolean);
  return `As lot ${lot.lotNumber} came${parts.length > 0 ? `: ${parts.join(', ')}` : ''}`;
}
