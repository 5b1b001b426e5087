// An act with a pasted table: told once, answered with what was written or with everything that is wrong, by line.
import { actText, tell, type Told } from '../ask.ts';
import type { Answer, Fields, InputOf } from '../shape.ts';
import { tellOnce, type Act } from './told.ts';

/** A table may be long: so long is waited for an answer, ms. */
const PATIENCE_MS = 60_000;

/** `more` are fields of each problem besides its line and message. */
export const tellTable = <I extends Fields, S extends Fields>(
  { name, success, answer }: Act<I, S>,
  input: InputOf<I>,
  { key, more = '' }: { key?: string; more?: string } = {},
): Promise<Told<Answer<S>>> =>
  tellOnce(name, input, key, (under) => {
    const text = actText(name, success, answer, ` problems { line message ${more} }`);
    return tell<Answer<S>>(name, text, input, under, undefined, PATIENCE_MS);
  });
