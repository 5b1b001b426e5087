// How the parts that every connection and node has are explained.
const anchor = (where: string) => ({ description: `Only what comes ${where} this cursor.` });

export const relayWords = {
  idFieldOptions: { description: 'Its id, the same for ever; `node` finds it again.' },
  nodeTypeOptions: { description: 'Anything that can be found again by its id.' },
  nodeQueryOptions: {
    description: 'The thing with this id; null when there is none.',
    args: { id: { description: 'Its id.' } },
  },
  nodesQueryOptions: {
    description: 'The things with these ids, in their order; null where there is none.',
    args: { ids: { description: 'Their ids.' } },
  },
  pageInfoTypeOptions: { description: 'Where a page lies among the others.' },
  hasNextPageFieldOptions: { description: 'More comes after it.' },
  hasPreviousPageFieldOptions: { description: 'More comes before it.' },
  startCursorFieldOptions: { description: 'Cursor of its first row; null when it is empty.' },
  endCursorFieldOptions: { description: 'Cursor of its last row; null when it is empty.' },
  firstArgOptions: { description: 'How many from the beginning (or after `after`).' },
  lastArgOptions: { description: 'How many from the end (or before `before`).' },
  afterArgOptions: anchor('after'),
  beforeArgOptions: anchor('before'),
  cursorFieldOptions: { description: 'Its place in the list, for `after` and `before`.' },
  nodeFieldOptions: { description: 'The thing itself.' },
  edgesFieldOptions: { description: 'The things of this page with their cursors.' },
  nodesFieldOptions: { description: 'The things of this page.' },
  pageInfoFieldOptions: { description: 'Where this page lies among the others.' },
} as const;
