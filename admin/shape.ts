// A question's fields written once: the query's text and the answer's type both follow from them,
// and a test holds them against api/schema.graphql.

/** A scalar or an enum; `of` only carries the type. */
export interface Leaf<T> {
  readonly $: 'leaf';
  readonly of?: T;
}
export interface Maybe<S> {
  readonly $: 'maybe';
  readonly of: S;
}
export interface Many<S> {
  readonly $: 'many';
  readonly of: S;
}
/** A field with arguments, or asked under another name than its own (`field`). */
export interface Given<S> {
  readonly $: 'given';
  readonly args: string;
  readonly field: string | null;
  readonly of: S;
}
export type Shape = Leaf<unknown> | Maybe<unknown> | Many<unknown> | Given<unknown> | Fields;
/** Fields by name; the key `... on Type` holds the fields of one type of an interface or union. */
export interface Fields {
  readonly [field: string]: unknown;
}

const leafOf = <T>(): Leaf<T> => ({ $: 'leaf' });
export const text = leafOf<string>();
export const number = leafOf<number>();
export const flag = leafOf<boolean>();
/** ISO 8601 in UTC. */
export const instant = leafOf<string>();
export const word = <T extends string>(): Leaf<T> => leafOf<T>();
export const maybe = <S>(of: S): Maybe<S> => ({ $: 'maybe', of });
export const many = <S>(of: S): Many<S> => ({ $: 'many', of });
export const given = <S>(args: string, of: S, field: string | null = null): Given<S> => ({
  $: 'given',
  args,
  field,
  of,
});

type OnType = `... on ${string}`;
type Joined<U> = (U extends unknown ? (one: U) => void : never) extends (all: infer A) => void ? A : never;
type OfTypes<S> = keyof S & OnType extends never ? unknown : Partial<Joined<Answer<S[keyof S & OnType]>>>;

/** The type of what is answered. */
export type Answer<S> =
  S extends Leaf<infer T>
    ? T
    : S extends Maybe<infer O>
      ? Answer<O> | null
      : S extends Many<infer O>
        ? Answer<O>[]
        : S extends Given<infer O>
          ? Answer<O>
          : { -readonly [K in Exclude<keyof S, OnType>]: Answer<S[K]> } & OfTypes<S>;

/** The type of what an input takes: `maybe` where it may be left out. */
export type InputOf<S> =
  S extends Leaf<infer T>
    ? T
    : S extends Maybe<infer O>
      ? InputOf<O> | null | undefined
      : S extends Many<infer O>
        ? InputOf<O>[]
        : { [K in keyof S as S[K] extends Maybe<unknown> ? never : K]: InputOf<S[K]> } & {
            [K in keyof S as S[K] extends Maybe<unknown> ? K : never]?: InputOf<S[K]>;
          };

type Wrapped = Leaf<unknown> | Maybe<unknown> | Many<unknown> | Given<unknown>;
export const isWrapped = (shape: unknown): shape is Wrapped =>
  typeof shape === 'object' && shape !== null && '$' in shape;

function selection(shape: unknown): string {
  if (!isWrapped(shape)) return ` { ${fieldsText(shape as Fields)} }`;
  return shape.$ === 'leaf' ? '' : selection(shape.of);
}

function given$(shape: unknown): Given<unknown> | null {
  if (!isWrapped(shape) || shape.$ === 'leaf') return null;
  return shape.$ === 'given' ? shape : given$(shape.of);
}

/** The selection as GraphQL. */
export function fieldsText(fields: Fields): string {
  return Object.entries(fields)
    .map(([name, shape]) => {
      const asked = given$(shape);
      const field = asked?.field ? `${name}: ${asked.field}` : name;
      return `${field}${asked?.args ? `(${asked.args})` : ''}${selection(shape)}`;
    })
    .join(' ');
}
