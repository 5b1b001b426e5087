// Which fields an operation asks for below one of its fields, so that a hot list reads only the columns they need.
import {
  Kind,
  type FieldNode,
  type FragmentDefinitionNode,
  type GraphQLResolveInfo,
  type SelectionSetNode,
} from 'graphql';

type Asked = Pick<GraphQLResolveInfo, 'fieldNodes' | 'fragments'>;
type Fragments = Readonly<Record<string, FragmentDefinitionNode>>;

function collect(set: SelectionSetNode | undefined, fragments: Fragments, into: FieldNode[]): FieldNode[] {
  for (const selection of set?.selections ?? []) {
    if (selection.kind === Kind.FIELD) into.push(selection);
    else if (selection.kind === Kind.INLINE_FRAGMENT) collect(selection.selectionSet, fragments, into);
    else collect(fragments[selection.name.value]?.selectionSet, fragments, into);
  }
  return into;
}

/** Names of the fields asked at a path of field names below, in fragments too; whatever their type and directives. */
export function fieldsAsked({ fieldNodes, fragments }: Asked, path: readonly string[]): Set<string> {
  const at = path.reduce<readonly FieldNode[]>(
    (nodes, name) =>
      nodes.flatMap((node) => collect(node.selectionSet, fragments, [])).filter((node) => node.name.value === name),
    fieldNodes,
  );
  const below = at.flatMap((node) => collect(node.selectionSet, fragments, []));
  return new Set(below.map((node) => node.name.value));
}
