// `totalCount` of a connection, counted only when it is asked for: `totalCount: t.int(totalCount)`.
export const totalCount = {
  description: 'How many there are on all pages.',
  resolve: ({ total }: { total: () => Promise<number> }) => total(),
};
