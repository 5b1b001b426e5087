// The arrows of the system: server -> yoga -> schema -> a room's schema -> its service -> its rules -> science,
// with the database beside the services. `tests/boundaries.test.ts` follows every import.
import type { IForbiddenRuleType } from 'dependency-cruiser';

/** One room for each thing a person does. */
const room = '(stock|climate|exposure|learning|drying|ovens|plates|columns|lists|prep|lots|ledger|purchasing|access)';
/** What a file of science may use besides science: libraries that only reckon. */
const numeric = '^node_modules/(simple-statistics|highs|ml-matrix)/';

export const arrows: IForbiddenRuleType[] = [
  {
    name: 'science is pure',
    comment: 'No clock, dice, files, database or schema: the same input gives the same bits.',
    severity: 'error',
    from: { path: '^api/science/' },
    to: { pathNot: ['^api/science/', numeric] },
  },
  {
    name: 'rules decide on plain data',
    comment:
      'They are tested without a database; the names of stored words are all they take from it, and they may refuse.',
    severity: 'error',
    from: { path: `^api/${room}/rules\\.ts$` },
    to: {
      path: [
        '^api/[^/]+\\.ts$',
        '^api/database/',
        '/(service|schema)\\.ts$',
        '^node_modules/(@prisma|@pothos|graphql)/',
      ],
      pathNot: ['^api/errors\\.ts$'],
      dependencyTypesNot: ['type-only'],
    },
  },
  {
    name: 'a room is entered through its service',
    comment: 'Its GraphQL types are named by their references, which hold nothing else.',
    severity: 'error',
    from: { path: `^api/${room}/`, pathNot: '(schema|type|rules)\\.ts$' },
    to: { path: `^api/${room}/`, pathNot: ['^api/$1/', `^api/${room}/(service|refs)\\.ts$`] },
  },
  {
    name: 'a schema names another room in its schema',
    severity: 'error',
    from: { path: `^api/${room}/.*(schema|type)\\.ts$` },
    to: { path: `^api/${room}/`, pathNot: ['^api/$1/', `^api/${room}/(service|refs|schema)\\.ts$`] },
  },
  {
    name: 'rules read only the plain words of another room',
    severity: 'error',
    from: { path: `^api/${room}/rules\\.ts$` },
    to: { path: `^api/${room}/`, pathNot: ['^api/$1/', `^api/${room}/(rules|words|effects|stand)\\.ts$`] },
  },
  {
    name: 'a service knows no GraphQL',
    severity: 'error',
    from: { path: `^api/${room}/(service|rules)\\.ts$` },
    to: {
      path: [
        '^api/(builder|schema|yoga|server|http|mutation|page|scalars)\\.ts$',
        '/schema\\.ts$',
        '^node_modules/@pothos/',
      ],
    },
  },
  {
    name: 'the database knows nobody above it',
    severity: 'error',
    from: { path: '^api/database/' },
    to: { path: '^api/', pathNot: ['^api/database/', '^api/science/'] },
  },
  {
    name: 'nobody calls the server',
    severity: 'error',
    from: { path: '^api/', pathNot: '^api/server\\.ts$' },
    to: { path: '^api/server\\.ts$' },
  },
  {
    name: 'the schema knows no transport',
    severity: 'error',
    from: {
      path: [`^api/${room}/.*(schema|type|fields|mutations)\\.ts$`, '^api/(schema|builder|context|errors)\\.ts$'],
    },
    to: { path: '^api/(yoga|http|server)\\.ts$', dependencyTypesNot: ['type-only'] },
  },
  {
    name: 'commands stand alone',
    severity: 'error',
    from: { path: '^api/', pathNot: '^api/commands/' },
    to: { path: '^api/commands/' },
  },
  {
    name: 'the admin knows only GraphQL',
    severity: 'error',
    from: { path: '^admin/' },
    to: { path: ['^api/', '^tests/', '^fixtures/'] },
  },
  {
    name: 'what runs needs nothing that only tests have',
    severity: 'error',
    from: { path: '^(api|admin)/' },
    to: { path: ['^tests/', '^\\.config/'] },
  },
  {
    name: 'what runs installs without what only tests have',
    severity: 'error',
    from: { path: '^(api|admin)/' },
    to: { dependencyTypes: ['npm-dev'], dependencyTypesNot: ['type-only'] },
  },
  {
    name: 'the second SQLite never meets the first in one process',
    comment: 'Two copies with one file open in the same process can damage it (SQLite documentation, section 2.2.1).',
    severity: 'error',
    from: { path: '^api/commands/(backup|verify|restore)\\.ts$' },
    to: { path: '^node_modules/(better-sqlite3|@prisma/adapter-better-sqlite3)/', reachable: true },
  },
  {
    name: 'only commands use the second SQLite',
    severity: 'error',
    from: { path: '^(api|admin)/', pathNot: '^api/commands/' },
    to: { path: '^node_modules/sqlite3/' },
  },
  {
    name: 'no circles',
    comment: 'Types may name each other; what runs may not wait for itself.',
    severity: 'error',
    from: { path: '^(api|admin)/' },
    to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
  },
];
