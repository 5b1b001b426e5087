// What GraphQL knows of the ledger.
import './line-type.ts';
import './ledger-type.ts';
